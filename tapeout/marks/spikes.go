package marks

import (
	"slices"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// shortLeg is the side of a piece below which it has no room for one arm of an L,
// in metres; its spike is a tick. Common practice, no source.
const shortLeg = 0.2

// spikes returns the marks that give movable pieces their places: an L at each
// of the two upstage corners, which the audience does not see, or a tick where the
// piece has no corner there; one tick in the middle of a round piece (common
// practice, no source). Each names the leg that it is for.
func spikes(pl *plan.Plan, pieces []floor.Piece) []Mark {
	var out []Mark
	for _, piece := range pieces {
		stocks := []plan.StockID{}
		if e := pl.Element(piece.Element); e != nil && e.Stock != "" {
			stocks = append(stocks, e.Stock)
		}
		for _, s := range spikesOf(piece.Paths) {
			s.Kind, s.Scenes = Spike, piece.Scenes
			s.Elements, s.Stocks = []plan.ElementID{piece.Element}, stocks
			out = append(out, s)
		}
	}
	return out
}

// spikesOf returns where the spikes of a piece lie, with their arms and legs.
func spikesOf(paths []plan.Path) []Mark {
	for _, path := range paths {
		if path.Role != plan.Outline || len(path.Vertices) == 0 {
			continue
		}
		box, _ := path.Bounds()
		if round(path.Path) {
			return []Mark{{At: box.Centre(), Leg: "middle", Arms: []plane.Point{{X: 1}}}}
		}
		ps := path.Points()
		slices.SortStableFunc(ps, func(a, b plane.Point) int { return compare(b.Y, a.Y, a.X, b.X) })
		ps = ps[:min(2, len(ps))]
		slices.SortFunc(ps, func(a, b plane.Point) int { return compare(a.X, b.X, a.Y, b.Y) })
		var out []Mark
		for _, p := range ps {
			out = append(out, Mark{At: p, Leg: legOf(p, box), Arms: armsAt(path.Path, p)})
		}
		return out
	}
	return nil
}

// legOf names the corner of a piece by where it lies in the box around it.
func legOf(p plane.Point, box plane.Box) string {
	d := p.Sub(box.Centre())
	var words []string
	name := func(at, half float64, plus, minus string) {
		switch {
		case at > half/4:
			words = append(words, plus)
		case at < -half/4:
			words = append(words, minus)
		}
	}
	name(d.Y, box.Height()/2, "upstage", "downstage")
	name(d.X, box.Width()/2, "left", "right")
	if len(words) == 0 {
		return "middle"
	}
	return strings.Join(words, " ") + " leg"
}

// armsAt returns the directions of the tape at a corner of a piece: along both of
// its sides for an L; for a tick square to the only side, along the side that is
// long enough, or across the stage.
func armsAt(path plane.Path, corner plane.Point) []plane.Point {
	var long []plane.Point
	sides := 0
	for _, e := range path.Edges() {
		for _, side := range []plane.Edge{e, e.Reversed()} {
			if side.A != corner {
				continue
			}
			sides++
			if u, ok := side.Tangent(0).Unit(); ok && e.Length() >= shortLeg {
				long = append(long, u)
			}
		}
	}
	switch {
	case sides == 1 && len(long) == 1:
		return []plane.Point{long[0].Left()}
	case len(long) > 0:
		return long[:min(2, len(long))]
	}
	return []plane.Point{{X: 1}}
}

// Form says how the tape of a spike or a stop is laid: "L", "tick", or empty for
// other marks.
func (m Mark) Form() string {
	switch len(m.Arms) {
	case 0:
		return ""
	case 1:
		return "tick"
	}
	return "L"
}

// Tape returns the pieces of tape of a spike or a stop in datum axes, each arm of
// an L and the whole of a tick of the length given in metres.
func (m Mark) Tape(arm float64) []plane.Edge {
	var out []plane.Edge
	for _, u := range m.Arms {
		from := m.At
		if len(m.Arms) == 1 {
			from = m.At.Sub(u.Times(arm / 2))
		}
		out = append(out, plane.Edge{A: from, B: from.Add(u.Times(arm))})
	}
	return out
}

// round tells whether every edge is an arc: there is no corner to spike.
func round(p plane.Path) bool {
	edges := p.Edges()
	for _, e := range edges {
		if e.Straight() {
			return false
		}
	}
	return len(edges) > 0
}
