package tapeplace

import (
	"context"
	"math"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/floorpicture"
	"groundrow/ui/theme"
)

var wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// open returns the place with a production in a window of the size that it has
// beside the rail.
func open(t testing.TB, production *prep.Production) (*place, *desk.Desk) {
	return desktest.Open(t, production, func(d *desk.Desk) *place {
		p := newPlace(d, func() time.Time { return wednesday })
		p.whatIf.quietly = func(work func(context.Context), done func()) func() {
			work(context.Background())
			done()
			return func() {}
		}
		return p
	})
}

func openDemo(t testing.TB) (*place, *desk.Desk) { return open(t, demo.Production(wednesday)) }

// stockNamed returns a stock by the beginning of its name.
func stockNamed(t testing.TB, p *prep.Production, name string) supplies.Stock {
	t.Helper()
	for _, s := range p.Stocks {
		if strings.HasPrefix(s.Name, name) {
			return s
		}
	}
	t.Fatalf("no tape called %q", name)
	return supplies.Stock{}
}

func TestThePartsOfABarAddUpToItsTotal(t *testing.T) {
	_, d := openDemo(t)
	v := d.View()
	c := chartOf(v.P, runsOf(v, false))
	if len(c.bars) == 0 {
		t.Fatal("no bars")
	}
	for _, b := range c.bars {
		sum := 0.0
		for _, m := range b.parts {
			sum += m
		}
		if math.Abs(sum-b.total) > 1e-6 {
			t.Errorf("%s: parts of %v m, total %v m", b.name, sum, b.total)
		}
	}
}

func TestBarsStayInsideTheirWidth(t *testing.T) {
	_, d := openDemo(t)
	c := chartOf(d.View().P, runsOf(d.View(), false))
	for _, width := range []float32{320, 800, 1400} {
		drawn := c.lay(width, func(s string) float32 { return float32(7 * len(s)) })
		for _, p := range drawn.pieces {
			if p.x < 0 || p.y < 0 || p.y+p.h > drawn.height || width > 420 && p.x+p.w > width {
				t.Errorf("at %v wide a part of %s lies at %+v", width, useNames[p.use], p.box)
			}
		}
	}
}

func TestEveryUseHasALookOfItsOwn(t *testing.T) {
	const side = 24
	seen := map[string]string{}
	for u, at := range patterns {
		var look strings.Builder
		for y := range side {
			for x := range side {
				if at(float64(x), float64(y)) {
					look.WriteByte('x')
				} else {
					look.WriteByte('.')
				}
			}
		}
		if other, ok := seen[look.String()]; ok {
			t.Errorf("%s looks like %s", useNames[u], other)
		}
		seen[look.String()] = useNames[u]
	}
}

func TestTheSumLeadsToTheTotal(t *testing.T) {
	_, d := openDemo(t)
	v := d.View()
	for _, r := range runsOf(v, false) {
		rows := sumRows(v.P, r)
		sum := 0.0
		for _, s := range r.Sum() {
			sum += s.Metres
		}
		if math.Abs(sum-r.Total) > 1e-6 {
			t.Errorf("the steps of %s add up to %v, total %v", nameOf(v.P, r.Stock), sum, r.Total)
		}
		if r.Buy > 0 && !strings.Contains(rows[len(rows)-1].Cells[1], "to deliver before") {
			t.Errorf("the sum of %s ends with %q", nameOf(v.P, r.Stock), rows[len(rows)-1].Cells)
		}
	}
}

func TestOneFloorTakesNoMoreThanAll(t *testing.T) {
	_, d := openDemo(t)
	all, here := runsOf(d.View(), false), runsOf(d.View(), true)
	for _, r := range here {
		if whole, _ := runOf(all, r.Stock); r.Total > whole.Total+1e-9 {
			t.Errorf("%s: one floor takes %v m, all of them %v m", r.Stock, r.Total, whole.Total)
		}
	}
}

func TestChoosingATapeShowsItsLinesAndSum(t *testing.T) {
	p, d := openDemo(t)
	red := stockNamed(t, d.View().P, "Red cloth")
	p.pick(string(red.ID))
	if got := p.tabs.SelectedIndex(); got != tabSum {
		t.Errorf("the tab %d is open, want the sum", got)
	}
	if got := p.sum.Shown(); len(got) < 4 {
		t.Errorf("the sum has %d lines", len(got))
	}
	if !strings.Contains(p.shown.Text, red.Name) {
		t.Errorf("the canvas says %q", p.shown.Text)
	}
	w := d.View().Work(d.View().Floor)
	strong, faint := 0, 0
	for _, s := range pictureOf(d.View().P, w, red.ID).Shapes {
		if kind, _, _ := floorpicture.Parse(s.ID); kind == desk.Element {
			strong += len(s.Edges)
		} else if s.Ink == theme.FaintLine {
			faint += len(s.Edges)
		}
	}
	want := 0
	for _, l := range w.Lines {
		if l.Stock == red.ID {
			want++
		}
	}
	if strong != want || faint != len(w.Lines)-want {
		t.Errorf("%d lines strong and %d faint, want %d and %d", strong, faint, want, len(w.Lines)-want)
	}
	p.desk.Select(desk.Selection{})
	if got := p.tabs.SelectedIndex(); got != tabWhatIf {
		t.Errorf("with nothing selected the tab %d is open, want What if", got)
	}
}

func TestClickingALineChoosesItsTape(t *testing.T) {
	p, d := openDemo(t)
	l := d.View().Work(d.View().Floor).Lines[0]
	p.canvas.OnSelect([]string{"element:" + string(l.Element)}, false)
	if id, _ := d.View().Selected.Of(desk.Stock); id != string(l.Stock) {
		t.Errorf("%q is selected, want %q", id, l.Stock)
	}
}

func TestWithoutATapeTheElementsAreOffered(t *testing.T) {
	p, d := openDemo(t)
	if p.trouble.Visible() {
		t.Fatal("the demo has tape that nobody has chosen")
	}
	red := stockNamed(t, d.View().P, "Red cloth")
	d.Edit("Delete a tape", func(p *prep.Production) error { p.RemoveStock(red.ID); return nil })
	if !p.trouble.Visible() {
		t.Fatal("nothing is said about elements without a tape")
	}
	if words := undecidedWords(d.View().P, runsOf(d.View(), false), len(undecidedElements(d.View()))); !strings.Contains(words, "elements") {
		t.Errorf("said %q", words)
	}
	for _, id := range undecidedElements(d.View()) {
		if e := d.View().P.Plan.Element(plan.ElementID(id)); e == nil || e.Stock != "" {
			t.Errorf("the element %q is offered", id)
		}
	}
}

func TestTapesAreAddedDuplicatedAndDeleted(t *testing.T) {
	p, d := openDemo(t)
	before := len(d.View().P.Stocks)
	p.Add()
	p.Duplicate()
	if got := len(d.View().P.Stocks); got != before+2 {
		t.Fatalf("%d tapes, want %d", got, before+2)
	}
	p.Remove()
	if got := len(d.View().P.Stocks); got != before+1 {
		t.Errorf("%d tapes after deleting one that nothing is laid in", got)
	}
	p.pick(string(stockNamed(t, d.View().P, "Red cloth").ID))
	p.Remove()
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Error("a tape that elements name is deleted without asking")
	}
}

// typeInto replaces what a field holds and leaves it.
func typeInto(d *desk.Desk, field interface{ Target() fyne.Focusable }, text string) {
	c := d.Window().Canvas()
	c.Focus(field.Target())
	field.Target().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	test.Type(field.Target(), text)
	c.Unfocus()
}

func TestATapeIsDescribedByTyping(t *testing.T) {
	p, d := openDemo(t)
	red := stockNamed(t, d.View().P, "Red cloth")
	p.pick(string(red.ID))
	p.tabs.SelectIndex(tabForm)
	typeInto(d, p.form.roll, "55 yd")
	typeInto(d, p.form.roll, "150'")
	typeInto(d, p.form.price, "12.50")
	typeInto(d, p.form.swatch, "AA0011")
	s := d.View().P.Stock(red.ID)
	if math.Abs(s.Roll-45.72) > 1e-9 || s.Cents != 1250 || s.Swatch != "#aa0011" {
		t.Errorf("the tape is %+v", *s)
	}
	if got := p.form.roll.Shown(); got != "150'" {
		t.Errorf("the roll comes back as %q", got)
	}
	typeInto(d, p.form.swatch, "reddish")
	if p.form.swatch.Trouble() == "" || d.View().P.Stock(red.ID).Swatch != "#aa0011" {
		t.Error("a swatch that is none was taken")
	}
}

func TestCellsOfTheTable(t *testing.T) {
	p, d := openDemo(t)
	red := stockNamed(t, d.View().P, "Red cloth")
	for _, c := range []struct {
		name, row string
		column    int
		text      string
		taken     bool
	}{
		{"part rolls", string(red.ID), colShelf, "2,5", true},
		{"no number", string(red.ID), colShelf, "some", false},
		{"below nothing", string(red.ID), colShelf, "-1", false},
		{"a name", string(red.ID), colName, "Scarlet", true},
		{"no name", string(red.ID), colName, " ", false},
		{"a row that is no tape", undecided, colShelf, "1", false},
		{"a tape that is gone", "gone", colShelf, "1", false},
	} {
		if err := p.editCell(c.row, c.column, c.text); (err == nil) != c.taken {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if s := d.View().P.Stock(red.ID); s.Shelf != 2.5 || s.Name != "Scarlet" {
		t.Errorf("the tape is %+v", *s)
	}
}

func TestWhatIsGivenUpIsOneEdit(t *testing.T) {
	p, d := openDemo(t)
	p.tabs.SelectIndex(tabWhatIf)
	if len(p.whatIf.savings) == 0 {
		t.Fatal("nothing could be given up")
	}
	for _, l := range p.whatIf.lines {
		if l.of.Name == "Do not tape the dance line" {
			test.Tap(l.do)
		}
	}
	stage := 0
	for _, l := range d.View().P.DanceLines {
		if d.View().P.Floor(l.Floor).Kind != floor.Stage {
			t.Errorf("the dance line %s of a rehearsal floor is left", l.Name)
		}
		stage++
	}
	if stage != 1 {
		t.Errorf("%d dance lines of the stage are left, want the one there was", stage)
	}
	for _, s := range p.whatIf.savings {
		if s.Name == "Do not tape the dance line" {
			t.Error("what was given up is still offered")
		}
	}
	d.Undo()
	if n := len(d.View().P.DanceLines); n != 2 {
		t.Errorf("%d dance lines after undo", n)
	}
}

func TestAnEmptyListOffersTheUsualTapes(t *testing.T) {
	p, d := open(t, &prep.Production{Settings: prep.DefaultSettings()})
	if p.content.Objects[0] != p.empty {
		t.Fatal("without tapes nothing is offered")
	}
	p.addUsual()
	if len(d.View().P.Stocks) == 0 || p.content.Objects[0] != p.whole {
		t.Error("the usual tapes are not shown")
	}
}

func BenchmarkShow(b *testing.B) {
	p, d := openDemo(b)
	p.pick(string(stockNamed(b, d.View().P, "Red cloth").ID))
	for b.Loop() {
		p.Show(d.View())
	}
}
