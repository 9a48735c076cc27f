package planplace

import (
	"fmt"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// options are choices by name that stand for identifiers. Two things of the same
// name are told apart by a number.
type options[T ~string] struct {
	names []string
	ids   []T
}

func (o *options[T]) add(name string, id T) {
	unique := name
	for n := 2; slices.Contains(o.names, unique); n++ {
		unique = fmt.Sprintf("%s (%d)", name, n)
	}
	o.names = append(o.names, unique)
	o.ids = append(o.ids, id)
}

// name returns the choice that stands for an identifier; empty when none does.
func (o *options[T]) name(id T) string {
	if i := slices.Index(o.ids, id); i >= 0 {
		return o.names[i]
	}
	return ""
}

// id returns what a choice stands for.
func (o *options[T]) id(name string) (id T, ok bool) {
	i := slices.Index(o.names, name)
	if i < 0 {
		return "", false
	}
	return o.ids[i], true
}

// asOffered are options whose names are what is kept, written with a capital.
func asOffered[T ~string](all []T) options[T] {
	var o options[T]
	for _, v := range all {
		o.add(sentence(string(v)), v)
	}
	return o
}

// asExplained is asOffered with a word beside each name on what it means.
func asExplained[T ~string](all []T, means map[T]string) options[T] {
	var o options[T]
	for _, v := range all {
		o.add(sentence(string(v))+": "+means[v], v)
	}
	return o
}

func levelOptions(p *prep.Production) options[plan.LevelID] {
	var o options[plan.LevelID]
	for _, l := range levelsFromTheFloor(p) {
		o.add(l.Name, l.ID)
	}
	return o
}

func stockOptions(p *prep.Production) options[plan.StockID] {
	var o options[plan.StockID]
	o.add(undecided, "")
	for _, s := range p.Stocks {
		o.add(stockName(p, s.ID), s.ID)
	}
	return o
}

func carrierOptions(p *prep.Production, id plan.ElementID) options[plan.ElementID] {
	var o options[plan.ElementID]
	o.add(nothingCarries, "")
	for _, e := range carriers(p, id) {
		o.add(e.Name, e.ID)
	}
	return o
}

func pathOptions(e *plan.Element) options[plan.PathID] {
	var o options[plan.PathID]
	for i := range e.Paths {
		o.add(pathTitle(i, &e.Paths[i]), e.Paths[i].ID)
	}
	return o
}
