package store

import (
	"cmp"
	"slices"
	"strings"

	"groundrow/prep"
)

// rows is a production as the file holds it: by table, by key. A published value
// is never changed; whoever changes one copies the tables that differ.
type rows map[string]sheet

// sheet is the rows of one table by joined key.
type sheet map[string]record

// record is one row: a value for each column of its shape, and its place among
// the rows of the table.
type record struct {
	cells []any // string, int64, float64, cornerList or nil
	seq   float64
}

// joinKey makes one string of a row's key. Text with a zero byte is refused by
// its field, so that the parts cannot run together.
func (s *shape) joinKey(cells []any) string {
	if s.keys == 1 {
		return keyText(cells[0])
	}
	parts := make([]string, s.keys)
	for i := range parts {
		parts[i] = keyText(cells[i])
	}
	return joined(parts)
}

// joined makes one string of the parts of a key.
func joined(key []string) string { return strings.Join(key, "\x00") }

func splitKey(key string) []string { return strings.Split(key, "\x00") }

func keyText(cell any) string {
	s, _ := cell.(string)
	return s
}

// rowsFrom takes a production apart. Rows keep their place from base where the
// order allows, so that what has not been moved does not differ.
func rowsFrom(p *prep.Production, base rows) (rows, error) {
	out := make(rows, len(tables))
	for _, t := range tables {
		s, err := t.take(p, base[t.name])
		if err != nil {
			return nil, err
		}
		out[t.name] = s
	}
	return out, nil
}

func (s *shape) take(p *prep.Production, base sheet) (sheet, error) {
	taken := make(sheet, len(base))
	lists := map[string][]string{} // keys in order, by owner
	var wrong error
	s.encode(p, func(cells []any, err error) {
		key := s.joinKey(cells)
		switch _, twice := taken[key]; {
		case wrong != nil:
		case err != nil:
			wrong = fail(Invalid, err, "The %s cannot be kept: %v.", s.title(cells), err)
		case twice:
			wrong = fail(Invalid, nil, "There are two of the %s. Take one of them out.", s.title(cells))
		default:
			owner := ""
			if s.nested {
				owner = keyText(cells[0])
			}
			lists[owner] = append(lists[owner], key)
			taken[key] = record{cells: cells}
		}
	})
	if wrong != nil || s.single {
		return taken, wrong
	}
	for _, keys := range lists {
		for i, seq := range places(keys, base) {
			r := taken[keys[i]]
			r.seq = seq
			taken[keys[i]] = r
		}
	}
	return taken, nil
}

// title names a row by what it holds alone: level “Upper”.
func (s *shape) title(cells []any) string {
	if name, ok := s.ownName(cells); ok {
		return name
	}
	return s.noun + " “" + keyText(cells[s.keys-1]) + "”"
}

// ownName names a row if it has a name of its own, or is the only one.
func (s *shape) ownName(cells []any) (name string, ok bool) {
	if s.single {
		return s.noun, true
	}
	for _, c := range []string{"name", "label"} {
		if i := slices.Index(s.columns, c); i >= 0 && keyText(cells[i]) != "" {
			return s.noun + " “" + keyText(cells[i]) + "”", true
		}
	}
	return "", false
}

// production puts the rows together again.
func (r rows) production() (*prep.Production, error) {
	var reading reading
	for _, t := range tables {
		for _, rec := range r[t.name].inOrder() {
			if err := t.decode(&reading, rec.cells); err != nil {
				return nil, err
			}
		}
	}
	return &reading.p, nil
}

// inOrder returns the records by seq. Two that were put in the same place by
// two people stand in the order of their keys, so that every copy agrees.
func (s sheet) inOrder() []record {
	type keyed struct {
		key string
		rec record
	}
	sorted := make([]keyed, 0, len(s))
	for k, r := range s {
		sorted = append(sorted, keyed{k, r})
	}
	slices.SortFunc(sorted, func(a, b keyed) int {
		if a.rec.seq != b.rec.seq {
			return cmp.Compare(a.rec.seq, b.rec.seq)
		}
		return strings.Compare(a.key, b.key)
	})
	out := make([]record, len(sorted))
	for i, k := range sorted {
		out[i] = k.rec
	}
	return out
}
