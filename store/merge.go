package store

import (
	"maps"
	"strings"
)

// choice says what to do where both sides have changed the same.
type choice int

const (
	ask        choice = iota // nothing is merged; the person is asked
	takeMine                 // the values of the change
	takeTheirs               // the values that are there
)

// merge applies an edit that was made on some earlier state to the current one,
// column by column. A column that is not what the change found is a conflict,
// unless it is already what the change wanted. The place of a row in its list is
// never a conflict: the later move stands. The result shares what has not
// changed with current.
func merge(current rows, edit pending, refs []reference) (*merging, error) {
	m := merging{current: current, merged: maps.Clone(current), choice: edit.choice, own: map[string]bool{}}
	for _, c := range edit.changes {
		if err := m.apply(c); err != nil {
			return nil, err
		}
	}
	m.remove()
	if m.choice == takeMine {
		m.revive(edit.changes, edit.mine, refs)
	}
	return &m, nil
}

// merging is a merge under way.
type merging struct {
	current, merged rows
	choice          choice
	own             map[string]bool // tables that merged does not share any more
	touched         []place         // rows that were set or taken out, each once
	gone            []change        // rows to take out at the end
	keep            bool            // someone has changed what was to go, and is to be heard
	conflicts       []Cell
}

func (m *merging) apply(c change) error {
	t, key := tableNamed[c.Table], joined(c.Key)
	theirs := m.current[t.name].at(key)
	var clash []Cell
	switch {
	case c.After == nil:
		clash = t.removal(c, theirs)
		m.gone = append(m.gone, c)
		m.keep = m.keep || m.choice == takeTheirs && len(clash) > 0
	case theirs != nil:
		var r record
		r, clash = t.setColumns(c, *theirs, m.choice)
		m.set(t, key, r)
	case c.Before == nil:
		r, err := t.record(c.After)
		if err != nil {
			return err
		}
		m.set(t, key, r)
	default:
		clash = t.allOf(c)
		if err := m.bringBack(t, key, c, len(clash)); err != nil {
			return err
		}
	}
	if m.choice == ask {
		for i := range clash {
			clash[i].Name = m.current.name(t, key, c.full)
		}
		m.conflicts = append(m.conflicts, clash...)
	}
	return nil
}

// bringBack puts back a row that was removed while columns of it were changed.
// A row that only changed its place stays removed.
func (m *merging) bringBack(t *shape, key string, c change, columns int) error {
	switch {
	case m.choice != takeMine || columns == 0:
		return nil
	case c.full == nil:
		return fail(Invalid, nil, "The %s “%s” has been removed. Bring it back first.", t.noun, strings.Join(c.Key, " "))
	}
	m.set(t, key, *c.full)
	return nil
}

// remove takes out the rows that are to go: all, or none when somebody has
// changed one of them and is to be heard, since half a thing is no thing.
func (m *merging) remove() {
	if m.keep {
		return
	}
	for _, c := range m.gone {
		t, key := tableNamed[c.Table], joined(c.Key)
		m.touch(t, key)
		delete(m.merged[t.name], key)
	}
}

func (m *merging) set(t *shape, key string, r record) {
	m.touch(t, key)
	m.merged[t.name][key] = r
}

// place is where a row is.
type place struct {
	table *shape
	key   string
}

// touch notes that a row will change and makes its table the result's own.
func (m *merging) touch(t *shape, key string) {
	m.touched = append(m.touched, place{t, key})
	if m.own[t.name] {
		return
	}
	m.own[t.name] = true
	if m.merged[t.name] = maps.Clone(m.merged[t.name]); m.merged[t.name] == nil {
		m.merged[t.name] = sheet{}
	}
}

// changes returns what the merge makes of the current state.
func (m *merging) changes() (out []change) {
	for _, p := range m.touched {
		before, after := m.current[p.table.name].at(p.key), m.merged[p.table.name].at(p.key)
		if c, differs := p.table.compare(p.key, before, after); differs {
			out = append(out, c)
		}
	}
	return out
}

// allOf returns every column of a change as a conflict with nothing.
func (s *shape) allOf(c change) (clash []Cell) {
	for i, column := range s.columns {
		if mine, set := c.After[column]; set {
			clash = append(clash, s.cell(c, i, nil, mine))
		}
	}
	return clash
}
