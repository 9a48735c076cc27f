package prep

import (
	"slices"
	"strings"

	"groundrow/tapeout/drawing"
	"groundrow/tapeout/plan"
)

// Intake says what reading a table of a plan does to the production, by the
// names of the elements.
type Intake struct {
	Added   []string // were not on the plan
	Redrawn []string // were, and have the table's lines now
	Kept    []string // are on the plan and not in the table: left as they were
}

// TakePlan brings the elements of a table into the plan. One whose name is on
// the plan already, whatever its capitals, is the same thing drawn anew: it keeps
// its identity, and with it its tape, its places from scene to scene and every
// decision about it, and gets the table's lines. What the table leaves unsaid
// about it (kind, use, level, note) stays too. Nothing is deleted.
func (p *Production) TakePlan(t drawing.PlanTable) Intake {
	var in Intake
	p.Plan.Levels = append(p.Plan.Levels, t.Levels...)
	named := map[string]bool{}
	for _, e := range t.Elements {
		named[nameKey(e.Name)] = true
		if old := p.elementNamed(e.Name); old != nil {
			redraw(old, e)
			in.Redrawn = append(in.Redrawn, old.Name)
			continue
		}
		p.Plan.Elements = append(p.Plan.Elements, e)
		in.Added = append(in.Added, e.Name)
	}
	for _, e := range p.Plan.Elements {
		if !named[nameKey(e.Name)] {
			in.Kept = append(in.Kept, e.Name)
		}
	}
	return in
}

func nameKey(name string) string { return strings.ToLower(strings.TrimSpace(name)) }

func (p *Production) elementNamed(name string) *plan.Element {
	i := slices.IndexFunc(p.Plan.Elements, func(e plan.Element) bool { return nameKey(e.Name) == nameKey(name) })
	if i < 0 {
		return nil
	}
	return &p.Plan.Elements[i]
}

// redraw gives an element the lines of another. Lines keep their identifiers in
// their order, so that a line that has not changed is no change.
func redraw(old *plan.Element, drawn plan.Element) {
	for i := range drawn.Paths {
		if i < len(old.Paths) {
			drawn.Paths[i].ID = old.Paths[i].ID
		}
	}
	old.Paths = drawn.Paths
	if drawn.Kind != plan.Other {
		old.Kind = drawn.Kind
	}
	if drawn.Use != plan.Useful {
		old.Use = drawn.Use
	}
	if drawn.Level != "" {
		old.Level = drawn.Level
	}
	if drawn.Note != "" {
		old.Note = drawn.Note
	}
}
