package drawingin

import (
	"errors"
	"fmt"
	"maps"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plan/revision"
	"groundrow/tapeout/plane"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// changes are what the drawing means as a revision of the plan that there is.
type changes struct {
	all  revision.Changes
	take map[string]bool // what somebody has said, by key
}

// changeKey names a change by its element, so that what was said of it outlasts a
// new comparison.
func changeKey(c *revision.Change) string {
	if c.Before.ID != "" {
		return "old " + string(c.Before.ID)
	}
	return "new " + string(c.After.ID)
}

// taken tells whether a change is to be taken over. What is gone stays on the plan
// until somebody says so: the drawing may show only a part.
func (c *changes) taken(i int) bool {
	if on, said := c.take[changeKey(&c.all[i])]; said {
		return on
	}
	return c.all[i].Outcome != revision.Gone
}

func (c *changes) say(i int, on bool) {
	if c.take == nil {
		c.take = map[string]bool{}
	}
	c.take[changeKey(&c.all[i])] = on
}

// again is for a new comparison, with what has been said so far.
func (c *changes) again() changes { return changes{take: maps.Clone(c.take)} }

// listed are the changes that there is something to decide about.
func (c *changes) listed() []int {
	var out []int
	for _, o := range revision.Outcomes {
		for i := range c.all {
			if c.all[i].Outcome == o && o != revision.Unchanged {
				out = append(out, i)
			}
		}
	}
	return out
}

// accepted are the changes that are taken over.
func (c *changes) accepted() []int {
	var out []int
	for _, i := range c.listed() {
		if c.taken(i) {
			out = append(out, i)
		}
	}
	return out
}

// counted says in a line what the drawing changes.
func (c *changes) counted() string {
	if len(c.listed()) == 0 {
		return "The drawing changes nothing on the plan."
	}
	text := ""
	for _, o := range []revision.Outcome{revision.Moved, revision.Reshaped, revision.New, revision.Gone, revision.Unchanged} {
		if n := c.all.Count(o); n > 0 {
			text += fmt.Sprintf(", %d %s", n, o)
		}
	}
	return sentence(text[2:]) + "."
}

var errNoChange = errors.New("no change is ticked: tick what is to be taken over from the drawing")

// apply takes the accepted changes over into the plan.
func (c *changes) apply(p *prep.Production) error {
	accepted := c.accepted()
	if len(accepted) == 0 {
		return errNoChange
	}
	return prep.TakeRevision(p, c.all, accepted, uuid.NewString)
}

// meaning is what the accepted changes mean on the floors.
type meaning struct {
	after  *prep.Production // with the changes taken over
	floors []prep.FloorChange
	err    error
}

// meaning works out what the accepted changes mean on each floor.
func (c *changes) meaning(now store.Snapshot) (m meaning) {
	if len(c.accepted()) == 0 {
		return m
	}
	if m.after, m.err = now.Imagine(c.apply); m.err == nil {
		m.floors = prep.RevisionOnFloors(now.P, m.after)
	}
	return m
}

// mostNamed is how many changes are named in the drawing; of more the words would
// hide it, and those of the selected rows are named.
const mostNamed = 15

// addTo draws the changes over the drawing: as it was, broken; as it is now, in
// full.
func (c *changes) addTo(pic *floorcanvas.Picture, toPicture plane.Motion, selected map[string]bool) {
	listed := c.listed()
	named := len(selected) > 0 || len(listed) <= mostNamed
	for _, i := range listed {
		change := &c.all[i]
		if len(selected) > 0 && !selected[changeKey(change)] {
			continue
		}
		before := edgesOf(&change.Before, toPicture)
		after := edgesOf(&change.After, toPicture)
		if len(before) > 0 {
			pic.Shapes = append(pic.Shapes, floorcanvas.Shape{Edges: before, Ink: theme.Care, Width: 2, Dash: floorcanvas.Dashed, Z: 4})
		}
		if len(after) > 0 {
			pic.Shapes = append(pic.Shapes, floorcanvas.Shape{Edges: after, Ink: theme.Selection, Width: 2.5, Z: 5})
		}
		if box, ok := plane.Bounds(append(after, before...)); ok && named {
			pic.Labels = append(pic.Labels, floorcanvas.Label{At: box.Centre(), Text: change.Name() + ": " + string(change.Outcome),
				Size: 11, Ink: theme.Selection, Anchor: floorcanvas.Above, Priority: 3})
		}
	}
}

func edgesOf(e *plan.Element, m plane.Motion) []plane.Edge {
	var out []plane.Edge
	for _, path := range e.Paths {
		for _, edge := range path.Edges() {
			out = append(out, edge.Moved(m))
		}
	}
	return out
}

// rowOf are the cells of a change.
func (c *changes) rowOf(i int, style length.Style) []string {
	change := &c.all[i]
	return []string{tick(c.taken(i)), change.Name(), string(change.Outcome), change.Sentence(style)}
}
