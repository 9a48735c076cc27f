package floorsplace

import (
	"fmt"
	"slices"
	"time"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// errGone is what an edit says whose row somebody else has deleted.
func errGone(what string) error {
	return fmt.Errorf("%s is not there any more: somebody has deleted it", what)
}

// onFloor makes a change to one floor.
func onFloor(id floor.ID, change func(*floor.Floor) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		f := p.Floor(id)
		if f == nil {
			return errGone("the floor")
		}
		return change(f)
	}
}

// treat sets what the floor does with the elements, keeping what is not changed
// of a decision that is there.
func treat(f *floor.Floor, pl *plan.Plan, ids []string, change func(*floor.Treatment)) error {
	for _, id := range ids {
		e := pl.Element(plan.ElementID(id))
		if e == nil {
			return errGone("the element")
		}
		t := f.Decide(e)
		change(&t)
		i := slices.IndexFunc(f.Treatments, func(o floor.Treatment) bool { return o.Element == e.ID })
		if i < 0 {
			f.Treatments = append(f.Treatments, t)
			continue
		}
		f.Treatments[i] = t
	}
	return nil
}

// decide puts a name under a decision; an empty name opens it again.
func decide(t *floor.Treatment, by string, on time.Time) {
	if by == "" {
		t.Decided = floor.Decision{}
		return
	}
	t.Decided = floor.Decision{By: by, On: on}
}

// setOutline gives the floor its walls, if they can be walls.
func setOutline(f *floor.Floor, outline plane.Path) error {
	outline.Closed = true
	if err := floor.CheckOutline(outline); err != nil {
		return err
	}
	f.Outline = outline
	return nil
}

// addObstacle and addKeepClear return the identifier of what they add.
func addObstacle(f *floor.Floor, shape plane.Path) string {
	shape.Closed = true
	o := floor.Obstacle{ID: uuid.NewString(), Kind: floor.ObstacleKinds[0], Shape: shape}
	o.Name = fmt.Sprintf("Column %d", len(f.Obstacles)+1)
	f.Obstacles = append(f.Obstacles, o)
	return o.ID
}

func addKeepClear(f *floor.Floor, shape plane.Path) string {
	shape.Closed = true
	k := floor.KeepClear{ID: uuid.NewString(), Kind: floor.KeepClearKinds[0], Shape: shape}
	k.Name = fmt.Sprintf("Exit %d", len(f.KeepClears)+1)
	f.KeepClears = append(f.KeepClears, k)
	return k.ID
}

// addStep returns the identifier of a step along the points.
func addStep(f *floor.Floor, points []plane.Point) (string, error) {
	line := plane.Open(points...)
	if line.Length() < leastStep {
		return "", fmt.Errorf("a step needs a line from one end to the other")
	}
	s := floor.Step{ID: uuid.NewString(), Name: fmt.Sprintf("Step %d", len(f.Steps)+1), Line: line}
	f.Steps = append(f.Steps, s)
	return s.ID, nil
}

// leastStep is the length in metres below which a line is a slip of the hand.
const leastStep = 0.05

func addPivot(f *floor.Floor, at plane.Point) string {
	v := floor.Pivot{ID: uuid.NewString(), Name: floor.UnnamedPivot, At: at}
	f.Pivots = append(f.Pivots, v)
	return v.ID
}

// remove takes a thing of the room off the floor.
func remove(f *floor.Floor, ids []string) {
	gone := func(id string) bool { return slices.Contains(ids, id) }
	release(f, gone)
	f.Obstacles = slices.DeleteFunc(f.Obstacles, func(o floor.Obstacle) bool { return gone(o.ID) })
	f.KeepClears = slices.DeleteFunc(f.KeepClears, func(k floor.KeepClear) bool { return gone(k.ID) })
	f.Steps = slices.DeleteFunc(f.Steps, func(s floor.Step) bool { return gone(s.ID) })
	f.Features = slices.DeleteFunc(f.Features, func(t floor.Feature) bool { return gone(t.ID) })
	f.Ways = slices.DeleteFunc(f.Ways, func(w floor.Way) bool { return gone(w.ID) })
	f.Pivots = slices.DeleteFunc(f.Pivots, func(v floor.Pivot) bool { return gone(v.ID) })
}

// thing is one obstacle, keep-clear area, step, feature or pivot, for what they have in
// common.
type thing struct {
	name  *string
	kind  *string     // nil but for an obstacle and a keep-clear area
	shape *plane.Path // nil for a pivot
	at    *plane.Point
	rise  *float64 // of a step alone
}

func findThing(f *floor.Floor, id string) (t thing, ok bool) {
	for i := range f.Obstacles {
		if o := &f.Obstacles[i]; o.ID == id {
			return thing{name: &o.Name, kind: &o.Kind, shape: &o.Shape}, true
		}
	}
	for i := range f.KeepClears {
		if k := &f.KeepClears[i]; k.ID == id {
			return thing{name: &k.Name, kind: &k.Kind, shape: &k.Shape}, true
		}
	}
	for i := range f.Steps {
		if s := &f.Steps[i]; s.ID == id {
			return thing{name: &s.Name, shape: &s.Line, rise: &s.Rise}, true
		}
	}
	for i := range f.Features {
		if t := &f.Features[i]; t.ID == id {
			return thing{name: &t.Name, shape: &t.Shape}, true
		}
	}
	for i := range f.Pivots {
		if v := &f.Pivots[i]; v.ID == id {
			return thing{name: &v.Name, at: &v.At}, true
		}
	}
	return thing{}, false
}

// move shifts the thing in floor axes.
func (t thing) move(by plane.Point) {
	if t.at != nil {
		*t.at = t.at.Add(by)
		return
	}
	*t.shape = t.shape.Moved(plane.Motion{Shift: by})
}

// newFloor is a floor with nothing measured yet.
func newFloor(kind floor.Kind, name string) floor.Floor {
	return floor.Floor{
		ID: floor.ID(uuid.NewString()), Name: name, Kind: kind,
		Rule: floor.AskFirst, Side: floor.Outside,
	}
}
