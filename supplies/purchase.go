package supplies

import (
	"slices"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// FloorRuns is the tape of one floor and the day by which it is needed there.
type FloorRuns struct {
	Floor  floor.ID
	Runs   []Run
	Needed time.Time // zero: not known
}

// Purchase adds up the runs of all floors that will be laid, stock by stock, and
// works out the rolls to buy once for all of them: the shelf and what is on
// order serve the floors together and are not counted for each. Part rolls left
// over from one floor serve the next.
//
// OrderBy goes by the first floor that shelf and orders no longer cover.
func Purchase(floors []FloorRuns, stocks []Stock, orders []Order) []Run {
	floors = slices.Clone(floors)
	slices.SortStableFunc(floors, func(a, b FloorRuns) int { return soonest(a.Needed, b.Needed) })

	runs := make([]Run, 0, len(stocks)+1)
	for _, s := range stocks {
		r := Run{Stock: s.ID}
		for _, f := range floors {
			r.add(runOf(f.Runs, s.ID))
		}
		r.price(s, orders, firstShort(floors, s, orders))
		runs = append(runs, r)
	}
	undecided := Run{}
	for _, f := range floors {
		undecided.add(runOf(f.Runs, ""))
	}
	if !undecided.empty() {
		runs = append(runs, undecided)
	}
	return runs
}

// firstShort returns the day of the first floor for which shelf and orders do
// not suffice; the first floor that uses the stock when they always do.
func firstShort(floors []FloorRuns, s Stock, orders []Order) time.Time {
	have, _ := coming(string(s.ID), orders, time.Time{})
	left := (s.Shelf + float64(have)) * s.Roll
	var first time.Time
	for _, f := range floors {
		r := runOf(f.Runs, s.ID)
		if r.Total <= 0 {
			continue
		}
		if first.IsZero() {
			first = f.Needed
		}
		if left -= r.Total; left < -crumb*s.Roll {
			return f.Needed
		}
	}
	return first
}

// soonest orders days, unknown ones last.
func soonest(a, b time.Time) int {
	switch {
	case a.IsZero() && b.IsZero():
		return 0
	case a.IsZero():
		return 1
	case b.IsZero():
		return -1
	}
	return a.Compare(b)
}

func runOf(runs []Run, id plan.StockID) Run {
	i := slices.IndexFunc(runs, func(r Run) bool { return r.Stock == id })
	if i < 0 {
		return Run{}
	}
	return runs[i]
}

// add adds the lengths and counts of another run.
func (r *Run) add(o Run) {
	r.Strips += o.Strips
	r.Joints += o.Joints
	r.Corners += o.Corners
	r.Labels += o.Labels
	r.Pieces += o.Pieces
	r.Numbers += o.Numbers
	r.Lines += o.Lines
	r.Overlaps += o.Overlaps
	r.Patches += o.Patches
	r.Tabs += o.Tabs
	r.Spikes += o.Spikes
	r.Figures += o.Figures
	r.Wear += o.Wear
	r.Waste += o.Waste
	r.Total += o.Total
}
