package store

import (
	"fmt"
	"strings"
)

// removal returns what somebody else has changed in a row that is to go.
func (s *shape) removal(c change, theirs *record) (clash []Cell) {
	if theirs == nil {
		return nil
	}
	for i, column := range s.columns {
		if was, told := c.Before[column]; told && was != theirs.cells[i] {
			clash = append(clash, s.cell(c, i, theirs.cells[i], nil))
		}
	}
	return clash
}

// setColumns sets the changed columns of a row that is there. When both sides
// made the row anew, what each left empty counts as not set.
func (s *shape) setColumns(c change, theirs record, who choice) (record, []Cell) {
	out := record{cells: append([]any(nil), theirs.cells...), seq: theirs.seq}
	var clash []Cell
	for i, column := range s.columns {
		mine, set := c.After[column]
		if !set {
			continue
		}
		was := s.empty(i)
		if c.Before != nil {
			was = c.Before[column]
		}
		now := theirs.cells[i]
		switch {
		case mine == was || mine == now:
			continue
		case now == was:
			out.cells[i] = mine
			continue
		}
		if both, ok := mergeCell(was, now, mine); ok {
			out.cells[i] = both
			continue
		}
		if who == takeMine {
			out.cells[i] = mine
		}
		clash = append(clash, s.cell(c, i, now, mine))
	}
	if seq, set := c.After[seqColumn].(float64); set && c.Before != nil {
		out.seq = seq
	}
	return out, clash
}

// mergeCell merges what is inside one column: the corners of a list.
func mergeCell(was, theirs, mine any) (any, bool) {
	w, ok1 := was.(cornerList)
	t, ok2 := theirs.(cornerList)
	m, ok3 := mine.(cornerList)
	if !ok1 || !ok2 || !ok3 {
		return nil, false
	}
	return mergeCorners(w, t, m)
}

// empty is the value of a column in a row that nobody has filled in.
func (s *shape) empty(i int) any {
	switch s.kinds[i] {
	case isWhole:
		return int64(0)
	case isReal:
		return 0.0
	case isCorners:
		return cornerList("")
	case isRef:
		return nil
	}
	return ""
}

// name names a row for a sentence, with what it belongs to: treatment of floor
// “Studio”. mine stands in for a row that is no longer there.
func (r rows) name(s *shape, key string, mine *record) string {
	rec := r[s.name].at(key)
	if rec == nil {
		rec = mine
	}
	if rec == nil {
		return fmt.Sprintf("%s “%s”", s.noun, strings.ReplaceAll(key, "\x00", " "))
	}
	owner := r[s.owner].at(keyText(rec.cells[0]))
	if s.owner == "" || owner == nil {
		return s.title(rec.cells)
	}
	own, named := s.ownName(rec.cells)
	if !named {
		own = s.noun
	}
	return own + " of " + tableNamed[s.owner].title(owner.cells)
}
