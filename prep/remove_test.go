package prep

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// dangling returns the references of a production that lead nowhere, found by
// walking everything that the type holds: a field of an identifier's type, or of
// a name that is known to hold one, must name a row.
func dangling(p *Production) []string {
	rows := map[string]bool{"": true}
	collect(reflect.ValueOf(*p), rows)
	var out []string
	walk(reflect.ValueOf(*p), "", func(where, id string) {
		if !rows[id] {
			out = append(out, where+" → "+id)
		}
	})
	return out
}

// collect gathers every field that is called ID.
func collect(v reflect.Value, rows map[string]bool) {
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			collect(v.Index(i), rows)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Field(i)
			if v.Type().Field(i).Name == "ID" {
				rows[f.String()] = true
				continue
			}
			collect(f, rows)
		}
	}
}

// references are the plain text fields that hold an identifier.
var references = []string{"Task.After", "Task.People", "StandIn.Object", "Order.For", "Typed.Row"}

func walk(v reflect.Value, name string, found func(where, id string)) {
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), name, found)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			walk(v.Field(i), v.Type().Name()+"."+v.Type().Field(i).Name, found)
		}
	case reflect.String:
		switch v.Interface().(type) {
		case plan.ElementID, plan.PathID, plan.LevelID, plan.SceneID, plan.StockID, floor.ID:
			found(name, v.String())
		default:
			if slices.Contains(references, name) {
				found(name, v.String())
			}
		}
	}
}

func TestTheFixtureHasNoDanglingReference(t *testing.T) {
	if d := dangling(small()); len(d) > 0 {
		t.Fatalf("%v", d)
	}
	p := small()
	p.Plan.Elements[0].Stock = "nowhere"
	if d := dangling(p); len(d) != 1 {
		t.Fatalf("found %v, want the one that leads nowhere", d)
	}
}

func TestRemovingLeavesNoReferenceBehind(t *testing.T) {
	cuts := map[string]func(*Production){}
	full := small()
	for _, e := range full.Plan.Elements {
		cuts["element "+string(e.ID)] = func(p *Production) { p.RemoveElement(e.ID) }
	}
	for _, f := range full.Floors {
		cuts["floor "+string(f.ID)] = func(p *Production) { p.RemoveFloor(f.ID) }
	}
	for _, s := range full.Plan.Scenes {
		cuts["scene "+string(s.ID)] = func(p *Production) { p.RemoveScene(s.ID) }
	}
	cuts["level"] = func(p *Production) { p.RemoveLevel("up") }
	for _, s := range full.Stocks {
		cuts["stock "+string(s.ID)] = func(p *Production) { p.RemoveStock(s.ID) }
	}
	cuts["item"] = func(p *Production) { p.RemoveItem("knife") }
	for _, x := range full.People {
		cuts["person "+x.ID] = func(p *Production) { p.RemovePerson(x.ID) }
	}
	for _, x := range full.Tasks {
		cuts["task "+x.ID] = func(p *Production) { p.RemoveTask(x.ID) }
	}
	cuts["object"] = func(p *Production) { p.RemoveObject("block") }

	for name, cut := range cuts {
		t.Run(name, func(t *testing.T) {
			p := small()
			before := rowCount(p)
			cut(p)
			if d := dangling(p); len(d) > 0 {
				t.Errorf("left behind: %v", d)
			}
			if rowCount(p) >= before {
				t.Error("nothing was removed")
			}
			again := fmt.Sprintf("%+v", *p)
			if cut(p); fmt.Sprintf("%+v", *p) != again {
				t.Error("removing it a second time changed something")
			}
		})
	}
	p := small()
	for _, cut := range cuts {
		cut(p)
	}
	if d := dangling(p); len(d) > 0 {
		t.Errorf("after removing everything: %v", d)
	}
}

func rowCount(p *Production) int {
	rows := map[string]bool{}
	collect(reflect.ValueOf(*p), rows)
	return len(rows)
}

func TestRemovingTheUnknownChangesNothing(t *testing.T) {
	p, want := small(), small()
	for _, id := range []string{"", "nothing"} {
		p.RemoveElement(plan.ElementID(id))
		p.RemoveFloor(floor.ID(id))
		p.RemoveScene(plan.SceneID(id))
		p.RemoveLevel(plan.LevelID(id))
		p.RemoveStock(plan.StockID(id))
		p.RemoveItem(id)
		p.RemovePerson(id)
		p.RemoveTask(id)
		p.RemoveObject(id)
		p.RemoveNote(id)
		p.RemoveDanceLine(id)
		p.RemovePivot("room", id)
		p.RemovePivot(floor.ID(id), id)
	}
	if !reflect.DeepEqual(p, want) {
		t.Errorf("got %+v", p)
	}
}

func TestRemovedTaskHandsItsOrderOn(t *testing.T) {
	p := small()
	p.RemoveTask("place")
	if after := p.Tasks[1].After; !slices.Equal(after, []string{"clean"}) {
		t.Errorf("laying comes after %v, want the cleaning that placing came after", after)
	}
}

func TestRemovedObjectIsWantedAgain(t *testing.T) {
	p := small()
	p.RemoveObject("block")
	for _, s := range p.StandIns {
		if s.Object != "" || s.State != Wanted {
			t.Errorf("%+v, want it wanted without an object", s)
		}
	}
}

func TestAnElementOfTheRemovedSceneAloneGoesWithIt(t *testing.T) {
	p := small()
	p.RemoveScene("two")
	if p.Plan.Element("lamp") != nil {
		t.Error("the lamp of the removed scene would now stand in every scene")
	}
	if p.Plan.Element("chair") == nil {
		t.Error("the chair that stands in every scene has gone")
	}
}

func TestRemovedRowsForgetWhatWasTypedIntoThem(t *testing.T) {
	p := small()
	p.RemoveNote("n1")
	p.RemoveDanceLine("dance")
	p.RemovePivot("room", "pv1")
	if len(p.Notes) != 1 || len(p.DanceLines) != 0 || len(p.Floor("room").Pivots) != 1 {
		t.Errorf("%d notes, %d dance lines, %d pivots are left", len(p.Notes), len(p.DanceLines), len(p.Floor("room").Pivots))
	}
	for _, typed := range p.Typed {
		if typed.Row == "n1" || typed.Row == "dance" || typed.Row == "pv1" {
			t.Errorf("what was typed into %s is still kept", typed.Row)
		}
	}
}
