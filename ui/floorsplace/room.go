package floorsplace

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey/room"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/grid"
	"groundrow/ui/theme"
)

// roomSheet is a room on its way in corner by corner. Nothing of it is kept until
// the person says so.
type roomSheet struct {
	p       *place
	corners []plane.Vertex
	table   *grid.Grid
	canvas  *floorcanvas.Canvas
	wrong   *widget.Label
	take    *fields.Button // while the corners make no room, it cannot be pressed
}

// askRoom opens the sheet on the floor's present corners.
func (p *place) askRoom() {
	f := p.view.P.Floor(p.view.Floor)
	if f == nil {
		return
	}
	s := newRoomSheet(p, f.Outline.Vertices)
	said := widget.NewLabel("Measured from any one corner of the room, straight along one wall and at right angles to it.")
	split := container.NewHSplit(s.table, s.canvas)
	split.SetOffset(0.42)
	var dlg *dialog.CustomDialog
	cancel := fields.NewButton("Cancel", func() { dlg.Hide() })
	s.take.SetText("Use these walls")
	s.take.OnTapped = func() {
		if s.use() {
			dlg.Hide()
		}
	}
	s.take.Importance = widget.HighImportance
	bottom := container.NewVBox(s.wrong, container.NewHBox(layout.NewSpacer(), cancel, s.take))
	dlg = dialog.NewCustomWithoutButtons("The corners of "+f.Name, container.NewBorder(said, bottom, nil, nil, split), p.desk.Window())
	fields.ShowDialog(p.desk.Window(), dlg, fyne.NewSize(900, 560))
}

func newRoomSheet(p *place, corners []plane.Vertex) *roomSheet {
	s := &roomSheet{p: p, corners: slices.Clone(corners), canvas: floorcanvas.New(), wrong: widget.NewLabel(""), take: fields.NewButton("", nil)}
	s.wrong.Wrapping = fyne.TextWrapWord
	s.table = grid.New([]grid.Column{{Title: "Corner", Width: 70, ReadOnly: true}, {Title: "Along", Width: 110, Right: true}, {Title: "Into", Width: 110, Right: true}})
	s.table.OnEdit = func(id string, column int, text string) error { return s.edit(index(id), column, text) }
	s.table.OnAdd = s.add
	s.table.OnDelete = s.remove
	s.show()
	return s
}

func index(id string) int {
	i, _ := strconv.Atoi(id)
	return i
}

func (s *roomSheet) edit(i, column int, text string) error {
	m, err := length.Parse(text, s.p.view.P.Unit())
	if err != nil {
		return err
	}
	if column == 1 {
		s.corners[i].X = m
	} else {
		s.corners[i].Y = m
	}
	s.show()
	return nil
}

func (s *roomSheet) add() {
	s.corners = append(s.corners, plane.Vertex{})
	s.show()
	s.table.Edit(strconv.Itoa(len(s.corners)-1), 1)
}

func (s *roomSheet) remove(ids []string) {
	var kept []plane.Vertex
	for i, c := range s.corners {
		if !slices.Contains(ids, strconv.Itoa(i)) {
			kept = append(kept, c)
		}
	}
	s.corners = kept
	s.show()
}

// outline is the room as it stands on the sheet.
func (s *roomSheet) outline() plane.Path { return plane.Path{Vertices: s.corners, Closed: true} }

func (s *roomSheet) show() {
	bare := s.p.view.Style().Bare
	var rows []grid.Row
	for i, c := range s.corners {
		rows = append(rows, grid.Row{ID: strconv.Itoa(i), Cells: []string{room.Corner(i), bare(c.X), bare(c.Y)}})
	}
	s.table.SetRows(rows)
	err := floor.CheckOutline(s.outline())
	if s.take.SetEnabled(err == nil); err != nil {
		s.wrong.SetText("Not a room yet: " + err.Error() + ".")
	} else {
		s.wrong.SetText("")
	}
	s.canvas.Set(s.picture())
	s.canvas.Fit()
}

// picture shows the room; corners that are too few yet are lines as far as they go.
func (s *roomSheet) picture() floorcanvas.Picture {
	pic := floorcanvas.Picture{HideDatum: true, Style: s.p.view.Style()}
	if len(s.corners) > 2 {
		pic.Areas = []floorcanvas.Area{{Path: s.outline(), Ink: theme.Wall, Outline: 3}}
		return pic
	}
	open := plane.Path{Vertices: s.corners}
	pic.Shapes = []floorcanvas.Shape{{Edges: open.Edges(), Ink: theme.Wall, Width: 3}}
	return pic
}

// use gives the floor these walls and reports whether it has them; what they lack
// is said under the table, and nothing that was typed is lost.
func (s *roomSheet) use() bool {
	outline := s.outline()
	if floor.CheckOutline(outline) != nil {
		return false
	}
	s.p.edit("Set the walls", func(f *floor.Floor) error { return setOutline(f, outline) })
	s.p.Fit()
	return true
}
