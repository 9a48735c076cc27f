package prep

import (
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// clearProblems names what is laid, set by hand or written on an area that must stay
// free, the swing of a door among them.
func clearProblems(p *Production, w *FloorWork) []Problem {
	var out []Problem
	for _, k := range w.Floor.Clears() {
		for _, id := range onArea(p, w, k.Shape) {
			out = append(out, Problem{
				Rule: RuleKeepClear, Where: nameOf(p, id), Place: PlaceFloors, ID: string(id), Got: k.Name,
			})
		}
		if k.Kind == "front table" || k.Kind == "music" || k.Kind == "prop table" {
			continue // figures may be written where things stand that do not move
		}
		if figuresOn(w, k.Shape.Moved(w.Floor.FloorToDatum())) {
			out = append(out, Problem{Rule: RuleFigures, Where: k.Name, Place: PlaceFloors, ID: k.ID})
		}
	}
	return out
}

// onArea returns the elements that lie on an area of the floor, in plan order: with a
// line, or round the whole of it.
func onArea(p *Production, w *FloorWork, area plane.Path) []plan.ElementID {
	onIt := map[plan.ElementID]bool{}
	shape := area.Moved(w.Floor.FloorToDatum())
	look := func(id plan.ElementID, e plane.Edge) {
		if !onIt[id] && floor.Meets(e, shape) {
			onIt[id] = true
		}
	}
	for _, l := range w.Lines {
		look(l.Element, l.Edge)
	}
	for _, piece := range w.Pieces {
		for _, path := range piece.Paths {
			for _, e := range path.Edges() {
				look(piece.Element, e)
			}
		}
	}
	if len(area.Vertices) > 0 {
		for _, c := range w.Floor.Covers(&p.Plan) {
			if c.Path.Contains(area.Vertices[0].Point, 0) && plane.Overlap(c.Path, area) > 0 {
				onIt[c.Element] = true
			}
		}
	}
	var out []plan.ElementID
	for i := range p.Plan.Elements {
		if id := p.Plan.Elements[i].ID; onIt[id] {
			out = append(out, id)
		}
	}
	return out
}

// figuresOn tells whether a dance line runs through an area in datum axes.
func figuresOn(w *FloorWork, area plane.Path) bool {
	for i, n := range w.Dance {
		e := plane.Edge{A: n.At, B: n.At}
		if i > 0 && w.Dance[i-1].Line == n.Line {
			e.A = w.Dance[i-1].At
		}
		if area.Contains(n.At, 0) || floor.Meets(e, area) {
			return true
		}
	}
	return false
}

// wayProblems names the ways that are narrower than the user requires.
func wayProblems(p *Production, w *FloorWork) []Problem {
	var out []Problem
	for _, way := range w.Ways {
		if !way.Short() {
			continue
		}
		pr := Problem{Rule: RuleWay, Where: way.Way.Name, Place: PlaceFloors, ID: way.Way.ID, Got: way.Narrowest(p)}
		if way.None() {
			pr.Rule = RuleNoWay
		} else {
			pr.Got = way.Breadth(p) + " wide, " + pr.Got
			pr.Limit = p.Style().Format(way.Way.Width)
		}
		out = append(out, pr)
	}
	return out
}

// mirrorProblems names the mirrors in which actors who face front watch themselves.
// Where the theatre has one it is part of the set's house and nobody can turn away.
func mirrorProblems(w *FloorWork) []Problem {
	if w.Floor.Kind == floor.Stage {
		return nil
	}
	var out []Problem
	for _, m := range w.Floor.Mirrors() {
		if m.Faced() {
			out = append(out, Problem{Rule: RuleMirror, Where: m.Name, Place: PlaceFloors, ID: m.ID})
		}
	}
	return out
}

// sceneIDs returns the scenes of the plan; one that stands for the plan as drawn where
// there are none.
func sceneIDs(pl *plan.Plan) []plan.SceneID {
	if len(pl.Scenes) == 0 {
		return []plan.SceneID{""}
	}
	out := make([]plan.SceneID, len(pl.Scenes))
	for i, s := range pl.Scenes {
		out[i] = s.ID
	}
	return out
}
