package main

import (
	"math"
	"strings"
	"testing"
)

func TestPlacementsAreProposedAndTaken(t *testing.T) {
	path := demoFile(t)
	got := decode[proposed](t, must(t, "place", path, "--propose", "--floor", "Loft Studio", "--json"))
	if got.Present == nil || len(got.Proposals) == 0 {
		t.Fatalf("%+v", got)
	}
	best := got.Proposals[0]
	if best.Score < got.Present.Score && len(got.Present.Broken) == 0 {
		t.Errorf("the best proposal scores %.4f, the placement by hand %.4f", best.Score, got.Present.Score)
	}
	if best.Score > got.Bound+1e-9 {
		t.Errorf("the best scores %.4f and the bound is %.4f", best.Score, got.Bound)
	}
	must(t, "place", path, "--take", "1", "--floor", "Loft Studio")
	now := decode[placing](t, must(t, "place", path, "--floor", "Loft Studio", "--json"))
	if math.Abs(float64(now.Along-best.Along)) > 1e-6 || math.Abs(float64(now.Turn-best.Turn)) > 1e-6 {
		t.Errorf("taken as %+v, proposed %+v", now, best)
	}
	must(t, "undo", path)
}

func TestRequirementsAreKeptInTheFile(t *testing.T) {
	path := demoFile(t)
	must(t, "place", path, "--floor", "Loft Studio", "--turns", "square", "--fronts", "1", "--area", "0.5")
	got := decode[proposed](t, must(t, "place", path, "--propose", "--floor", "Loft Studio", "--json"))
	for _, p := range got.Proposals {
		if p.Turn != 0 {
			t.Errorf("turned by %v, and only the first wall may be the front", p.Turn)
		}
	}
}

func TestWhatIsTypedWrongForAProposalIsSaid(t *testing.T) {
	path := demoFile(t)
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"--turns", "sideways"}, "none of any, square"},
		{[]string{"--fronts", "9"}, "no wall"},
		{[]string{"--take", "77", "--floor", "Loft Studio"}, "no proposal 77"},
	} {
		r := command(t, append([]string{"place", path}, c.args...)...)
		if r.status != failed || !strings.Contains(r.messages, c.want) {
			t.Errorf("%v: status %d, %q", c.args, r.status, r.messages)
		}
	}
}

func TestNoProposalForTheDemosHallIsWorseThanTheOneByHand(t *testing.T) {
	got := decode[proposed](t, must(t, "place", demoFile(t), "--propose", "--floor", "Tannery Hall", "--json"))
	if got.Present == nil || len(got.Proposals) == 0 || got.Proposals[0].Score < got.Present.Score {
		t.Errorf("by hand %+v, proposed %+v", got.Present, got.Proposals)
	}
}
