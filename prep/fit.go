package prep

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"groundrow/tapeout/match"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Fit is how well one object could stand in for one element.
type Fit struct {
	Element plan.ElementID
	Object  string  // identifier
	Off     float64 // metres by which its plan is too wide or narrow and too deep or shallow, together
	Alike   bool    // the element is called what the object is
}

// unlike is what counts, in metres of misfit, against an object that is another
// sort of thing: a chair a foot too large stands in for a chair before a table
// of the right size. Common practice, no source.
const unlike = 0.5

// mismatch is what is made as small as can be.
func (f Fit) mismatch() float64 {
	if f.Alike {
		return f.Off
	}
	return f.Off + unlike
}

// Fits returns how well every object could stand in for the element, the best
// first. It is empty for an element that is not there.
func Fits(p *Production, id plan.ElementID) []Fit {
	e := p.Plan.Element(id)
	if e == nil {
		return nil
	}
	out := make([]Fit, len(p.Objects))
	for i, o := range p.Objects {
		out[i] = fit(e, o)
	}
	slices.SortStableFunc(out, func(a, b Fit) int { return cmp.Compare(a.mismatch(), b.mismatch()) })
	return out
}

// ProposeStandIns pairs the elements that have no stand-in yet in the scene with
// the objects that are still free in it, so that all misfits together are as
// small as can be and no object is used twice. Elements that are left over when
// the objects run out are not in the answer, which is in plan order.
func ProposeStandIns(p *Production, scene plan.SceneID) []Fit {
	free := map[string]int{}
	for _, o := range p.Objects {
		free[o.ID] = o.Count
	}
	var wanting []*plan.Element
	for _, n := range StandInNeeds(p, scene) {
		switch {
		case n.Object != nil && n.State != Swapped:
			free[n.Object.ID] -= n.Number
		case !n.Met():
			wanting = append(wanting, p.Plan.Element(n.Element))
		}
	}
	var pieces []Object
	for _, o := range p.Objects {
		// More of one object than there are elements cannot be used.
		for range min(free[o.ID], len(wanting)) {
			pieces = append(pieces, o)
		}
	}
	cost := make([][]float64, len(wanting))
	for i, e := range wanting {
		for _, o := range pieces {
			cost[i] = append(cost[i], fit(e, o).mismatch())
		}
	}
	var out []Fit
	for i, j := range match.Least(cost) {
		if j != match.None {
			out = append(out, fit(wanting[i], pieces[j]))
		}
	}
	return out
}

// fit measures one object against one element, turned whichever way is better. A
// size of zero does not matter.
func fit(e *plan.Element, o Object) Fit {
	width, depth := sizeOf(e)
	off := func(w, d float64) float64 {
		sum := 0.0
		if w > 0 {
			sum += math.Abs(w - width)
		}
		if d > 0 {
			sum += math.Abs(d - depth)
		}
		return sum
	}
	return Fit{
		Element: e.ID, Object: o.ID,
		Off:   min(off(o.Width, o.Depth), off(o.Depth, o.Width)),
		Alike: alike(e.Name, o),
	}
}

// alike tells whether the element's name has the object's kind, or the object's
// name, as words in it.
func alike(name string, o Object) bool {
	words := " " + strings.ToLower(name) + " "
	for _, what := range []string{o.Kind, o.Name} {
		if what = strings.ToLower(strings.TrimSpace(what)); what != "" && strings.Contains(words, " "+what+" ") {
			return true
		}
	}
	return false
}

// sizeOf returns the width and depth of the element's outline in metres, measured
// along its longest edge and across.
func sizeOf(e *plan.Element) (width, depth float64) {
	var edges []plane.Edge
	for _, path := range e.Paths {
		if path.Role == plan.Outline {
			edges = append(edges, path.Edges()...)
		}
	}
	if len(edges) == 0 {
		return 0, 0
	}
	longest := slices.MaxFunc(edges, func(a, b plane.Edge) int { return cmp.Compare(a.Chord(), b.Chord()) })
	level := plane.About(plane.Point{}, -longest.B.Sub(longest.A).Angle())
	box := edges[0].Moved(level).Bounds()
	for _, edge := range edges[1:] {
		box = box.Union(edge.Moved(level).Bounds())
	}
	return box.Width(), box.Height()
}
