package store

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// listOf makes the shape of a list of the production itself.
func listOf[T any](t table[T], at func(*prep.Production) *[]T) *shape {
	t.each = func(p *prep.Production, yield func(T)) {
		for _, row := range *at(p) {
			yield(row)
		}
	}
	t.put = func(r *reading, row T) bool {
		rows := at(&r.p)
		*rows = append(*rows, row)
		return true
	}
	return t.shape()
}

// nest says where the lists inside the rows of another list lie.
type nest[P ~string, O, T any] struct {
	owners func(*prep.Production) []O
	id     func(*O) P
	find   func(*reading, P) *O
	rows   func(*O) *[]T
}

// nestedOf makes the shape of a list inside the rows of another list.
func nestedOf[P ~string, O, T any](t table[of[P, T]], n nest[P, O, T]) *shape {
	t.each = func(p *prep.Production, yield func(of[P, T])) {
		owners := n.owners(p)
		for i := range owners {
			id := n.id(&owners[i])
			for _, row := range *n.rows(&owners[i]) {
				yield(of[P, T]{id, row})
			}
		}
	}
	t.put = func(r *reading, in of[P, T]) bool {
		owner := n.find(r, in.owner)
		if owner == nil {
			return false
		}
		rows := n.rows(owner)
		*rows = append(*rows, in.row)
		return true
	}
	s := t.shape()
	s.nested = true
	return s
}

// elementRows, floorRows and taskRows make the shapes of the lists inside these.

func elementRows[T any](t table[of[plan.ElementID, T]], rows func(*plan.Element) *[]T) *shape {
	t.owner = "element"
	return nestedOf(t, nest[plan.ElementID, plan.Element, T]{
		owners: func(p *prep.Production) []plan.Element { return p.Plan.Elements },
		id:     func(e *plan.Element) plan.ElementID { return e.ID },
		find:   (*reading).element,
		rows:   rows,
	})
}

func floorRows[T any](t table[of[floor.ID, T]], rows func(*floor.Floor) *[]T) *shape {
	t.owner = "floor"
	return nestedOf(t, nest[floor.ID, floor.Floor, T]{
		owners: func(p *prep.Production) []floor.Floor { return p.Floors },
		id:     func(f *floor.Floor) floor.ID { return f.ID },
		find:   (*reading).floor,
		rows:   rows,
	})
}

func taskRows[T any](t table[of[string, T]], rows func(*prep.Task) *[]T) *shape {
	t.owner = "task"
	return nestedOf(t, nest[string, prep.Task, T]{
		owners: func(p *prep.Production) []prep.Task { return p.Tasks },
		id:     func(k *prep.Task) string { return k.ID },
		find:   (*reading).task,
		rows:   rows,
	})
}
