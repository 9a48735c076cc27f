package suppliesplace

import (
	"fmt"
	"image/color"
	"slices"
	"strconv"
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/ui/desk"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// need is what is needed of one tape or one thing of the kit, and what of it is
// there, coming, planned and still to be bought.
type need struct {
	id, name, group, supplier string
	swatch                    color.Color // nil: no tape
	need, shelf               float64     // rolls or pieces
	coming, late, planned     int
	buy, cents                int
	orderBy                   time.Time
}

// short tells whether an order has still to be thought of.
func (n need) short() bool { return n.buy > 0 }

// needsOf returns the needs of all tapes and of the kit, short ones first and of
// these the most urgent.
func needsOf(v *desk.View) []need {
	p := v.P
	planned := plannedOf(p.Orders)
	var out []need
	for _, r := range prep.Purchase(p, v.Work) {
		s := p.Stock(r.Stock)
		if s == nil {
			continue
		}
		n := need{
			id: string(s.ID), name: s.Name, group: "tape", supplier: s.Supplier, need: r.Need, shelf: s.Shelf,
			coming: r.Coming, late: r.Late, planned: planned[string(s.ID)], buy: r.Buy, cents: r.Cents, orderBy: r.OrderBy,
		}
		if c, ok := floorpicture.Swatch(s.Swatch); ok {
			n.swatch = c
		}
		out = append(out, n)
	}
	for _, k := range prep.KitNeeds(p, v.Work) {
		out = append(out, need{
			id: k.Item.ID, name: k.Item.Name, group: k.Item.Group, supplier: k.Item.Supplier, need: float64(k.Need), shelf: float64(k.Shelf),
			coming: k.Coming, late: k.Late, planned: planned[k.Item.ID], buy: k.Buy, cents: k.Cents, orderBy: k.OrderBy,
		})
	}
	slices.SortStableFunc(out, urgency)
	return out
}

// urgency puts what is short first, and of that what must be ordered soonest.
func urgency(a, b need) int {
	switch {
	case a.short() != b.short():
		if a.short() {
			return -1
		}
		return 1
	case !a.short():
		return 0
	}
	return a.orderBy.Compare(b.orderBy)
}

// plannedOf counts what planned orders are for.
func plannedOf(orders []supplies.Order) map[string]int {
	out := map[string]int{}
	for _, o := range orders {
		if o.State == supplies.Planned {
			out[o.For] += o.Quantity
		}
	}
	return out
}

// Columns of the needs.
const (
	needName = iota
	needGroup
	needNeed
	needShelf
	needComing
	needBuy
	needPlanned
	needCost
	needOrderBy
	needSupplier
)

func needColumns() []grid.Column {
	figure := func(title string, width float32) grid.Column {
		return grid.Column{Title: title, Width: width, Right: true, ReadOnly: true}
	}
	return []grid.Column{
		{Title: "What", Width: 190, Grow: true, ReadOnly: true, Swatch: true},
		{Title: "Kind", Width: 84, ReadOnly: true},
		figure("Needed", 64), figure("Shelf", 52), figure("Coming", 66), figure("To buy", 62), figure("Planned", 66), figure("Cost", 72),
		{Title: "Order by", Width: 130, ReadOnly: true},
		{Title: "Supplier", Width: 90, Grow: true, ReadOnly: true},
	}
}

func needRows(p *prep.Production, needs []need, now time.Time) []grid.Row {
	rows := make([]grid.Row, len(needs))
	for i, n := range needs {
		rows[i] = grid.Row{
			ID: n.id, Swatch: n.swatch, Bold: n.short(), Dim: !(n.need > 0), CellProblems: needProblems(p, n),
			Cells: []string{
				n.name, n.group, reckoning.Rolls(n.need), reckoning.Rolls(n.shelf), blankZero(n.coming),
				blankZero(n.buy), blankZero(n.planned), money(p, n.cents), reckoning.OrderBy(n.buy, n.orderBy, now), n.supplier,
			},
		}
	}
	return rows
}

func needProblems(p *prep.Production, n need) map[int]string {
	found := map[int]string{}
	if n.late > 0 {
		found[needComing] = fmt.Sprintf("%d of what is coming will come too late: it is needed by %s.", n.late, reckoning.Day(p.Needed()))
	}
	switch {
	case n.buy > n.planned:
		found[needBuy] = fmt.Sprintf("%d short, and no order is planned for %d of it.", n.buy, n.buy-n.planned)
	case n.buy > 0:
		found[needBuy] = fmt.Sprintf("%d short; an order is planned and has still to go out.", n.buy)
	}
	return found
}

// shortWords says in a sentence how much is short and which comes first.
func shortWords(needs []need, now time.Time) string {
	n := 0
	for _, x := range needs {
		if x.short() {
			n++
		}
	}
	switch {
	case len(needs) == 0:
		return "Nothing is needed yet."
	case n == 0:
		return "Nothing is short."
	}
	first := needs[0]
	said := fmt.Sprintf("%d of %s are short", n, reckoning.Count(len(needs), "thing"))
	if n == 1 {
		said = fmt.Sprintf("1 of %s is short", reckoning.Count(len(needs), "thing"))
	}
	if by := reckoning.OrderBy(first.buy, first.orderBy, now); !first.orderBy.IsZero() {
		said += "; first to order: " + first.name + " (" + by + ")"
	}
	return said + "."
}

func blankZero(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

func money(p *prep.Production, cents int) string {
	if cents == 0 {
		return ""
	}
	return p.Money(cents)
}
