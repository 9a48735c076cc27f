package drawingin

import (
	"bytes"
	"context"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/google/uuid"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/grid"
)

func empty() *prep.Production {
	return prep.New("The Lantern Ferry", length.FeetInches, desktest.Wednesday.AddDate(0, 0, 6), uuid.NewString)
}

// click clicks points of the drawing, in inches.
func (b *bench) click(points ...plane.Point) {
	b.t.Helper()
	c := b.page.board.canvas
	for _, p := range points {
		c.AddPoint(b.page.d.shown(p))
	}
	b.desk.Settle()
}

func (b *bench) ask(q question) {
	b.page.ask(q)
	b.desk.Settle()
}

func TestFromADrawingToElementsInOneChange(t *testing.T) {
	b := open(t, empty())
	before := b.desk.View().Seq
	content := asDXF(1, kitchen)
	b.read("kitchen.dxf", content)
	if b.refusal() != "" || b.page.bringIn.Disabled() {
		t.Fatalf("it cannot be brought in: %s %s", b.refusal(), b.page.d.missing())
	}
	if b.desk.View().Seq != before {
		t.Fatal("reading a drawing has changed the production")
	}
	test.Tap(b.page.bringIn)
	v := b.desk.View()
	if v.Seq != before+1 || !b.left {
		t.Errorf("%d changes, want one, and back to the plan: %v", v.Seq-before, b.left)
	}
	if n := len(v.P.Plan.Elements); n != 2 {
		t.Fatalf("%d elements, want the walls and the table", n)
	}
	// The table is 48 by 36 inches, 96 inches up and on centre.
	for _, e := range v.P.Plan.Elements {
		if e.Kind != plan.Furniture {
			continue
		}
		box, _ := e.Paths[0].Bounds()
		want := plane.Box{Min: plane.Point{X: -24 * length.Inch, Y: 96 * length.Inch}, Max: plane.Point{X: 24 * length.Inch, Y: 132 * length.Inch}}
		if box.Min.To(want.Min) > 1e-6 || box.Max.To(want.Max) > 1e-6 {
			t.Errorf("the table is at %v, want %v", box, want)
		}
	}
	kept, err := b.desk.File().Drawing(context.Background(), v.P.Drawings[0].ID)
	if err != nil || !bytes.Equal(kept, content) {
		t.Errorf("the original has %d bytes (%v), want %d", len(kept), err, len(content))
	}
	b.desk.Undo()
	if n := len(b.desk.View().P.Plan.Elements); n != 0 {
		t.Errorf("undo leaves %d elements", n)
	}
}

func TestLinesAreTakenAndLeftByTouchAndByGroup(t *testing.T) {
	b := open(t, empty())
	b.read("kitchen.dxf", asDXF(1, kitchen))
	b.ask(whichLines)
	taken := b.page.d.taken()
	b.page.board.canvas.OnSelect([]string{itemID(0)}, false)
	b.desk.Settle()
	if b.page.d.taken() != taken-1 || b.page.d.take[0] {
		t.Error("a line that was clicked is still taken")
	}
	b.page.board.canvas.OnSelect([]string{itemID(0), itemID(1)}, false)
	if !b.page.d.take[0] || !b.page.d.take[1] {
		t.Error("a box with a line that is left does not take it")
	}
	if err := b.page.lines.grid.OnEdit("group FURNITURE", takeColumn, grid.Off); err != nil {
		t.Fatal(err)
	}
	b.desk.Settle()
	if n := len(b.page.coming.list); n != 1 {
		t.Errorf("%d elements without the furniture, want the walls", n)
	}
	b.page.takeAsProposed()
	b.desk.Settle()
	if n := len(b.page.coming.list); n != 2 {
		t.Errorf("%d elements as proposed, want 2", n)
	}
	b.page.takeAll(false)
	b.page.board.touching.Set(true)
	b.page.toggle([]int{0})
	if n := b.page.d.taken(); n < 2 || n == len(b.page.d.take) {
		t.Errorf("a line with what touches it takes %d of %d lines, want all of its piece and no other", n, len(b.page.d.take))
	}
	b.page.takeAll(false)
	b.desk.Settle()
	if !b.page.bringIn.Disabled() || !strings.Contains(words(b.page.said), "No line is taken") {
		t.Errorf("nothing is taken, and the page says %q", words(b.page.said))
	}
}

func TestOneKnownDimensionGivesTheScale(t *testing.T) {
	b := open(t, empty())
	b.read("kitchen.dxf", asDXF(0, kitchen)) // the unit is not said
	b.ask(whatScale)
	b.page.scale.askEnds()
	b.click(plane.Point{X: -120, Y: 60}, plane.Point{X: 120, Y: 60})
	type2 := func(text string) {
		e := b.page.scale.known.Target()
		b.desk.Window().Canvas().Focus(e)
		e.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
		test.Type(e, text)
		e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		b.desk.Settle()
	}
	type2("20'")
	if b.page.scale.found != nil { // the drawing had proposed a unit of its own
		test.Tap(tapable(b.page.scale.said, "Use the known length"))
		b.desk.Settle()
	}
	if d := b.page.d; math.Abs(d.scale.perUnit-length.Inch) > 1e-9 || !d.scale.sure {
		t.Errorf("one unit is %v m, want an inch", d.scale.perUnit)
	}
	type2("one")
	if got := b.page.scale.known.Trouble(); got == "" {
		t.Error("a word was taken for a length")
	}
}

func TestADisagreementIsSaidBeforeAnythingChanges(t *testing.T) {
	b := open(t, empty())
	b.read("kitchen.dxf", asDXF(6, kitchen)) // inches that say they are metres
	b.ask(whatScale)
	b.page.scale.askEnds()
	b.click(plane.Point{X: -120, Y: 60}, plane.Point{X: 120, Y: 60})
	before := b.page.d.scale.perUnit
	if err := b.page.scale.knownTyped("", 240*length.Inch); err != nil {
		t.Fatal(err)
	}
	if b.page.scale.found == nil && math.Abs(before-length.Inch) > 1e-9 {
		t.Fatal("the disagreement is not noticed")
	}
	if b.page.d.scale.perUnit != before {
		t.Error("the scale has changed before anybody said so")
	}
	if before != length.Inch && !strings.Contains(words(b.page.scale.said), "inches") {
		t.Errorf("the cause is not named: %q", words(b.page.scale.said))
	}
}

func TestTheDatumIsShownInTheDrawing(t *testing.T) {
	b := open(t, empty())
	b.read("kitchen.dxf", asDXF(1, kitchen[:7])) // nothing is called a centre line
	b.ask(whereDatum)
	if !b.page.bringIn.Disabled() {
		t.Error("it can be brought in without a datum")
	}
	b.page.datum.askOrigin()
	b.click(plane.Point{X: -120, Y: 60})
	b.page.datum.askCentre()
	b.click(plane.Point{X: 0, Y: 0}, plane.Point{X: 0, Y: 100})
	d := b.page.d
	if want := (plane.Point{X: 0, Y: 60}); d.datum.origin.To(want) > 1e-9 || math.Abs(d.datum.up-math.Pi/2) > 1e-9 {
		t.Errorf("the datum is at %v, up %v", d.datum.origin, d.datum.up)
	}
	b.page.datum.askBaseline()
	b.click(plane.Point{X: 77, Y: 12})
	if want := (plane.Point{X: 0, Y: 12}); d.datum.origin.To(want) > 1e-9 {
		t.Errorf("the datum is at %v, want %v", d.datum.origin, want)
	}
	if err := b.page.datum.audience.OnCommit(audienceChoices.name(atLeft)); err != nil {
		t.Fatal(err)
	}
	b.desk.Settle()
	if side, ok := d.audience(); !ok || side != atLeft || d.datum.up != 0 {
		t.Errorf("the audience is %s", side)
	}
	if b.page.bringIn.Disabled() {
		t.Errorf("it cannot be brought in: %s", d.missing())
	}
}

func TestSeveralElementsAreChangedInOneGo(t *testing.T) {
	b := open(t, demo.Production(time.Now()))
	b.read("kitchen.dxf", asDXF(1, kitchen))
	g := b.page.come.grid
	g.Select(g.Shown()...)
	first := g.Shown()[0]
	for column, text := range map[int]string{kindColumn: "Platform", useColumn: "Danced on", linesColumn: "Inner"} {
		if err := g.OnEdit(first, column, text); err != nil {
			t.Fatal(err)
		}
	}
	if err := g.OnEdit(first, nameColumn, "  The deck "); err != nil {
		t.Fatal(err)
	}
	if err := g.OnEdit(first, nameColumn, " "); err == nil {
		t.Error("an element without a name was taken")
	}
	scene := b.desk.View().P.Plan.Scenes[1]
	if err := g.OnEdit(first, scenesColumn, scene.Name); err != nil {
		t.Fatal(err)
	}
	if err := g.OnEdit(first, scenesColumn, "the scene that never was"); err == nil {
		t.Error("a scene that is not there was taken")
	}
	b.page.setTaken([]int{7}, true) // another line: everything is worked out anew
	b.desk.Settle()
	platforms := 0
	for _, c := range b.page.coming.list {
		if c.Kind == plan.Platform && c.Use == plan.Danced && c.Paths[0].Role == plan.Inner && slices.Equal(c.Scenes(), []plan.SceneID{scene.ID}) {
			platforms++
		}
	}
	if platforms < 2 {
		t.Errorf("%d platforms, want the two that were changed, also after another line came in", platforms)
	}
}

func TestARevisionIsTakenOverChangeByChange(t *testing.T) {
	b := open(t, empty())
	b.read("kitchen.dxf", asDXF(1, kitchen))
	test.Tap(b.page.bringIn)
	table := b.desk.View().P.Plan.Elements
	ids := map[string]plan.ElementID{}
	for _, e := range table {
		ids[e.Name] = e.ID
	}

	moved := append([]line(nil), kitchen...)
	for i := 3; i <= 6; i++ { // the table, a foot to stage left
		moved[i].x1, moved[i].x2 = moved[i].x1+12, moved[i].x2+12
	}
	moved = append(moved, line{"PLATFORMS", -100, 200, -60, 200}, line{"PLATFORMS", -60, 200, -60, 240}, line{"PLATFORMS", -60, 240, -100, 240}, line{"PLATFORMS", -100, 240, -100, 200})
	before := b.desk.View().Seq
	b.read("kitchen 2.dxf", asDXF(1, moved))
	if !b.page.revising || b.page.changes.counted() != "1 moved, 1 new, 1 unchanged." {
		t.Fatalf("revising %v: %s", b.page.revising, b.page.changes.counted())
	}
	text := strings.Join(b.page.changes.rowOf(b.page.changes.listed()[1], b.desk.View().Style()), " ")
	if !strings.Contains(text, "1' 0\" to stage left") {
		t.Errorf("the move reads %q", text)
	}
	// On each floor the marks to lay, with what the crew measures.
	rows := b.page.means.rows()
	laid := 0
	for _, r := range rows {
		if r.Cells[0] == "lay" && r.Cells[3] != "" && r.Cells[4] != "" {
			laid++
		}
	}
	if len(b.page.means.floors) != 2 || laid == 0 || laid != len(rows) {
		t.Errorf("%d of %d marks are to be laid on %d floors", laid, len(rows), len(b.page.means.floors))
	}
	if words := b.page.come.floors.words.Text; !strings.Contains(words, "marks to lay") || !strings.Contains(words, "Tape not decided: ") || !strings.Contains(words, "minute") {
		t.Errorf("of the floors it says %q", words)
	}
	test.Tap(b.page.bringIn)
	v := b.desk.View()
	if v.Seq != before+1 || len(v.P.Plan.Elements) != 3 {
		t.Fatalf("%d changes and %d elements, want 1 and 3", v.Seq-before, len(v.P.Plan.Elements))
	}
	for _, e := range v.P.Plan.Elements {
		if id, had := ids[e.Name]; had && id != e.ID {
			t.Errorf("%s has become another element", e.Name)
		}
		if box, _ := e.Paths[0].Bounds(); e.Kind == plan.Furniture && math.Abs(box.Centre().X-12*length.Inch) > 1e-6 {
			t.Errorf("the table is at %v", box)
		}
	}
}

func TestWhatIsGoneStaysUntilSomebodySaysSo(t *testing.T) {
	b := open(t, empty())
	b.read("kitchen.dxf", asDXF(1, kitchen))
	test.Tap(b.page.bringIn)
	b.read("walls.dxf", asDXF(1, append(append([]line(nil), kitchen[:3]...), kitchen[7:]...)))
	if len(b.page.changes.listed()) != 1 || len(b.page.changes.accepted()) != 0 || !b.page.bringIn.Disabled() {
		t.Fatalf("%s; %d are taken over unasked", b.page.changes.counted(), len(b.page.changes.accepted()))
	}
	b.page.come.changes.sayAll(true)
	b.desk.Settle()
	test.Tap(b.page.bringIn)
	if n := len(b.desk.View().P.Plan.Elements); n != 1 {
		t.Errorf("%d elements are left, want the walls", n)
	}
}

func TestFilesThatCannotBeRead(t *testing.T) {
	for _, c := range []struct {
		name    string
		content []byte
		says    string
	}{
		{"empty.dxf", nil, "is empty"},
		{"cut.dxf", asDXF(1, kitchen)[:200], ""},
		{"letter.dxf", []byte("Dear all,\n\nplease find\n"), "DXF"},
		{"plan.pdf", []byte("<html>"), "is called a PDF but is none"},
		{"plan.png", []byte("\x89PNG\r\n\x1a\ncut"), "picture"},
		{"plan.dwg", []byte("AC1032"), "DWG"},
		{"plan.doc", []byte{0xD0, 0xCF}, "none of the drawings"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := open(t, empty())
			before := b.desk.View().Seq
			b.read(c.name, c.content)
			if got := b.refusal(); got == "" || !strings.Contains(got, c.says) {
				t.Errorf("the window says %q, want %q in it", got, c.says)
			}
			if b.desk.View().Seq != before || b.page.content.Objects[0] != b.page.start.content {
				t.Error("something has changed")
			}
		})
	}
}

func TestAKeptDrawingIsOpenedAgainAndNotKeptTwice(t *testing.T) {
	b := open(t, empty())
	b.read("kitchen.dxf", asDXF(1, kitchen))
	test.Tap(b.page.bringIn)
	b.page.Show(b.desk.View())
	b.page.start.grid.Select(b.desk.View().P.Drawings[0].ID)
	b.page.start.openAgain()
	b.desk.Settle()
	if b.page.d == nil {
		t.Fatal("it was not opened")
	}
	if err := b.page.come.changes.as.OnCommit(false); err != nil {
		t.Fatal(err)
	}
	b.desk.Settle()
	test.Tap(b.page.bringIn)
	if p := b.desk.View().P; len(p.Drawings) != 1 || len(p.Plan.Elements) != 4 {
		t.Errorf("%d drawings and %d elements, want 1 and 4", len(p.Drawings), len(p.Plan.Elements))
	}
}
