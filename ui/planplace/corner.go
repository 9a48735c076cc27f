package planplace

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// What a corner has, as the columns under which what was typed is kept: "up 3" is
// the third corner's.
const (
	upColumn   = "up"
	overColumn = "over"
	bowColumn  = "bow"
)

func column(what string, corner int) string { return what + " " + strconv.Itoa(corner+1) }

// pathOf finds a line of an element; nil when it is gone.
func pathOf(p *prep.Production, element plan.ElementID, id plan.PathID) *plan.Path {
	e := p.Plan.Element(element)
	if e == nil {
		return nil
	}
	for i := range e.Paths {
		if e.Paths[i].ID == id {
			return &e.Paths[i]
		}
	}
	return nil
}

// bowOf returns how far the edge that leaves a corner stands off its chord, in
// metres, positive to the left of the way to the next corner. The bulge of an arc
// is positive where it turns left, which is where it bows to the right.
func bowOf(path *plane.Path, corner int) float64 {
	v := path.Vertices[corner]
	return -v.Bulge * v.To(path.Vertices[after(path, corner)].Point) / 2
}

// setBow bows the edge that leaves a corner: bulge = 2·rise/chord.
func setBow(path *plane.Path, corner int, bow float64) error {
	if !path.Closed && corner == len(path.Vertices)-1 {
		if bow == 0 {
			return nil
		}
		return errors.New("this is the last corner: nothing goes on from it that could bow")
	}
	chord := path.Vertices[corner].To(path.Vertices[after(path, corner)].Point)
	switch {
	case bow == 0:
		path.Vertices[corner].Bulge = 0
	case chord < 1e-6:
		return errors.New("this corner and the next one are in the same place: a line between them cannot bow")
	case math.Abs(bow) > mostBow*chord:
		return errors.New("that is nearly a full circle: set a corner halfway round instead")
	default:
		path.Vertices[corner].Bulge = -2 * bow / chord
	}
	return nil
}

// mostBow is how many chords an arc may rise: nine tenths of a full circle.
const mostBow = 3

func after(path *plane.Path, corner int) int { return (corner + 1) % len(path.Vertices) }

// moveCorner puts a corner elsewhere. The arcs on either side keep their bulge,
// and so their form.
func moveCorner(path *plane.Path, corner int, to plane.Point) { path.Vertices[corner].Point = to }

// insertCorner sets a corner halfway along the edge that leaves one, and returns
// its number; after the end of an open line it goes on a step further.
func insertCorner(p *prep.Production, path *plan.Path, corner int) int {
	vs := slices.Clone(path.Vertices)
	edge := plane.Edge{A: vs[corner].Point, B: vs[after(&path.Path, corner)].Point, Bulge: vs[corner].Bulge}
	next := plane.Vertex{Point: edge.At(0.5)}
	if !path.Closed && corner == len(vs)-1 {
		next.Point = onwards(vs)
	} else if edge.Bulge != 0 {
		vs[corner].Bulge = edge.Part(0, 0.5).Bulge
		next.Bulge = edge.Part(0.5, 1).Bulge
	}
	path.Vertices = slices.Insert(vs, corner+1, next)
	renumber(p, path.ID, corner+1, 1)
	return corner + 1
}

// onwards is where a line would go next: as far again as its last edge.
func onwards(vs []plane.Vertex) plane.Point {
	n := len(vs)
	if n < 2 {
		return vs[n-1].Add(plane.Point{X: 1})
	}
	return vs[n-1].Add(vs[n-1].Sub(vs[n-2].Point))
}

// deleteCorners takes corners out of a line; a line of fewer than two is none.
func deleteCorners(p *prep.Production, path *plan.Path, corners []int) error {
	if len(path.Vertices)-len(corners) < 2 {
		return errors.New("a line needs two corners at least; delete the line instead")
	}
	slices.Sort(corners)
	for _, c := range slices.Backward(corners) {
		path.Vertices = slices.Delete(slices.Clone(path.Vertices), c, c+1)
		renumber(p, path.ID, c, -1)
	}
	return nil
}

// renumber keeps what was typed with its corner when corners come before it, or
// go: those from the given one on move by so many.
func renumber(p *prep.Production, id plan.PathID, from, by int) {
	kept := p.Typed[:0:0]
	for _, t := range p.Typed {
		what, n, isCorner := cutColumn(t.Column)
		if t.Row == string(id) && isCorner && n >= from {
			if by < 0 && n == from {
				continue
			}
			t.Column = column(what, n+by)
		}
		kept = append(kept, t)
	}
	p.Typed = kept
}

func cutColumn(text string) (what string, corner int, ok bool) {
	what, digits, _ := strings.Cut(text, " ")
	n, err := strconv.Atoi(digits)
	return what, n - 1, err == nil
}

// addPath draws another line of an element.
func addPath(e *plan.Element, role plan.Role, path plane.Path, id newID) plan.PathID {
	added := plan.Path{ID: plan.PathID(id()), Role: role, Path: path}
	e.Paths = append(e.Paths, added)
	return added.ID
}

// deletePath takes a line off an element, with what was typed for it.
func deletePath(p *prep.Production, e *plan.Element, id plan.PathID) {
	e.Paths = slices.DeleteFunc(slices.Clone(e.Paths), func(x plan.Path) bool { return x.ID == id })
	p.Typed = slices.DeleteFunc(slices.Clone(p.Typed), func(t prep.Typed) bool { return t.Row == string(id) })
}

// showUp and showOver return a coordinate for an entry: as it was typed while that
// still reads as the value.
func showUp(p *prep.Production, row, column string, m float64) string {
	return typedAs(p, row, column, m, length.ParseUp, "", " DS")
}

func showOver(p *prep.Production, row, column string, m float64) string {
	return typedAs(p, row, column, m, length.ParseOver, " SL", " SR")
}

// showBow returns a rise; a straight edge shows none.
func showBow(p *prep.Production, row, column string, m float64) string {
	if math.Abs(m) < 1e-9 {
		return ""
	}
	return typedAs(p, row, column, m, parseBow, " left", " right")
}

// parseBow reads the rise of an arc with its side, left or right of the way to the
// next corner; nothing typed is straight.
func parseBow(text string, unit length.Unit) (float64, error) {
	if strings.TrimSpace(text) == "" {
		return 0, nil
	}
	m, err := length.ParseOver(text, unit)
	if err != nil {
		return 0, fmt.Errorf("“%s” is not the rise of an arc: type a length and left or right, such as 6\" left; leave it empty for a straight line", text)
	}
	return m, nil
}

func typedAs(p *prep.Production, row, column string, m float64, parse func(string, length.Unit) (float64, error), plus, minus string) string {
	for _, t := range p.Typed {
		if t.Row != row || t.Column != column {
			continue
		}
		if v, err := parse(t.Text, p.Unit()); err == nil && math.Abs(v-m) < 1e-9 {
			return t.Text
		}
	}
	text := p.Style().Bare(math.Abs(m))
	switch {
	case !strings.ContainsAny(text, "123456789"):
		return text
	case m < 0:
		return text + minus
	}
	return text + plus
}

// setClosed joins a line's last corner to its first, or opens it again.
func setClosed(path *plan.Path, on bool) error {
	if on && len(path.Vertices) < 3 {
		bowed := len(path.Vertices) == 2 && path.Vertices[0].Bulge != 0
		if !bowed {
			return errors.New("a closed line needs three corners, or two with an arc between them")
		}
	}
	path.Closed = on
	return nil
}
