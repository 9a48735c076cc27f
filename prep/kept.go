package prep

import (
	"fmt"
	"reflect"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// A floor is kept for next time in a small production of its own: one floor with
// everything in it, and no plan. Nothing tells such a file from any other, so that
// a floor can be taken from a past production as well.

// KeepFloor returns a production that holds the floor alone, to be a file of its own;
// ok is false when there is no such floor.
func (p *Production) KeepFloor(id floor.ID, newID func() string) (kept *Production, ok bool) {
	f := p.Floor(id)
	if f == nil {
		return nil, false
	}
	kept = &Production{Settings: DefaultSettings()}
	kept.Settings.Title = f.Name
	kept.Settings.Unit, kept.Settings.Step, kept.Settings.Paper = p.Settings.Unit, p.Settings.Step, p.Settings.Paper
	kept.Settings.TapeSigma, kept.Settings.TapeLength = p.Settings.TapeSigma, p.Settings.TapeLength
	kept.Plan.Scale = float64(length.UsualScale(p.Unit()))
	kept.Plan.Baseline = plan.PlasterLine
	kept.TakeFloor(p, id, newID)
	return kept, true
}

// TakeFloor adds a floor of another production with everything that belongs to the
// room itself: walls and what was measured, what stands in it, what must stay clear,
// its owner's rule, its own datum and its pivots. Where the plan lay there and what
// was decided about it stay behind. Everything gets an identifier of its own, and
// the floor another name where there is one of that name already. It comes in place of
// the floor of its kind with which the production began, as long as nobody has touched
// that. ok is false when the other production has no such floor.
func (p *Production) TakeFloor(from *Production, id floor.ID, newID func() string) (taken floor.ID, ok bool) {
	f := from.Floor(id)
	if f == nil {
		return "", false
	}
	fresh := renewal{newID: newID, of: map[string]string{}}
	fresh.collect(reflect.ValueOf(*f))
	bare := *f
	bare.Placement, bare.Treatments = plane.Motion{}, nil
	next := fresh.renewed(reflect.ValueOf(bare)).Interface().(floor.Floor)
	if i := slices.IndexFunc(p.Floors, func(f floor.Floor) bool { return f.Kind == next.Kind && reflect.DeepEqual(f, firstFloor(f.ID, f.Kind)) }); i >= 0 {
		next.ID = p.Floors[i].ID
		p.Floors[i].Name = ""
		next.Name = p.freeFloorName(next.Name)
		p.Floors[i] = next
	} else {
		next.Name = p.freeFloorName(next.Name)
		p.Floors = append(p.Floors, next)
	}
	for _, t := range from.Typed {
		if row, ours := fresh.of[t.Row]; ours {
			p.KeepTyped(row, t.Column, t.Text)
		}
	}
	return next.ID, true
}

// freeFloorName is the name, with a number when it is taken.
func (p *Production) freeFloorName(name string) string {
	taken := func(s string) bool {
		return slices.ContainsFunc(p.Floors, func(f floor.Floor) bool { return f.Name == s })
	}
	free := name
	for n := 2; taken(free); n++ {
		free = fmt.Sprintf("%s (%d)", name, n)
	}
	return free
}

// renewal gives new identifiers to a value and everything in it: every text field
// called ID, and every text that names one of them. It looks at the fields by
// reflection, so that a list which floors come to have one day is not forgotten.
type renewal struct {
	newID func() string
	of    map[string]string // old to new
}

func (r renewal) collect(v reflect.Value) {
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			r.collect(v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Field(i)
			if old := field; v.Type().Field(i).Name == "ID" && old.Kind() == reflect.String && old.String() != "" {
				r.of[old.String()] = r.newID()
				continue
			}
			r.collect(field)
		}
	}
}

// renewed returns a copy that shares no memory with the value.
func (r renewal) renewed(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	switch v.Kind() {
	case reflect.Slice:
		if v.IsNil() {
			return out
		}
		out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		for i := range v.Len() {
			out.Index(i).Set(r.renewed(v.Index(i)))
		}
	case reflect.Struct:
		if v.NumField() > 0 && !v.Type().Field(0).IsExported() {
			out.Set(v) // a time or the like: a value without identifiers
			return out
		}
		for i := range v.NumField() {
			out.Field(i).Set(r.renewed(v.Field(i)))
		}
	case reflect.String:
		out.Set(v)
		if next, known := r.of[v.String()]; known {
			out.SetString(next)
		}
	default:
		out.Set(v)
	}
	return out
}
