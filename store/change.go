package store

import (
	"maps"
	"slices"
)

// change is what happened to one row: the columns that differ, before and after.
// No columns before: the row came; none after: it went; both then name all.
type change struct {
	Table  string         `json:"table"`
	Key    []string       `json:"key"`
	Before map[string]any `json:"before,omitempty"`
	After  map[string]any `json:"after,omitempty"`

	// full is the row as the editor had it, to put it back whole over the head
	// of one who removed it; nil for a change read from the journal.
	full *record
}

// seqColumn is the column of a row's place in its list.
const seqColumn = "seq"

// difference returns what leads from one state to another, owners first.
func difference(from, to rows) []change {
	var out []change
	for _, t := range tables {
		before, after := from[t.name], to[t.name]
		keys := slices.Collect(maps.Keys(after))
		for k := range before {
			if _, stays := after[k]; !stays {
				keys = append(keys, k)
			}
		}
		slices.Sort(keys)
		for _, k := range keys {
			if c, differs := t.compare(k, before.at(k), after.at(k)); differs {
				out = append(out, c)
			}
		}
	}
	return out
}

func (s sheet) at(key string) *record {
	r, ok := s[key]
	if !ok {
		return nil
	}
	return &r
}

// compare returns the change of one row; either side may be nil.
func (s *shape) compare(key string, before, after *record) (c change, differs bool) {
	c = change{Table: s.name, Key: splitKey(key), full: after}
	switch {
	case before == nil && after == nil:
		return c, false
	case before == nil:
		c.After = s.values(after)
		return c, true
	case after == nil:
		c.Before = s.values(before)
		return c, true
	}
	c.Before, c.After = map[string]any{}, map[string]any{}
	for i, column := range s.columns {
		if before.cells[i] != after.cells[i] {
			c.Before[column], c.After[column] = before.cells[i], after.cells[i]
		}
	}
	if before.seq != after.seq {
		c.Before[seqColumn], c.After[seqColumn] = before.seq, after.seq
	}
	return c, len(c.After) > 0
}

func (s *shape) values(r *record) map[string]any {
	m := make(map[string]any, len(s.columns)+1)
	for i, column := range s.columns {
		m[column] = r.cells[i]
	}
	if !s.single {
		m[seqColumn] = r.seq
	}
	return m
}

// record makes a whole row from the values of a change.
func (s *shape) record(values map[string]any) (record, error) {
	r := record{cells: make([]any, len(s.columns))}
	for i, column := range s.columns {
		v, ok := values[column]
		if _, later := since[s.name+"."+column]; !ok && later {
			v, ok = s.empty(i), true // removed before the column was there
		}
		if !ok {
			return r, fail(Invalid, nil, "The new %s lacks its %s.", s.noun, spoken(column))
		}
		r.cells[i] = v
	}
	r.seq, _ = values[seqColumn].(float64)
	return r, nil
}

// inverse returns the changes that lead back, in reverse order.
func inverse(changes []change) []change {
	out := make([]change, len(changes))
	for i, c := range changes {
		out[len(changes)-1-i] = change{Table: c.Table, Key: c.Key, Before: c.After, After: c.Before}
	}
	return out
}
