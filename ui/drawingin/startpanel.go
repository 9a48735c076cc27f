package drawingin

import (
	"context"
	"fmt"
	"io"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/ui/desk"
	"groundrow/ui/drawingfile"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// startPanel is the page before a drawing is chosen: what can be brought in, and
// the drawings that the production keeps.
type startPanel struct {
	page    *Page
	grid    *grid.Grid
	save    *fields.Button
	again   *fields.Button
	remove  *fields.Button
	content fyne.CanvasObject
}

func newStartPanel(p *Page) *startPanel {
	s := &startPanel{page: p}
	s.grid = grid.New([]grid.Column{
		{Title: "Drawing", Width: 240, Grow: true, ReadOnly: true}, {Title: "Format", Width: 70, ReadOnly: true},
		{Title: "Size", Width: 90, Right: true, ReadOnly: true}, {Title: "Brought in", Width: 150, ReadOnly: true}, {Title: "By", Width: 120, ReadOnly: true},
	})
	s.grid.ShowTools(false)
	s.grid.SetEmpty("No drawing has been brought in yet. They are kept here as they came.", "", nil)
	s.grid.OnSelect = func(rows []string) { s.enable(len(rows) == 1) }
	s.save = fields.NewButton("Save the original…", s.saveOriginal)
	s.again = fields.NewButton("Open it again", s.openAgain)
	s.remove = fields.NewButton("Remove", s.removeSelected)
	s.grid.OnDelete = func([]string) { s.removeSelected() }
	s.enable(false)
	words := fields.Empty("Bring in a drawing",
		"The ground plan as the designer or the drawing office sent it: PDF or DXF with lines, or a scan or photograph (PNG, JPEG, TIFF) to trace. "+
			"Drop the file on the window, or choose it. Nothing on the plan changes before you say so.", "Choose a drawing…", p.Choose)
	kept := container.NewBorder(container.NewBorder(nil, nil, nil, container.NewHBox(s.remove, s.again, s.save), heading("Drawings that this production keeps")),
		nil, nil, nil, s.grid)
	split := container.NewVSplit(words, kept)
	split.Offset = 0.5
	s.content = container.NewBorder(container.NewBorder(nil, nil, nil, fields.NewButton("Back to the plan", p.leave), widget.NewLabel("")), nil, nil, nil, split)
	return s
}

func (s *startPanel) enable(on bool) {
	setEnabled(s.save, on)
	setEnabled(s.again, on)
	setEnabled(s.remove, on)
}

func (s *startPanel) show(v *desk.View) {
	rows := make([]grid.Row, len(v.P.Drawings))
	for i, d := range v.P.Drawings {
		rows[i] = grid.Row{ID: d.ID, Cells: []string{clipped(d.Name), d.Format, sizeOf(d.Bytes), d.On.Format("2 Jan 2006 15:04"), d.By}}
	}
	s.grid.SetRows(rows)
	s.enable(len(s.grid.Selected()) == 1)
}

// sizeOf writes a number of bytes.
func sizeOf(n int) string {
	switch {
	case n >= 10<<20:
		return fmt.Sprintf("%d MB", n>>20)
	case n >= 10<<10:
		return fmt.Sprintf("%d kB", n>>10)
	}
	return fmt.Sprintf("%d bytes", n)
}

func (s *startPanel) selected() (prep.Drawing, bool) {
	ids := s.grid.Selected()
	for _, d := range s.page.desk.View().P.Drawings {
		if len(ids) == 1 && d.ID == ids[0] {
			return d, true
		}
	}
	return prep.Drawing{}, false
}

// removeSelected takes a kept drawing off the production.
func (s *startPanel) removeSelected() {
	d, ok := s.selected()
	if !ok {
		return
	}
	if s.page.desk.Edit("Remove the drawing "+d.Name, func(p *prep.Production) error {
		p.RemoveDrawing(d.ID)
		return nil
	}) {
		s.page.desk.Told("Removed " + d.Name + "; what was read from it stays. Undo brings it back.")
	}
}

// openAgain reads a kept drawing once more.
func (s *startPanel) openAgain() {
	d, ok := s.selected()
	if !ok {
		return
	}
	content, err := s.page.desk.File().Drawing(context.Background(), d.ID)
	if err != nil {
		s.page.desk.Fail(err)
		return
	}
	src, err := drawingfile.Of(d.Name, content)
	if err != nil {
		s.page.desk.Fail(err)
		return
	}
	s.page.read(src, d.ID, d.Page())
}

// saveOriginal writes a kept drawing byte for byte.
func (s *startPanel) saveOriginal() {
	d, ok := s.selected()
	if !ok {
		return
	}
	desk := s.page.desk
	dlg := dialog.NewFileSave(func(w fyne.URIWriteCloser, err error) {
		if err != nil || w == nil {
			s.page.fail(err)
			return
		}
		path := w.URI().Path()
		w.Close()
		desk.Run("Saving "+d.Name, func(ctx context.Context) error { return saveDrawing(ctx, desk, d.ID, path) }, func(err error) {
			if err != nil {
				desk.Fail(err)
				return
			}
			desk.Told("Saved " + filepath.Base(path))
		})
	}, desk.Window())
	// The name of a drawing is only words: nothing of it may lead to another folder.
	dlg.SetFileName(filepath.Base(filepath.Clean("/" + d.Name)))
	dlg.Resize(dialogSize)
	dlg.Show()
}

func saveDrawing(ctx context.Context, d *desk.Desk, id, path string) error {
	content, err := d.File().Drawing(ctx, id)
	if err != nil {
		return err
	}
	return store.WriteWhole(path, func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	})
}
