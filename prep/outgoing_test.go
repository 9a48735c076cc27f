package prep_test

import (
	"math"
	"testing"
	"time"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/drawing/layout"
)

func TestOutgoingHoldsWhatTheFloorLays(t *testing.T) {
	p := demo.Production(time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC))
	whole := prep.Work(p, p.Floors[0].ID, "")
	for _, scene := range p.Plan.Scenes {
		w := whole.In(scene.ID)
		s := prep.Outgoing(p, w)
		if s.Scene != scene.Name || len(s.Marks) != len(w.Marks) {
			t.Errorf("the scene is called %q and has %d marks, want %q and %d", s.Scene, len(s.Marks), scene.Name, len(w.Marks))
		}
		want, got := 0.0, 0.0
		for _, l := range w.Lines {
			want += l.Length()
		}
		for _, layer := range layout.Of(s, layout.FromDatum).Layers {
			if layer.Use != layout.Tape {
				continue
			}
			if !layer.Colour.Known {
				t.Errorf("the layer %s has no colour", layer.Name)
			}
			for _, path := range layer.Paths {
				for _, e := range path.Edges {
					got += e.Length()
				}
			}
		}
		if math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %.6f m go out, want %.6f", scene.Name, got, want)
		}
	}
}
