package prep

import (
	"testing"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestFrozenLabelsStayWhenThePlanGrows(t *testing.T) {
	p := &Production{Settings: DefaultSettings(), Floors: []floor.Floor{{ID: "room", Kind: floor.Room}}}
	line := func(id string, y float64) plan.Element {
		return plan.Element{ID: plan.ElementID(id), Name: id, Kind: plan.Wall, Paths: []plan.Path{{
			ID: plan.PathID(id), Role: plan.Outline, Path: plane.Open(plane.Point{X: -2, Y: y}, plane.Point{X: 2, Y: y})}}}
	}
	p.Plan.Elements = []plan.Element{line("back", 5)}
	on := time.Date(2031, 3, 4, 9, 0, 0, 0, time.UTC)
	p.FreezeLabels("room", on)
	p.FreezeLabels("room", on.Add(time.Hour))
	if len(p.Issued) != 2 {
		t.Fatalf("%d labels are frozen, want the two of the wall, once each", len(p.Issued))
	}
	p.Plan.Elements = append(p.Plan.Elements, line("front", 1))
	for _, m := range Work(p, "room", "").Marks {
		if m.Frozen != (m.Up() > 3) {
			t.Errorf("mark %s at %.0f m up: frozen is %v", m.Label, m.Up(), m.Frozen)
		}
		if m.Frozen && m.Label != "A" && m.Label != "B" {
			t.Errorf("the label of the printed mark at %.0f m up has become %s", m.Up(), m.Label)
		}
	}
}

func TestAPrintingIsKeptOnce(t *testing.T) {
	p := &Production{}
	r := Printing{Sheet: "kit", On: time.Date(2031, 3, 4, 9, 0, 0, 0, time.UTC), State: "one"}
	p.KeepPrinting(r)
	r.State = "two"
	p.KeepPrinting(r)
	if len(p.Printings) != 1 || p.Printings[0].State != "two" {
		t.Errorf("kept %+v, want the later of two printings in one moment", p.Printings)
	}
}
