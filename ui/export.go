package ui

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/drawing"
	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
)

// format is one way in which a floor goes out.
type format struct {
	name      string
	suffix    string // of the file's name
	extension string
	rows      []string // the rows of the form that matter to it
}

// The formats, in the order offered.
var (
	asDXF    = format{"Drawing for drafting programs (DXF)", "", ".dxf", []string{rowAxes}}
	asSVG    = format{"Drawing to scale on paper (SVG)", "", ".svg", []string{rowAxes, rowScale}}
	asPoints = format{"Points for a layout instrument (CSV)", " points", ".csv", []string{rowAxes, rowNorth, rowEast, rowHeader}}
	asMarks  = format{"Marks as a table (CSV)", " marks", ".csv", nil}
	formats  = []format{asDXF, asSVG, asPoints, asMarks}
)

// outgoing is what a person has chosen to save for other programs.
type outgoing struct {
	format format
	work   *prep.FloorWork // of the floor in the scene
	axes   layout.Axes
	scale  length.Scale
	origin plane.Point
	header bool
}

// fileName is what the file is called unless the person says otherwise.
func (o outgoing) fileName() string {
	return plainFileName(o.work.Floor.Name+o.format.suffix) + o.format.extension
}

// plainFileName keeps of a name what every file system takes.
func plainFileName(name string) string {
	name = strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return -1
		}
		return r
	}, name)
	if name = strings.TrimSpace(name); name == "" {
		return "Floor"
	}
	return name
}

// write writes the file.
func (o outgoing) write(w io.Writer, p *prep.Production) error {
	if o.format.name == asMarks.name {
		return drawing.WriteMarks(w, prep.MarkRows(o.work), p.Style())
	}
	l := layout.Of(prep.Outgoing(p, o.work), o.axes)
	switch o.format.name {
	case asDXF.name:
		return l.WriteDXF(w, layout.UnitFor(p.Unit()))
	case asSVG.name:
		return l.WriteSVG(w, o.scale)
	}
	list := layout.PointList{Unit: linework.Metre, Origin: o.origin, Header: o.header}
	if p.Unit() == length.FeetInches {
		list.Unit = linework.Foot
	}
	return l.WritePoints(w, list)
}

// askExport asks what goes out of which floor, and where to.
func (w *Window) askExport() {
	v := w.desk.View()
	if v == nil {
		return
	}
	if len(v.P.Floors) == 0 {
		w.desk.Fail(errors.New("there is no floor yet whose lines or marks could be saved; add one in the place Floors"))
		return
	}
	newExportForm(v).ask(w.win, func(o outgoing) error {
		if err := o.write(io.Discard, v.P); err != nil { // what cannot be written is said in the form
			return err
		}
		w.askExportPlace(v, o)
		return nil
	})
}

// askExportPlace asks for the file and writes it.
func (w *Window) askExportPlace(v *desk.View, o outgoing) {
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
		w.export(v, o, path)
	}, w.win)
	dlg.SetFileName(o.fileName())
	if at, err := storage.ListerForURI(storage.NewFileURI(filepath.Dir(v.Path))); err == nil {
		dlg.SetLocation(at)
	}
	dlg.Resize(fileDialogSize)
	dlg.Show()
}

// export writes the file off the UI goroutine.
func (w *Window) export(v *desk.View, o outgoing, path string) {
	path = trimmed(path)
	if !strings.EqualFold(filepath.Ext(path), o.format.extension) {
		path += o.format.extension
	}
	w.desk.Run("Writing "+filepath.Base(path), func(context.Context) error {
		return store.WriteWhole(path, func(out io.Writer) error { return o.write(out, v.P) })
	}, func(err error) {
		if err != nil {
			w.desk.Fail(fmt.Errorf("saving for other programs: %w", err))
			return
		}
		w.desk.Told("Saved in " + path)
	})
}
