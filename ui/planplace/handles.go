package planplace

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// mostHandles is how many corners of an element can be dragged: more would hide
// it, and its table is the better tool.
const mostHandles = 60

// cornerHandles are the corners of the one element that is selected, where it is
// seen in the scene.
func cornerHandles(p *prep.Production, scene plan.SceneID, ids []plan.ElementID) []floorcanvas.Handle {
	if len(ids) != 1 {
		return nil
	}
	e := p.Plan.Element(ids[0])
	seen, in := p.Plan.Where(e, scene)
	if !in {
		return nil
	}
	var out []floorcanvas.Handle
	for i, path := range e.Paths {
		for j, v := range path.Vertices {
			out = append(out, floorcanvas.Handle{
				ID: fmt.Sprintf("%d/%d", i, j), At: seen.Apply(v.Point), Kind: floorcanvas.Corner,
				Name: fmt.Sprintf("corner %d", j+1),
			})
		}
	}
	if len(out) > mostHandles {
		return nil
	}
	return out
}

// mostNumbers is how many corners of a line are numbered on the drawing.
const mostNumbers = 40

// cornerNumbers are the numbers of the corners of the line that the table of
// corners shows, of the one element that is selected.
func cornerNumbers(p *prep.Production, scene plan.SceneID, ids []plan.ElementID, line plan.PathID) []floorcanvas.Label {
	if len(ids) != 1 {
		return nil
	}
	e := p.Plan.Element(ids[0])
	seen, in := p.Plan.Where(e, scene)
	path := shownPath(e, line)
	if !in || path == nil || len(path.Vertices) > mostNumbers {
		return nil
	}
	out := make([]floorcanvas.Label, len(path.Vertices))
	for i, v := range path.Vertices {
		out[i] = floorcanvas.Label{
			At: seen.Apply(v.Point), Text: strconv.Itoa(i + 1), Size: 11, Ink: theme.Selection,
			Anchor: floorcanvas.AboveRight, Priority: 1,
		}
	}
	return out
}

// shownPath is the line of an element that is looked at: the one asked for when it
// has it, else its first; nil without any.
func shownPath(e *plan.Element, id plan.PathID) *plan.Path {
	for i := range e.Paths {
		if e.Paths[i].ID == id {
			return &e.Paths[i]
		}
	}
	if len(e.Paths) == 0 {
		return nil
	}
	return &e.Paths[0]
}

func handleOf(id string) (path, corner int, ok bool) {
	a, b, _ := strings.Cut(id, "/")
	path, err1 := strconv.Atoi(a)
	corner, err2 := strconv.Atoi(b)
	return path, corner, err1 == nil && err2 == nil
}

// dragCorner moves a corner of the selected element when it is let go. Corners
// belong to the drawing, so that they move in every scene.
func (b *board) dragCorner(handle string, to plane.Point, done bool) {
	v := b.desk.View()
	ids := selected(v)
	line, corner, ok := handleOf(handle)
	if !done || !ok || len(ids) != 1 {
		return
	}
	e := v.P.Plan.Element(ids[0])
	if line >= len(e.Paths) || corner >= len(e.Paths[line].Vertices) {
		return
	}
	path := e.Paths[line].ID
	at := seenAt(v.P, e, v.Scene).Inverse().Apply(to)
	if at.To(e.Paths[line].Vertices[corner].Point) < 1e-9 {
		return
	}
	b.desk.Edit(fmt.Sprintf("Move corner %d of %s", corner+1, e.Name), func(p *prep.Production) error {
		on := pathOf(p, ids[0], path)
		if on == nil || corner >= len(on.Vertices) {
			return errGone
		}
		moveCorner(&on.Path, corner, at)
		return nil
	})
}

// measured says how far two points are apart, and in which direction.
func measured(p *prep.Production, a, b plane.Point) string {
	style := p.Style()
	d := b.Sub(a)
	up, over := "upstage", "to stage left"
	if d.Y < 0 {
		up = "downstage"
	}
	if d.X < 0 {
		over = "to stage right"
	}
	return fmt.Sprintf("Measured %s: %s %s and %s %s.", style.Format(d.Len()),
		style.Format(math.Abs(d.Y)), up, style.Format(math.Abs(d.X)), over)
}
