package prep

import (
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// MethodChoice is somebody's choice of how a mark is placed, whatever the program
// recommends. It belongs to a place on the floor, not to a label, so that it never
// passes to another mark; where no mark is any more it counts for nothing.
type MethodChoice struct {
	ID     string
	Floor  floor.ID
	Whole  bool        // for every mark of the floor that has no choice of its own
	At     plane.Point // datum axes, unless Whole
	Method survey.Method
}

// methodsChosen returns the choice for the whole floor, empty for none, and those
// for single places.
func methodsChosen(p *Production, id floor.ID) (whole survey.Method, single []MethodChoice) {
	for _, c := range p.MethodChoices {
		switch {
		case c.Floor != id:
		case c.Whole:
			whole = c.Method
		default:
			single = append(single, c)
		}
	}
	return whole, single
}

// ChooseMethod chooses how marks of a floor are placed; the empty method takes a
// choice back. ids makes an identifier for each new choice. Choices of this floor
// for places where no mark is any more are dropped.
func (p *Production) ChooseMethod(w *FloorWork, labels []string, method survey.Method, ids func() string) {
	id, weld := w.Floor.ID, p.Settings.Rules.Weld
	p.MethodChoices = slices.DeleteFunc(p.MethodChoices, func(c MethodChoice) bool {
		if c.Floor != id || c.Whole {
			return false
		}
		i := slices.IndexFunc(w.Marks, func(m MeasuredMark) bool { return m.At.To(c.At) <= weld })
		return i < 0 || slices.Contains(labels, w.Marks[i].Label)
	})
	if method == "" {
		return
	}
	for _, m := range w.Marks {
		if slices.Contains(labels, m.Label) {
			p.MethodChoices = append(p.MethodChoices, MethodChoice{ID: ids(), Floor: id, At: m.At, Method: method})
		}
	}
}

// ChooseMethodForFloor chooses how all marks of a floor are placed that have no
// choice of their own; the empty method leaves it to the recommendation.
func (p *Production) ChooseMethodForFloor(id floor.ID, method survey.Method, newID string) {
	p.MethodChoices = slices.DeleteFunc(p.MethodChoices, func(c MethodChoice) bool { return c.Floor == id && c.Whole })
	if method != "" {
		p.MethodChoices = append(p.MethodChoices, MethodChoice{ID: newID, Floor: id, Whole: true, Method: method})
	}
}

// MethodForFloor returns the method chosen for a whole floor; empty for none.
func (p *Production) MethodForFloor(id floor.ID) survey.Method {
	whole, _ := methodsChosen(p, id)
	return whole
}

// chosenFor returns the method chosen for a mark; empty for none.
func (pl *placer) chosenFor(m marks.Mark) survey.Method {
	for _, c := range pl.single {
		if c.At.To(m.At) <= pl.p.Settings.Rules.Weld {
			return c.Method
		}
	}
	return pl.whole
}
