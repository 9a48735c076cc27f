package floorsplace

import (
	"math"
	"slices"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey/room"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// openMeasured returns the page on a floor without anything.
func openMeasured(t *testing.T) (*place, *measuredPage) {
	t.Helper()
	p := openOn(t, &prep.Production{
		Settings: prep.DefaultSettings(),
		Floors:   []floor.Floor{{ID: "hall", Name: "Hall", Kind: floor.Room}},
	})
	p.workAt(p.measure.content)
	return p, p.measure
}

// typeWall types into the first empty row of the walls, as a person does.
func typeWall(t *testing.T, m *measuredPage, length string) (id string) {
	t.Helper()
	id = m.comingWalls[0]
	if err := m.walls.OnEdit(id, wallLength, length); err != nil {
		t.Fatal(err)
	}
	return id
}

func typeAcross(t *testing.T, m *measuredPage, from, to, length string) (id string) {
	t.Helper()
	id = m.comingCross[0]
	for column, text := range []string{from, to, length} {
		if err := m.across.OnEdit(id, column, text); err != nil {
			t.Fatal(err)
		}
	}
	return id
}

func TestRoomIsTypedAsItIsMeasured(t *testing.T) {
	p, m := openMeasured(t)
	if !strings.Contains(m.said.Words(), "Nothing has been measured") {
		t.Errorf("an empty floor says %q", m.said.Words())
	}
	first := typeWall(t, m, "26 ft 3 in")
	for _, l := range []string{"19' 8\"", "26' 3\"", "6 m"} {
		typeWall(t, m, l)
	}
	if !strings.Contains(m.said.Words(), "Measure A–C to fix it") {
		t.Errorf("four walls say %q", m.said.Words())
	}
	m.enterNext()
	id, column, ok := m.across.Current()
	if row := m.begun[id]; !ok || column != acrossLength || row.from != "A" || row.to != "C" {
		t.Fatalf("what is asked for opens %+v in column %d", row, column)
	}
	if err := m.across.OnEdit(id, acrossLength, "32' 9 3/4\""); err != nil {
		t.Fatal(err)
	}
	f := p.here()
	if len(f.Outline.Vertices) != 4 || len(f.Measured.Diagonals) != 1 {
		t.Fatalf("the floor has %d corners and %d diagonals", len(f.Outline.Vertices), len(f.Measured.Diagonals))
	}
	if got := f.Outline.Vertices[0].To(f.Outline.Vertices[1].Point); math.Abs(got-26.25*0.3048) > 1e-9 {
		t.Errorf("the first wall is %v long", got)
	}
	rows := wallRows(p.view, f, prep.Measured{}, nil)
	if rows[0].ID != first || rows[0].Cells[wallLength] != "26 ft 3 in" || rows[3].Cells[wallLength] != "6 m" || rows[3].Cells[wallCorners] != "D–A" {
		t.Errorf("typed lengths come back as %q and %q", rows[0].Cells, rows[3].Cells)
	}
	typeAcross(t, m, "b", "D", "32' 9 1/2\"")
	if !strings.Contains(m.said.Words(), "all 6 measurements agree") {
		t.Errorf("with both diagonals it says %q", m.said.Words())
	}
	p.desk.Undo()
	if n := len(p.here().Measured.Diagonals); n != 1 {
		t.Errorf("after undo there are %d diagonals", n)
	}
}

func TestWrongDiagonalIsMarkedInWordsAndShape(t *testing.T) {
	p, m := openMeasured(t)
	for range 2 {
		typeWall(t, m, "8 m")
		typeWall(t, m, "6 m")
	}
	typeAcross(t, m, "A", "C", "10 m")
	wrong := typeAcross(t, m, "B", "D", "33' 9 11/16\"")
	for i, w := range p.here().Measured.Walls {
		if err := m.walls.OnEdit(w.ID, wallSquare, grid.On); err != nil {
			t.Fatalf("corner %d: %v", i, err)
		}
	}
	if said := m.said.Words(); !strings.Contains(said, "B–D") || !strings.Contains(said, "a whole foot too long") {
		t.Errorf("it says %q", said)
	}
	measured, _ := p.view.P.MeasuredRoom(p.here())
	rows := acrossRows(p.view, p.here(), measured, nil, nil)
	if rows[0].CellProblems != nil || rows[1].ID != wrong || rows[1].CellProblems[acrossLength] == "" {
		t.Errorf("marked are %v and %v", rows[0].CellProblems, rows[1].CellProblems)
	}
	signed := false
	for _, l := range measuredPicture(p.view, p.here(), measured).Labels {
		signed = signed || strings.Contains(l.Text, "doubtful")
	}
	if !signed {
		t.Error("the drawing does not say which is doubtful")
	}
}

func TestDiagonalIsPickedOnTheDrawing(t *testing.T) {
	p, m := openMeasured(t)
	for range 2 {
		typeWall(t, m, "8 m")
		typeWall(t, m, "6 m")
	}
	corner := func(i int) []string {
		return []string{floorpicture.ID(cornerThing, p.here().Measured.Walls[i].ID)}
	}
	m.canvas.OnSelect(corner(1), false)
	if !strings.Contains(m.said.Words(), "From corner B") {
		t.Errorf("after one corner it says %q", m.said.Words())
	}
	m.canvas.OnSelect(corner(3), false)
	id, column, _ := m.across.Current()
	if b := m.begun[id]; b.from != "B" || b.to != "D" || column != acrossLength || !m.across.Editing() {
		t.Errorf("two corners open %+v, column %d", b, column)
	}
	m.canvas.OnSelect(corner(3), false)
	m.canvas.OnSelect(corner(0), false)
	if id, column, _ := m.walls.Current(); id != p.here().Measured.Walls[3].ID || column != wallLength {
		t.Error("the two corners of a wall do not open its length")
	}
}

func TestNamedPointsAndBadEntries(t *testing.T) {
	p, m := openMeasured(t)
	for range 2 {
		typeWall(t, m, "8 m")
		typeWall(t, m, "6 m")
	}
	typeAcross(t, m, "A", "C", "10 m")
	one := typeAcross(t, m, "A", "the column", "5 m")
	typeAcross(t, m, "B", "The column", "5 m")
	if got := p.here().Measured.Points; len(got) != 1 || got[0].Name != "the column" {
		t.Fatalf("points %+v", got)
	}
	for text, column := range map[string]int{"x": acrossLength, "0": acrossLength, "A": acrossTo, "F": acrossTo, "66' 4\"": acrossTo} {
		if err := m.across.OnEdit(one, column, text); err == nil {
			t.Errorf("%q is taken in column %d", text, column)
		}
	}
	wall := p.here().Measured.Walls[1].ID
	for text, column := range map[string]int{"-3": wallLength, "0": wallLength, "left": wallTurn, "270": wallTurn, "x": wallRise} {
		if err := m.walls.OnEdit(wall, column, text); err == nil {
			t.Errorf("%q is taken in column %d of a wall", text, column)
		}
	}
	m.across.OnDelete([]string{p.here().Measured.Diagonals[1].ID, p.here().Measured.Diagonals[2].ID})
	if f := p.here().Measured; len(f.Points) != 0 || len(f.Diagonals) != 1 {
		t.Errorf("left are %d points and %d diagonals", len(f.Points), len(f.Diagonals))
	}
	m.walls.OnDelete([]string{p.here().Measured.Walls[2].ID})
	if f := p.here().Measured; len(f.Walls) != 3 || len(f.Diagonals) != 0 {
		t.Errorf("a wall taken out leaves %d walls and %d diagonals to its corner", len(f.Walls), len(f.Diagonals))
	}
}

func TestAWallPutBeforeAnotherKeepsTheDiagonals(t *testing.T) {
	p, m := openMeasured(t)
	for range 2 {
		typeWall(t, m, "8 m")
		typeWall(t, m, "6 m")
	}
	typeAcross(t, m, "A", "C", "10 m")
	m.walls.Edit(p.here().Measured.Walls[2].ID, wallLength)
	m.insertWall()
	f := p.here().Measured
	if len(f.Walls) != 5 || f.Walls[2].Length != 0 || room.PlaceName(f, f.Diagonals[0].To) != "C" {
		t.Errorf("%d walls, the diagonal goes to %s", len(f.Walls), room.PlaceName(f, f.Diagonals[0].To))
	}
}

func TestWallsMovedByHandAreSaidPlainly(t *testing.T) {
	p, m := openMeasured(t)
	for range 2 {
		typeWall(t, m, "8 m")
		typeWall(t, m, "6 m")
	}
	typeAcross(t, m, "A", "C", "10 m")
	if !m.use.Disabled() {
		t.Error("walls that are in use can be used again")
	}
	p.canvas.OnDragHandle(floorpicture.ID(floorpicture.Corner, "2"), plane.Point{X: 8.5, Y: 6}, true)
	if !strings.Contains(m.said.Words(), "what was measured is not used") || m.use.Disabled() {
		t.Errorf("it says %q", m.said.Words())
	}
	m.useWalls()
	if got := p.here().Outline.Vertices[2].Point; got.To(plane.Point{X: 8, Y: 6}) > 1e-6 {
		t.Errorf("corner C lies at %v", got)
	}
}

func TestARoomThatWasDrawnIsMeasuredByItsTurns(t *testing.T) {
	p := openPlace(t)
	drawn := p.here().Outline
	p.edit("Forget", func(f *floor.Floor) error { f.Measured = floor.Measured{}; return nil })
	p.workAt(p.measure.content)
	p.measure.beginAsDrawn()
	f := p.here()
	if len(f.Measured.Walls) != len(drawn.Vertices) || f.Measured.Walls[0].Turn == 0 || f.Outline.Area() != drawn.Area() {
		t.Errorf("%d walls of %d, area %v of %v", len(f.Measured.Walls), len(drawn.Vertices), f.Outline.Area(), drawn.Area())
	}
}

func TestALengthTypedIntoTheEmptyRowIsTheOneAskedFor(t *testing.T) {
	p, m := openMeasured(t)
	for range 2 {
		typeWall(t, m, "8 m")
		typeWall(t, m, "6 m")
	}
	ends := func() []string {
		measured, _ := p.view.P.MeasuredRoom(p.here())
		rows := acrossRows(p.view, p.here(), measured, m.comingCross, m.coming(p.here()))
		return rows[len(p.here().Measured.Diagonals)].Cells[:2]
	}
	if got := ends(); !slices.Equal(got, []string{"A", "C"}) {
		t.Fatalf("the empty row offers %q", got)
	}
	if err := m.across.OnEdit(m.comingCross[0], acrossLength, "10 m"); err != nil {
		t.Fatal(err)
	}
	if d := p.here().Measured.Diagonals; len(d) != 1 || room.PlaceName(p.here().Measured, d[0].To) != "C" {
		t.Fatalf("taken as %+v", d)
	}
	if err := m.across.OnEdit(m.comingCross[0], acrossFrom, "D"); err != nil {
		t.Fatal(err)
	}
	if got := ends(); !slices.Equal(got, []string{"D", ""}) {
		t.Errorf("a row that was begun shows %q", got)
	}
}
