package floor

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// tight is how close a line may come to a wall and still count as touching it,
// in metres: the breadth of a pencil line, far below any rounding step.
const tight = 1e-4

// Decide returns what the floor does with the element: the decision on record,
// or what goes without saying. On a stage the house is there already and is not
// laid.
func (f *Floor) Decide(e *plan.Element) Treatment {
	for _, t := range f.Treatments {
		if t.Element == e.ID {
			return t
		}
	}
	if f.Kind == Stage && e.Kind.House() {
		return Treatment{Element: e.ID, How: LeftOut, Reason: "it is part of the building"}
	}
	return Treatment{Element: e.ID, How: AsDrawn}
}

// motion takes the element from where the plan has it to where this floor lays
// it, both in the axes named.
func (f *Floor) motion(t Treatment, stand plane.Motion) plane.Motion {
	m := stand
	if t.How == MovedAside {
		m = m.Then(plane.Motion{Shift: plane.Point{X: t.Over, Y: t.Up}})
	}
	return m.Then(f.PlanToDatum())
}

// Lines returns every edge that the floor lays in tape, for all scenes, in datum
// axes. Pieces that are set by hand have spikes instead; see Spiked.
func (f *Floor) Lines(pl *plan.Plan) []Line {
	var out []Line
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := f.Decide(e)
		if t.How == LeftOut || e.Kind.Bare() || spiked(e, t) {
			continue
		}
		for _, s := range pl.Standings(e) {
			lines := drawn(e, t.How, f.motion(t, s.Motion), s.Scenes)
			if t.How == CutShort {
				lines = f.cut(lines)
			}
			out = append(out, lines...)
		}
	}
	return out
}

func drawn(e *plan.Element, how How, m plane.Motion, scenes []plan.SceneID) []Line {
	var out []Line
	for _, path := range e.Paths {
		if how == OutlineOnly && path.Role == plan.Inner {
			continue
		}
		for _, edge := range path.Edges() {
			out = append(out, Line{
				Edge: edge.Moved(m), Element: e.ID, Path: path.ID,
				Role: path.Role, Stock: e.Stock, Scenes: scenes,
			})
		}
	}
	return out
}

// cut keeps what lies on the floor and clear of obstacles, and notes which ends
// are cuts.
func (f *Floor) cut(lines []Line) []Line {
	toDatum := f.FloorToDatum()
	if len(f.Outline.Vertices) > 0 {
		outline := f.Outline.Moved(toDatum)
		lines = cutEach(lines, func(e plane.Edge) []plane.Edge {
			inside, _ := plane.Clip(e, outline, tight)
			return inside
		})
	}
	for _, o := range f.Obstacles {
		shape := o.Shape.Moved(toDatum)
		lines = cutEach(lines, func(e plane.Edge) []plane.Edge {
			_, outside := plane.Clip(e, shape, tight)
			return outside
		})
	}
	return lines
}

func cutEach(lines []Line, keep func(plane.Edge) []plane.Edge) []Line {
	var out []Line
	for _, l := range lines {
		for _, piece := range keep(l.Edge) {
			p := l
			p.Edge = piece
			p.Cut.A = l.Cut.A || piece.A.To(l.A) > tight
			p.Cut.B = l.Cut.B || piece.B.To(l.B) > tight
			out = append(out, p)
		}
	}
	return out
}

// In tells whether the line is needed in the scene; the empty scene asks for any.
func (l Line) In(scene plan.SceneID) bool { return InScene(l.Scenes, scene) }

// InScene tells whether scenes, of which none means all, hold the scene; the
// empty scene asks for any.
func InScene(scenes []plan.SceneID, scene plan.SceneID) bool {
	if scene == "" || len(scenes) == 0 {
		return true
	}
	for _, s := range scenes {
		if s == scene {
			return true
		}
	}
	return false
}

// Piece is a thing that is spiked and not outlined, in one of its positions.
type Piece struct {
	Element plan.ElementID
	Paths   []plan.Path // datum axes
	Scenes  []plan.SceneID
}

func spiked(e *plan.Element, t Treatment) bool {
	return e.Kind.Movable() || t.How == ObjectOnly
}

// Spiked returns the pieces that the floor marks with spikes: movable elements,
// and those of which only an object is set. In datum axes.
func (f *Floor) Spiked(pl *plan.Plan) []Piece {
	var out []Piece
	for i := range pl.Elements {
		e := &pl.Elements[i]
		t := f.Decide(e)
		if t.How == LeftOut || e.Kind.Bare() || !spiked(e, t) {
			continue
		}
		for _, s := range pl.Standings(e) {
			m := f.motion(t, s.Motion)
			piece := Piece{Element: e.ID, Scenes: s.Scenes}
			for _, path := range e.Paths {
				piece.Paths = append(piece.Paths, plan.Path{ID: path.ID, Role: path.Role, Path: path.Path.Moved(m)})
			}
			out = append(out, piece)
		}
	}
	return out
}

// Meets tells whether some of the edge lies within the closed shape.
func Meets(e plane.Edge, shape plane.Path) bool {
	box, ok := shape.Bounds()
	if !ok || !box.Meets(e.Bounds()) {
		return false
	}
	inside, _ := plane.Clip(e, shape, tight)
	return len(inside) > 0
}

// SetTreatment puts a treatment in the place of the one that its element has.
func (f *Floor) SetTreatment(t Treatment) {
	for i := range f.Treatments {
		if f.Treatments[i].Element == t.Element {
			f.Treatments[i] = t
			return
		}
	}
	f.Treatments = append(f.Treatments, t)
}

// FirstCorner returns where the first drawn corner of the element lies in its first
// position, in datum axes, moved aside with it and before it is cut short: one and
// the same point of the scenery on every floor. ok is false where the floor leaves
// it out, it stands in no scene, or it has no lines.
func (f *Floor) FirstCorner(pl *plan.Plan, e *plan.Element) (at plane.Point, ok bool) {
	t := f.Decide(e)
	standings := pl.Standings(e)
	if t.How == LeftOut || len(standings) == 0 {
		return plane.Point{}, false
	}
	for _, path := range e.Paths {
		if len(path.Vertices) > 0 {
			return f.motion(t, standings[0].Motion).Apply(path.Vertices[0].Point), true
		}
	}
	return plane.Point{}, false
}

// EdgesOf returns all line work of the element in all its positions, in datum axes,
// moved aside with it but neither cut short nor left out: what there is to decide on.
func (f *Floor) EdgesOf(pl *plan.Plan, e *plan.Element) []plane.Edge {
	var out []plane.Edge
	t := f.Decide(e)
	for _, s := range pl.Standings(e) {
		m := f.motion(t, s.Motion)
		for _, path := range e.Paths {
			for _, edge := range path.Edges() {
				out = append(out, edge.Moved(m))
			}
		}
	}
	return out
}
