package planplace

import (
	"errors"
	"fmt"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// tool is what a click on the drawing does.
type tool int

// The tools.
const (
	selectThings tool = iota
	drawLine
	drawShape
	drawCircle
	drawArc
	measure
)

// toolWords are the tools as the toolbar offers them.
var toolWords = []string{"Select", "Draw line", "Draw closed shape", "Circle", "Arc", "Measure"}

func (t tool) draws() bool { return t >= drawLine && t <= drawArc }

// next says what the next click or typed point will be, after so many points.
func (t tool) next(points int) string {
	switch t {
	case drawLine:
		if points == 0 {
			return "Click or type where the line begins."
		}
		return "Click or type the next corner. Enter ends the line, Backspace takes a corner back."
	case drawShape:
		if points < 3 {
			return fmt.Sprintf("Click or type corner %d of the shape.", points+1)
		}
		return "Next corner, or click the first one or press Enter to close the shape."
	case drawCircle:
		if points == 0 {
			return "Click or type the centre of the circle."
		}
		return "Click a point on the circle, or type its radius."
	case drawArc:
		return [...]string{
			"Click or type where the arc begins.",
			"Click or type a point that the arc passes through.",
			"Click or type where the arc ends.",
		}[min(points, 2)]
	case measure:
		return "Click two points. Esc begins again."
	}
	return ""
}

// full tells whether so many points finish the drawing by themselves.
func (t tool) full(points int) bool {
	return (t == drawCircle && points == 2) || (t == drawArc && points == 3)
}

// drawn turns the points set with a tool into a line.
func (t tool) drawn(points []plane.Point, closed bool) (plane.Path, error) {
	points = apart(points)
	switch {
	case t == drawCircle && len(points) == 2:
		return plane.Circle(points[0], points[0].To(points[1])), nil
	case t == drawCircle:
		return plane.Path{}, errors.New("a circle needs a radius of more than nothing")
	case t == drawArc:
		if len(points) == 3 {
			if arc, ok := plane.Through(points[0], points[1], points[2]); ok {
				return plane.Path{Vertices: []plane.Vertex{{Point: arc.A, Bulge: arc.Bulge}, {Point: arc.B}}}, nil
			}
		}
		return plane.Path{}, errors.New("no arc goes through these three points: set them apart, the second between the others")
	case len(points) < 2:
		return plane.Path{}, errors.New("a line needs two corners at least")
	case (t == drawShape || closed) && len(points) > 2:
		return plane.Closed(points...), nil
	case t == drawShape:
		return plane.Path{}, errors.New("a closed shape needs three corners at least")
	}
	return plane.Open(points...), nil
}

// apart leaves out points that are where the one before is: a double click sets
// one point.
func apart(points []plane.Point) []plane.Point {
	return slices.CompactFunc(slices.Clone(points), func(a, b plane.Point) bool { return a.To(b) < 1e-6 })
}

// kindDrawn is what a new element is taken for until somebody says otherwise.
func (t tool) kindDrawn() plan.Kind {
	if t == drawLine || t == drawArc {
		return plan.Wall
	}
	return plan.Platform
}

// takeDrawn adds a line, drawn as it is seen in the scene, to an element; none
// makes a new one. It returns the element's identifier.
func takeDrawn(p *prep.Production, into plan.ElementID, scene plan.SceneID, path plane.Path, kind plan.Kind, id newID) (plan.ElementID, error) {
	if into == "" {
		e := plan.Element{ID: plan.ElementID(id()), Name: freshName(p, kind), Kind: kind, Use: plan.Essential}
		addPath(&e, plan.Outline, path, id)
		p.Plan.Elements = append(p.Plan.Elements, e)
		return e.ID, nil
	}
	return into, change(p, into, func(e *plan.Element) error {
		addPath(e, roleOfNext(e), path.Moved(seenAt(p, e, scene).Inverse()), id)
		return nil
	})
}

// roleOfNext is what another line of an element most likely shows: its edge when
// it has none, else something within.
func roleOfNext(e *plan.Element) plan.Role {
	hasEdge := slices.ContainsFunc(e.Paths, func(p plan.Path) bool { return p.Role == plan.Outline })
	switch {
	case e.Kind == plan.Track:
		return plan.Way
	case hasEdge:
		return plan.Inner
	}
	return plan.Outline
}
