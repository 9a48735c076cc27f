package floorsplace

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/floor"
	"groundrow/ui/fields"
)

var fileDialogSize = fyne.NewSize(900, 600)

// KeepFloor asks where the floor that is looked at is kept for next time.
func (p *place) KeepFloor() {
	if p.view == nil || p.view.P.Floor(p.view.Floor) == nil {
		p.desk.Told("There is no floor to keep: add one first")
		return
	}
	f := p.view.P.Floor(p.view.Floor)
	dlg := dialog.NewFileSave(func(u fyne.URIWriteCloser, err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		if u == nil {
			return
		}
		path := u.URI().Path()
		u.Close()
		p.keepAt(path)
	}, p.desk.Window())
	dlg.SetFileName(strings.Map(fileSafe, f.Name) + store.Extension)
	dlg.SetFilter(storage.NewExtensionFileFilter([]string{store.Extension}))
	dlg.Resize(fileDialogSize)
	dlg.Show()
}

// fileSafe drops what a file's name must not hold.
func fileSafe(r rune) rune {
	if strings.ContainsRune(`/\:*?"<>|`, r) {
		return -1
	}
	return r
}

// keepAt writes the floor that is looked at to a file of its own.
func (p *place) keepAt(path string) {
	if filepath.Ext(path) != store.Extension {
		path += store.Extension
	}
	kept, ok := p.view.P.KeepFloor(p.view.Floor, uuid.NewString)
	if !ok {
		p.desk.Fail(errGone("the floor"))
		return
	}
	who := p.view.Who
	p.desk.Run("Keeping the floor", func(ctx context.Context) error {
		f, err := store.Create(ctx, path, who, kept)
		if err != nil {
			return err
		}
		return f.Close()
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		p.desk.Told("Kept as " + path)
	})
}

// TakeFloor asks from which file floors are taken.
func (p *place) TakeFloor() {
	if p.view == nil {
		p.desk.Told("Open a production first, then take a floor into it")
		return
	}
	dlg := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		if r != nil {
			path := r.URI().Path()
			r.Close()
			p.lookInto(path)
		}
	}, p.desk.Window())
	dlg.SetFilter(storage.NewExtensionFileFilter([]string{store.Extension}))
	dlg.Resize(fileDialogSize)
	dlg.Show()
}

// lookInto reads the floors of a file, which stays as it is, and asks which to take.
func (p *place) lookInto(path string) {
	var from *prep.Production
	p.desk.Run("Reading "+filepath.Base(path), func(ctx context.Context) (err error) {
		from, err = store.Look(ctx, path)
		return err
	}, func(err error) {
		switch {
		case err != nil:
			p.desk.Fail(err)
		case len(from.Floors) == 0:
			fields.Tell(p.desk.Window(), "Nothing to take", filepath.Base(path)+" has no floor in it.")
		default:
			p.askWhich(filepath.Base(path), from)
		}
	})
}

func (p *place) askWhich(name string, from *prep.Production) {
	names := floorNames(from.Floors)
	which := fields.NewMulti(names...)
	which.Set(names[:1])
	form := fields.NewForm()
	form.Add("which", "Take", which)
	fields.Ask(p.desk.Window(), "Floors of "+name, form, "Take them", func() error {
		return p.takeFloors(name, from, which.Value())
	})
}

// floorNames tells floors apart for a list, also two of one name.
func floorNames(floors []floor.Floor) []string {
	out := make([]string, len(floors))
	for i, f := range floors {
		out[i] = fmt.Sprintf("%d. %s (%s)", i+1, f.Name, f.Kind)
	}
	return out
}

// takeFloors brings the named floors in, in one edit, and looks at the first.
func (p *place) takeFloors(file string, from *prep.Production, chosen []string) error {
	if len(chosen) == 0 {
		return fmt.Errorf("tick at least one floor")
	}
	want := map[string]bool{}
	for _, name := range chosen {
		want[name] = true
	}
	var first floor.ID
	err := p.desk.TryEdit("Take "+prep.Counted(len(chosen), "floor")+" from "+file, func(pr *prep.Production) error {
		first = ""
		for i, name := range floorNames(from.Floors) {
			if !want[name] {
				continue
			}
			if id, ok := pr.TakeFloor(from, from.Floors[i].ID, uuid.NewString); ok && first == "" {
				first = id
			}
		}
		return nil
	})
	if err == nil {
		p.desk.ChooseFloor(first)
	}
	return err
}
