package desk

import (
	"context"

	"fyne.io/fyne/v2"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Desk holds the open production and tells the window when the picture changes.
// All its methods belong to the UI goroutine; changes that come from elsewhere
// enter it here, once each.
type Desk struct {
	win    fyne.Window
	file   *store.File
	view   View
	silent func()
	still  bool
	kept   []func() // background work of a still desk

	// Changed is told after every change of the view.
	Changed func(*View)
	// Went is told when a place is asked for.
	Went func(Name)
	// Told is told what to write in the status line.
	Told func(text string)
	// Pointed is told where on the chosen floor the pointer is, in datum axes; ok
	// is false when it is nowhere.
	Pointed func(at plane.Point, ok bool)
	// ReadTable is told when a plan is to be read from a table.
	ReadTable func()
	// TakeTable is told of a file with such a table.
	TakeTable func(path string)
	// EnterReadings is told when check measures are to be entered on the page for it.
	EnterReadings func()
	// Enter brings what happened elsewhere to the UI goroutine.
	Enter func(func())
}

// New returns a desk without a production.
func New(win fyne.Window) *Desk {
	return &Desk{
		win:     win,
		Changed: func(*View) {}, Went: func(Name) {},
		Told: func(string) {}, Pointed: func(plane.Point, bool) {}, ReadTable: func() {}, TakeTable: func(string) {}, EnterReadings: func() {},
		Enter: fyne.Do,
	}
}

// Window is the window of the desk, for dialogs.
func (d *Desk) Window() fyne.Window { return d.win }

// File is the open production file; nil when there is none.
func (d *Desk) File() *store.File { return d.file }

// View is the present picture; nil when no production is open.
func (d *Desk) View() *View {
	if d.file == nil {
		return nil
	}
	return &d.view
}

// Take puts a file on the desk and closes the one before.
func (d *Desk) Take(file *store.File) error {
	err := d.Close()
	d.file = file
	d.view = View{Who: file.Who(), Path: file.Path()}
	d.silent = file.Listen(func(s store.Snapshot) {
		d.Enter(func() { d.take(file, s) })
	})
	d.take(file, file.Now())
	return err
}

// Close takes the file off the desk.
func (d *Desk) Close() error {
	if d.file == nil {
		return nil
	}
	d.silent()
	file := d.file
	d.file = nil
	return file.Close()
}

// take shows a snapshot unless it is older than the one on the desk.
func (d *Desk) take(file *store.File, s store.Snapshot) {
	if file != d.file || (d.view.P != nil && s.Seq <= d.view.Seq) {
		return
	}
	d.view.Snapshot = s
	d.view.works = &works{seq: s.Seq, done: map[floor.ID]*prep.FloorWork{}}
	d.show()
}

func (d *Desk) show() {
	d.view.settle()
	d.Changed(&d.view)
}

// Edit makes one named change. It is on disk when Edit returns true; on false
// nothing has changed and the person has been told why.
func (d *Desk) Edit(label string, change func(*prep.Production) error) bool {
	if d.file == nil {
		return false
	}
	return d.settled(d.file.Edit(context.Background(), d.view.Snapshot, label, change))
}

// BringIn makes one named change that keeps a drawing as it came together with
// what was read from it. It answers as Edit does.
func (d *Desk) BringIn(b store.Brought, change func(*prep.Production) error) bool {
	if d.file == nil {
		return false
	}
	return d.settled(d.file.EditWith(context.Background(), d.view.Snapshot, b, change))
}

// TryEdit is Edit for a field that writes its own error: a refused value comes
// back as an error and no dialog is shown for it.
func (d *Desk) TryEdit(label string, change func(*prep.Production) error) error {
	if d.file == nil {
		return errNoFile
	}
	err := d.file.Edit(context.Background(), d.view.Snapshot, label, change)
	if isConflict(err) {
		d.settled(err)
		return nil
	}
	d.catchUp()
	return err
}

// Undo takes back the last change.
func (d *Desk) Undo() { d.replay((*store.File).Undo, "Undone: ") }

// Redo makes again the change last undone.
func (d *Desk) Redo() { d.replay((*store.File).Redo, "Done again: ") }

func (d *Desk) replay(step func(*store.File, context.Context) (string, error), said string) {
	if d.file == nil {
		return
	}
	label, err := step(d.file, context.Background())
	if store.CodeOf(err) == store.NotFound { // no mishap: it has all been done
		d.catchUp()
		d.Told(err.Error())
		return
	}
	if d.settled(err) && label != "" {
		d.Told(said + label)
	}
}

// settled shows the outcome of a change: the new snapshot, or what went wrong. What was
// told before is over then.
func (d *Desk) settled(err error) bool {
	d.catchUp()
	if err != nil {
		d.Fail(err)
		return false
	}
	d.Told("")
	return true
}

// catchUp shows the file's own snapshot without waiting for the listener, so that
// an edit is on the screen when the method that made it returns.
func (d *Desk) catchUp() { d.take(d.file, d.file.Now()) }

// ChooseFloor looks at another floor.
func (d *Desk) ChooseFloor(id floor.ID) {
	if d.file != nil && d.view.Floor != id {
		d.view.Floor = id
		d.view.Selected = Selection{}
		d.show()
	}
}

// ChooseScene looks at another scene; the empty one is all of them.
func (d *Desk) ChooseScene(id plan.SceneID) {
	if d.file != nil && d.view.Scene != id {
		d.view.Scene = id
		d.show()
	}
}

// Select selects something in every place that shows it.
func (d *Desk) Select(s Selection) {
	if d.file == nil || sameSelection(d.view.Selected, s) {
		return
	}
	d.view.Selected = s
	d.show()
}

func sameSelection(a, b Selection) bool {
	if a.Kind != b.Kind || len(a.IDs) != len(b.IDs) {
		return false
	}
	for i := range a.IDs {
		if a.IDs[i] != b.IDs[i] {
			return false
		}
	}
	return true
}

// Go opens a place with something selected there.
func (d *Desk) Go(place Name, s Selection) {
	d.Select(s)
	d.Went(place)
}

// Refresh shows what has been changed in the file without Edit.
func (d *Desk) Refresh() {
	if d.file != nil {
		d.catchUp()
	}
}
