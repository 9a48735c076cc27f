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
	if err := p.checks.keep(c.Key(), readColumn, "long"); err == nil {
		t.Error("a word is kept as a reading")
	}
	good := d.View().P.Style().Bare(c.Expected)
	if err := p.checks.keep(c.Key(), readColumn, good); err != nil {
		t.Fatal(err)
	}
	got, _ := p.checks.keyed(c.Key())
	if got.Read == nil || got.Read.Grade != prep.GoodReading || got.Read.By != "A tester" {
		t.Fatalf("kept %+v", got.Read)
	}
	if err := p.checks.keep(c.Key(), readColumn, d.View().P.Style().Bare(c.Expected+0.3048)); err != nil {
		t.Fatal(err)
	}
	got, _ = p.checks.keyed(c.Key())
	if got.Read.Grade != prep.DoubtfulReading || !strings.Contains(got.Read.Words(), "a whole foot too long") {
		t.Errorf("a foot too long is %s", got.Read.Words())
	}
	again := false
	for _, c := range p.checks.list {
		again = again || c.Nth == 1 && c.Read == nil
	}
	if !again {
		t.Error("nobody is asked to measure again")
	}
	p.checks.table.Select(c.Key())
	p.Remove()
	if n := len(d.View().P.Readings); n != 0 {
		t.Errorf("%d readings are left", n)
	}
}
