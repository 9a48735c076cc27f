package supplies

import (
	"time"

	"groundrow/tapeout/plan"
)

// Run is the tape that one stock needs, in metres, and what must be bought for
// it. A run without a stock gathers what is drawn and needed while nobody has
// decided on a tape for it: it has lengths, but no rolls and no price.
type Run struct {
	Stock    plan.StockID
	Lines    float64 // union length of the lines, dashes counted as laid
	Strips   int     // straight or swung pieces
	Joints   int     // places where one strip meets the next
	Overlaps float64
	Corners  int // corners that get a patch
	Patches  float64
	Labels   int // marks that get a tab
	Tabs     float64
	Pieces   int // spikes
	Spikes   float64
	Numbers  int // dance-line figures
	Figures  float64
	Wear     float64 // laid again over the weeks
	Waste    float64
	Total    float64

	Need    float64 // rolls, before rounding up
	Rolls   int     // whole rolls needed
	Shelf   float64 // rolls on the shelf
	Coming  int     // rolls on order
	Late    int     // of Coming, those expected after they are needed
	Buy     int     // rolls still to order
	Cents   int     // price of Buy
	OrderBy time.Time
}

// Short tells whether rolls must still be ordered.
func (r Run) Short() bool { return r.Buy > 0 }

// Step is one line of the sum that leads to a run's total. It is Count times
// Each when Count is set, Share of Of when Share is set, and a plain length
// otherwise. All lengths are metres.
type Step struct {
	Label  string
	Count  int
	Each   float64
	Share  float64
	Of     float64
	Metres float64
}

// Sum returns the steps that a calculator can follow; their lengths add up to
// Total. Steps of no length are left out.
func (r Run) Sum() []Step {
	before := r.Total - r.Waste
	all := []Step{
		{Label: "Lines", Metres: r.Lines},
		times("Overlaps", r.Joints, r.Overlaps),
		times("Patches", r.Corners, r.Patches),
		times("Tabs", r.Labels, r.Tabs),
		times("Spikes", r.Pieces, r.Spikes),
		times("Dance-line figures", r.Numbers, r.Figures),
		share("Laid again as it wears", r.Wear, r.Lines),
		share("Waste", r.Waste, before),
	}
	steps := make([]Step, 0, len(all))
	for _, s := range all {
		if s.Metres != 0 {
			steps = append(steps, s)
		}
	}
	return steps
}

func times(label string, n int, metres float64) Step {
	s := Step{Label: label, Count: n, Metres: metres}
	if n > 0 {
		s.Each = metres / float64(n)
	}
	return s
}

func share(label string, metres, of float64) Step {
	s := Step{Label: label, Of: of, Metres: metres}
	if of > 0 {
		s.Share = metres / of
	}
	return s
}
