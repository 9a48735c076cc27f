package floorpicture

import (
	"strings"
	"testing"

	"groundrow/tapeout/marks"
	"groundrow/ui/floorcanvas"
)

func TestCutsAsidesAndSpikesHaveTheirOwnSigns(t *testing.T) {
	pic, w := pictureOfDemo(t, "", Options{Spikes: true})
	ends, spikes := 0, 0
	for _, l := range w.Lines {
		if l.Cut.A {
			ends++
		}
		if l.Cut.B {
			ends++
		}
	}
	breaks, targets := 0, 0
	for _, d := range pic.Dots {
		switch d.Sign {
		case floorcanvas.Break:
			breaks++
		case floorcanvas.Target:
			targets++
		}
	}
	if ends == 0 || breaks != ends {
		t.Errorf("%d cut signs for %d cut ends", breaks, ends)
	}
	if targets != 1 {
		t.Errorf("%d datums of what is moved aside, want that of the upper storey", targets)
	}
	said := false
	for _, l := range pic.Labels {
		said = said || strings.HasPrefix(l.Text, "Upper storey: moved ")
	}
	if !said {
		t.Error("the offset of the upper storey is not written on the floor")
	}
	for _, m := range w.Marks {
		if m.Kind == marks.Spike || m.Station != nil {
			spikes += len(m.Arms)
		}
	}
	arms := 0
	for _, s := range pic.Shapes {
		for _, e := range s.Edges {
			if s.Colour != nil && e.Length() < 0.2 && e.Length() > 0.1 {
				arms++
			}
		}
	}
	if arms < spikes {
		t.Errorf("%d pieces of tape for %d arms of spikes and stops", arms, spikes)
	}
}

func TestWhatIsDownOnlySometimesLiesOnABand(t *testing.T) {
	with, w := pictureOfDemo(t, "", Options{Sometimes: true})
	without, _ := pictureOfDemo(t, "", Options{})
	some := 0
	for _, l := range w.Lines {
		if len(l.Scenes) > 0 {
			some++
		}
	}
	if len(with.Shapes) != len(without.Shapes)+1 || some == 0 {
		t.Fatalf("%d shapes with the band and %d without", len(with.Shapes), len(without.Shapes))
	}
	for _, s := range with.Shapes {
		if s.Width == sometimesWidth && len(s.Edges) != some {
			t.Errorf("the band lies under %d lines, want %d", len(s.Edges), some)
		}
	}
}
