package floorsplace

import (
	"bytes"
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/drawing"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/drawingfile"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// fromTable is the button, and the line of the menu, that brings a room in.
const fromTable = "Room from a table…"

// roomProblemsShown bounds how many faults of a table are named.
const roomProblemsShown = 12

// roomTable is a table of a room on its way in: walls as they are walked, or corners.
// Nothing of it is kept until the person says so.
type roomTable struct {
	desk    *desk.Desk
	on      floor.ID
	name    string
	content []byte
	onPaper bool

	read  drawing.RoomTable
	room  prep.TriedRoom
	words *widget.Label
	shape *floorcanvas.Canvas
	take  *fields.Button // while the table makes no room, it cannot be pressed
}

// askRoomTable asks for the table of the floor that is looked at.
func askRoomTable(d *desk.Desk) {
	dlg := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil {
			d.Fail(err)
			return
		}
		if r != nil {
			path := r.URI().Path()
			r.Close()
			readRoomTable(d, path)
		}
	}, d.Window())
	dlg.SetFilter(storage.NewExtensionFileFilter(drawingfile.TableExtensions))
	dlg.Resize(fileDialogSize)
	dlg.Show()
}

// readRoomTable reads a table and shows what it holds before anything is changed.
func readRoomTable(d *desk.Desk, path string) {
	v := d.View()
	if v == nil || v.P.Floor(v.Floor) == nil {
		d.Told("Add a floor first, then bring its room in")
		return
	}
	t := &roomTable{desk: d, on: v.Floor, name: filepath.Base(path)}
	var err error
	if t.content, err = drawingfile.ReadTable(path); err != nil {
		d.Fail(fmt.Errorf("reading %s: %w", t.name, err))
		return
	}
	t.parse(t.preview)
}

// parse reads the content off the UI goroutine, since many walls take their time, and
// goes on when it is a table of a room.
func (t *roomTable) parse(then func()) {
	p := t.desk.View().P
	f := p.Floor(t.on)
	if f == nil {
		t.desk.Fail(errGone("the floor"))
		return
	}
	o := drawing.RoomOptions{Unit: p.Unit(), NewID: uuid.NewString}
	if t.onPaper {
		o.Scale = length.Scale(p.Plan.Scale)
	}
	var read drawing.RoomTable
	var room prep.TriedRoom
	t.desk.Run("Reading "+t.name, func(ctx context.Context) (err error) {
		if read, err = drawing.ReadRoom(bytes.NewReader(t.content), o); err != nil {
			return fmt.Errorf("%s is no table of a room: %w", t.name, err)
		}
		room = p.TryRoom(f, read)
		return ctx.Err()
	}, func(err error) {
		if err != nil {
			t.desk.Fail(err)
			return
		}
		t.read, t.room = read, room
		then()
	})
}

// preview shows the dialog in which the room is taken or left.
func (t *roomTable) preview() {
	t.words, t.shape = widget.NewLabel(""), floorcanvas.New()
	t.words.Wrapping = fyne.TextWrapWord
	paper := fields.NewTick("The lengths were measured on paper, at the scale of the plan")
	paper.OnCommit = func(on bool) error {
		t.onPaper = on
		t.parse(t.show)
		return nil
	}
	var dlg *dialog.CustomDialog
	cancel := fields.NewButton("Cancel", func() { dlg.Hide() })
	t.take = fields.NewButton("Bring it in", func() {
		dlg.Hide()
		t.bringIn()
	})
	t.take.Importance = widget.HighImportance
	split := container.NewHSplit(container.NewVScroll(t.words), t.shape)
	body := container.NewBorder(paper, container.NewHBox(layout.NewSpacer(), cancel, t.take), nil, nil, split)
	t.show()
	dlg = dialog.NewCustomWithoutButtons("A room from "+t.name, body, t.desk.Window())
	fields.ShowDialog(t.desk.Window(), dlg, fyne.NewSize(820, 480))
}

func (t *roomTable) show() {
	p := t.desk.View().P
	t.words.SetText(t.says(p))
	t.take.SetEnabled(len(t.room.Wrong) == 0)
	pic := floorcanvas.Picture{HideDatum: true, Datum: t.room.After.FloorToDatum().Inverse(), Style: p.Style()}
	if len(t.room.Wrong) == 0 {
		pic.Areas = []floorcanvas.Area{{Path: t.room.After.Outline, Ink: theme.Wall, Outline: 3}}
	}
	t.shape.Set(pic)
	t.shape.Fit()
}

// says tells in words what would come in, or line by line what is wrong.
func (t *roomTable) says(p *prep.Production) string {
	var lines []string
	if len(t.read.Unused) > 0 {
		lines = append(lines, "Columns that are not looked at: "+strings.Join(t.read.Unused, ", ")+".", "")
	}
	if n := len(t.room.Wrong); n > 0 {
		lines = append(lines, "Nothing can be brought in, since one wrong wall moves all that follow. Put right in the table and read it again:")
		for _, w := range t.room.Wrong[:min(n, roomProblemsShown)] {
			lines = append(lines, "  "+w.String())
		}
		if n > roomProblemsShown {
			lines = append(lines, fmt.Sprintf("  and %d more.", n-roomProblemsShown))
		}
		return strings.Join(lines, "\n")
	}
	if m := t.read.Measured; m.Any() {
		lines = append(lines, fmt.Sprintf("%s and %s across.", prep.Counted(len(m.Walls), "wall"), prep.Counted(len(m.Diagonals), "length")))
		lines = append(lines, t.room.Measured.Say(p.Style())...)
	} else {
		lines = append(lines, prep.Counted(len(t.read.Outline.Vertices), "corner")+"; nothing is kept as measured.")
	}
	if f := p.Floor(t.on); f != nil && (f.Measured.Any() || len(f.Outline.Vertices) > 0) {
		lines = append(lines, "", "It takes the place of the walls that "+f.Name+" has now, and of what was measured of it. Undo brings them back.")
	}
	return strings.Join(lines, "\n")
}

// bringIn gives the floor the room, and keeps the table as it came.
func (t *roomTable) bringIn() {
	if t.desk.BringIn(store.Brought{
		Label: "Bring in the room " + t.name, Bytes: t.content,
		Drawing: prep.Drawing{ID: uuid.NewString(), Name: t.name, Format: "CSV", On: time.Now(), By: t.desk.View().Who},
	}, func(p *prep.Production) error { return p.TakeRoom(t.on, t.read) }) {
		t.desk.Told("The room is brought in from " + t.name)
	}
}
