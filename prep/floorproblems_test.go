package prep

import (
	"slices"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestWhatLiesOnAKeepClearAreaIsNamed(t *testing.T) {
	for _, c := range []struct {
		name string
		area plane.Path
		want []string
	}{
		{"a line across it", plane.Rectangle(pt(0, 2.5), pt(0.4, 3.2)), []string{"wall"}},
		{"a chair within it", plane.Rectangle(pt(-0.2, 0.8), pt(0.8, 1.7)), []string{"chair"}},
		{"a chair halfway in it", plane.Rectangle(pt(0.3, 0), pt(0.8, 1.2)), []string{"revolve", "chair"}},
		{"free floor", plane.Rectangle(pt(-5, 6), pt(-4, 7)), nil},
		{"what is left out", plane.Rectangle(pt(3.5, 1.5), pt(4.5, 2)), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := small()
			p.Floors[0].Treatments[0].How = floor.AsDrawn
			drop(&p.Plan.Elements, func(e plan.Element) bool { return e.ID == "lamp" })
			p.Floors[0].KeepClears = []floor.KeepClear{{ID: "exit", Name: "Exit", Shape: c.area}}
			var got []string
			for _, pr := range Work(p, "room", "").Problems {
				if pr.Rule == RuleKeepClear {
					got = append(got, pr.ID)
				}
			}
			if !slices.Equal(got, c.want) {
				t.Errorf("named %v, want %v", got, c.want)
			}
		})
	}
}
