package desk

import (
	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

// Kind is what sort of thing is selected.
type Kind string

// Kinds of selection.
const (
	Nothing   Kind = ""
	Element   Kind = "element"
	Scene     Kind = "scene"
	Level     Kind = "level"
	Floor     Kind = "floor"
	Obstacle  Kind = "obstacle"
	KeepClear Kind = "keep clear"
	Step      Kind = "step in the floor"
	Feature   Kind = "feature" // a door, a window or another feature of the room
	Way       Kind = "way"
	Pivot     Kind = "pivot"
	Mark      Kind = "mark" // by its label on the chosen floor
	DanceLine Kind = "dance line"
	Stock     Kind = "stock"
	Item      Kind = "item"
	Order     Kind = "order"
	Task      Kind = "task"
	Person    Kind = "person"
	Object    Kind = "object"
	StandIn   Kind = "stand-in"
	Note      Kind = "note"
)

// Selection is what is selected, across places.
type Selection struct {
	Kind Kind
	IDs  []string
}

// InRoom tells what a thing of some floor is, and which floor has it; ok is false for
// an identifier that no floor has.
func InRoom(p *prep.Production, id string) (on floor.ID, kind Kind, ok bool) {
	for i := range p.Floors {
		f := &p.Floors[i]
		for _, o := range f.Obstacles {
			if o.ID == id {
				return f.ID, Obstacle, true
			}
		}
		for _, k := range f.KeepClears {
			if k.ID == id {
				return f.ID, KeepClear, true
			}
		}
		for _, s := range f.Steps {
			if s.ID == id {
				return f.ID, Step, true
			}
		}
		for _, t := range f.Features {
			if t.ID == id {
				return f.ID, Feature, true
			}
		}
		for _, w := range f.Ways {
			if w.ID == id {
				return f.ID, Way, true
			}
		}
	}
	return "", Nothing, false
}

// Select returns the selection of one thing.
func Select(kind Kind, ids ...string) Selection { return Selection{kind, ids} }

// Of returns the first selected identifier when the selection is of the kind.
func (s Selection) Of(kind Kind) (id string, ok bool) {
	if s.Kind != kind || len(s.IDs) == 0 {
		return "", false
	}
	return s.IDs[0], true
}

// View is one consistent picture of the production and of what is looked at. It
// is read-only.
type View struct {
	store.Snapshot
	Who      string
	Path     string
	Floor    floor.ID
	Scene    plan.SceneID
	Selected Selection

	works *works
}

// works keeps what was computed from one snapshot.
type works struct {
	seq  int64
	done map[floor.ID]*prep.FloorWork
}

// Work returns everything computed for the floor over all scenes; nil when there
// is no such floor. It is computed once for each snapshot.
func (v *View) Work(id floor.ID) *prep.FloorWork {
	if w, ok := v.works.done[id]; ok {
		return w
	}
	w := prep.Work(v.P, id, "")
	v.works.done[id] = w
	return w
}

// Here returns the work of the chosen floor limited to the chosen scene; nil
// when the production has no floor yet.
func (v *View) Here() *prep.FloorWork {
	w := v.Work(v.Floor)
	if w == nil {
		return nil
	}
	return w.In(v.Scene)
}

// Style is how the production writes lengths.
func (v *View) Style() length.Style { return v.P.Style() }

// settle keeps the chosen floor and scene valid: a floor that is gone gives way
// to the first one, a scene that is gone to all of them.
func (v *View) settle() {
	if v.P.Floor(v.Floor) == nil {
		v.Floor = ""
		if len(v.P.Floors) > 0 {
			v.Floor = v.P.Floors[0].ID
		}
	}
	if v.P.Plan.Scene(v.Scene) == nil {
		v.Scene = ""
	}
}
