package marks

import (
	"math"
	"strconv"

	"groundrow/tapeout/plane"
)

// mostFigures bounds a dance line whose step is tiny against its reach.
const mostFigures = 400

// Figures returns the figures of the line from stage right to stage left, in
// datum axes. They are measured straight out from centre, never along a curved
// edge (common practice, no source). edge is the stage edge, downstage; it may
// be empty.
func (d DanceLine) Figures(edge plane.Path) []Numbered {
	var out []Numbered
	for _, f := range d.overs() {
		n := Numbered{Line: d.ID, Text: f.text, At: plane.Point{X: f.over, Y: d.Up}}
		if up, ok := upAt(edge, f.over); ok {
			n.OnEdge, n.Edge = true, up
			n.Slip = slip(edge, f.over)
		}
		out = append(out, n)
	}
	return out
}

type figure struct {
	over float64
	text string
}

func (d DanceLine) overs() []figure {
	if !(d.Reach > 0) {
		return []figure{{0, "0"}}
	}
	if d.Habit == Quarters {
		r := d.Reach
		return []figure{
			{-r, "end"}, {-3 * r / 4, "1/8"}, {-r / 2, "1/4"}, {-r / 4, "1/8"}, {0, "C"},
			{r / 4, "1/8"}, {r / 2, "1/4"}, {3 * r / 4, "1/8"}, {r, "end"},
		}
	}
	if !(d.Step > 0) || !(d.Unit > 0) {
		return []figure{{0, "0"}}
	}
	// The reach is often a whole number of steps; a nanometre must not lose the last.
	n := int(math.Min(math.Floor(d.Reach/d.Step+1e-9), mostFigures))
	var out []figure
	for k := -n; k <= n; k++ {
		over := float64(k) * d.Step
		value := math.Round(math.Abs(over)/d.Unit*1000) / 1000
		out = append(out, figure{over, strconv.FormatFloat(value, 'f', -1, 64)})
	}
	return out
}

// upAt returns the most downstage up at which the edge passes the given over.
func upAt(edge plane.Path, over float64) (up float64, ok bool) {
	for _, e := range edge.Edges() {
		for _, p := range crossings(e, over) {
			if !ok || p.Y < up {
				up, ok = p.Y, true
			}
		}
	}
	return up, ok
}

func crossings(e plane.Edge, over float64) []plane.Point {
	b := e.Bounds().Grow(1)
	upright := plane.Edge{A: plane.Point{X: over, Y: b.Min.Y}, B: plane.Point{X: over, Y: b.Max.Y}}
	return plane.Intersect(e, upright, 1e-9)
}

// slip returns how far short of the given over somebody would end who measured
// the same distance along the edge from centre.
func slip(edge plane.Path, over float64) float64 {
	if over == 0 {
		return 0
	}
	edges := edge.Edges()
	for i, e := range edges {
		for _, p := range crossings(e, 0) {
			_, t := e.Nearest(p)
			forward := (e.Tangent(t).X > 0) == (over > 0)
			end := walk(edges, i, t, math.Abs(over), forward)
			return math.Abs(over) - math.Abs(end.X)
		}
	}
	return 0
}

// walk returns the point at distance along the edges from fraction t of edge i,
// held at the end of the chain.
func walk(edges []plane.Edge, i int, t, distance float64, forward bool) plane.Point {
	e := edges[i]
	if forward {
		e = e.Part(t, 1)
	} else {
		e = e.Part(0, t).Reversed()
	}
	for {
		n := e.Length()
		if n > 0 && distance <= n {
			return e.At(distance / n)
		}
		distance -= n
		if forward {
			i++
		} else {
			i--
		}
		if i < 0 || i >= len(edges) {
			return e.B
		}
		e = edges[i]
		if !forward {
			e = e.Reversed()
		}
	}
}
