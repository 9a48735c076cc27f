package placement

import (
	"cmp"
	"context"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// Answer is what a search has found.
type Answer struct {
	// Proposals are allowed placements, the best first, each of the others clearly
	// different from all before it. Empty: there is none, or none was found in time.
	Proposals []Kept
	// Bound is a score that no allowed placement passes.
	Bound float64
	// Proven tells that the best lies within Gap of the bound.
	Proven bool
	// None tells that it is certain that no placement keeps to what is required.
	None bool
	// Boxes is how many boxes were looked into, and Looks the work that it took.
	Boxes, Looks int
}

// Options bound a search. The zero value stands for the usual ones.
type Options struct {
	Looks     int // the work to spend on the best one: how often a place is looked up; some tens of millions a second on a core
	Proposals int // how many placements to propose at most
	// Told hears, now and then, how much is done, from 0 to 1, and the best score so
	// far; from the goroutine of the search.
	Told func(done, best float64)
}

const (
	usualLooks     = 30_000_000
	usualProposals = 5
	otherLooks     = 1_000_000 // for each other side that may be the front
	otherGap       = 0.02
)

// Search finds the best placement and several different good ones. It stops early
// when the context ends, and answers with what it has by then.
func (c *Case) Search(ctx context.Context, o Options) Answer {
	o.Looks = cmp.Or(o.Looks, usualLooks)
	o.Proposals = cmp.Or(o.Proposals, usualProposals)
	spans := turns(c.floor)
	h := c.start(spans, Gap*0.8) // the rest is for what the quick score is off by
	h.run(ctx, o.Looks, func(h *hunt) {
		if o.Told != nil {
			o.Told(h.done(o.Looks), h.best.score)
		}
	})
	a := Answer{Bound: max(h.bound(), 0), Boxes: h.boxes, Looks: h.looks}
	if !h.possible() {
		a.None = len(h.queue) == 0
		return a
	}
	spots := h.spots
	if o.Proposals > 1 {
		spots = append(spots, c.elsewhere(ctx, h)...)
	}
	a.Proposals = c.different(spots, o.Proposals)
	if len(a.Proposals) > 0 {
		best := a.Proposals[0].Score
		a.Bound = max(a.Bound, best)
		a.Proven = len(h.queue) == 0 && a.Bound-best <= Gap
	}
	return a
}

// done estimates how far a hunt has come: by how near its bound has come to its
// best, or by its budget.
func (h *hunt) done(budget int) float64 {
	spent := float64(h.looks) / float64(budget)
	if !h.found {
		return spent
	}
	left := (h.bound() - h.best.score - h.gap) / max(1-h.best.score, 1e-9)
	return max(spent, 1-math.Sqrt(min(max(left, 0), 1)))
}

// elsewhere hunts, less closely, with the front to each other side of the room.
func (c *Case) elsewhere(ctx context.Context, best *hunt) []spot {
	var out []spot
	for _, toward := range sidesAllowed(c.floor) {
		turn := toward + math.Pi/2
		if apart(turn, best.best.turn) < aside {
			continue
		}
		var spans []span
		for _, s := range turns(c.floor) {
			if apart(s.mid, turn) < aside {
				spans = append(spans, s)
			}
		}
		if len(spans) == 0 {
			continue
		}
		h := c.start(spans, otherGap)
		h.run(ctx, otherLooks, nil)
		out = append(out, h.spots...)
	}
	return out
}

// differs is how far, in metres and on average, the points of the plan have to lie
// apart in two placements that are different; worthwhile is how much less than the
// best a proposal may score, in parts of it.
const (
	differs    = 0.75
	worthwhile = 0.6
)

// different scores the best spots exactly and keeps, the best first, those that are
// allowed and different from all before.
func (c *Case) different(spots []spot, most int) []Kept {
	c.rank(spots)
	var out []Kept
	var near []Kept // the first few, of which the exact score decides
	for _, s := range spots {
		m := c.motion(s)
		if len(near) >= 12 && len(out) == 0 {
			out = append(out, bestOf(near))
		}
		if len(out) == 0 {
			if k := c.settle(m); k.OK() {
				near = append(near, k)
			}
			continue
		}
		if len(out) == most || s.score < worthwhile*out[0].Score {
			break
		}
		if slices.ContainsFunc(out, func(k Kept) bool { return c.apart(k.Placement, m) < differs }) {
			continue
		}
		if k := c.settle(m); k.OK() {
			out = append(out, k)
		}
	}
	if len(out) == 0 && len(near) > 0 {
		out = append(out, bestOf(near))
	}
	better := c.better()
	slices.SortStableFunc(out, func(a, b Kept) int { return better(a.Score, b.Score, a.Placement.Turn, b.Placement.Turn) })
	return out
}

// rank sorts spots, the better first.
func (c *Case) rank(spots []spot) {
	better := c.better()
	slices.SortStableFunc(spots, func(a, b spot) int { return better(a.score, b.score, a.turn, b.turn) })
}

// better compares two placements by score, and of equal ones by how square they lie to
// a wall, which is how a plan is set where nothing speaks against it.
func (c *Case) better() func(scoreA, scoreB, turnA, turnB float64) int {
	sides := sidesAllowed(c.floor)
	askew := func(turn float64) float64 {
		least := math.Pi
		for _, toward := range sides {
			least = min(least, apart(turn, toward+math.Pi/2))
		}
		return math.Round(least * 1e4)
	}
	return func(scoreA, scoreB, turnA, turnB float64) int {
		return cmp.Or(cmp.Compare(math.Round(scoreB*1e6), math.Round(scoreA*1e6)), cmp.Compare(askew(turnA), askew(turnB)))
	}
}

func bestOf(list []Kept) Kept {
	return slices.MaxFunc(list, func(a, b Kept) int { return cmp.Compare(a.Score, b.Score) })
}

// settle scores a placement exactly; where it just fails, one a hair beside it.
func (c *Case) settle(m plane.Motion) Kept {
	k := c.At(m)
	for i := 0; i < 8 && !k.OK(); i++ {
		n := m
		n.Shift = m.Shift.Add(plane.Polar(2e-4, float64(i)*math.Pi/4))
		k = c.At(n)
	}
	return k
}

// apart is how far the points of the plan lie apart in two placements, on average
// over a disc as large as the plan.
func (c *Case) apart(a, b plane.Motion) float64 {
	shift := a.Apply(c.pivot).To(b.Apply(c.pivot))
	turn := 2 * math.Sin(apart(a.Turn, b.Turn)/2) * c.radius * 0.5
	return math.Hypot(shift, turn)
}
