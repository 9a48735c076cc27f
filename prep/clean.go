package prep

import (
	"slices"

	"groundrow/supplies"
)

type (
	stock = supplies.Stock
	item  = supplies.Item
	order = supplies.Order
)

// drop deletes from a list by making a new one, since other snapshots of the
// production may share the list's memory. A list that loses nothing is kept as
// it is, and an empty one becomes nil.
func drop[T any](list *[]T, gone func(T) bool) {
	if !slices.ContainsFunc(*list, gone) {
		return
	}
	var kept []T
	for _, v := range *list {
		if !gone(v) {
			kept = append(kept, v)
		}
	}
	*list = kept
}

func clearIf[T ~string](field *T, id T) {
	if *field == id {
		*field = ""
	}
}

// forget deletes what was typed into the fields of a row.
func (p *Production) forget(row string) {
	drop(&p.Typed, func(t Typed) bool { return t.Row == row })
}

func (p *Production) dropStandIns(gone func(StandIn) bool) {
	for _, s := range p.StandIns {
		if gone(s) {
			p.forget(s.ID)
		}
	}
	drop(&p.StandIns, gone)
}

func (p *Production) dropNotes(gone func(Note) bool) {
	for _, n := range p.Notes {
		if gone(n) {
			p.forget(n.ID)
		}
	}
	drop(&p.Notes, gone)
}

func (p *Production) dropOrders(of string) {
	for _, o := range p.Orders {
		if o.For == of {
			p.forget(o.ID)
		}
	}
	drop(&p.Orders, func(o order) bool { return o.For == of })
}
