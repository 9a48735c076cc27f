package floor

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Overhang is what of one element lies off the floor or on an obstacle, before
// it is cut short.
type Overhang struct {
	Element plan.ElementID
	Length  float64      // metres of line work outside, over all its positions
	Of      float64      // metres of line work in all
	Edges   []plane.Edge // the pieces outside, datum axes
}

// Overhangs returns every element that the floor means to lay and of which
// something lies outside, in plan order. A floor that has not been measured has
// none.
func (f *Floor) Overhangs(pl *plan.Plan) []Overhang {
	if len(f.Outline.Vertices) == 0 {
		return nil
	}
	toDatum := f.FloorToDatum()
	outline := f.Outline.Moved(toDatum)
	var obstacles []plane.Path
	for _, o := range f.Obstacles {
		obstacles = append(obstacles, o.Shape.Moved(toDatum))
	}
	var out []Overhang
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := f.Decide(e)
		if t.How == LeftOut || e.Kind.Bare() {
			continue
		}
		o := Overhang{Element: e.ID}
		for _, s := range pl.Standings(e) {
			for _, l := range drawn(e, t.How, f.motion(t, s.Motion), s.Scenes) {
				o.add(l.Edge, outline, obstacles)
			}
		}
		if o.Length > tight {
			out = append(out, o)
		}
	}
	return out
}

func (o *Overhang) add(e plane.Edge, outline plane.Path, obstacles []plane.Path) {
	o.Of += e.Length()
	inside, outside := plane.Clip(e, outline, tight)
	for _, shape := range obstacles {
		var free []plane.Edge
		for _, piece := range inside {
			on, clear := plane.Clip(piece, shape, tight)
			outside = append(outside, on...)
			free = append(free, clear...)
		}
		inside = free
	}
	for _, piece := range outside {
		o.Length += piece.Length()
	}
	o.Edges = append(o.Edges, outside...)
}
