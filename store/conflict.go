package store

import (
	"fmt"
	"strings"
)

// Conflict is an edit that was not made, because somebody else has changed the
// same thing since the editor looked. Nothing of it has been saved. File.Force
// makes it after all, once the person has seen both values.
type Conflict struct {
	Label string // of the edit
	Cells []Cell

	edit pending
}

// Cell is one value that both have changed.
type Cell struct {
	Table  string
	Row    []string // the key
	Column string
	Name   string // the row for a sentence: level “Upper”
	What   string // the column for a sentence: height

	// The value when the editor looked, as it is now, and as the editor wants
	// it: string, int64, float64, or []plane.Vertex; nil when the row is not
	// there or names nothing.
	Was, Theirs, Mine any
}

func (c *Conflict) Error() string {
	what := make([]string, 0, 3)
	for i, cell := range c.Cells {
		if i == 2 && len(c.Cells) > 3 {
			what = append(what, fmt.Sprintf("%d more", len(c.Cells)-i))
			break
		}
		what = append(what, fmt.Sprintf("%s of %s", cell.What, cell.Name))
	}
	return fmt.Sprintf("“%s” was not saved: somebody else has changed the same meanwhile (%s). Choose which values to keep.",
		c.Label, strings.Join(what, ", "))
}

func (s *shape) cell(c change, column int, theirs, mine any) Cell {
	name := s.columns[column]
	return Cell{
		Table: s.name, Row: c.Key, Column: name, What: spoken(name),
		Was: shown(c.Before[name]), Theirs: shown(theirs), Mine: shown(mine),
	}
}

func shown(v any) any {
	if list, ok := v.(cornerList); ok {
		return list.vertices()
	}
	return v
}
