package paperplace

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"groundrow/prep/sheets"
	"groundrow/store"
	"groundrow/ui/fields"
)

// target is where sheets go once they are written.
type target int

// The targets.
const (
	toViewer  target = iota // the system's viewer prints them
	toPrinter               // the printer takes them at once
)

// print writes sheets as PDF beside the production file and hands them on, after
// saying once what printing means for the labels.
func (p *place) print(which []sheets.Sheet, to target) {
	if len(which) == 0 {
		p.desk.Told("No sheet that has been printed is out of date.")
		return
	}
	job := jobOf(p.view, p.choice, p.now())
	p.tellOnce(which, job, "Print", func() {
		var files []string
		folder := folderOf(p.view.Path)
		p.run("Writing the sheets", func(ctx context.Context) (err error) {
			if files, err = writeAll(ctx, folder, which, job); err != nil || to != toPrinter {
				return err
			}
			return p.printer(ctx, files, job.Size)
		}, func(err error) {
			if err != nil {
				p.desk.Fail(err)
				return
			}
			p.keep(which, job)
			p.handOn(files, folder, to)
		})
	})
}

// handOn opens what was written: one sheet itself, several the folder they are in.
func (p *place) handOn(files []string, folder string, to target) {
	if to == toPrinter {
		p.side.tell("Sent to the printer; the files are in " + folder + ".")
		return
	}
	path, said := folder, fmt.Sprintf("%d sheets are in the folder %s.", len(files), folder)
	if len(files) == 1 {
		path, said = files[0], "Written to "+files[0]+"."
	}
	if err := p.open(path); err != nil {
		p.side.tell(said + " Nothing on this machine could be found to open it: open it and print it yourself.")
		return
	}
	p.side.tell(said + " Print from what opens; if nothing does, open it yourself.")
}

// tellOnce says what the first printing of labels means for the floor, and goes
// on when that is agreed to.
func (p *place) tellOnce(which []sheets.Sheet, job sheets.Job, verb string, goOn func()) {
	floor, must := mustBeTold(job.P, which, job)
	if !must {
		goOn()
		return
	}
	fields.Confirm(p.desk.Window(), "The labels will stay", "Once a sheet with labels is on paper, the labels of "+floor+
		" stay where they are. A change of the plan adds new labels and retires old ones, but never moves a label to another place, so that no paper that is still about can mislead anybody.",
		verb, goOn)
}

// keep records the printing, unless the file can only be looked at.
func (p *place) keep(which []sheets.Sheet, job sheets.Job) {
	if only, why := p.desk.File().ReadOnly(); only {
		p.desk.Told("The printing is not recorded: " + why)
		return
	}
	p.desk.Edit(printLabel(which), keep(which, job))
}

var fileDialogSize = fyne.NewSize(900, 600)

// askSave asks where to save the chosen sheet.
func (p *place) askSave(extension string) {
	s, job := p.card().sheet, jobOf(p.view, p.choice, p.now())
	save := func() {
		d := dialog.NewFileSave(func(w fyne.URIWriteCloser, err error) {
			if err != nil {
				p.desk.Fail(err)
				return
			}
			if w == nil {
				return
			}
			path := w.URI().Path()
			w.Close()
			p.save(s, job, withExtension(path, extension))
		}, p.desk.Window())
		d.SetFileName(fileName(job.P, s, job, extension))
		if at, err := storage.ListerForURI(storage.NewFileURI(filepath.Dir(p.view.Path))); err == nil {
			d.SetLocation(at)
		}
		d.Resize(fileDialogSize)
		d.Show()
	}
	if extension == ".csv" {
		save()
		return
	}
	p.tellOnce([]sheets.Sheet{s}, job, "Save", save)
}

func withExtension(path, extension string) string {
	if strings.EqualFold(filepath.Ext(path), extension) {
		return path
	}
	return path + extension
}

// save writes one sheet as PDF, which counts as printed, or its table as CSV.
func (p *place) save(s sheets.Sheet, job sheets.Job, path string) {
	write, printed := sheets.Write, true
	if strings.EqualFold(filepath.Ext(path), ".csv") {
		write, printed = sheets.WriteCSV, false
	}
	p.run("Writing "+filepath.Base(path), func(context.Context) error {
		return store.WriteWhole(path, func(w io.Writer) error { return write(w, s.Kind, job) })
	}, func(err error) {
		if err != nil {
			p.desk.Fail(err)
			return
		}
		if printed {
			p.keep([]sheets.Sheet{s}, job)
		}
		p.side.tell("Saved as " + path + ".")
	})
}
