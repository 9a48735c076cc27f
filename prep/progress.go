package prep

import (
	"fmt"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// TakeStep records what happened to marks of a floor. The labels of the whole
// floor are kept for good first: a tab that lies there must not change its name.
// It fails, and nothing is recorded, when one of the labels is not on the floor or
// cannot take the step.
func (p *Production) TakeStep(id floor.ID, labels []string, s marks.Step, d floor.Decision) error {
	return p.progress(id, labels, d, func(g *marks.Progress) error { return g.Take(s, d) })
}

// TakeBackStep clears what was recorded of marks by mistake.
func (p *Production) TakeBackStep(id floor.ID, labels []string, s marks.Step, d floor.Decision) error {
	return p.progress(id, labels, d, func(g *marks.Progress) error { g.TakeBack(s); return nil })
}

func (p *Production) progress(id floor.ID, labels []string, d floor.Decision, set func(*marks.Progress) error) error {
	w := Work(p, id, "")
	if w == nil {
		return fmt.Errorf("the floor is not there any more: somebody has deleted it")
	}
	next := slices.Clone(p.Progress)
	for _, label := range labels {
		if !w.has(label) {
			return fmt.Errorf("there is no mark %q on %s: write a label from the sheet", label, w.Floor.Name)
		}
		i := slices.IndexFunc(next, func(g marks.Progress) bool { return g.Floor == id && g.Label == label })
		if i < 0 {
			i = len(next)
			next = append(next, marks.Progress{Floor: id, Label: label})
		}
		if err := set(&next[i]); err != nil {
			return err
		}
		if next[i].Blank() {
			next = slices.Delete(next, i, i+1)
		}
	}
	p.FreezeLabels(id, d.On)
	p.Progress = next
	return nil
}

// has tells whether the floor has the mark, or had it: a tab that nothing needs
// any more can still be lifted.
func (w *FloorWork) has(label string) bool {
	return slices.ContainsFunc(w.Marks, func(m MeasuredMark) bool { return m.Label == label }) ||
		slices.ContainsFunc(w.Gone, func(g marks.Issued) bool { return g.Label == label })
}
