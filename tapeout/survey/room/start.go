package room

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// settle tries the shapes that the room may have and keeps the one that fits the
// measurements best. A shape whose walls cross is kept only when all others do.
func (n *net) settle() error {
	type trial struct {
		at      []plane.Point
		reads   []reading
		badness float64
		crosses bool
	}
	var best *trial
	for _, turns := range n.shapes() {
		reads := n.facing(turns)
		at, bad, err := n.fit(reads, n.start(turns))
		if err != nil {
			continue
		}
		t := trial{at, reads, bad, n.crossing(n.outline(at)) != nil}
		switch {
		case best == nil, best.crosses && !t.crosses:
			best = &t
		case best.crosses == t.crosses && t.badness < best.badness-1e-6:
			best = &t
		}
	}
	if best == nil {
		return errUnsettled
	}
	n.at, n.reads = best.at, best.reads
	return nil
}

// facing returns the readings with every right angle turned as the shape has it.
func (n *net) facing(turns []float64) []reading {
	out := slices.Clone(n.reads)
	for i, r := range out {
		if r.kind == Square {
			out[i].value = math.Copysign(math.Pi/2, turns[r.a])
		}
	}
	return out
}

const (
	mostUnknownTurns = 12 // beyond, not every shape of right angles is tried
	mostShapes       = 6
)

// shapes returns the turns in radians at the ends of the walls for each shape that
// the room may have. Turns that were given are in all of them. The others share
// what is missing of a full turn equally, or are right angles to the left or to
// the right that make a full turn; of these the ones that fit best are kept.
func (n *net) shapes() [][]float64 {
	var unknown []int
	given := make([]float64, n.corners)
	rest := 2 * math.Pi
	for i, w := range n.room.Walls {
		if w.Turn == 0 {
			unknown = append(unknown, i)
			continue
		}
		given[i] = w.Turn * math.Pi / 180
		rest -= given[i]
	}
	if len(unknown) == 0 {
		return [][]float64{given}
	}
	equal := slices.Clone(given)
	for _, i := range unknown {
		equal[i] = rest / float64(len(unknown))
	}
	out := n.squared(given, unknown, rest)
	return append(out, equal)
}

// squared returns the best shapes of right angles.
func (n *net) squared(given []float64, unknown []int, rest float64) [][]float64 {
	type shape struct {
		turns []float64
		bad   float64
	}
	var all []shape
	quarters := int(math.Round(rest / (math.Pi / 2)))
	for bits := 0; len(unknown) <= mostUnknownTurns && bits < 1<<len(unknown); bits++ {
		turns, sum := slices.Clone(given), 0
		for k, i := range unknown {
			sign := 1
			if bits>>k&1 == 1 {
				sign = -1
			}
			turns[i] = float64(sign) * math.Pi / 2
			sum += sign
		}
		if sum == quarters {
			all = append(all, shape{turns, badness(n.facing(turns), n.start(turns))})
		}
	}
	slices.SortStableFunc(all, func(a, b shape) int { return cmp.Compare(a.bad, b.bad) })
	var out [][]float64
	for _, s := range all[:min(len(all), mostShapes)] {
		out = append(out, s.turns)
	}
	return out
}

// start walks the walls with these turns, gives walls that were not measured the
// length that closes the room best, and shares out what is left in proportion to
// the lengths. Points lie where their tapes meet best.
func (n *net) start(turns []float64) []plane.Point {
	heading := 0.0
	way := make([]plane.Point, n.corners) // along each wall
	lengths := n.lengths(turns)
	var gap plane.Point
	total := 0.0
	for i := range way {
		way[i] = plane.Polar(lengths[i], heading)
		heading += turns[i]
		gap = gap.Add(way[i])
		total += lengths[i]
	}
	at := make([]plane.Point, n.places)
	for i := range n.corners - 1 {
		at[i+1] = at[i].Add(way[i]).Sub(gap.Times(lengths[i] / total))
	}
	turn := plane.Motion{Turn: -at[1].Angle()}
	middle := plane.Point{}
	for i := range n.corners {
		at[i] = turn.Apply(at[i])
		middle = middle.Add(at[i].Times(1 / float64(n.corners)))
	}
	at[1].Y = 0
	for i := n.corners; i < n.places; i++ {
		at[i] = n.pointed(i, at, middle)
	}
	return at
}

// lengths returns the walls' lengths. Those that were not measured are as long as
// closes the room best, from the mean of the others, and never next to nothing.
func (n *net) lengths(turns []float64) []float64 {
	out := make([]float64, n.corners)
	mean, measured := 0.0, 0.0
	for i, w := range n.room.Walls {
		if out[i] = w.Length; w.Length > 0 {
			mean, measured = mean+w.Length, measured+1
		}
	}
	mean /= measured
	var open []plane.Point // directions of the walls without a length
	var gap plane.Point
	heading := 0.0
	for i := range out {
		along := plane.Polar(1, heading)
		if out[i] == 0 {
			out[i] = mean
			open = append(open, along)
		}
		gap = gap.Add(along.Times(out[i]))
		heading += turns[i]
	}
	xx, xy, yy := 1e-6, 0.0, 1e-6
	for _, d := range open {
		xx, xy, yy = xx+d.X*d.X, xy+d.X*d.Y, yy+d.Y*d.Y
	}
	det := xx*yy - xy*xy
	pull := plane.Point{X: (yy*gap.X - xy*gap.Y) / det, Y: (xx*gap.Y - xy*gap.X) / det}
	k := 0
	for i, w := range n.room.Walls {
		if w.Length == 0 {
			out[i] = math.Max(out[i]-open[k].Dot(pull), mean/10)
			k++
		}
	}
	return out
}

// pointed returns where a measured point lies best, among places all round the
// first corner or point that a tape was run from; of two the one nearer to the
// middle of the room.
func (n *net) pointed(place int, at []plane.Point, middle plane.Point) plane.Point {
	var to []reading
	for _, r := range n.reads {
		switch {
		case r.kind != Across:
		case r.b == place && r.a < place:
			to = append(to, r)
		case r.a == place && r.b < place:
			r.a, r.b = r.b, r.a
			to = append(to, r)
		}
	}
	if len(to) == 0 {
		return middle
	}
	best, least := middle, math.Inf(1)
	const round = 180
	for k := range round {
		p := at[to[0].a].Add(plane.Polar(to[0].value, float64(k)*2*math.Pi/round))
		bad := 1e-3 * p.To(middle)
		for _, r := range to {
			bad += math.Abs(p.To(at[r.a]) - r.value)
		}
		if bad < least {
			best, least = p, bad
		}
	}
	return best
}
