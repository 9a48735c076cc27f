package supplies

import (
	"fmt"
	"testing"

	"groundrow/tapeout/length"
)

func TestNeeds(t *testing.T) {
	c := Counts{People: 3, Tapes: 2, Marks: 50, StandIns: 7, Ballast: 5}
	for name, tc := range map[string]struct {
		item      Item
		orders    []Order
		need, buy int
	}{
		"a fixed number":      {Item{Rule: Fixed, PerUnit: 2}, nil, 2, 2},
		"one for two people":  {Item{Rule: PerPerson, PerUnit: 0.5}, nil, 2, 2},
		"at least":            {Item{Rule: PerPerson, PerUnit: 0.1, Least: 4}, nil, 4, 4},
		"per tape":            {Item{Rule: PerTape, PerUnit: 1}, nil, 2, 2},
		"stands for few":      {Item{Rule: PerTapeFew, PerUnit: 1}, nil, 2, 2},
		"labels":              {Item{Rule: PerMark, PerUnit: 1.0 / 24}, nil, 3, 3},
		"ballast":             {Item{Rule: PerStandIn, PerUnit: 1, Shelf: 3}, nil, 7, 4},
		"sandbags":            {Item{Rule: PerBallast, PerUnit: 1}, nil, 5, 5},
		"some are coming":     {Item{ID: "k", Rule: PerStandIn, PerUnit: 1, Shelf: 3}, []Order{{For: "k", Quantity: 2, State: Ordered}}, 7, 2},
		"enough on the shelf": {Item{Rule: Fixed, PerUnit: 1, Shelf: 5}, nil, 1, 0},
		"an unknown rule":     {Item{Rule: "moon", PerUnit: 1}, nil, 0, 0},
	} {
		t.Run(name, func(t *testing.T) {
			tc.item.Cents, tc.item.LeadDays = 100, 2
			n := Needs([]Item{tc.item}, tc.orders, c, monday)[0]
			if n.Need != tc.need || n.Buy != tc.buy || n.Cents != 100*tc.buy || n.Short != (tc.buy > 0) {
				t.Errorf("got %+v, want need %d, buy %d", n, tc.need, tc.buy)
			}
			if want := monday.AddDate(0, 0, -2); !n.OrderBy.Equal(want) {
				t.Errorf("order by %v, want %v", n.OrderBy, want)
			}
		})
	}
	if n := Needs([]Item{{Rule: PerTapeFew, PerUnit: 1}}, nil, Counts{People: 4, Tapes: 2}, monday)[0]; n.Need != 0 {
		t.Errorf("four people need %d stands, want none", n.Need)
	}
}

func TestBudgetCountsMoneyOnce(t *testing.T) {
	orders := []Order{
		{For: "red", Quantity: 2, State: Ordered}, {For: "k", Quantity: 1, State: Received},
		{For: "red", Quantity: 9, State: Planned}, {For: "gone", Quantity: 1, State: Ordered},
	}
	needs := []Need{{Item: Item{ID: "k", Cents: 300}, Cents: 600}}
	b := BudgetOf([]Run{{Stock: "red", Cents: 1000}}, needs, tapes(), orders, 3000)
	if want := (Budget{Placed: 2300, Tape: 1000, Kit: 600, Total: 3900, Limit: 3000, Over: 900}); b != want {
		t.Errorf("got %+v, want %+v", b, want)
	}
	if b := BudgetOf(nil, needs, nil, nil, 0); b.Over != 0 {
		t.Errorf("over by %d without a limit", b.Over)
	}
}

func TestStandardListsAreWhole(t *testing.T) {
	n := 0
	newID := func() string { n++; return fmt.Sprint(n) }
	seen := map[string]bool{}
	for _, it := range StandardKit(length.FeetInches, newID) {
		if seen[it.ID] || it.Name == "" || it.Group == "" || it.Rule == "" || it.Cents <= 0 {
			t.Errorf("item %+v", it)
		}
		seen[it.ID] = true
	}
	duties := map[Duty]bool{}
	for _, s := range append(StandardStocks(length.FeetInches, newID), StandardStocks(length.Millimetres, newID)...) {
		if seen[string(s.ID)] || s.Colour == "" || s.Swatch == "" || s.Roll <= 0 || s.Cents <= 0 {
			t.Errorf("stock %+v", s)
		}
		seen[string(s.ID)] = true
		duties[s.Duty] = true
	}
	for _, d := range Duties {
		if !duties[d] {
			t.Errorf("no stock for %s", d)
		}
	}
}
