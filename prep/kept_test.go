package prep

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// counter makes identifiers that are never used again.
func idsFrom(prefix string) func() string {
	n := 0
	return func() string { n++; return fmt.Sprintf("%s-%d", prefix, n) }
}

// filled puts a row into every list of a floor, each with an identifier.
func filled(v reflect.Value, name string, newID func() string) {
	switch v.Kind() {
	case reflect.Slice:
		if v.IsNil() {
			v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		}
		for i := range v.Len() {
			filled(v.Index(i), name, newID)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				filled(v.Field(i), f.Name, newID)
			}
		}
	case reflect.String:
		if v.SetString(name); name == "ID" {
			v.SetString(newID())
		}
	case reflect.Float64:
		v.SetFloat(1.25)
	case reflect.Bool:
		v.SetBool(true)
	}
}

// fullFloor is a floor of which every field says something.
func fullFloor() *Production {
	p := &Production{Settings: DefaultSettings(), Floors: make([]floor.Floor, 1)}
	f := &p.Floors[0]
	filled(reflect.ValueOf(f).Elem(), "", idsFrom("old"))
	f.Name = "Hall"
	f.Measured.Diagonals[0].From, f.Measured.Diagonals[0].To = f.Measured.Walls[1].ID, f.Measured.Points[0].ID
	p.KeepTyped(f.Measured.Walls[0].ID, "length", "12' 6\"")
	p.KeepTyped("somebody else", "length", "9'")
	return p
}

func TestAFloorIsKeptWithEverythingInItButThePlan(t *testing.T) {
	p := fullFloor()
	was := p.Floors[0]
	kept, ok := p.KeepFloor(was.ID, idsFrom("new"))
	if !ok || len(kept.Floors) != 1 || len(kept.Plan.Elements) != 0 || kept.Settings.Title != "Hall" {
		t.Fatalf("kept %v: %+v", ok, kept.Settings)
	}
	is := kept.Floors[0]
	if is.Placement != (plane.Motion{}) || is.Treatments != nil {
		t.Errorf("the placement %v and %d treatments came along", is.Placement, len(is.Treatments))
	}
	// Without identifiers and what stays behind, the two are the same.
	blank := func(f floor.Floor) string {
		f.Placement, f.Treatments = plane.Motion{}, nil
		r := renewal{newID: func() string { return "an identifier" }, of: map[string]string{}}
		r.collect(reflect.ValueOf(f))
		return fmt.Sprintf("%+v", r.renewed(reflect.ValueOf(f)).Interface())
	}
	if a, b := blank(was), blank(is); a != b {
		t.Errorf("was %s\nis  %s", a, b)
	}
	if d := is.Measured.Diagonals[0]; d.From != is.Measured.Walls[1].ID || d.To != is.Measured.Points[0].ID {
		t.Errorf("the diagonal goes from %s to %s", d.From, d.To)
	}
	if len(kept.Typed) != 1 || kept.Typed[0].Row != is.Measured.Walls[0].ID {
		t.Errorf("typed lengths %+v", kept.Typed)
	}
}

func TestEveryIdentifierOfATakenFloorIsNew(t *testing.T) {
	p := fullFloor()
	old := map[string]bool{}
	collect(reflect.ValueOf(p.Floors[0]), old)
	id, ok := p.TakeFloor(p, p.Floors[0].ID, idsFrom("new"))
	if !ok {
		t.Fatal("not taken")
	}
	now := map[string]bool{}
	collect(reflect.ValueOf(*p.Floor(id)), now)
	for i := range now {
		if old[i] {
			t.Errorf("%s is used again", i)
		}
	}
	if got := p.Floor(id).Name; got != "Hall (2)" {
		t.Errorf("a second Hall is called %q", got)
	}
	p.Floor(id).Obstacles[0].Shape.Vertices[0].X = 99
	if p.Floors[0].Obstacles[0].Shape.Vertices[0].X == 99 {
		t.Error("the two floors share their corners")
	}
	if _, ok := p.TakeFloor(p, "gone", idsFrom("new")); ok {
		t.Error("a floor that is not there was taken")
	}
	if _, ok := p.KeepFloor("gone", idsFrom("new")); ok {
		t.Error("a floor that is not there was kept")
	}
}

func TestATakenFloorComesInPlaceOfTheOneThatNobodyTouched(t *testing.T) {
	from := fullFloor()
	from.Floors[0].Kind = floor.Room
	p := New("Second", "m", time.Time{}, idsFrom("first"))
	room := p.Floors[0].ID
	if id, ok := p.TakeFloor(from, from.Floors[0].ID, idsFrom("new")); !ok || id != room || len(p.Floors) != 2 || p.Floors[0].Name != "Hall" || len(p.Floors[0].Obstacles) == 0 {
		t.Fatalf("%v, %v: %d floors, the first is %q", id, ok, len(p.Floors), p.Floors[0].Name)
	}
	if id, ok := p.TakeFloor(from, from.Floors[0].ID, idsFrom("newer")); !ok || id == room || len(p.Floors) != 3 || p.Floors[2].Name != "Hall (2)" {
		t.Errorf("a second one: %v, %d floors", id, len(p.Floors))
	}
}
