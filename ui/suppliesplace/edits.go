package suppliesplace

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
)

var errGone = errors.New("this is not there any more: somebody has deleted it")

// itemOf returns the thing of the kit; nil when there is none.
func itemOf(p *prep.Production, id string) *supplies.Item {
	i := slices.IndexFunc(p.Items, func(it supplies.Item) bool { return it.ID == id })
	if i < 0 {
		return nil
	}
	return &p.Items[i]
}

// orderOf returns the order; nil when there is none.
func orderOf(p *prep.Production, id string) *supplies.Order {
	i := slices.IndexFunc(p.Orders, func(o supplies.Order) bool { return o.ID == id })
	if i < 0 {
		return nil
	}
	return &p.Orders[i]
}

// onItem makes a change to one thing of the kit.
func onItem(id string, change func(*supplies.Item) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		it := itemOf(p, id)
		if it == nil {
			return errGone
		}
		return change(it)
	}
}

// onOrder makes a change to one order.
func onOrder(id string, change func(*prep.Production, *supplies.Order) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		o := orderOf(p, id)
		if o == nil {
			return errGone
		}
		return change(p, o)
	}
}

// toShelf puts what has come on the shelf, or takes it off again for a number
// below zero; there is never less than nothing on it.
func toShelf(p *prep.Production, id string, n int) error {
	if s := p.Stock(plan.StockID(id)); s != nil {
		s.Shelf = max(0, s.Shelf+float64(n))
		return nil
	}
	if it := itemOf(p, id); it != nil {
		it.Shelf = max(0, it.Shelf+n)
		return nil
	}
	return errors.New("what was ordered is no longer in the list, so it cannot be put on the shelf")
}

// setState takes an order further, or back. What is received goes on the shelf.
// Days that are not known yet are set: placed today, expected after the days of
// delivery.
func setState(p *prep.Production, o *supplies.Order, to supplies.OrderState, today time.Time) error {
	if to == o.State {
		return nil
	}
	put := 0
	if to == supplies.Received {
		put += o.Quantity
	}
	if o.State == supplies.Received {
		put -= o.Quantity
	}
	if put != 0 {
		if err := toShelf(p, o.For, put); err != nil {
			return err
		}
	}
	o.State = to
	if to != supplies.Planned && o.Placed.IsZero() {
		o.Placed = day(today)
	}
	if to == supplies.Ordered && o.Expected.IsZero() {
		o.Expected = o.Placed.AddDate(0, 0, leadDays(p, o.For))
	}
	return nil
}

func day(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location())
}

func leadDays(p *prep.Production, id string) int {
	if s := p.Stock(plan.StockID(id)); s != nil {
		return s.LeadDays
	}
	if it := itemOf(p, id); it != nil {
		return it.LeadDays
	}
	return 0
}

// setQuantity changes how many were ordered; the shelf follows when they are on
// it already.
func setQuantity(p *prep.Production, o *supplies.Order, n int) error {
	if n < 1 || n > most {
		return fmt.Errorf("%d cannot be ordered; type a whole number from 1 to %d", n, most)
	}
	if o.State == supplies.Received {
		if err := toShelf(p, o.For, n-o.Quantity); err != nil {
			return err
		}
	}
	o.Quantity = n
	return nil
}

// setFor changes what was ordered; what is on the shelf already changes places.
func setFor(p *prep.Production, o *supplies.Order, id string) error {
	if o.State == supplies.Received && id != o.For {
		if err := toShelf(p, id, o.Quantity); err != nil {
			return err
		}
		if err := toShelf(p, o.For, -o.Quantity); err != nil {
			return err
		}
	}
	o.For = id
	return nil
}

// planShort plans an order for whatever is short and not planned yet, and returns
// how many orders that changed or made. Pressed twice it changes nothing.
func planShort(p *prep.Production, needs []need) int {
	changed := 0
	for _, n := range needs {
		if n.buy <= n.planned {
			continue
		}
		changed++
		i := slices.IndexFunc(p.Orders, func(o supplies.Order) bool { return o.For == n.id && o.State == supplies.Planned })
		if i >= 0 {
			p.Orders[i].Quantity += n.buy - n.planned
			continue
		}
		p.Orders = append(p.Orders, supplies.Order{
			ID: uuid.NewString(), For: n.id, Quantity: n.buy, State: supplies.Planned, Supplier: n.supplier,
		})
	}
	return changed
}

// countOut sends what is on the shelf out to the room; countBack takes what went
// out as come back.
func countOut(it *supplies.Item)  { it.Out = it.Shelf }
func countBack(it *supplies.Item) { it.Back = it.Out }

// newItem returns a thing of the kit to start from.
func newItem(group string) supplies.Item {
	return supplies.Item{ID: uuid.NewString(), Name: "New thing", Group: group, Rule: supplies.Fixed, PerUnit: 1, LeadDays: 3}
}
