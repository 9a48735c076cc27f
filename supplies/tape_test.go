package supplies

import (
	"math"
	"testing"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

var monday = time.Date(2031, 3, 10, 10, 0, 0, 0, time.UTC)

var plain = Allowances{Overlap: 0.05, Patch: 0.3, Tab: 0.1, SpikeLeg: 0.15, Figure: 0.6,
	DashOn: 0.1, DashOff: 0.3, Waste: 0.1, WearWeek: 0.05, Weeks: 4}

func tapes() []Stock {
	return []Stock{
		{ID: "red", Roll: 50, Cents: 1000, LeadDays: 3, Duty: Lines},
		{ID: "clear", Roll: 30, Cents: 2500, Duty: Patches},
		{ID: "paper", Roll: 50, Cents: 500, Duty: Tabs},
		{ID: "pink", Roll: 50, Cents: 900, Duty: Spikes},
		{ID: "black", Roll: 50, Cents: 900, Duty: Figures},
	}
}

func boxed() Quantities {
	return Quantities{
		Lines: append(laid("red", plan.Outline, plane.Rectangle(pt(0, 0), pt(6, 4))),
			laid("red", plan.Swing, plane.Open(pt(1, 1), pt(1, 3)))...),
		Marks: []marks.Mark{{Kind: marks.Corner}, {Kind: marks.Corner}, {Kind: marks.Corner}, {Kind: marks.Corner},
			{Kind: marks.End}, {Kind: marks.End}, {Kind: marks.Spike}},
		Figures: 9,
	}
}

func TestTapeRunByHand(t *testing.T) {
	runs := TapeRun(boxed(), tapes(), nil, plain, monday)
	// 20 m and 2 m dashed at a quarter; 4 joints; 4 patches, 7 tabs, 1 spike of
	// two legs, 9 figures; wear of a fifth of the lines; a tenth for waste.
	for i, want := range []float64{(20.5 + 0.2 + 4.1) * 1.1, 1.2 * 1.1, 0.7 * 1.1, 0.3 * 1.1, 5.4 * 1.1} {
		if math.Abs(runs[i].Total-want) > near {
			t.Errorf("%s: %.4f m, want %.4f", runs[i].Stock, runs[i].Total, want)
		}
	}
	if len(runs) != 5 {
		t.Errorf("%d runs, want one for each stock and none undecided", len(runs))
	}
}

func TestWhatHasNoStockIsNotLost(t *testing.T) {
	for name, c := range map[string]struct {
		in     Quantities
		stocks []Stock
	}{
		"undecided lines":     {Quantities{Lines: laid("", plan.Outline, plane.Open(pt(0, 0), pt(1, 0)))}, tapes()},
		"a stock now removed": {Quantities{Lines: laid("gone", plan.Outline, plane.Open(pt(0, 0), pt(1, 0)))}, tapes()},
		"no stock at all":     {boxed(), nil},
		"no stock for tabs":   {Quantities{Marks: []marks.Mark{{Kind: marks.End}}}, tapes()[:1]},
	} {
		t.Run(name, func(t *testing.T) {
			runs := TapeRun(c.in, c.stocks, nil, plain, monday)
			last := runs[len(runs)-1]
			if last.Stock != "" || last.Total <= 0 {
				t.Errorf("last run is %+v, want the undecided one", last)
			}
		})
	}
}

func TestSumAddsUpToTotal(t *testing.T) {
	for _, r := range TapeRun(boxed(), tapes(), nil, plain, monday) {
		total := 0.0
		for _, s := range r.Sum() {
			total += s.Metres
			if s.Count > 0 && math.Abs(float64(s.Count)*s.Each-s.Metres) > near {
				t.Errorf("%s, %s: %d × %g is not %g", r.Stock, s.Label, s.Count, s.Each, s.Metres)
			}
			if s.Of > 0 && math.Abs(s.Share*s.Of-s.Metres) > near {
				t.Errorf("%s, %s: %g of %g is not %g", r.Stock, s.Label, s.Share, s.Of, s.Metres)
			}
		}
		if math.Abs(total-r.Total) > near {
			t.Errorf("%s: steps add up to %g, total is %g", r.Stock, total, r.Total)
		}
	}
}

func TestRollsToBuy(t *testing.T) {
	line := func(m float64) Quantities {
		return Quantities{Lines: laid("red", plan.Outline, plane.Open(pt(0, 0), pt(m, 0)))}
	}
	order := func(n int, s OrderState, on time.Time) Order {
		return Order{For: "red", Quantity: n, State: s, Expected: on}
	}
	for name, c := range map[string]struct {
		metres           float64
		shelf            float64
		orders           []Order
		rolls, buy, late int
	}{
		"exactly two rolls":       {100, 0, nil, 2, 2, 0},
		"a little more":           {100.01, 0, nil, 3, 3, 0},
		"part of a roll on shelf": {100, 0.5, nil, 2, 2, 0},
		"part roll saves one":     {110, 0.25, nil, 3, 2, 0},
		"ordered counts":          {100, 0, []Order{order(1, Ordered, monday)}, 2, 1, 0},
		"planned does not":        {100, 0, []Order{order(1, Planned, monday)}, 2, 2, 0},
		"received is on shelf":    {100, 1, []Order{order(1, Received, monday)}, 2, 1, 0},
		"ordered but late":        {100, 0, []Order{order(2, Ordered, monday.AddDate(0, 0, 1))}, 2, 0, 2},
		"more than enough":        {10, 5, nil, 1, 0, 0},
		"nothing drawn":           {0, 0, nil, 0, 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			stocks := tapes()
			stocks[0].Shelf = c.shelf
			r := TapeRun(line(c.metres), stocks, c.orders, Allowances{}, monday)[0]
			if r.Rolls != c.rolls || r.Buy != c.buy || r.Late != c.late || r.Cents != c.buy*1000 {
				t.Errorf("rolls %d buy %d late %d for %d, want %d, %d, %d", r.Rolls, r.Buy, r.Late, r.Cents, c.rolls, c.buy, c.late)
			}
			if want := monday.AddDate(0, 0, -3); !r.OrderBy.Equal(want) {
				t.Errorf("order by %v, want %v", r.OrderBy, want)
			}
		})
	}
}

func TestFloorsShareTheShelf(t *testing.T) {
	stocks := tapes()[:1]
	stocks[0].Shelf = 1
	in := Quantities{Lines: laid("red", plan.Outline, plane.Open(pt(0, 0), pt(30, 0)))}
	runs := TapeRun(in, stocks, nil, Allowances{}, monday)
	later := monday.AddDate(0, 0, 28)
	all := Purchase([]FloorRuns{
		{Floor: "stage", Runs: runs, Needed: later}, {Floor: "room", Runs: runs, Needed: monday},
	}, stocks, nil)
	// Each floor alone is covered by the roll on the shelf; both need 60 m of 50.
	if runs[0].Buy != 0 || all[0].Buy != 1 || math.Abs(all[0].Total-60) > near {
		t.Errorf("alone %d, together %d rolls for %.1f m, want 0, 1, 60", runs[0].Buy, all[0].Buy, all[0].Total)
	}
	if want := later.AddDate(0, 0, -3); !all[0].OrderBy.Equal(want) {
		t.Errorf("order by %v, want %v: the room is covered", all[0].OrderBy, want)
	}
}

func TestPurchaseKeepsWhatIsUndecided(t *testing.T) {
	runs := TapeRun(boxed(), nil, nil, plain, monday)
	all := Purchase([]FloorRuns{{Runs: runs}, {Runs: runs}}, nil, nil)
	if len(all) != 1 || math.Abs(all[0].Total-2*runs[0].Total) > near {
		t.Errorf("purchase %+v, want twice %.2f m", all, runs[0].Total)
	}
}

func TestOddValuesNeverBreakTheRun(t *testing.T) {
	odd := []Stock{{ID: "red"}, {ID: "x", Roll: math.NaN()}, {ID: "y", Roll: -1, Shelf: math.Inf(1)}, {ID: "z", Roll: 1e-300, Duty: Tabs}}
	in := boxed()
	in.Lines = append(in.Lines, floor.Line{Edge: plane.Edge{A: pt(math.NaN(), 0), B: pt(1, math.Inf(1))}})
	for _, r := range TapeRun(in, odd, nil, Allowances{DashOn: -1, DashOff: 1}, time.Time{}) {
		if r.Buy < 0 || r.Rolls < 0 || math.IsNaN(r.Need) || math.IsNaN(r.Total) {
			t.Errorf("%+v", r)
		}
	}
}
