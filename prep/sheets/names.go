package sheets

import (
	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// names adds the names of the elements that are laid or set on spikes.
func (d *drawing) names(p *prep.Production, w *prep.FloorWork) {
	edges := map[plan.ElementID][]plane.Edge{}
	var order []plan.ElementID
	add := func(id plan.ElementID, e plane.Edge) {
		if !drawableEdge(e) {
			return
		}
		if edges[id] == nil {
			order = append(order, id)
		}
		edges[id] = append(edges[id], e)
	}
	for _, l := range w.Lines {
		if l.Role == plan.Outline {
			add(l.Element, l.Edge)
		}
	}
	for _, pc := range w.Pieces {
		for _, path := range pc.Paths {
			for _, e := range path.Edges() {
				add(pc.Element, e)
			}
		}
	}
	for _, id := range order {
		if e := p.Plan.Element(id); e != nil && e.Name != "" {
			d.Names = append(d.Names, nameSpot(e.Name, edges[id]))
		}
	}
}

// nameSpot puts a name into the middle of what its edges enclose, and beside the
// longest of them where they enclose nothing: the middle of a wall with a bend is
// somewhere else altogether.
func nameSpot(name string, edges []plane.Edge) spot {
	box, longest := edges[0].Bounds(), edges[0]
	for _, e := range edges {
		box = box.Union(e.Bounds())
		if e.Length() > longest.Length() {
			longest = e
		}
	}
	if encloses(edges) {
		return spot{At: box.Centre(), Text: name, Kind: naming, Half: halfOf(box)}
	}
	return spot{At: longest.At(0.5), Text: name, Kind: naming, Half: besideLine}
}

// besideLine is the half breadth of what is only a line, in metres.
const besideLine = 0.01

// encloses tells whether every end of the edges meets another end.
func encloses(edges []plane.Edge) bool {
	for i, e := range edges {
		for _, end := range []plane.Point{e.A, e.B} {
			met := 0
			for k, other := range edges {
				if k != i && (other.A.To(end) < 1e-6 || other.B.To(end) < 1e-6) {
					met++
				}
			}
			if met == 0 {
				return false
			}
		}
	}
	return len(edges) > 1
}
