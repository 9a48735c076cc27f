package transferplace

import (
	"strings"
	"testing"

	"groundrow/assets/demo"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

func TestWhatDiffersIsListedAndSelectedOnBothFloors(t *testing.T) {
	p, d := desktest.Open(t, demo.Production(desktest.Wednesday), func(d *desk.Desk) *place { return New(d).(*place) })
	p.tabs.SelectIndex(tabDiffers)
	shown := p.differs.list.Shown()
	if len(shown) == 0 || !strings.Contains(p.differs.said.Text, "laid otherwise") {
		t.Fatalf("%d rows, and it says %q", len(shown), p.differs.said.Text)
	}
	here, there := d.View().P.Floor(d.View().Floor), d.View().P.Floor(p.to)
	for _, id := range shown {
		e := d.View().P.Plan.Element(plan.ElementID(id))
		a, b := here.Decide(e), there.Decide(e)
		if a.How == b.How && a.How == floor.LeftOut {
			t.Errorf("%s is laid on neither floor", e.Name)
		}
	}
	p.differs.alike.Set(true)
	p.redraw()
	if all := p.differs.list.Shown(); len(all) <= len(shown) {
		t.Errorf("%d rows with what is laid alike, %d without", len(all), len(shown))
	}
	p.differs.list.OnSelect(shown[:1])
	if got, _ := d.View().Selected.Of(desk.Element); got != shown[0] {
		t.Errorf("%q is selected, want %q", got, shown[0])
	}
	p.tabs.SelectIndex(tabRests)
	if n := len(p.rests.Shown()); n < 6 {
		t.Errorf("%d stops, want those of the revolve and of the track", n)
	}
	p.rests.OnSelect(p.rests.Shown()[:1])
	if id, _ := d.View().Selected.Of(desk.Element); d.View().P.Plan.Element(plan.ElementID(id)) == nil {
		t.Errorf("a stop selects %q, which is no element", id)
	}
}
