package ui

import (
	"bytes"
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/drawing"
	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/drawingfile"
	"groundrow/ui/fields"
)

// problemsShown bounds how many rows with a fault the preview names.
const problemsShown = 12

func (w *Window) askPlanTable() {
	if w.desk.File() == nil {
		return
	}
	dlg := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil {
			w.desk.Fail(err)
			return
		}
		if r != nil {
			path := r.URI().Path()
			r.Close()
			w.readPlanTable(path)
		}
	}, w.win)
	dlg.SetFilter(storage.NewExtensionFileFilter(drawingfile.TableExtensions))
	dlg.Resize(fileDialogSize)
	dlg.Show()
}

// planTable is a table of a plan on its way in.
type planTable struct {
	name    string
	content []byte
	read    drawing.PlanTable
	onPaper bool
}

// readPlanTable shows what the table holds before anything is changed.
func (w *Window) readPlanTable(path string) {
	if w.desk.View() == nil {
		w.desk.Told("Open a production first, then bring in its plan")
		return
	}
	content, err := drawingfile.ReadTable(path)
	if err != nil {
		w.desk.Fail(fmt.Errorf("reading %s: %w", filepath.Base(path), err))
		return
	}
	t := planTable{name: filepath.Base(path), content: content}
	if err := t.parse(w.desk.View().P); err != nil {
		w.desk.Fail(fmt.Errorf("%s is no table of a plan: %w", t.name, err))
		return
	}
	w.previewPlanTable(&t)
}

func (t *planTable) parse(p *prep.Production) error {
	o := drawing.PlanOptions{Unit: p.Unit(), Levels: p.Plan.Levels, NewID: uuid.NewString}
	if t.onPaper {
		o.Scale = length.Scale(p.Plan.Scale)
	}
	read, err := drawing.ReadPlan(bytes.NewReader(t.content), o)
	t.read = read
	return err
}

// says tells in words what would come in.
func (t *planTable) says() string {
	lines := []string{fmt.Sprintf("%s, %s to be added.", counts(len(t.read.Elements), "element"), counts(len(t.read.Levels), "level"))}
	if len(t.read.Unused) > 0 {
		lines = append(lines, "Columns that are not looked at: "+strings.Join(t.read.Unused, ", ")+".")
	}
	if n := len(t.read.Problems); n > 0 {
		lines = append(lines, "", fmt.Sprintf("%s cannot be used and would be left out:", counts(n, "row or value")))
		for _, p := range t.read.Problems[:min(n, problemsShown)] {
			lines = append(lines, "  "+p.String())
		}
		if n > problemsShown {
			lines = append(lines, fmt.Sprintf("  and %d more.", n-problemsShown))
		}
	}
	return strings.Join(lines, "\n")
}

func counts(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, strings.ReplaceAll(what, " or", "s or"))
}

func (w *Window) previewPlanTable(t *planTable) {
	words := widget.NewLabel(t.says())
	words.Wrapping = fyne.TextWrapWord
	paper := fields.NewTick("The lengths were measured on paper, at the scale of the plan")
	paper.OnCommit = func(on bool) error {
		t.onPaper = on
		err := t.parse(w.desk.View().P)
		words.SetText(t.says())
		return err
	}
	only := fields.NewTick("Take away what is on the plan and not in the table")
	body := container.NewBorder(container.NewVBox(paper, only), nil, nil, nil, container.NewVScroll(words))
	dlg := dialog.NewCustomConfirm("A plan from "+t.name, "Bring it in", "Cancel", body, func(yes bool) {
		if yes {
			w.takePlanTable(t, only.Value())
		}
	}, w.win)
	dlg.Resize(fyne.NewSize(680, 440))
	dlg.Show()
}

// takePlanTable brings the elements in, and keeps the table as it came.
func (w *Window) takePlanTable(t *planTable, only bool) {
	v := w.desk.View()
	kept := prep.Drawing{
		ID: uuid.NewString(), Name: t.name, Format: "CSV", Bytes: len(t.content), On: time.Now(), By: v.Who,
	}
	if err := w.desk.File().AddDrawing(context.Background(), v.Snapshot, kept, t.content); err != nil {
		w.desk.Fail(err)
		return
	}
	w.desk.Refresh()
	var in prep.Intake
	if w.desk.Edit("Bring in the plan "+t.name, func(p *prep.Production) error {
		gone := p.Plan.Elements
		in = p.TakePlan(t.read)
		if only {
			for _, e := range slices.Clone(gone) {
				if slices.Contains(in.Kept, e.Name) {
					p.RemoveElement(e.ID)
				}
			}
		}
		return nil
	}) {
		w.goTo(desk.Plan)
		w.desk.Told(fmt.Sprintf("%s added, %d drawn anew", counts(len(in.Added), "element"), len(in.Redrawn)))
	}
}
