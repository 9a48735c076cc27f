package store

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// column is one column of one row, bound to where its value lives.
type column struct {
	name string
	field
}

// table describes how the rows of one SQL table lie in a production. It is the
// only place that knows: SQL, journal, merging and conflicts are made from it.
type table[T any] struct {
	name    string
	noun    string // what a person calls one row
	keys    int    // how many of the columns are the key
	owner   string // the table that the first key column names; "" for none
	corners *list  // where the rows of a corners column are; nil: none

	bind func(*T) []column               // key columns first; without seq
	each func(*prep.Production, func(T)) // every row in order
	put  func(*reading, T) (placed bool) // false: what it belongs to is missing
}

// list is the table of a path's corners, keyed as its owner and by seq.
type list struct {
	table   string
	keys    []string
	columns [3]string
}

// of binds a row to the identifier of what it belongs to.
type of[P ~string, T any] struct {
	owner P
	row   T
}

// shape is a table without its row type.
type shape struct {
	name, noun, owner string
	keys              int
	columns           []string
	kinds             []kind
	corners           *list
	single            bool // one row, not a list, so that there is no seq
	nested            bool // many lists, one for each owner

	encode func(*prep.Production, func(cells []any, err error))
	decode func(*reading, []any) error
	sound  func([]any) error // whether the cells would come back as they are
}

func (t table[T]) shape() *shape {
	s := &shape{name: t.name, noun: t.noun, owner: t.owner, keys: t.keys, corners: t.corners}
	s.describe(t.bind(new(T)))
	s.encode = func(p *prep.Production, yield func([]any, error)) {
		t.each(p, func(row T) { yield(cellsOf(t.bind(&row))) })
	}
	s.sound = func(cells []any) error { return comesBack(t.bind(new(T)), cells) }
	s.decode = func(r *reading, cells []any) error {
		var row T
		if err := scanInto(t.bind(&row), cells); err != nil {
			return fmt.Errorf("%s: %w", t.noun, err)
		}
		if !t.put(r, row) {
			return fmt.Errorf("%s %v belongs to nothing", t.noun, cells[:t.keys])
		}
		return nil
	}
	return s
}

// oneRow describes a table that has one row, under a constant key.
func oneRow(name, noun string, bind func(*prep.Production) []column) *shape {
	s := &shape{name: name, noun: noun, keys: 1, single: true}
	keyed := func(p *prep.Production) []column {
		return append([]column{{"id", constField("production")}}, bind(p)...)
	}
	s.describe(keyed(new(prep.Production)))
	s.encode = func(p *prep.Production, yield func([]any, error)) { yield(cellsOf(keyed(p))) }
	s.decode = func(r *reading, cells []any) error { return scanInto(keyed(&r.p), cells) }
	s.sound = func(cells []any) error { return comesBack(keyed(new(prep.Production)), cells) }
	return s
}

func (s *shape) describe(columns []column) {
	for _, c := range columns {
		s.columns = append(s.columns, c.name)
		s.kinds = append(s.kinds, c.kind())
	}
}

// cellsOf returns the values of a row even when one of them is refused, so that
// the row can be named.
func cellsOf(columns []column) ([]any, error) {
	cells := make([]any, len(columns))
	var wrong error
	for i, c := range columns {
		v, err := c.Value()
		if err != nil && wrong == nil {
			wrong = fmt.Errorf("its %s cannot be kept: %w", spoken(c.name), err)
		}
		cells[i] = v
	}
	return cells, wrong
}

func scanInto(columns []column, cells []any) error {
	if len(columns) != len(cells) {
		return fmt.Errorf("%d values for %d columns", len(cells), len(columns))
	}
	for i, c := range columns {
		if err := c.Scan(cells[i]); err != nil {
			return fmt.Errorf("%s: %w", spoken(c.name), err)
		}
	}
	return nil
}

// comesBack tells whether cells can be read and written again the same.
func comesBack(columns []column, cells []any) error {
	if err := scanInto(columns, cells); err != nil {
		return err
	}
	again, err := cellsOf(columns)
	if err == nil && !slices.Equal(cells, again) {
		err = errors.New("a value that this program does not write")
	}
	return err
}

// reading is a production being put together from its rows, owners first.
type reading struct {
	p        prep.Production
	elements map[plan.ElementID]*plan.Element
	floors   map[floor.ID]*floor.Floor
	tasks    map[string]*prep.Task
}

// The finders index the owners at the first of their rows, when every owner is
// in its place.

func (r *reading) element(id plan.ElementID) *plan.Element {
	if r.elements == nil {
		r.elements = index(r.p.Plan.Elements, func(e *plan.Element) plan.ElementID { return e.ID })
	}
	return r.elements[id]
}

func (r *reading) floor(id floor.ID) *floor.Floor {
	if r.floors == nil {
		r.floors = index(r.p.Floors, func(f *floor.Floor) floor.ID { return f.ID })
	}
	return r.floors[id]
}

func (r *reading) task(id string) *prep.Task {
	if r.tasks == nil {
		r.tasks = index(r.p.Tasks, func(t *prep.Task) string { return t.ID })
	}
	return r.tasks[id]
}

func index[K comparable, T any](rows []T, key func(*T) K) map[K]*T {
	m := make(map[K]*T, len(rows))
	for i := range rows {
		m[key(&rows[i])] = &rows[i]
	}
	return m
}

// spoken turns a column's name into the words of a sentence.
func spoken(column string) string {
	for _, unit := range []string{"_m", "_deg", "_rad", "_cents"} {
		column = strings.TrimSuffix(column, unit)
	}
	return strings.ReplaceAll(column, "_", " ")
}
