package suppliesplace

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

var wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// open returns the place with a production in a window of the size that it has
// beside the rail.
func open(t testing.TB, production *prep.Production) (*place, *desk.Desk) {
	return desktest.Open(t, production, func(d *desk.Desk) *place {
		return newPlace(d, func() time.Time { return wednesday })
	})
}

func openDemo(t testing.TB) (*place, *desk.Desk) { return open(t, demo.Production(wednesday)) }

// bare is a production that needs nothing but what a test puts in.
func bare() *prep.Production {
	return &prep.Production{Settings: prep.DefaultSettings()}
}

func itemNamed(t testing.TB, p *prep.Production, name string) supplies.Item {
	t.Helper()
	for _, it := range p.Items {
		if it.Name == name {
			return it
		}
	}
	t.Fatalf("nothing called %q in the kit", name)
	return supplies.Item{}
}

func TestShortThingsComeFirstTheMostUrgentOnTop(t *testing.T) {
	p, _ := openDemo(t)
	enough := false
	for i, n := range p.needed {
		if !n.short() {
			enough = true
			continue
		}
		if enough {
			t.Errorf("%s is short and comes after what is not", n.name)
		}
		if i > 0 && p.needed[i-1].short() && n.orderBy.Before(p.needed[i-1].orderBy) {
			t.Errorf("%s must be ordered before %s, but comes after it", n.name, p.needed[i-1].name)
		}
	}
	if !strings.Contains(p.said.Text, p.needed[0].name) {
		t.Errorf("said %q", p.said.Text)
	}
}

func TestOrderingWhatIsShortIsOneEditAndHappensOnce(t *testing.T) {
	p, d := openDemo(t)
	before := len(d.View().P.Orders)
	short := 0
	for _, n := range p.needed {
		if n.short() {
			short++
		}
	}
	p.orderShort()
	orders := d.View().P.Orders
	if len(orders) != before+short {
		t.Fatalf("%d orders, want %d more than %d", len(orders), short, before)
	}
	for _, n := range p.needed {
		if n.buy != n.planned {
			t.Errorf("%s: %d short, %d planned", n.name, n.buy, n.planned)
		}
	}
	p.orderShort()
	if got := len(d.View().P.Orders); got != len(orders) {
		t.Errorf("a second time makes %d more orders", got-len(orders))
	}
	d.Undo()
	if got := len(d.View().P.Orders); got != before {
		t.Errorf("%d orders after one undo, want %d", got, before)
	}
}

func TestNothingIsShortAfterEverythingHasCome(t *testing.T) {
	p, d := openDemo(t)
	p.orderShort()
	p.orders.Select()
	p.move(supplies.Planned, supplies.Ordered)
	for _, n := range p.needed {
		if n.short() {
			t.Errorf("%s is short with orders out for it", n.name)
		}
	}
	p.move(supplies.Ordered, supplies.Received)
	for _, n := range p.needed {
		if n.short() || n.coming > 0 {
			t.Errorf("%s: %d short, %d coming after everything has been received", n.name, n.buy, n.coming)
		}
	}
	for _, o := range d.View().P.Orders {
		if o.State != supplies.Received || o.Placed.IsZero() {
			t.Errorf("the order %+v", o)
		}
	}
}

func TestAnOrderMovesTheShelf(t *testing.T) {
	p := bare()
	p.Stocks = []supplies.Stock{{ID: "red", Name: "Red", Shelf: 0.5, LeadDays: 4}}
	p.Items = []supplies.Item{{ID: "broom", Name: "Broom", Shelf: 1}}
	p.Orders = []supplies.Order{{ID: "o", For: "red", Quantity: 2, State: supplies.Planned}}
	o := &p.Orders[0]
	for _, step := range []struct {
		name       string
		do         func() error
		red, broom float64
	}{
		{"ordered", func() error { return setState(p, o, supplies.Ordered, wednesday) }, 0.5, 1},
		{"received", func() error { return setState(p, o, supplies.Received, wednesday) }, 2.5, 1},
		{"received again", func() error { return setState(p, o, supplies.Received, wednesday) }, 2.5, 1},
		{"one more than written", func() error { return setQuantity(p, o, 3) }, 3.5, 1},
		{"it was brooms", func() error { return setFor(p, o, "broom") }, 0.5, 4},
		{"not received after all", func() error { return setState(p, o, supplies.Ordered, wednesday) }, 0.5, 1},
	} {
		if err := step.do(); err != nil {
			t.Fatalf("%s: %v", step.name, err)
		}
		if p.Stocks[0].Shelf != step.red || float64(p.Items[0].Shelf) != step.broom {
			t.Errorf("%s: %v red and %d brooms, want %v and %v", step.name, p.Stocks[0].Shelf, p.Items[0].Shelf, step.red, step.broom)
		}
	}
	if want := day(wednesday).AddDate(0, 0, 4); !o.Expected.Equal(want) {
		t.Errorf("expected on %v, want %v", o.Expected, want)
	}
	o.For = "gone"
	if err := setState(p, o, supplies.Received, wednesday); err == nil || o.State == supplies.Received {
		t.Error("what is no longer in the list was put on the shelf")
	}
}

func TestCellsOfTheShelf(t *testing.T) {
	p := bare()
	p.Stocks = []supplies.Stock{{ID: "red", Name: "Red"}}
	p.Items = []supplies.Item{{ID: "broom", Name: "Broom"}}
	for _, c := range []struct {
		id     string
		column int
		text   string
		taken  bool
	}{
		{"red", shelfCount, "1.25", true},
		{"red", shelfCount, "x", false},
		{"red", shelfOut, "1", false},
		{"red", shelfPrice, "$16.50", true},
		{"red", shelfDays, "4 days", true},
		{"red", shelfName, "", false},
		{"broom", shelfCount, "1.5", false},
		{"broom", shelfCount, "3", true},
		{"broom", shelfOut, "2", true},
		{"broom", shelfBack, "1", true},
		{"broom", shelfBack, "-1", false},
		{"broom", shelfDays, "soon", false},
		{"broom", shelfGroup, "cleaning", true},
		{"gone", shelfCount, "1", false},
	} {
		if err := editShelf(p, c.id, c.column, c.text); (err == nil) != c.taken {
			t.Errorf("%s, column %d, %q: %v", c.id, c.column, c.text, err)
		}
	}
	if s := p.Stocks[0]; s.Shelf != 1.25 || s.Cents != 1650 || s.LeadDays != 4 {
		t.Errorf("the tape is %+v", s)
	}
	rows := shelfRows(p)
	if got := rows[1].Cells[shelfMissing]; got != "1" {
		t.Errorf("missing %q, want 1", got)
	}
}

func TestThingsOfOneNameAreToldApart(t *testing.T) {
	p := bare()
	p.Items = []supplies.Item{{ID: "a", Name: "Broom"}, {ID: "b", Name: "Broom"}, {ID: "c", Name: "Broom (2)"}}
	g := goodsOf(p)
	seen := map[string]bool{}
	for _, name := range g.names {
		if seen[name] {
			t.Errorf("%q is offered twice", name)
		}
		seen[name] = true
	}
	for _, it := range p.Items {
		if got := g.ids[g.nameFor(it.ID)]; got != it.ID {
			t.Errorf("%s comes back as %s", it.ID, got)
		}
	}
}

func TestCellsOfTheOrders(t *testing.T) {
	p, d := openDemo(t)
	o := d.View().P.Orders[0]
	for _, c := range []struct {
		column int
		text   string
		taken  bool
	}{
		{orderQuantity, "3", true},
		{orderQuantity, "0", false},
		{orderQuantity, "many", false},
		{orderExpected, "4 Mar", true},
		{orderExpected, "soon", false},
		{orderNote, "by van", true},
		{orderFor, "something else", false},
		{orderFor, "Broom", true},
		{orderState, string(supplies.Received), true},
	} {
		if err := p.editOrder(o.ID, c.column, c.text); (err == nil) != c.taken {
			t.Errorf("column %d, %q: %v", c.column, c.text, err)
		}
	}
	if got := itemNamed(t, d.View().P, "Broom").Shelf; got != 4 {
		t.Errorf("%d brooms on the shelf, want the one and the three received", got)
	}
}

func TestAThingIsAddedTypedAndDeleted(t *testing.T) {
	p, d := openDemo(t)
	before := len(d.View().P.Items)
	p.tabs.SelectIndex(tabShelf)
	p.Add()
	if !p.shelf.Editing() {
		t.Error("the new thing's name is not open for typing")
	}
	c := d.Window().Canvas()
	test.Type(c.Focused(), "Torch")
	c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	torch := itemNamed(t, d.View().P, "Torch")
	p.desk.Select(desk.Select(desk.Item, torch.ID))
	p.item.rule.OnCommit(string(supplies.PerPerson))
	if n := p.needOf(torch.ID); n.need != 3 {
		t.Errorf("%v torches for the team of the demo, want 3", n.need)
	}
	p.Duplicate()
	p.Remove()
	p.desk.Select(desk.Select(desk.Item, torch.ID))
	p.Remove()
	if got := len(d.View().P.Items); got != before {
		t.Errorf("%d things in the kit, want %d", got, before)
	}
}

func TestWhatIsOrderedIsNotDeletedWithoutAsking(t *testing.T) {
	p, d := openDemo(t)
	o := d.View().P.Orders[0]
	p.removeSupplies([]string{o.For})
	if d.View().P.Stock(plan.StockID(o.For)) == nil {
		t.Fatal("deleted without asking")
	}
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Error("nothing is asked")
	}
}

func TestTheKitIsCountedOutAndBack(t *testing.T) {
	p, d := openDemo(t)
	p.countKit("Count out", countOut)
	p.countKit("Count back", countBack)
	for _, it := range d.View().P.Items {
		if it.Out != it.Shelf || it.Back != it.Out {
			t.Errorf("%s: %d on the shelf, %d out, %d back", it.Name, it.Shelf, it.Out, it.Back)
		}
	}
}

func TestAnEmptyListOffersTheUsualKit(t *testing.T) {
	p, d := open(t, bare())
	if !p.kit[0].Visible() {
		t.Fatal("the usual kit is not offered")
	}
	test.Tap(p.kit[0])
	if len(d.View().P.Items) == 0 || p.kit[0].Visible() {
		t.Error("the usual kit did not come")
	}
}

func TestSelectingLeadsToTheRightForm(t *testing.T) {
	p, d := openDemo(t)
	v := d.View()
	for _, c := range []struct {
		s    desk.Selection
		want fyne.CanvasObject
	}{
		{desk.Select(desk.Stock, string(v.P.Stocks[0].ID)), p.stock.content},
		{desk.Select(desk.Item, v.P.Items[0].ID), p.item.form},
		{desk.Select(desk.Order, v.P.Orders[0].ID), p.order.form},
		{desk.Select(desk.Order, "gone"), p.none},
		{desk.Selection{}, p.none},
	} {
		d.Select(c.s)
		if p.side.Objects[0] != c.want {
			t.Errorf("%v shows another form", c.s)
		}
	}
}

func BenchmarkShow(b *testing.B) {
	p, d := openDemo(b)
	for b.Loop() {
		p.Show(d.View())
	}
}
