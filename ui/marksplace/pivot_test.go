package marksplace

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"groundrow/tapeout/plane"
)

func TestTheBestPairIsUsedByOneEdit(t *testing.T) {
	p, d := open(t)
	p.tabs.SelectIndex(tabPivots)
	p.pivots.find(false)
	if len(p.pivots.choices) == 0 {
		t.Fatal(p.pivots.found.Text)
	}
	c := p.pivots.choices[0]
	for _, other := range p.pivots.choices {
		if other.Unserved() < c.Unserved() {
			t.Errorf("%s and %s serve more marks than the first pair", other.A.Name, other.B.Name)
		}
	}
	test.Tap(p.pivots.use)
	f := floorNamed(t, d, "Tannery Hall")
	m := f.FloorToDatum()
	if len(f.Pivots) < 2 || m.Apply(f.Pivots[0].At).To(c.A.At) > 1e-9 || m.Apply(f.Pivots[1].At).To(c.B.At) > 1e-9 {
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

func TestAPivotThatWasFoundIsShownAsATapeIsRead(t *testing.T) {
	p, d := open(t)
	id := p.pivots.addAt(plane.Point{X: 1.23456, Y: 2.34567})
	v, there := d.View(), false
	for _, r := range pivotRows(v, floorNamed(t, d, "Tannery Hall")) {
		if r.ID != id {
			continue
		}
		there = true
		for _, c := range []int{pvAlong, pvInto} {
			if got := r.Cells[c]; strings.Contains(got, ".") {
				t.Errorf("column %d has %s, which no tape shows", c, got)
			}
		}
	}
	if !there {
		t.Error("the pivot is not in the table")
	}
}
