package placement

import (
	"container/heap"
	"context"
	"math"
	"runtime"
	"slices"
	"sync"

	"groundrow/tapeout/plane"
)

// Gap is how far the best placement found may lie below the best there is, as a
// part of the whole score, when a search has run to its end.
const Gap = 0.005

// box is a box of placements: the pivot within dx and dy of a point in floor axes,
// the turn within swing of one.
type box struct {
	x, y, turn    float64
	dx, dy, swing float64
	bound         float64 // no placement in it scores more
}

// heapOf is a heap of boxes, the most promising first.
type heapOf []box

func (h heapOf) Len() int           { return len(h) }
func (h heapOf) Less(i, j int) bool { return h[i].bound > h[j].bound }
func (h heapOf) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *heapOf) Push(b any)        { *h = append(*h, b.(box)) }
func (h *heapOf) Pop() any {
	n := len(*h) - 1
	b := (*h)[n]
	*h = (*h)[:n]
	return b
}

// spot is one placement as the search sees it.
type spot struct {
	x, y, turn float64
	quick
}

// hunt is one search under way. Boxes are looked at in rounds of equal size, the
// work of a round shared between the cores, so that the outcome does not depend
// on how many of them there are.
type hunt struct {
	c        *Case
	queue    heapOf
	best     spot
	found    bool    // best keeps whole what must be whole
	near     spot    // the one that loses least of what must be whole
	spots    []spot  // polished, the best of each neighbourhood
	dropped  float64 // the highest bound of the boxes that were let go
	gap      float64
	boxes    int
	looks    int // the work done, which does not depend on the machine
	polish   map[cell]bool
	polished int
}

// cell is a neighbourhood of placements.
type cell struct{ x, y, turn int }

// round is how many boxes are looked at together.
const round = 64

// middles is of how many boxes in a round one has its middle scored, once the
// search is under way: that costs much more than a bound.
const middles = 8

// start fills the queue with all placements that the spans allow and that put
// anything of the plan on the floor; for spans of turns also with the turns in
// them at which lines of the plan lie along walls, since the best is often there.
func (c *Case) start(spans []span, gap float64) *hunt {
	c.free.ready()
	c.seen.ready()
	h := &hunt{c: c, gap: gap, dropped: math.Inf(-1), polish: map[cell]bool{}}
	h.near.lost = math.Inf(1)
	whole := c.free.box.Grow(c.radius)
	mid := whole.Centre()
	add := func(turn, swing float64) {
		h.queue = append(h.queue, box{mid.X, mid.Y, turn, whole.Width() / 2, whole.Height() / 2, swing, 1})
	}
	along := c.alongWalls()
	for _, s := range spans {
		add(s.mid, s.half)
		for _, t := range along {
			if s.half > 0 && apart(t, s.mid) <= s.half {
				add(t, 0)
			}
		}
	}
	heap.Init(&h.queue)
	return h
}

// run looks at boxes until none can hold more than the best by the gap, the budget
// is spent, or the context ends; told is called after every round.
func (h *hunt) run(ctx context.Context, budget int, told func(*hunt)) {
	for len(h.queue) > 0 && h.looks < budget && ctx.Err() == nil {
		var boxes []box
		for len(boxes) < round && len(h.queue) > 0 {
			b := heap.Pop(&h.queue).(box)
			if h.enough(b.bound) {
				h.drop(b.bound)
				h.queue = h.queue[:0]
				break
			}
			boxes = append(boxes, b)
		}
		h.round(boxes)
		if told != nil {
			told(h)
		}
	}
}

// enough tells whether a bound is so low that its box need not be looked into.
func (h *hunt) enough(bound float64) bool { return h.found && bound <= h.best.score+h.gap }

func (h *hunt) drop(bound float64) { h.dropped = max(h.dropped, bound) }

// bound is what no placement passes, as far as the hunt has come.
func (h *hunt) bound() float64 {
	b := h.dropped
	if len(h.queue) > 0 {
		b = max(b, h.queue[0].bound)
	}
	if h.found {
		b = max(b, h.best.score)
	}
	return b
}

// looked is what came of one box of a round.
type looked struct {
	halves [2]box
	ok     [2]bool
	middle quick
	tried  bool
}

func (h *hunt) round(boxes []box) {
	out := make([]looked, len(boxes))
	enough := math.Inf(-1)
	if h.found {
		enough = h.best.score + h.gap
	}
	h.share(len(boxes), func(p *probe, i int) {
		out[i].halves = boxes[i].split(h.c.radius)
		for k := range out[i].halves {
			b := &out[i].halves[k]
			p.at(b)
			b.bound, out[i].ok[k] = p.bound(enough)
			b.bound = min(b.bound, boxes[i].bound)
		}
		if i%middles == 0 || h.boxes < 10*round {
			p.at(&boxes[i])
			out[i].middle, out[i].tried = p.quick(), true
		}
	})
	h.boxes += len(boxes)
	h.improve(boxes, out)
	for i := range out {
		for k, b := range out[i].halves {
			switch {
			case !out[i].ok[k]:
			case h.enough(b.bound) || b.small():
				h.drop(b.bound)
			default:
				heap.Push(&h.queue, b)
			}
		}
	}
}

// small tells whether a box is too small to be worth a split: no tape is laid to a
// tenth of a millimetre.
func (b *box) small() bool { return b.dx < 5e-5 && b.dy < 5e-5 && b.swing < 1e-5 }

// share does n pieces of work on all cores.
func (h *hunt) share(n int, work func(p *probe, i int)) {
	workers := min(runtime.GOMAXPROCS(0), n)
	probes := make([]probe, workers)
	var wg sync.WaitGroup
	for w := range workers {
		wg.Go(func() {
			p := &probes[w]
			p.c = h.c
			for i := w; i < n; i += workers {
				work(p, i)
			}
		})
	}
	wg.Wait()
	for i := range probes {
		h.looks += probes[i].looks
	}
}

// split halves a box where that brings its points closest together.
func (b box) split(radius float64) [2]box {
	l, r := b, b
	switch turned := b.swing * radius * 0.7; {
	case turned > b.dx && turned > b.dy:
		h := b.swing / 2
		l.swing, r.swing, l.turn, r.turn = h, h, b.turn-h, b.turn+h
	case b.dx >= b.dy:
		h := b.dx / 2
		l.dx, r.dx, l.x, r.x = h, h, b.x-h, b.x+h
	default:
		h := b.dy / 2
		l.dy, r.dy, l.y, r.y = h, h, b.y-h, b.y+h
	}
	return [2]box{l, r}
}

// promising is how far below the best the middle of a box may lie to be polished.
const promising = 0.04

// improve polishes the middles that promise something new: those that beat the best
// and, once in every neighbourhood, those that come near it.
func (h *hunt) improve(boxes []box, out []looked) {
	var picks []spot
	for i := range out {
		if !out[i].tried {
			continue
		}
		s := spot{boxes[i].x, boxes[i].y, boxes[i].turn, out[i].middle}
		key := cell{int(math.Floor(s.x / 0.3)), int(math.Floor(s.y / 0.3)), int(math.Floor(s.turn * 30))}
		beats := s.better(h.best.quick) && s.lost == 0 || !h.found && s.lost < h.near.lost
		if !beats && (h.polish[key] || h.found && s.score-s.lost*promising < h.best.score-promising) {
			continue
		}
		h.polish[key] = true
		picks = append(picks, s)
	}
	slices.SortStableFunc(picks, func(a, b spot) int {
		if a.better(b.quick) {
			return -1
		}
		return 1
	})
	picks = picks[:min(len(picks), h.mayPolish())]
	h.polished += len(picks)
	polished := make([]spot, len(picks))
	h.share(len(picks), func(p *probe, i int) { polished[i] = p.polish(picks[i], boxes[0].swing) })
	for _, s := range polished {
		h.keep(s)
	}
}

// mayPolish is how many spots may be polished in this round: polishing one costs as
// much as some hundred boxes, and shall not take most of the time.
func (h *hunt) mayPolish() int { return max(12+h.boxes/400-h.polished, 1) }

func (h *hunt) keep(s spot) {
	if s.lost < h.near.lost || s.lost == h.near.lost && s.score > h.near.score {
		h.near = s
	}
	if s.lost > 0 {
		return
	}
	h.spots = append(h.spots, s)
	if !h.found || s.score > h.best.score {
		h.best, h.found = s, true
	}
}

// motion is the placement of a spot.
func (c *Case) motion(s spot) plane.Motion {
	turn := math.Remainder(s.turn, 2*math.Pi)
	at := plane.Motion{Turn: turn}.Apply(c.pivot)
	return plane.Motion{Turn: turn, Shift: plane.Point{X: s.x, Y: s.y}.Sub(at)}
}
