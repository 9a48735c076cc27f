package paperplace

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/prep/sheets"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

var wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// open returns the place with a production in a window of the size that it has
// beside the rail. Background work is done at once, and what would be opened is
// listed. Without kinds there is every sheet.
func open(t testing.TB, production *prep.Production, only ...sheets.Kind) (p *place, d *desk.Desk, opened *[]string) {
	opened = &[]string{}
	p, d = desktest.Open(t, production, func(d *desk.Desk) *place {
		p := &place{desk: d, now: func() time.Time { return wednesday }}
		p.quietly = func(work func(context.Context), done func()) func() {
			work(context.Background())
			done()
			return func() {}
		}
		p.run = func(_ string, work func(context.Context) error, done func(error)) { done(work(context.Background())) }
		p.open = func(path string) error { *opened = append(*opened, path); return nil }
		p.build()
		p.cards = slices.DeleteFunc(p.cards, func(c *card) bool { return len(only) > 0 && !slices.Contains(only, c.sheet.Kind) })
		return p
	})
	return p, d, opened
}

// openDemo opens the demo with one small sheet: setting all of them for every
// test would take long.
func openDemo(t testing.TB) (*place, *desk.Desk, *[]string) {
	return open(t, demo.Production(wednesday), sheets.Care)
}

// openAll opens the demo with every sheet.
func openAll(t testing.TB) (*place, *desk.Desk, *[]string) {
	return open(t, demo.Production(wednesday))
}

// agree presses the button that accepts a question.
func agree(t testing.TB, d *desk.Desk) {
	t.Helper()
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Fatal("nothing is asked")
	}
	d.Window().Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

// chooseKind looks at a sheet; a place of few sheets gets it first.
func (p *place) chooseKind(t testing.TB, k sheets.Kind) {
	t.Helper()
	for i, c := range p.cards {
		if c.sheet.Kind == k {
			p.choose(i)
			return
		}
	}
	sheet, ok := sheets.Find(k)
	if !ok {
		t.Fatalf("there is no sheet %q", k)
	}
	p.chosen = len(p.cards)
	p.cards = append(p.cards, &card{sheet: sheet})
	p.Show(p.view)
}

func TestEverySheetHasACard(t *testing.T) {
	p, _, _ := openAll(t)
	if len(p.cards) != len(sheets.All()) {
		t.Fatalf("%d cards", len(p.cards))
	}
	for _, c := range p.cards {
		if c.err != nil || c.doc == nil || c.small == nil || c.record.standing != notPrinted {
			t.Errorf("%s: %v, %v", c.sheet.Name, c.err, c.record)
		}
	}
}

func TestPrintingTellsOnceRecordsAndFreezes(t *testing.T) {
	p, d, opened := openDemo(t)
	before := len(d.View().P.Issued)
	p.chooseKind(t, sheets.Tabs)
	p.print(p.one(), toViewer)
	if len(*opened) != 0 || len(d.View().P.Printings) != 0 {
		t.Fatal("printed before anybody agreed")
	}
	agree(t, d)
	if len(*opened) != 1 {
		t.Fatalf("%d files opened", len(*opened))
	}
	if b, err := os.ReadFile((*opened)[0]); err != nil || !strings.HasPrefix(string(b), "%PDF") {
		t.Errorf("%s is no PDF: %v", (*opened)[0], err)
	}
	if !strings.Contains(p.side.told.Text, (*opened)[0]) {
		t.Errorf("said %q", p.side.told.Text)
	}
	for _, m := range d.View().Work(d.View().Floor).Marks {
		if !m.Frozen {
			t.Fatalf("the label %s is not frozen", m.Label)
		}
	}
	if got := p.card().record.standing; got != stillRight {
		t.Errorf("just printed, but it stands at %v", got)
	}
	p.print(p.one(), toViewer)
	if len(*opened) != 2 {
		t.Error("asked a second time")
	}
	d.Undo()
	d.Undo()
	if p := d.View().P; len(p.Printings) != 0 || len(p.Issued) != before {
		t.Errorf("%d printings and %d labels after undoing both", len(p.Printings), len(p.Issued)-before)
	}
}

func TestAChangePutsWhatShowsItOutOfDate(t *testing.T) {
	p, d, opened := openDemo(t)
	p.chooseKind(t, sheets.Kit)
	p.print(p.one(), toViewer)
	if len(*opened) != 1 {
		t.Fatal("a sheet without labels asks")
	}
	d.Edit("Buy brooms", func(p *prep.Production) error { p.Items[0].Shelf += 3; return nil })
	if got := p.card().record; got.standing != outOfDate || !strings.Contains(got.words(), "Out of date") {
		t.Errorf("it stands at %v: %q", got.standing, got.words())
	}
	if !strings.Contains(p.said.Text, "1 out of date") {
		t.Errorf("said %q", p.said.Text)
	}
	p.print(p.stale(), toViewer)
	if got := p.card().record.standing; got != stillRight {
		t.Errorf("printed again, but it stands at %v", got)
	}
}

func TestAPlanOfAnotherSceneIsNotOutOfDate(t *testing.T) {
	p, d, _ := openDemo(t)
	scene := d.View().P.Plan.Scenes[0]
	d.ChooseScene(scene.ID)
	p.chooseKind(t, sheets.FloorPlan)
	p.print(p.one(), toViewer)
	agree(t, d)
	d.ChooseScene(d.View().P.Plan.Scenes[1].ID)
	if got := p.card().record; got.standing != stillRight || got.scene != scene.Name {
		t.Errorf("it stands at %+v", got)
	}
}

func TestPrintAllOpensTheFolder(t *testing.T) {
	p, d, opened := openDemo(t)
	p.print(p.all(), toViewer)
	agree(t, d)
	if len(*opened) != 1 {
		t.Fatalf("%d things opened", len(*opened))
	}
	files, err := os.ReadDir((*opened)[0])
	if err != nil || len(files) != len(sheets.All()) {
		t.Errorf("%d files in the folder: %v", len(files), err)
	}
	if _, label := d.File().UndoLabel(); !label {
		t.Error("nothing to undo")
	}
	d.Undo()
	if n := len(d.View().P.Printings); n != 0 {
		t.Errorf("%d printings after one undo", n)
	}
}

func TestThePrinterTakesTheFiles(t *testing.T) {
	p, d, opened := openDemo(t)
	var sent []string
	refuse := errors.New("out of paper")
	p.printer = func(_ context.Context, files []string, size sheets.PageSize) error {
		sent = append(sent, files...)
		return refuse
	}
	p.chooseKind(t, sheets.Week)
	p.print(p.one(), toPrinter)
	if len(d.View().P.Printings) != 0 {
		t.Error("what the printer refused is recorded as printed")
	}
	refuse = nil
	p.print(p.one(), toPrinter)
	if len(sent) != 2 || len(*opened) != 0 || len(d.View().P.Printings) != 1 {
		t.Errorf("sent %v, opened %v, %d printings", sent, *opened, len(d.View().P.Printings))
	}
}

func TestSavingAsCSVRecordsNothing(t *testing.T) {
	p, d, _ := openDemo(t)
	s, _ := sheets.Find(sheets.UpOver)
	path := filepath.Join(t.TempDir(), "marks.csv")
	p.save(s, jobOf(d.View(), p.choice, wednesday), path)
	if b, err := os.ReadFile(path); err != nil || !strings.Contains(string(b), ",") {
		t.Errorf("%v: %.40q", err, b)
	}
	if len(d.View().P.Printings) != 0 {
		t.Error("a table is recorded as printed")
	}
	p.save(s, jobOf(d.View(), p.choice, wednesday), filepath.Join(filepath.Dir(path), "marks.pdf"))
	if len(d.View().P.Printings) != 1 {
		t.Error("a PDF is not recorded")
	}
	p.save(s, jobOf(d.View(), p.choice, wednesday), filepath.Join(path, "nowhere.pdf"))
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Error("a folder that is not there is not complained of")
	}
}

func TestAnotherPaperSetsThePagesAnew(t *testing.T) {
	p, _, _ := openDemo(t)
	p.chooseKind(t, sheets.UpOver)
	small := p.card().doc.Pages()
	if err := p.size.OnCommit("A3"); err != nil {
		t.Fatal(err)
	}
	if got := p.card().doc.Pages(); got >= small {
		t.Errorf("%d pages of A3, %d of the smaller paper", got, small)
	}
}

func TestPagesAreTurnedWithinTheSheet(t *testing.T) {
	p, _, _ := openDemo(t)
	p.chooseKind(t, sheets.UpOver)
	last := p.card().doc.Pages()
	for range last + 3 {
		p.side.turn(1)
	}
	if p.side.page != last-1 || !p.side.on.Disabled() || p.side.back.Disabled() {
		t.Errorf("page %d of %d", p.side.page+1, last)
	}
	p.chooseKind(t, sheets.Care)
	if p.side.page != 0 {
		t.Error("another sheet does not begin with its first page")
	}
}

func TestNamesOfFiles(t *testing.T) {
	for in, want := range map[string]string{
		"Tannery Hall - Kit":     "Tannery Hall - Kit",
		`a/b\c:d*e?f"g<h>i|j`:    "abcdefghij",
		"  ..  ":                 "sheet",
		strings.Repeat("é", 200): strings.Repeat("é", 120),
		"up\nand\x00over":        "upandover",
	} {
		if got := plain(in); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
	}
}

func TestWithoutAFloorTheFloorsAreOffered(t *testing.T) {
	p, _, _ := open(t, &prep.Production{Settings: prep.DefaultSettings()})
	if p.content.Objects[0] != p.empty {
		t.Error("nothing is offered")
	}
}

func TestScalesOfferedAreRead(t *testing.T) {
	_, d, _ := openDemo(t)
	for _, name := range scaleNames(d.View().P.Unit())[1:] {
		if !scaleNamed(name).Valid() {
			t.Errorf("%q is offered and not read", name)
		}
	}
	if scaleNamed(anyScale) != 0 {
		t.Error("what fits has a scale")
	}
}

func TestPrintingDoesNotPutASheetOutOfDate(t *testing.T) {
	p, d, _ := openAll(t)
	p.print(p.all(), toViewer)
	agree(t, d)
	for _, c := range p.cards {
		if c.record.standing != stillRight {
			t.Errorf("%s, just printed: %q", c.sheet.Name, c.record.words())
		}
	}
	if !p.again.Disabled() {
		t.Error("what is out of date can be printed, but nothing is")
	}
}
