package supplies

import (
	"math"
	"slices"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
)

// Quantities are what one floor lays.
type Quantities struct {
	Lines   []floor.Line
	Marks   []marks.Mark
	Figures int // dance-line numbers
}

// TapeRun returns the tape that one floor needs, a run for each stock in the
// stocks' order, and last a run without a stock when something has none.
//
// Lines are counted as the union of what a stock draws, so that lines that
// coincide are taped once; dashed roles count for what is laid of them. Corners
// get a patch, every mark a tab, every spike and every stop of what moves the two
// legs of an L, of which a tick takes one and leaves one for the next time, every
// dance-line number its figure; each from the first stock with that duty. Wear
// lays a fraction of the lines again for each week, and waste is a fraction of
// everything.
//
// What is ordered counts as coming, what is only planned does not, and what was
// received is on the shelf. OrderBy is needed less the days of delivery, and
// zero when needed is.
func TapeRun(in Quantities, stocks []Stock, orders []Order, a Allowances, needed time.Time) []Run {
	runs := make([]Run, len(stocks)+1)
	at := map[plan.StockID]*Run{}
	for i, s := range stocks {
		runs[i].Stock = s.ID
		at[s.ID] = &runs[i]
	}
	undecided := &runs[len(stocks)]
	find := func(id plan.StockID) *Run {
		if r := at[id]; r != nil {
			return r
		}
		return undecided
	}
	duty := func(d Duty) *Run {
		i := slices.IndexFunc(stocks, func(s Stock) bool { return s.Duty == d })
		if i < 0 {
			return undecided
		}
		return &runs[i]
	}

	// Lines whose stock is unknown are undecided together: they may coincide.
	lines := slices.Clone(in.Lines)
	for i, l := range lines {
		lines[i].Stock = find(l.Stock).Stock
	}
	addLines(lines, find, a)
	addPieces(in, duty, a)

	if undecided.empty() {
		runs = runs[:len(stocks)]
	}
	for i := range runs {
		runs[i].finish(a)
	}
	for i, s := range stocks {
		runs[i].price(s, orders, needed)
	}
	return runs
}

// addLines adds the strips of every stock to its run.
func addLines(lines []floor.Line, find func(plan.StockID) *Run, a Allowances) {
	byStock := map[plan.StockID][]Strip{}
	for _, s := range Strips(lines) {
		byStock[s.Stock] = append(byStock[s.Stock], s)
	}
	for id, strips := range byStock {
		r := find(id)
		for _, s := range strips {
			if s.Dashed {
				r.Lines += s.Length() * a.dashed()
			} else {
				r.Lines += s.Length()
			}
		}
		r.Strips = len(strips)
		r.Joints = joints(strips)
		r.Overlaps = float64(r.Joints) * a.Overlap
	}
}

// addPieces adds patches, tabs, spikes and figures to the stocks whose duty
// they are.
func addPieces(in Quantities, duty func(Duty) *Run, a Allowances) {
	corners, spikes := 0, 0
	for _, m := range in.Marks {
		if m.Kind == marks.Corner {
			corners++
		}
		if m.Kind == marks.Spike || m.Station != nil {
			spikes++
		}
	}
	r := duty(Patches)
	r.Corners, r.Patches = corners, float64(corners)*a.Patch
	r = duty(Tabs)
	r.Labels, r.Tabs = len(in.Marks), float64(len(in.Marks))*a.Tab
	r = duty(Spikes)
	r.Pieces, r.Spikes = spikes, float64(spikes)*2*a.SpikeLeg
	r = duty(Figures)
	r.Numbers, r.Figures = in.Figures, float64(in.Figures)*a.Figure
}

// dashed returns the fraction of a broken line that is laid: the dash over dash
// and gap. Without a dash length a broken line counts whole, so that nothing is
// bought short.
func (a Allowances) dashed() float64 {
	if !(a.DashOn > 0) || a.DashOff < 0 {
		return 1
	}
	return a.DashOn / (a.DashOn + a.DashOff)
}

func (r *Run) empty() bool {
	return r.Strips+r.Corners+r.Labels+r.Pieces+r.Numbers == 0
}

// finish adds wear and waste.
func (r *Run) finish(a Allowances) {
	r.Wear = r.Lines * a.WearWeek * a.Weeks
	sum := r.Lines + r.Overlaps + r.Patches + r.Tabs + r.Spikes + r.Figures + r.Wear
	r.Waste = sum * a.Waste
	r.Total = sum + r.Waste
}

// crumb is the part of a roll, in rolls, that rounding up ignores: it absorbs
// the noise of floating-point sums and nothing that could be laid.
const crumb = 1e-9

// price works out rolls and money. A stock whose roll has no length needs no
// rolls that could be counted.
func (r *Run) price(s Stock, orders []Order, needed time.Time) {
	r.Shelf = s.Shelf
	r.Coming, r.Late = coming(string(s.ID), orders, needed)
	if !(s.Roll > 0) {
		return
	}
	r.Need = r.Total / s.Roll
	r.Rolls = wholes(r.Need)
	r.Buy = wholes(r.Need - r.Shelf - float64(r.Coming))
	r.Cents = r.Buy * s.Cents
	r.OrderBy = before(needed, s.LeadDays)
}

// wholes rounds up to whole pieces, never below zero and never beyond what an
// order could mean.
func wholes(n float64) int {
	if !(n > crumb) {
		return 0
	}
	return int(math.Ceil(min(n, 1e6) - crumb))
}

// coming counts what is on order, and how much of it is expected too late.
func coming(id string, orders []Order, needed time.Time) (n, late int) {
	for _, o := range orders {
		if o.For != id || o.State != Ordered {
			continue
		}
		n += o.Quantity
		if !needed.IsZero() && o.Expected.After(needed) {
			late += o.Quantity
		}
	}
	return n, late
}

// before returns the day so many days before another; zero stays zero.
func before(t time.Time, days int) time.Time {
	if t.IsZero() {
		return t
	}
	return t.AddDate(0, 0, -days)
}
