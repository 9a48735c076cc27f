package ui

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/store"
	"groundrow/ui/desk"
	"groundrow/ui/drawingfile"
	"groundrow/ui/fields"
)

// extension is how production files end.
const extension = store.Extension

var fileDialogSize = fyne.NewSize(900, 600)

// Open opens a production file, off the UI goroutine: a large one takes a while.
func (w *Window) Open(path string) {
	var file *store.File
	w.desk.Run("Opening "+filepath.Base(path), func(ctx context.Context) (err error) {
		file, err = store.Open(ctx, path, w.who())
		return err
	}, func(err error) { w.opened(path, file, err) })
}

func (w *Window) opened(path string, file *store.File, err error) {
	var trouble *store.Error
	switch {
	case errors.As(err, &trouble) && trouble.Code == store.Damaged:
		w.offerSalvage(path, err)
	case err != nil:
		w.desk.Fail(err)
	default:
		w.take(path, file)
	}
}

func (w *Window) take(path string, file *store.File) {
	w.win.SetContent(w.whole)
	w.status.say("") // what it said was about another file
	if err := w.desk.Take(file); err != nil {
		w.desk.Fail(err)
	}
	w.goTo(w.at)
	if full, err := filepath.Abs(path); err == nil {
		w.remember(full)
	}
}

// create starts a production file and opens it.
func (w *Window) create(path string, p *prep.Production) {
	if filepath.Ext(path) != extension {
		path += extension
	}
	var file *store.File
	w.desk.Run("Starting "+filepath.Base(path), func(ctx context.Context) (err error) {
		file, err = store.Create(ctx, path, w.who(), p)
		return err
	}, func(err error) {
		if err == nil {
			w.at = desk.Week // a production begins there, wherever the last one was left
		}
		w.opened(path, file, err)
	})
}

// openDemo opens the demo in the folder of the person's documents, made there
// when it is not.
func (w *Window) openDemo() {
	path := filepath.Join(documents(), demo.Name)
	if _, err := os.Stat(path); err == nil {
		w.Open(path)
		return
	}
	w.create(path, demo.Production(time.Now()))
}

// documents is where a person keeps files: the home folder, or the temporary one
// where there is none.
func documents() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return os.TempDir()
	}
	return home
}

func (w *Window) askOpen() {
	dlg := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil {
			w.desk.Fail(err)
			return
		}
		if r != nil {
			path := r.URI().Path()
			r.Close()
			w.Open(path)
		}
	}, w.win)
	dlg.SetFilter(storage.NewExtensionFileFilter([]string{extension}))
	dlg.Resize(fileDialogSize)
	dlg.Show()
}

func (w *Window) askCopy() {
	if w.desk.File() == nil {
		return
	}
	w.askWhere("Copy of "+filepath.Base(w.desk.File().Path()), func(path string) {
		w.desk.Run("Copying", func(ctx context.Context) error {
			return w.desk.File().SaveCopy(ctx, path)
		}, func(err error) {
			if err != nil {
				w.desk.Fail(err)
				return
			}
			w.desk.Told("Copied to " + path)
		})
	})
}

// askWhere asks for the place of a new file. What is there already stays as it is: a
// production file is never written over another file.
func (w *Window) askWhere(name string, chosen func(path string)) {
	dlg := dialog.NewFileSave(func(u fyne.URIWriteCloser, err error) {
		if err != nil {
			w.desk.Fail(err)
			return
		}
		if u == nil {
			return
		}
		path := u.URI().Path()
		u.Close()
		chosen(path)
	}, w.win)
	dlg.SetFileName(name)
	dlg.SetFilter(storage.NewExtensionFileFilter([]string{extension}))
	dlg.Resize(fileDialogSize)
	dlg.Show()
}

// dropped opens what is dropped on the window.
func (w *Window) dropped(_ fyne.Position, uris []fyne.URI) {
	for _, u := range uris {
		switch strings.ToLower(u.Extension()) {
		case extension:
			w.Open(u.Path())
			return
		case ".csv", ".tsv", ".txt":
			w.readPlanTable(u.Path())
			return
		}
		if slices.Contains(drawingfile.Extensions, strings.ToLower(u.Extension())) {
			w.bringIn(u.Path())
			return
		}
	}
	w.desk.Told("Drop a production file, a drawing (PDF, DXF, PNG, JPEG, TIFF) or a table of a plan (CSV) here")
}

// bringsIn is the place on which drawings are brought in.
type bringsIn interface{ BringIn(path string) }

// bringIn goes to the page for bringing in a drawing; the empty path asks which.
func (w *Window) bringIn(path string) {
	if w.desk.View() == nil {
		w.desk.Told("Open a production first, then bring in its drawing")
		return
	}
	w.goTo(desk.Plan)
	if p, ok := w.here().(bringsIn); ok {
		p.BringIn(path)
	}
}

func (w *Window) offerSalvage(path string, cause error) {
	fields.Confirm(w.win, "This file is damaged", cause.Error(), "Save what can be read", func() { w.salvage(path) })
}

func (w *Window) salvage(path string) {
	to := strings.TrimSuffix(path, extension) + " (saved)" + extension
	var report store.Report
	w.desk.Run("Reading what can be read", func(ctx context.Context) (err error) {
		report, err = store.Salvage(ctx, path, to, w.who())
		return err
	}, func(err error) {
		if err != nil {
			w.desk.Fail(err)
			return
		}
		fields.Tell(w.win, "Saved into "+filepath.Base(to), salvaged(report))
		w.Open(to)
	})
}

// quit closes the file and the window. There is nothing to save: every edit is
// on disk already.
func (w *Window) quit() {
	w.keepState()
	if err := w.desk.Close(); err != nil {
		fyne.LogError("closing the production", err)
	}
	w.app.Quit()
}

// salvaged words what came out of a damaged file.
func salvaged(r store.Report) string {
	if r.Complete() {
		return "Everything but the history could be read."
	}
	var lines []string
	for _, t := range r.Tables {
		if !t.Complete {
			lines = append(lines, fmt.Sprintf("Not all of the %s could be read; %d rows were.", listed(t.Table), t.Rows))
		}
	}
	return strings.Join(append(lines, r.Left...), "\n")
}

// listed is what a person calls the rows of a table of the file.
func listed(table string) string {
	switch table {
	case "item":
		return "kit"
	case "stock":
		return "tapes"
	case "path":
		return "lines of elements"
	case "stand":
		return "places in scenes"
	}
	return "list “" + strings.ReplaceAll(table, "_", " ") + "”"
}
