package floor

import (
	"testing"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// A room so full that every offset is tried in vain.
func BenchmarkBesideInAFullRoom(b *testing.B) {
	f := &Floor{Outline: plane.Rectangle(plane.Point{}, plane.Point{X: 20, Y: 12})}
	pl := &plan.Plan{Elements: []plan.Element{block("loft", plane.Point{X: 2, Y: 2}, plane.Point{X: 7, Y: 5})}}
	for x := 0.5; x < 20; x++ {
		for y := 0.5; y < 12; y++ {
			pl.Elements = append(pl.Elements, wall("w", plane.Point{X: x, Y: y}, plane.Point{X: x + 0.5, Y: y + 0.2}))
		}
	}
	for b.Loop() {
		if _, _, ok := f.Beside(pl, []plan.ElementID{"loft"}, 0.1524, 100); ok {
			b.Fatal("found a place in a full room")
		}
	}
}
