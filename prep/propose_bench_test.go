package prep_test

import (
	"context"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Half of the large production lies outside the room, and all of it is needed.
func BenchmarkProposeForALargeProduction(b *testing.B) {
	p := large()
	p.Floors[0].Outline = plane.Rectangle(plane.Point{}, plane.Point{X: 18, Y: 30})
	for i := range p.Plan.Elements {
		p.Plan.Elements[i].Use = plan.Essential
	}
	for b.Loop() {
		if got, err := prep.Propose(context.Background(), p, &p.Floors[0]); err != nil || len(got) < 200 {
			b.Fatal("what lies outside has no proposal")
		}
	}
}

func BenchmarkCompareALargeProduction(b *testing.B) {
	p := large()
	w := prep.Work(p, "room", "")
	for b.Loop() {
		prep.Compare(p, w, w)
	}
}
