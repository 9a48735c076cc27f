package sense

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// How hatching is told from treads: by number, and by lines of different lengths
// or askew (judgement). Treads are equally long.
const (
	hatchLeast      = 10
	hatchLeastEqual = 40   // of equal length and square to the page
	hatchEven       = 0.08 // share by which the distances may differ
	hatchApart      = 0.02 // of the drawing: further apart is no hatching
)

// stroke is a line that may be of a hatching.
type stroke struct {
	item           int
	layer          string
	turn           int     // direction, in half degrees
	offset         float64 // of the line from the origin
	length, centre float64 // along its direction
}

// hatched returns items of one straight line each that lie side by side at even
// distances, many of them.
func hatched(s *linework.Sheet) Set {
	var all []stroke
	for i := range s.Items {
		item := &s.Items[i]
		if item.Hidden || len(item.Edges) != 1 || !item.Edges[0].Straight() {
			continue
		}
		if k, ok := strokeOf(item.Edges[0]); ok {
			k.item, k.layer = i, item.Layer
			all = append(all, k)
		}
	}
	slices.SortStableFunc(all, func(a, b stroke) int {
		return cmp.Or(cmp.Compare(a.layer, b.layer), cmp.Compare(a.turn, b.turn), cmp.Compare(a.offset, b.offset))
	})
	most := hatchApart * max(s.Box.Width(), s.Box.Height())
	var out []int
	for from := 0; from < len(all); {
		to := runEnd(all, from, most)
		if isHatch(all[from:to]) {
			for _, k := range all[from:to] {
				out = append(out, k.item)
			}
		}
		from = max(to, from+1)
	}
	return NewSet(out...)
}

func strokeOf(e plane.Edge) (stroke, bool) {
	d, ok := e.B.Sub(e.A).Unit()
	if !ok {
		return stroke{}, false
	}
	if d.Y < -1e-6 || math.Abs(d.Y) <= 1e-6 && d.X < 0 {
		d = d.Times(-1)
	}
	const steps = 360 // half degrees in half a turn
	turn := int(math.Round(d.Angle()*steps/math.Pi)) % steps
	m := e.At(0.5)
	return stroke{turn: turn, offset: d.Left().Dot(m), length: e.Length(), centre: d.Dot(m)}, true
}

// runEnd returns the end of the run of strokes from one on: of one layer and
// direction, side by side, at even distances.
func runEnd(all []stroke, from int, most float64) int {
	step := 0.0
	to := from + 1
	for ; to < len(all); to++ {
		a, b := all[to-1], all[to]
		gap := b.offset - a.offset
		beside := math.Abs(a.centre-b.centre) <= (a.length+b.length)/2+gap
		if a.layer != b.layer || a.turn != b.turn || !beside || gap > most || gap <= 0 {
			break
		}
		if step == 0 {
			step = gap
		}
		if math.Abs(gap-step) > hatchEven*step {
			break
		}
	}
	return to
}

func isHatch(run []stroke) bool {
	if len(run) < hatchLeast {
		return false
	}
	short, long := math.Inf(1), 0.0
	for _, k := range run {
		short, long = min(short, k.length), max(long, k.length)
	}
	const right = 180 // half degrees in a right angle
	if run[0].turn%right == 0 && long-short < 0.02*long {
		return len(run) >= hatchLeastEqual
	}
	return true
}
