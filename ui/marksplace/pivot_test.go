package marksplace

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

func TestTheBestPairIsUsedByOneEdit(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabPivots)
	p.pivots.find()
	if len(p.pivots.choices) == 0 {
		t.Fatal(p.pivots.found.Text)
	}
	c := p.pivots.choices[0]
	for _, other := range p.pivots.choices {
		if other.flat+other.beyond < c.flat+c.beyond {
			t.Errorf("%s and %s serve more marks than the first pair", other.a.name, other.b.name)
		}
	}
	test.Tap(p.pivots.use)
	f := floorNamed(t, d, "Tannery Hall")
	m := f.FloorToDatum()
	if len(f.Pivots) < 2 || m.Apply(f.Pivots[0].At).To(c.a.at) > 1e-9 || m.Apply(f.Pivots[1].At).To(c.b.at) > 1e-9 {
		t.Fatalf("the first two pivots are %+v", f.Pivots)
	}
	d.Undo()
	if f := floorNamed(t, d, "Tannery Hall"); len(f.Pivots) != 2 {
		t.Errorf("%d pivots after Undo, want 2", len(f.Pivots))
	}
}

func TestPivotsAreAddedMovedReorderedAndDeleted(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabPivots)
	id := p.pivots.addAt(plane.Point{X: 1, Y: 2})
	f := floorNamed(t, d, "Tannery Hall")
	if len(f.Pivots) != 3 {
		t.Fatalf("%d pivots", len(f.Pivots))
	}
	if err := p.pivots.table.OnEdit(id, pvAlong, `10' 6"`); err != nil {
		t.Fatal(err)
	}
	if got := d.View().P.ShowLength(id, "along", floorNamed(t, d, "Tannery Hall").Pivots[2].At.X); got != `10' 6"` {
		t.Errorf("typed 10' 6\", shown %q", got)
	}
	if err := p.pivots.table.OnEdit(id, pvAlong, "ten"); err == nil {
		t.Error("a word is taken for a length")
	}
	p.pivots.table.Select(id)
	p.pivots.reorder(-1)
	if got := floorNamed(t, d, "Tannery Hall").Pivots[1].ID; got != id {
		t.Errorf("the second pivot is %s", got)
	}
	p.pivots.remove([]string{id})
	if n := len(floorNamed(t, d, "Tannery Hall").Pivots); n != 2 {
		t.Errorf("%d pivots are left", n)
	}
}

func TestATapeDoesNotPassObstaclesOrWalls(t *testing.T) {
	f := &floor.Floor{
		Outline:   plane.Closed(plane.Point{}, plane.Point{X: 10}, plane.Point{X: 10, Y: 4}, plane.Point{X: 4, Y: 4}, plane.Point{X: 4, Y: 10}, plane.Point{Y: 10}),
		Obstacles: []floor.Obstacle{{ID: "column", Shape: plane.Rectangle(plane.Point{X: 1, Y: 5}, plane.Point{X: 2, Y: 6})}},
	}
	stops := blocked(f)
	for _, c := range []struct {
		name     string
		from, to plane.Point
		want     bool
	}{
		{"across the open floor", plane.Point{X: 1, Y: 1}, plane.Point{X: 9, Y: 3}, false},
		{"from corner to corner along a wall", plane.Point{}, plane.Point{X: 10}, false},
		{"through the column", plane.Point{X: 1.5, Y: 1}, plane.Point{X: 1.5, Y: 9}, true},
		{"from the face of the column away from it", plane.Point{X: 1.5, Y: 5}, plane.Point{X: 1.5, Y: 1}, false},
		{"round the corner of the room", plane.Point{X: 9, Y: 3}, plane.Point{X: 3, Y: 9}, true},
	} {
		if got := stops(c.from, c.to); got != c.want {
			t.Errorf("%s: stopped %v, want %v", c.name, got, c.want)
		}
	}
}
