package marksplace

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// candidate is a place that could be a pivot.
type candidate struct {
	pivot string // identifier when it is one already
	name  string
	at    plane.Point // datum axes
}

// pairChoice is a proposed pair of pivots.
type pairChoice struct {
	a, b    candidate
	worst   float64 // metres
	weakest string  // the label of the mark; empty: none
	flat    int
	beyond  int
}

// proposed is how many pairs are shown.
const proposed = 5

// bestPairs compares the pairs of places that could be pivots, by the marks of w:
// existing pivots, the corners of the room, the ends of the centre line and the
// baseline at the walls, and the marks that are ticked. A tape does not pass
// obstacles or walls. First come the pairs that leave the fewest marks to up and
// over, whether they are out of reach or too flat; among them those whose worst
// mark is best.
func bestPairs(p *prep.Production, w *prep.FloorWork, ticked []string) ([]pairChoice, error) {
	list, err := compared(p, w, candidates(w, ticked))
	slices.SortStableFunc(list, func(a, b pairChoice) int {
		return cmp.Or(cmp.Compare(a.flat+a.beyond, b.flat+b.beyond), cmp.Compare(a.worst, b.worst))
	})
	return list[:min(proposed, len(list))], err
}

// pairInUse judges the first two pivots in the same way; ok is false where there
// is no such pair, or where it reaches nothing.
func pairInUse(p *prep.Production, w *prep.FloorWork) (c pairChoice, ok bool) {
	pair, ok := prep.Pivots(w.Floor)
	if !ok {
		return pairChoice{}, false
	}
	list, err := compared(p, w, []candidate{{at: pair.A}, {at: pair.B}})
	if err != nil {
		return pairChoice{}, false
	}
	return list[0], true
}

func compared(p *prep.Production, w *prep.FloorWork, places []candidate) ([]pairChoice, error) {
	at := make([]plane.Point, len(places))
	for i, c := range places {
		at[i] = c.at
	}
	points := make([]plane.Point, len(w.Marks))
	for i, m := range w.Marks {
		points[i] = m.At
	}
	choices, err := survey.BestPair(at, points, survey.Limits{
		Sigma: p.Settings.TapeSigma, Longest: p.Settings.TapeLength,
		Least: p.Settings.WeakAngle * math.Pi / 180, Keep: len(places) * len(places), Blocked: blocked(w.Floor),
	})
	if err != nil {
		return nil, err
	}
	out := make([]pairChoice, len(choices))
	for i, c := range choices {
		out[i] = pairChoice{a: places[c.A], b: places[c.B], worst: c.Worst, flat: c.Flat, beyond: c.OutOfReach}
		if c.Weakest >= 0 {
			out[i].weakest = w.Marks[c.Weakest].Label
		}
	}
	return out, nil
}

// candidates lists the places that could be pivots; one place is listed once.
func candidates(w *prep.FloorWork, ticked []string) []candidate {
	f, m := w.Floor, w.Floor.FloorToDatum()
	var out []candidate
	add := func(c candidate) {
		for _, o := range out {
			if o.at.To(c.at) < 0.05 {
				return
			}
		}
		out = append(out, c)
	}
	for _, v := range f.Pivots {
		add(candidate{v.ID, v.Name, m.Apply(v.At)})
	}
	for i, v := range f.Outline.Vertices {
		at := m.Apply(v.Point)
		add(candidate{name: fmt.Sprintf("Corner %d of the room, %s", i+1, whereabouts(at)), at: at})
	}
	for _, c := range axisEnds(f) {
		add(c)
	}
	for _, k := range w.Marks {
		if has(ticked, k.Label) {
			add(candidate{name: "Mark " + k.Label, at: k.At})
		}
	}
	return out
}

// whereabouts says roughly where a place in datum axes lies.
func whereabouts(at plane.Point) string {
	along, side := "upstage", "left"
	if at.Y < 0 {
		along = "downstage"
	}
	if at.X < 0 {
		side = "right"
	}
	return along + " " + side
}

// axisEnds are where the centre line and the baseline meet the walls.
func axisEnds(f *floor.Floor) []candidate {
	const far = 1000
	outline := f.Outline.Moved(f.FloorToDatum())
	var out []candidate
	for _, way := range []struct {
		name string
		to   plane.Point
	}{
		{"Centre line at the upstage wall", plane.Point{Y: far}}, {"Centre line at the downstage wall", plane.Point{Y: -far}},
		{"Baseline at the wall, stage left", plane.Point{X: far}}, {"Baseline at the wall, stage right", plane.Point{X: -far}},
	} {
		nearest, found := plane.Point{}, false
		for _, e := range outline.Edges() {
			for _, at := range plane.Intersect(e, plane.Edge{B: way.to}, 1e-9) {
				if !found || at.Len() < nearest.Len() {
					nearest, found = at, true
				}
			}
		}
		if found {
			out = append(out, candidate{name: way.name, at: nearest})
		}
	}
	return out
}

// touching is how near to its ends a tape may meet an obstacle or a wall without
// being stopped by it, in metres: a pivot is often on one.
const touching = 0.02

// blocked tells whether an obstacle or a wall is between two places in datum
// axes.
func blocked(f *floor.Floor) func(from, to plane.Point) bool {
	m := f.FloorToDatum()
	type solid struct {
		box   plane.Box
		edges []plane.Edge
	}
	var solids []solid
	add := func(shape plane.Path) {
		shape = shape.Moved(m)
		if box, ok := shape.Bounds(); ok {
			solids = append(solids, solid{box, shape.Edges()})
		}
	}
	add(f.Outline)
	for _, o := range f.Obstacles {
		add(o.Shape)
	}
	return func(from, to plane.Point) bool {
		tape := plane.Edge{A: from, B: to}
		reach := tape.Bounds()
		for _, s := range solids {
			if !s.box.Meets(reach) {
				continue
			}
			for _, e := range s.edges {
				for _, at := range plane.Intersect(tape, e, 1e-9) {
					if at.To(from) > touching && at.To(to) > touching {
						return true
					}
				}
			}
		}
		return false
	}
}

// use makes a pair the first two pivots of a floor; the others follow in their
// order.
func (c pairChoice) use(f *floor.Floor) error {
	first := make([]floor.Pivot, 0, len(f.Pivots)+2)
	for _, k := range []candidate{c.a, c.b} {
		if k.pivot == "" {
			first = append(first, floor.Pivot{ID: uuid.NewString(), Name: k.name, At: f.FloorToDatum().Inverse().Apply(k.at)})
			continue
		}
		i, err := pivotAt(f, k.pivot)
		if err != nil {
			return err
		}
		first = append(first, f.Pivots[i])
	}
	for _, v := range f.Pivots {
		if v.ID != c.a.pivot && v.ID != c.b.pivot {
			first = append(first, v)
		}
	}
	f.Pivots = first
	return nil
}
