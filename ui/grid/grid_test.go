package grid

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// sheet is a small model behind a grid: what a screen does with the callbacks.
type sheet struct {
	g    *Grid
	w    fyne.Window
	rows []Row
	// edits lists what OnEdit was asked for; refuse answers it.
	edits  []string
	refuse func(text string) error
}

var sheetColumns = []Column{
	{Title: "Name", Width: 120, Grow: true},
	{Title: "Count", Width: 80, Right: true, Hint: "whole number"},
	{Title: "Kind", Width: 80, Choices: []string{"wall", "door", "window"}},
	{Title: "Ready", Width: 60, Tick: true},
	{Title: "Total", Width: 80, Right: true, ReadOnly: true},
}

func newSheet(t *testing.T, names ...string) *sheet {
	t.Helper()
	test.NewTempApp(t)
	s := &sheet{g: New(sheetColumns), refuse: func(string) error { return nil }}
	for i, n := range names {
		s.rows = append(s.rows, Row{ID: "r" + n, Cells: []string{n, fmt.Sprint(10 * (i + 1)), "wall", "", "1"}})
	}
	s.g.OnEdit = func(id string, col int, text string) error {
		s.edits = append(s.edits, fmt.Sprintf("%s/%d=%s", id, col, text))
		if err := s.refuse(text); err != nil {
			return err
		}
		i := slices.IndexFunc(s.rows, func(r Row) bool { return r.ID == id })
		s.rows = slices.Clone(s.rows)
		s.rows[i].Cells = slices.Clone(s.rows[i].Cells)
		s.rows[i].Cells[col] = text
		s.g.SetRows(s.rows)
		return nil
	}
	s.g.SetRows(s.rows)
	s.w = test.NewTempWindow(t, s.g)
	s.w.Resize(fyne.NewSize(640, 300))
	return s
}

// key sends keys to whatever has the focus, as the window would.
func (s *sheet) key(names ...fyne.KeyName) {
	for _, n := range names {
		s.w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: n})
	}
}

// typed types into whatever has the focus; the focus may move with the first character.
func (s *sheet) typed(text string) {
	for _, r := range text {
		s.w.Canvas().Focused().TypedRune(r)
	}
}

func (s *sheet) click(id string, col int, with fyne.KeyModifier) {
	pos, size, ok := s.g.body.cellAt(place{id, col})
	if !ok {
		panic("no cell " + id)
	}
	at := fyne.PointEvent{Position: pos.AddXY(size.Width/2, size.Height/2)}
	s.g.body.MouseDown(&desktop.MouseEvent{PointEvent: at, Button: desktop.MouseButtonPrimary, Modifier: with})
	s.g.body.Tapped(&at)
}

func (s *sheet) cell(id string, col int) string {
	r, _ := s.g.row(id)
	return r.cell(col)
}

func wantCurrent(t *testing.T, g *Grid, id string, col int) {
	t.Helper()
	if r, c, ok := g.Current(); !ok || r != id || c != col {
		t.Errorf("current cell is %s/%d (%v), want %s/%d", r, c, ok, id, col)
	}
}

func TestTypingEditsTheCellAndEnterMovesDown(t *testing.T) {
	s := newSheet(t, "A", "B", "C")
	s.click("rA", 1, 0)
	s.typed("77")
	if s.g.editor.Text != "77" || !s.g.Editing() {
		t.Fatalf("typing opened %q, editing %v", s.g.editor.Text, s.g.Editing())
	}
	s.key(fyne.KeyReturn)
	if got := s.cell("rA", 1); got != "77" {
		t.Errorf("the cell holds %q", got)
	}
	if s.g.Editing() {
		t.Error("the edit stayed open")
	}
	wantCurrent(t, s.g, "rB", 1)
	s.typed("5")
	s.key(fyne.KeyReturn)
	if got := s.cell("rB", 1); got != "5" {
		t.Errorf("typing on after Enter gave %q", got)
	}
}

func TestASecondClickOpensTheCellAndEscapeLeavesItAsItWas(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.click("rA", 0, 0)
	if s.g.Editing() {
		t.Fatal("the first click opened the cell")
	}
	s.click("rA", 0, 0)
	if !s.g.Editing() || s.g.editor.SelectedText() != "A" {
		t.Fatalf("the second click: editing %v, selected %q", s.g.Editing(), s.g.editor.SelectedText())
	}
	s.typed("zzz")
	s.key(fyne.KeyEscape)
	if s.cell("rA", 0) != "A" || len(s.edits) != 0 {
		t.Errorf("after Esc the cell holds %q, edits %v", s.cell("rA", 0), s.edits)
	}
	if s.w.Canvas().Focused() != s.g.body {
		t.Error("the keyboard did not come back to the cells")
	}
}

func TestAnUnchangedTextAsksForNothing(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.click("rA", 0, 0)
	s.key(fyne.KeyF2, fyne.KeyReturn)
	if len(s.edits) != 0 {
		t.Errorf("edits %v", s.edits)
	}
}

func TestTabGoesFromCellToCellAndOnToTheNextRow(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.click("rA", 0, 0)
	s.key(fyne.KeyReturn)
	s.typed("first")
	s.key(fyne.KeyTab)
	wantCurrent(t, s.g, "rA", 1)
	if !s.g.Editing() {
		t.Fatal("Tab did not open the next cell")
	}
	s.typed("8")
	s.g.editor.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	s.key(fyne.KeyTab)
	wantCurrent(t, s.g, "rA", 0)
	if want := []string{"rA/0=first", "rA/1=8"}; !slices.Equal(s.edits, want) {
		t.Errorf("edits %v, want %v", s.edits, want)
	}
}

func TestARefusedEditStaysOpenWithItsTextAndTheReason(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.refuse = func(string) error { return errors.New("“lots” is not a number") }
	s.click("rA", 1, 0)
	s.typed("lots")
	s.key(fyne.KeyReturn)
	if !s.g.Editing() || s.g.editor.Text != "lots" {
		t.Fatalf("editing %v with %q", s.g.Editing(), s.g.editor.Text)
	}
	if !s.g.note.box.Visible() || s.g.note.words.Text != "“lots” is not a number" {
		t.Errorf("the note says %q, visible %v", s.g.note.words.Text, s.g.note.box.Visible())
	}
	s.click("rB", 0, 0)
	if !s.g.Editing() || s.g.editor.Text != "lots" {
		t.Error("clicking elsewhere lost the refused text")
	}
	s.key(fyne.KeyEscape)
	if s.g.note.box.Visible() {
		t.Error("the note outlived the edit")
	}
}

func TestGoingElsewhereCommits(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.click("rA", 1, 0)
	s.typed("3")
	s.w.Canvas().Focus(s.g.tools.filter)
	if s.g.Editing() || s.cell("rA", 1) != "3" {
		t.Errorf("editing %v, cell %q", s.g.Editing(), s.cell("rA", 1))
	}
	if s.w.Canvas().Focused() != s.g.tools.filter {
		t.Error("the focus did not stay where the person went")
	}
}

func TestNewRowsDoNotTouchAnOpenEdit(t *testing.T) {
	s := newSheet(t, "A", "B", "C")
	s.click("rB", 0, 0)
	s.typed("half ty")
	more := append([]Row{{ID: "new", Cells: []string{"0"}}}, s.rows...)
	s.g.SetRows(more)
	if s.g.editor.Text != "half ty" || s.g.edit.at.row != "rB" {
		t.Fatalf("the edit holds %q in %s", s.g.editor.Text, s.g.edit.at.row)
	}
	pos, _, _ := s.g.body.cellAt(place{"rB", 0})
	if s.g.editor.box.Position() != pos {
		t.Error("the entry did not follow its row")
	}
	s.typed("ped")
	s.rows = more
	s.key(fyne.KeyReturn)
	if got := s.cell("rB", 0); got != "half typed" {
		t.Errorf("committed %q", got)
	}
}

func TestAnEditWhoseRowIsGoneSaysWhatWasTyped(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.click("rA", 0, 0)
	s.typed("lost?")
	s.g.SetRows(s.rows[1:])
	if s.g.Editing() || !strings.Contains(s.g.Said(), "lost?") {
		t.Errorf("editing %v, said %q", s.g.Editing(), s.g.Said())
	}
}

func TestSelectionFollowsRowsByIdentifier(t *testing.T) {
	s := newSheet(t, "A", "B", "C", "D")
	var reported [][]string
	s.g.OnSelect = func(ids []string) { reported = append(reported, ids) }
	s.click("rB", 0, 0)
	s.click("rC", 0, fyne.KeyModifierShift)
	slices.Reverse(s.rows)
	s.g.SetRows(s.rows)
	if got := s.g.Selected(); !slices.Equal(got, []string{"rC", "rB"}) {
		t.Errorf("selected %v", got)
	}
	s.click("rA", 0, fyne.KeyModifierShortcutDefault)
	s.click("rB", 0, fyne.KeyModifierShortcutDefault)
	want := [][]string{{"rB"}, {"rB", "rC"}, {"rC", "rB", "rA"}, {"rC", "rA"}}
	if fmt.Sprint(reported) != fmt.Sprint(want) {
		t.Errorf("reported %v, want %v", reported, want)
	}
}

func TestDeletingGoesOnFromTheSamePlace(t *testing.T) {
	s := newSheet(t, "A", "B", "C")
	s.g.OnDelete = func(ids []string) {
		s.rows = slices.DeleteFunc(slices.Clone(s.rows), func(r Row) bool { return slices.Contains(ids, r.ID) })
		s.g.SetRows(s.rows)
	}
	s.click("rB", 0, 0)
	s.key(fyne.KeyDelete)
	wantCurrent(t, s.g, "rC", 0)
	s.key(fyne.KeyDelete)
	wantCurrent(t, s.g, "rA", 0)
	s.key(fyne.KeyDelete)
	if len(s.rows) != 0 || !s.g.empty.box.Visible() {
		t.Errorf("%d rows left, empty words visible %v", len(s.rows), s.g.empty.box.Visible())
	}
	s.key(fyne.KeyDelete, fyne.KeyDown, fyne.KeyReturn) // nothing to act on, and nothing happens
}

func TestArrowsMoveAndShiftExtends(t *testing.T) {
	s := newSheet(t, "A", "B", "C", "D")
	s.click("rA", 0, 0)
	s.key(fyne.KeyDown, fyne.KeyRight)
	wantCurrent(t, s.g, "rB", 1)
	s.g.body.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	s.key(fyne.KeyDown, fyne.KeyDown)
	s.g.body.KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	if got := s.g.Selected(); !slices.Equal(got, []string{"rB", "rC", "rD"}) {
		t.Errorf("selected %v", got)
	}
	s.key(fyne.KeyHome)
	wantCurrent(t, s.g, "rD", 0)
	s.key(fyne.KeyEnd)
	wantCurrent(t, s.g, "rD", 4)
}

func TestTicksToggleByKeyAndByClick(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.click("rA", 3, 0)
	if got := s.cell("rA", 3); got != On {
		t.Errorf("a click left %q", got)
	}
	s.typed(" ")
	if got := s.cell("rA", 3); got != Off {
		t.Errorf("a space left %q", got)
	}
}

func TestPickingNarrowsAndChooses(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.click("rA", 2, 0)
	s.typed("d")
	p, ok := s.w.Canvas().Focused().(*picker)
	if !ok {
		t.Fatalf("the focus is on %T", s.w.Canvas().Focused())
	}
	if !slices.Equal(p.found, []string{"door", "window"}) {
		t.Errorf("found %v", p.found)
	}
	s.key(fyne.KeyDown, fyne.KeyReturn)
	if got := s.cell("rA", 2); got != "window" {
		t.Errorf("picked %q", got)
	}
	if s.w.Canvas().Focused() != s.g.body {
		t.Error("the keyboard did not come back to the cells")
	}
}

func TestReadOnlyCellsActivate(t *testing.T) {
	s := newSheet(t, "A")
	activated := ""
	s.g.OnActivate = func(id string) { activated = id }
	s.click("rA", 4, 0)
	s.key(fyne.KeyReturn)
	s.typed("9")
	if activated != "rA" || s.g.Editing() {
		t.Errorf("activated %q, editing %v", activated, s.g.Editing())
	}
}

func TestFilterCountsAndFindsNothing(t *testing.T) {
	s := newSheet(t, "Wall one", "Wall two", "Door")
	s.w.Canvas().Focus(s.g.tools.filter)
	test.Type(s.g.tools.filter, "wall TW")
	if got := s.g.Shown(); !slices.Equal(got, []string{"rWall two"}) {
		t.Errorf("shown %v", got)
	}
	if got := s.g.tools.count.Text; got != "1 of 3 shown" {
		t.Errorf("count %q", got)
	}
	test.Type(s.g.tools.filter, "q")
	if !s.g.empty.box.Visible() || !strings.Contains(s.g.empty.words.Text, "wall TWq") {
		t.Errorf("words %q", s.g.empty.words.Text)
	}
	test.Tap(s.g.empty.button)
	if len(s.g.Shown()) != 3 || s.g.tools.filter.Text != "" {
		t.Errorf("show all left %v and %q", s.g.Shown(), s.g.tools.filter.Text)
	}
}

func TestEditingARowThatTheFilterHidesTakesTheFilterOff(t *testing.T) {
	s := newSheet(t, "Wall", "Door")
	s.g.SetFilter("wall")
	if !s.g.Edit("rDoor", 0) || s.g.edit.at != (place{"rDoor", 0}) || len(s.g.Shown()) != 2 {
		t.Errorf("editing %v, shown %v", s.g.edit.at, s.g.Shown())
	}
	if s.g.Edit("nobody", 0) {
		t.Error("an unknown row was edited")
	}
}

func TestShortcutsOfTheWindowPassThroughTheCells(t *testing.T) {
	s := newSheet(t, "A")
	heard := false
	undo := &desktop.CustomShortcut{KeyName: fyne.KeyD, Modifier: fyne.KeyModifierShortcutDefault}
	s.w.Canvas().AddShortcut(undo, func(fyne.Shortcut) { heard = true })
	s.g.body.TypedShortcut(undo)
	if !heard {
		t.Error("the window did not hear its shortcut")
	}
}

func TestHeaderClicksSortUpDownAndBack(t *testing.T) {
	s := newSheet(t, "Flat 10", "Flat 9", "flat 2")
	click := func() { s.g.header.Tapped(&fyne.PointEvent{Position: fyne.NewPos(10, 5)}) }
	for _, want := range []string{"[rflat 2 rFlat 9 rFlat 10]", "[rFlat 10 rFlat 9 rflat 2]", "[rFlat 10 rFlat 9 rflat 2]"} {
		click()
		if got := fmt.Sprint(s.g.Shown()); got != want {
			t.Errorf("shown %s, want %s", got, want)
		}
	}
}

func TestAnEdgeIsDraggedButNotToNothing(t *testing.T) {
	s := newSheet(t, "A")
	edge := s.g.spans[0].end()
	s.g.header.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(edge, 5)}})
	s.g.header.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(edge-40, 5)}})
	if got := s.g.spans[0].end(); got != edge-40 {
		t.Errorf("the column ends at %v, want %v", got, edge-40)
	}
	s.g.header.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(-500, 5)}})
	if got := s.g.spans[0].width; got != minColumn {
		t.Errorf("the column is %v wide", got)
	}
}

func TestThousandsOfRowsDrawOnlyAScreenful(t *testing.T) {
	names := make([]string, 5000)
	for i := range names {
		names[i] = fmt.Sprint(i)
	}
	s := newSheet(t, names...)
	if got := len(s.g.body.views); got > 20 {
		t.Errorf("%d rows drawn", got)
	}
	s.click("r0", 0, 0)
	s.g.controlKey(fyne.KeyEnd)
	wantCurrent(t, s.g, "r4999", 4)
	if !s.g.currentInView() {
		t.Error("the last row is not in view")
	}
	top := s.g.scroll.Offset.Y
	s.g.SetRows(append([]Row{{ID: "new"}}, s.rows...))
	if got := s.g.scroll.Offset.Y - top; got != s.g.rowHeight() {
		t.Errorf("a row added above moved the view by %v, want one row of %v", got, s.g.rowHeight())
	}
}

func BenchmarkScrollFiveThousandRows(b *testing.B) {
	test.NewTempApp(b)
	g := New(sheetColumns)
	var rows []Row
	for i := range 5000 {
		rows = append(rows, Row{ID: fmt.Sprint(i), Cells: []string{fmt.Sprint("Row ", i), fmt.Sprint(i * 7), "wall", "", "12"}})
	}
	g.SetRows(rows)
	w := test.NewTempWindow(b, g)
	w.Resize(fyne.NewSize(1366, 768))
	y := float32(0)
	for b.Loop() {
		if y += 75; y > 100000 {
			y = 0
		}
		g.scrollTo(fyne.NewPos(0, y))
	}
}

// When the window grows, the cells move with the columns that their titles stand over.
func TestCellsFollowTheColumnsWhenTheTableGrows(t *testing.T) {
	s := newSheet(t, "a", "b")
	s.w.Resize(fyne.NewSize(900, 300))
	for i, v := range s.g.body.views {
		for c, cell := range v.cells {
			if sheetColumns[c].Tick {
				continue
			}
			x, span := cell.text.Position().X, s.g.spans[c]
			if x < span.x-1 || x > span.end() {
				t.Errorf("row %d: the cell of column %d stands at %v, the column from %v to %v", i, c, x, span.x, span.end())
			}
		}
	}
}
