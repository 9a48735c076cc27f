package prep_test

import (
	"fmt"
	"testing"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// large is a production of the size that the program is built for: 500 elements,
// 10,000 segments, 3,000 marks, 12 scenes. Every element is a chain of five
// straight walls, each drawn in four pieces.
func large() *prep.Production {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	n := 0
	p.Stocks = supplies.StandardStocks(length.FeetInches, func() string { n++; return fmt.Sprint("stock ", n) })
	for s := range 12 {
		p.Plan.Scenes = append(p.Plan.Scenes, plan.Scene{ID: plan.SceneID(fmt.Sprint("scene ", s))})
	}
	for i := range 500 {
		at := plane.Point{X: float64(i%25) * 1.2, Y: float64(i/25) * 1.2}
		id := fmt.Sprint("element ", i)
		p.Plan.Elements = append(p.Plan.Elements, plan.Element{
			ID: plan.ElementID(id), Name: id, Kind: plan.Wall, Stock: p.Stocks[i%4].ID,
			Paths: []plan.Path{{ID: plan.PathID(id), Role: plan.Outline, Path: chain(at)}},
		})
	}
	p.Floors = []floor.Floor{{
		ID: "room", Kind: floor.Room, Placement: plane.Motion{Shift: plane.Point{X: 1, Y: 1}},
		Outline: plane.Rectangle(plane.Point{}, plane.Point{X: 40, Y: 30}),
		Pivots:  []floor.Pivot{{ID: "a", At: plane.Point{X: 1}}, {ID: "b", At: plane.Point{X: 30}}},
	}}
	return p
}

func chain(at plane.Point) plane.Path {
	corners := []plane.Point{{X: 0, Y: 0}, {X: 0.9, Y: 0.1}, {X: 1, Y: 0.5}, {X: 0.6, Y: 0.9}, {X: 0.2, Y: 0.8}, {X: 0.1, Y: 0.4}}
	path := plane.Open(at)
	for i := 1; i < len(corners); i++ {
		for k := 1; k <= 4; k++ {
			path.Vertices = append(path.Vertices, plane.Vertex{Point: at.Add(corners[i-1].Towards(corners[i], float64(k)/4))})
		}
	}
	return path
}

func TestLargeProductionIsAsLargeAsItSays(t *testing.T) {
	w := prep.Work(large(), "room", "")
	if len(w.Lines) != 10_000 || len(w.Marks) != 3_000 {
		t.Errorf("%d segments and %d marks", len(w.Lines), len(w.Marks))
	}
}

// BenchmarkLargeProduction computes a whole floor from nothing.
func BenchmarkLargeProduction(b *testing.B) {
	p := large()
	for b.Loop() {
		prep.Work(p, "room", "")
	}
}

// BenchmarkMarksOfALargeProduction finds, labels and measures its 3,000 marks by every
// method, with recommendations. The budget is 100 ms.
func BenchmarkMarksOfALargeProduction(b *testing.B) {
	p := large()
	f := p.Floor("room")
	for b.Loop() {
		found := marks.Of(&p.Plan, f, nil, p.Settings.Rules, p.Settings.TapeLength)
		prep.MeasureAll(p, f, found)
	}
}

// BenchmarkLargeProductionWithWays adds three ways to the large production, whose
// elements stand in different scenes.
func BenchmarkLargeProductionWithWays(b *testing.B) {
	p := large()
	for i := range p.Plan.Elements {
		p.Plan.Elements[i].Stands = []plan.Stand{{Scene: p.Plan.Scenes[i%12].ID}, {Scene: p.Plan.Scenes[(i+1)%12].ID}}
	}
	for i := range 3 {
		y := float64(1 + 12*i)
		p.Floors[0].Ways = append(p.Floors[0].Ways, floor.Way{ID: string(rune('a' + i)), Width: 0.9,
			From: floor.Spot{At: plane.Point{X: 0.5, Y: y}}, To: floor.Spot{At: plane.Point{X: 39.5, Y: 29 - y}}})
	}
	for b.Loop() {
		prep.Work(p, "room", "")
	}
}
