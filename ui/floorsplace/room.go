package floorsplace

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/grid"
	"groundrow/ui/theme"
)

// roomSheet is a room on its way in: wall by wall as it is walked, or corner by
// corner. Nothing of it is kept until the person says so.
type roomSheet struct {
	p       *place
	byWalls bool
	walls   []floor.Wall
	corners []plane.Point
	table   *grid.Grid
	canvas  *floorcanvas.Canvas
	said    *widget.Label
	wrong   *widget.Label
	take    *fields.Button // while the walls make no room, it cannot be pressed
}

// askRoom opens the sheet on the floor's present walls.
func (p *place) askRoom() {
	f := p.view.P.Floor(p.view.Floor)
	if f == nil {
		return
	}
	s := &roomSheet{p: p, canvas: floorcanvas.New(), said: widget.NewLabel(""), wrong: widget.NewLabel(""),
		take: fields.NewButton("", nil)}
	s.wrong.Wrapping = fyne.TextWrapWord
	s.corners = f.Outline.Points()
	s.walls = floor.Walls(f.Outline)
	how := widget.NewRadioGroup([]string{"Wall by wall: its length, then the turn at its end", "Corner by corner: along the room, then into it"}, nil)
	how.SetSelected(how.Options[1])
	top := container.NewVBox(how, s.said)
	stack := container.NewStack()
	s.build(stack)
	how.OnChanged = func(string) { s.choose(how.Selected == how.Options[0]); s.build(stack) }

	split := container.NewHSplit(stack, s.canvas)
	split.SetOffset(0.42)
	var dlg *dialog.CustomDialog
	cancel := fields.NewButton("Cancel", func() { dlg.Hide() })
	s.take = fields.NewButton("Use these walls", func() {
		if s.use() {
			dlg.Hide()
		}
	})
	s.take.Importance = widget.HighImportance
	bottom := container.NewVBox(s.wrong, container.NewHBox(layout.NewSpacer(), cancel, s.take))
	s.show()
	dlg = dialog.NewCustomWithoutButtons("The walls of "+f.Name, container.NewBorder(top, bottom, nil, nil, split), p.desk.Window())
	fields.ShowDialog(p.desk.Window(), dlg, fyne.NewSize(900, 560))
}

// choose changes between walls and corners and takes along what is there.
func (s *roomSheet) choose(byWalls bool) {
	if outline, _, err := s.outline(); err == nil {
		s.corners, s.walls = outline.Points(), floor.Walls(outline)
	}
	s.byWalls = byWalls
}

func (s *roomSheet) build(stack *fyne.Container) {
	columns := []grid.Column{{Title: "Corner", Width: 70, ReadOnly: true}, {Title: "Along", Width: 110, Right: true}, {Title: "Into", Width: 110, Right: true}}
	if s.byWalls {
		columns = []grid.Column{{Title: "Wall", Width: 70, ReadOnly: true}, {Title: "Length", Width: 110, Right: true}, {Title: "Turn, degrees", Width: 120, Right: true}}
	}
	s.table = grid.New(columns)
	s.table.OnEdit = func(id string, column int, text string) error { return s.edit(index(id), column, text) }
	s.table.OnAdd = s.add
	s.table.OnDelete = func(ids []string) { s.remove(ids) }
	stack.Objects = []fyne.CanvasObject{s.table}
	stack.Refresh()
	s.show()
}

func index(id string) int {
	i, _ := strconv.Atoi(id)
	return i
}

func (s *roomSheet) edit(i, column int, text string) error {
	if s.byWalls && column == 2 {
		turn, err := strconv.ParseFloat(strings.TrimSuffix(strings.TrimSpace(text), "°"), 64)
		if err != nil || turn <= -360 || turn >= 360 {
			return fmt.Errorf("“%s” is no turn; degrees such as 90 (to the left) or -90 (to the right) are needed", text)
		}
		s.walls[i].Turn = turn
		s.show()
		return nil
	}
	m, err := length.Parse(text, s.p.view.P.Unit())
	if err != nil {
		return err
	}
	switch {
	case s.byWalls && m <= 0:
		return fmt.Errorf("a wall needs a length above zero")
	case s.byWalls:
		s.walls[i].Length = m
	case column == 1:
		s.corners[i].X = m
	default:
		s.corners[i].Y = m
	}
	s.show()
	return nil
}

func (s *roomSheet) add() {
	var last int
	if s.byWalls {
		s.walls = append(s.walls, floor.Wall{Length: s.handy(), Turn: 90})
		last = len(s.walls) - 1
	} else {
		s.corners = append(s.corners, plane.Point{})
		last = len(s.corners) - 1
	}
	s.show()
	s.table.Edit(strconv.Itoa(last), 1)
}

// handy is a length that a new wall starts with: a round one in the production's unit.
func (s *roomSheet) handy() float64 {
	if s.p.view.P.Unit().Metric() {
		return 3
	}
	return 10 * length.Foot
}

func (s *roomSheet) remove(ids []string) {
	gone := map[int]bool{}
	for _, id := range ids {
		gone[index(id)] = true
	}
	s.walls = without(s.walls, gone, s.byWalls)
	s.corners = without(s.corners, gone, !s.byWalls)
	s.show()
}

func without[T any](list []T, gone map[int]bool, meant bool) []T {
	if !meant {
		return list
	}
	var out []T
	for i, v := range list {
		if !gone[i] {
			out = append(out, v)
		}
	}
	return out
}

// outline is the room as it stands on the sheet, with what it fails to close by.
func (s *roomSheet) outline() (outline plane.Path, gap float64, err error) {
	if s.byWalls {
		outline, gap, err = floor.FromWalls(s.walls)
	} else {
		outline = plane.Closed(s.corners...)
	}
	if err == nil {
		err = floor.CheckOutline(outline)
	}
	return outline, gap, err
}

func (s *roomSheet) show() {
	bare := s.p.view.Style().Bare
	var rows []grid.Row
	if s.byWalls {
		for i, w := range s.walls {
			rows = append(rows, grid.Row{ID: strconv.Itoa(i), Cells: []string{
				strconv.Itoa(i + 1), bare(w.Length), strconv.FormatFloat(degreesOf(w.Turn), 'f', -1, 64)}})
		}
	} else {
		for i, c := range s.corners {
			rows = append(rows, grid.Row{ID: strconv.Itoa(i), Cells: []string{strconv.Itoa(i + 1), bare(c.X), bare(c.Y)}})
		}
	}
	s.table.SetRows(rows)
	outline, gap, err := s.outline()
	if err != nil {
		s.wrong.SetText("Not a room yet: " + err.Error() + ".")
		s.take.Disable()
	} else {
		s.wrong.SetText("")
		s.take.Enable()
	}
	s.said.SetText(s.closing(gap))
	s.canvas.Set(s.picture(outline))
	s.canvas.Fit()
}

// picture shows the room; walls that are too few yet are lines as far as they go.
func (s *roomSheet) picture(outline plane.Path) floorcanvas.Picture {
	pic := floorcanvas.Picture{HideDatum: true, Style: s.p.view.Style()}
	if len(outline.Vertices) > 2 {
		pic.Areas = []floorcanvas.Area{{Path: outline, Ink: theme.Wall, Outline: 3}}
		return pic
	}
	if s.byWalls {
		outline = floor.Walked(s.walls)
	} else {
		outline = plane.Open(s.corners...)
	}
	pic.Shapes = []floorcanvas.Shape{{Edges: outline.Edges(), Ink: theme.Wall, Width: 3}}
	return pic
}

// degreesOf writes a turn to a ten-thousandth of a degree.
func degreesOf(turn float64) float64 { return math.Round(turn*1e4) / 1e4 }

// closing says how well walls come back to where they started.
func (s *roomSheet) closing(gap float64) string {
	switch {
	case !s.byWalls:
		return "Measured from any one corner of the room, straight along one wall and at right angles to it."
	case len(s.walls) < 3:
		return "Walk with the room on your left. Insert or Add for the next wall; a turn of 90 goes left, -90 right."
	case gap < s.p.view.P.Settings.Step:
		return "Walk with the room on your left. The walls close."
	}
	return "Walk with the room on your left. The walls fail to close by " + s.p.view.Style().Format(gap) +
		"; the last one is drawn to the start. Measure again what is in doubt."
}

// use gives the floor these walls and reports whether it has them; what they lack
// is said under the table, and nothing that was typed is lost.
func (s *roomSheet) use() bool {
	outline, _, err := s.outline()
	if err != nil {
		return false
	}
	s.p.edit("Set the walls", func(f *floor.Floor) error { return setOutline(f, outline) })
	s.p.Fit()
	return true
}
