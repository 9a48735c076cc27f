package ui

import (
	"fmt"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// status is the line along the bottom: file, who, unit, where the pointer is,
// and the open problems.
type status struct {
	content  fyne.CanvasObject
	row      *fyne.Container
	desk     *desk.Desk
	file     *widget.Label
	said     *widget.Label
	pointer  *widget.Label
	problems *widget.Button
	open     []prep.Problem
}

func newStatus(d *desk.Desk) *status {
	s := &status{desk: d, file: widget.NewLabel(""), said: widget.NewLabel(""), pointer: widget.NewLabel("")}
	s.said.Truncation = fyne.TextTruncateEllipsis
	s.problems = widget.NewButton("", s.list)
	s.problems.Importance = widget.LowImportance
	s.row = container.NewBorder(nil, nil, s.file, container.NewHBox(s.pointer, s.problems), s.said)
	s.content = container.NewVBox(widget.NewSeparator(), s.row)
	return s
}

func (s *status) show(v *desk.View) {
	read := ""
	if file := s.desk.File(); file != nil {
		if only, why := file.ReadOnly(); only {
			read = " · read only: " + why
		}
	}
	s.file.SetText(fmt.Sprintf("%s · %s · %s · up from %s%s", filepath.Base(v.Path), v.Who,
		length.Unit(v.P.Settings.Unit).Name(), datumOf(v), read))
	s.open = prep.Problems(v.P, v.Work, time.Now())
	s.problems.SetText(counted(len(s.open), "problem"))
	s.row.Refresh() // the words may need more or less room than before
}

// datumOf says where up is measured from on the floor that is looked at.
func datumOf(v *desk.View) string {
	if f := v.P.Floor(v.Floor); f != nil && f.OwnDatum {
		return "this floor's own datum"
	}
	return "the " + string(v.P.Plan.Baseline)
}

func counted(n int, what string) string {
	switch n {
	case 0:
		return "No open " + what + "s"
	case 1:
		return "1 open " + what
	}
	return fmt.Sprintf("%d open %ss", n, what)
}

func (s *status) say(text string) { s.said.SetText(text) }

// point shows where the pointer is: up first, then over.
func (s *status) point(v *desk.View, at plane.Point, ok bool) {
	if v == nil || !ok {
		s.pointer.SetText("")
		return
	}
	style := v.Style()
	wide := s.pointer.MinSize().Width
	s.pointer.SetText("up " + style.FormatUp(at.Y) + "  over " + style.FormatOver(at.X))
	if s.pointer.MinSize().Width != wide {
		s.row.Refresh()
	}
}

// list shows the open problems; a click on one goes to where it can be cured.
func (s *status) list() {
	if len(s.open) == 0 {
		return
	}
	var dlg *dialog.CustomDialog
	list := widget.NewList(
		func() int { return len(s.open) },
		func() fyne.CanvasObject {
			l := widget.NewLabel("")
			l.Truncation = fyne.TextTruncateEllipsis
			return l
		},
		func(i widget.ListItemID, o fyne.CanvasObject) { o.(*widget.Label).SetText(s.open[i].Sentence()) },
	)
	list.OnSelected = func(i widget.ListItemID) {
		p := s.open[i]
		dlg.Hide()
		kind := kindOf(p.Place)
		if v := s.desk.View(); v != nil {
			if on, of, ok := desk.InRoom(v.P, p.ID); ok {
				s.desk.ChooseFloor(on)
				kind = of
			}
		}
		s.desk.Go(desk.Name(p.Place), desk.Select(kind, p.ID))
	}
	dlg = dialog.NewCustom("Open problems", "Close", list, s.desk.Window())
	fields.ShowDialog(s.desk.Window(), dlg, fyne.NewSize(720, 420))
}

// kindOf tells what sort of row a problem's identifier names in a place.
func kindOf(place string) desk.Kind {
	switch desk.Name(place) {
	case desk.Plan:
		return desk.Element
	case desk.Floors:
		return desk.Element
	case desk.Marks:
		return desk.Mark
	case desk.Tape, desk.Supplies:
		return desk.Stock
	case desk.Crew:
		return desk.Task
	case desk.StandIns:
		return desk.StandIn
	}
	return desk.Nothing
}
