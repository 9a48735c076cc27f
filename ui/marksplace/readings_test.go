package marksplace

import (
	"strings"
	"testing"

	"groundrow/prep"
)

func TestAReadingIsTypedInPlaceJudgedAndDeleted(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabChecks)
	c := p.checks.list[1]
	if err := p.checks.keep(c.key(), readColumn, "long"); err == nil {
		t.Error("a word is kept as a reading")
	}
	good := d.View().P.Style().Bare(c.expected)
	if err := p.checks.keep(c.key(), readColumn, good); err != nil {
		t.Fatal(err)
	}
	got, _ := p.checks.keyed(c.key())
	if got.read == nil || got.read.Grade != prep.GoodReading || got.read.By != "A tester" {
		t.Fatalf("kept %+v", got.read)
	}
	if err := p.checks.keep(c.key(), readColumn, d.View().P.Style().Bare(c.expected+0.3048)); err != nil {
		t.Fatal(err)
	}
	got, _ = p.checks.keyed(c.key())
	if got.read.Grade != prep.DoubtfulReading || !strings.Contains(got.read.Words(), "a whole foot too long") {
		t.Errorf("a foot too long is %s", got.read.Words())
	}
	again := false
	for _, c := range p.checks.list {
		again = again || c.nth == 1 && c.read == nil
	}
	if !again {
		t.Error("nobody is asked to measure again")
	}
	p.checks.table.Select(c.key())
	p.Remove()
	if n := len(d.View().P.Readings); n != 0 {
		t.Errorf("%d readings are left", n)
	}
}
