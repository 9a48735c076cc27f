package store

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// readChanges reads the changes of a journal row and gives every value the type
// of its column. What no journal of this program holds is refused.
func readChanges(text string) ([]change, error) {
	d := json.NewDecoder(strings.NewReader(text))
	d.UseNumber()
	var changes []change
	if err := d.Decode(&changes); err != nil {
		return nil, fmt.Errorf("read a change of the journal: %w", err)
	}
	for _, c := range changes {
		t := tableNamed[c.Table]
		if t == nil || len(c.Key) != t.keys {
			return nil, fmt.Errorf("read a change of the journal: no table %q with %d keys", c.Table, len(c.Key))
		}
		for _, values := range []map[string]any{c.Before, c.After} {
			if err := t.retype(values, c.Key); err != nil {
				return nil, fmt.Errorf("read a change of the journal: %w", err)
			}
		}
	}
	return changes, nil
}

func (s *shape) retype(values map[string]any, key []string) error {
	for column, v := range values {
		i := slices.Index(s.columns, column)
		k := isReal
		if i >= 0 {
			k = s.kinds[i]
		} else if column != seqColumn || s.single {
			return fmt.Errorf("a %s has no %s", s.noun, spoken(column))
		}
		typed, err := k.fromJSON(v)
		if err != nil {
			return fmt.Errorf("%s of a %s: %w", spoken(column), s.noun, err)
		}
		if i >= 0 && i < s.keys && typed != key[i] {
			return fmt.Errorf("a %s under the key of another", s.noun)
		}
		values[column] = typed
	}
	return nil
}

// fromJSON gives a value that was decoded with UseNumber the type of its column.
func (k kind) fromJSON(v any) (any, error) {
	switch v := v.(type) {
	case string:
		if k == isText || k == isRef {
			return v, nil
		}
	case json.Number:
		switch k {
		case isWhole:
			return v.Int64()
		case isReal:
			return v.Float64()
		}
	case []any:
		if k == isCorners {
			return cornersFromJSON(v)
		}
	case nil:
		if k == isRef {
			return nil, nil
		}
	}
	return nil, fmt.Errorf("%w: %v", errWrongType, v)
}
