package suppliesplace

import (
	"fmt"
	"strconv"
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// Columns of the orders.
const (
	orderFor = iota
	orderQuantity
	orderState
	orderPlaced
	orderExpected
	orderSupplier
	orderNote
)

func orderColumns() []grid.Column {
	return []grid.Column{
		{Title: "For", Width: 220, Grow: true, Swatch: true, Choices: []string{""}},
		{Title: "Quantity", Width: 72, Right: true},
		{Title: "State", Width: 90, Choices: stateNames()},
		{Title: "Placed", Width: 116, Hint: "30 Nov", Compare: compareDays},
		{Title: "Expected", Width: 130, Hint: "30 Nov", Compare: compareDays},
		{Title: "Supplier", Width: 140},
		{Title: "Note", Width: 120, Grow: true},
	}
}

func stateNames() []string {
	var out []string
	for _, s := range supplies.OrderStates {
		out = append(out, string(s))
	}
	return out
}

// compareDays orders cells that hold days, empty ones last.
func compareDays(a, b string) int {
	read := func(s string) time.Time {
		t, _ := fields.ParseDay(s, time.Time{}) // an empty cell is the zero time
		return t
	}
	x, y := read(a), read(b)
	switch {
	case x.IsZero() && !y.IsZero():
		return 1
	case y.IsZero() && !x.IsZero():
		return -1
	}
	return x.Compare(y)
}

func orderRows(p *prep.Production) []grid.Row {
	rows, g := make([]grid.Row, len(p.Orders)), goodsOf(p)
	for i, o := range p.Orders {
		rows[i] = grid.Row{ID: o.ID, Dim: o.State == supplies.Received, Cells: []string{
			g.nameFor(o.For), strconv.Itoa(o.Quantity), string(o.State), fields.FormatDay(o.Placed), fields.FormatDay(o.Expected), o.Supplier, o.Note,
		}}
		for _, s := range p.Stocks {
			if string(s.ID) != o.For {
				continue
			}
			if c, ok := floorpicture.Swatch(s.Swatch); ok {
				rows[i].Swatch = c
			}
		}
		if late(p, o) {
			rows[i].CellProblems = map[int]string{orderExpected: "Too late: it is needed by " + reckoning.Day(p.Needed()) + "."}
		}
	}
	return rows
}

// late tells whether an order that is under way comes after it is needed.
func late(p *prep.Production, o supplies.Order) bool {
	needed := p.Needed()
	return o.State == supplies.Ordered && !needed.IsZero() && o.Expected.After(needed)
}

// ordersWords says how the orders stand.
func ordersWords(orders []supplies.Order) string {
	n := map[supplies.OrderState]int{}
	for _, o := range orders {
		n[o.State]++
	}
	return fmt.Sprintf("%d planned, %d ordered, %d received", n[supplies.Planned], n[supplies.Ordered], n[supplies.Received])
}

// goods are the names of what can be ordered, each once, with the identifiers
// behind them: tapes first. Two things of one name are told apart by a number.
type goods struct {
	names []string
	ids   map[string]string
}

func goodsOf(p *prep.Production) goods {
	g := goods{ids: map[string]string{}}
	add := func(name, id string) {
		free := name
		for n := 2; g.ids[free] != ""; n++ {
			free = fmt.Sprintf("%s (%d)", name, n)
		}
		g.names = append(g.names, free)
		g.ids[free] = id
	}
	for _, s := range p.Stocks {
		add(s.Name, string(s.ID))
	}
	for _, it := range p.Items {
		add(it.Name, it.ID)
	}
	return g
}

// nameFor returns the name under which something is offered.
func (g goods) nameFor(id string) string {
	for _, name := range g.names {
		if g.ids[name] == id {
			return name
		}
	}
	return "no longer in the list"
}

// quantityWords writes a quantity of a tape or a thing of the kit.
func quantityWords(p *prep.Production, o supplies.Order) string {
	for _, s := range p.Stocks {
		if string(s.ID) == o.For {
			return reckoning.Count(o.Quantity, "roll") + " of " + s.Name
		}
	}
	return strconv.Itoa(o.Quantity) + " × " + goodsOf(p).nameFor(o.For)
}
