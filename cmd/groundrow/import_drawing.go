package main

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/drawingfile"
)

// drawingReading is a drawing of lines on its way in, and the options for it.
type drawingReading struct {
	*session
	take     bool
	unit     string
	scale    string
	origin   string
	page     int
	revising bool
	gone     bool
}

// isDrawing tells whether a file is called like a drawing.
func isDrawing(path string) bool {
	return slices.Contains(drawingfile.Extensions, strings.ToLower(filepath.Ext(path)))
}

// asks adds the options that only drawings have.
func (r *drawingReading) asks(c *cobra.Command) {
	c.Flags().BoolVar(&r.take, "take", false, "bring the elements that the drawing proposes onto the plan; without it a drawing is only reported on")
	c.Flags().BoolVar(&r.revising, "revise", false, "take the drawing as a revision of the plan: what moved, has another shape or is new comes in, labels keep their promise")
	c.Flags().BoolVar(&r.gone, "gone", false, "with --revise: what the drawing does not show any more goes off the plan as well")
	c.Flags().StringVar(&r.origin, "origin", "", "where the centre line meets the baseline, in the drawing's own units: x,y (default: as the drawing proposes)")
	c.Flags().IntVar(&r.page, "page", 0, "the page of a PDF (default: the first with lines)")
}

// read reports on a drawing, and takes it when that is wanted.
func (r *drawingReading) read(c *cobra.Command, p *production, path string) error {
	src, err := drawingfile.Read(path)
	if err != nil {
		return err
	}
	file, err := drawingfile.Open(c.Context(), src)
	if err != nil {
		return err
	}
	defer file.Close()
	n := file.First()
	if r.page != 0 {
		n = r.page - 1
	}
	in, err := r.sense(c.Context(), file, n)
	if err != nil {
		return fmt.Errorf("%s: %w", src.Name, err)
	}
	if r.gone && !r.revising {
		return fmt.Errorf("--gone says something about a revision: add --revise")
	}
	if r.take && r.revising {
		return fmt.Errorf("--take adds to the plan and --revise changes it: choose one")
	}
	if err := r.answer(in); err != nil {
		return err
	}
	in.propose(p.P)
	if err := prep.FitForFloors(in.elements); err != nil {
		fmt.Fprintln(r.messages, err)
	}
	report := in.report(n)
	changes := r.compare(p.P, in)
	if changes != nil && !r.take {
		if report.Revision, err = changes.report(p.Snapshot); err != nil {
			return err
		}
	}
	switch {
	case r.take:
		report.Taken, err = r.bring(c.Context(), p, in)
	case r.revising:
		report.Taken, err = r.revise(c.Context(), p, in, changes)
	}
	if err != nil {
		return err
	}
	return r.tell(report)
}

func (r *drawingReading) sense(ctx context.Context, file *drawingfile.File, n int) (*drawingIn, error) {
	sheet, err := file.Sheet(ctx, n, nil)
	if err != nil {
		return nil, err
	}
	found, err := drawingfile.Sense(ctx, sheet)
	return &drawingIn{Reading: found, file: file}, err
}

// likely is how sure a proposal must be to hold when nobody is there to be asked.
const likely = 0.5

// drawingIn is a page with the answers that hold for it.
type drawingIn struct {
	drawingfile.Reading
	file     *drawingfile.File
	perUnit  float64 // metres on the floor; zero: nobody knows
	why      string
	origin   plane.Point // drawing units
	turn     float64
	datum    bool
	baseline plan.Baseline
	elements []plan.Element
	made     []sense.Candidate
}

// answer settles scale and datum: as typed, or as the drawing proposes.
func (r *drawingReading) answer(in *drawingIn) error {
	unit, err := r.drawingUnit(in.Sheet)
	if err != nil {
		return err
	}
	switch {
	case r.scale != "":
		scale, err := length.ParseScale(r.scale)
		if err != nil {
			return err
		}
		if unit == linework.Unknown {
			return fmt.Errorf("the drawing does not say what its units are, so a scale says nothing: add --unit")
		}
		in.perUnit, in.why = float64(scale)*float64(unit), "It was given: "+scale.String()+"."
	case r.unit != "":
		in.perUnit, in.why = float64(unit), "It was given: one unit of the drawing is a "+unit.String()+"."
	case len(in.Scales) > 0 && in.Scales[0].Confidence >= likely:
		in.perUnit, in.why = in.Scales[0].PerUnit, in.Scales[0].Why
	}
	if len(in.Datums) > 0 && in.Datums[0].Confidence >= likely {
		d := in.Datums[0]
		in.origin, in.turn, in.baseline, in.datum = d.Origin, d.Turn, d.Is, true
	}
	if r.origin != "" {
		if in.origin, err = originTyped(r.origin); err != nil {
			return err
		}
		in.datum = true
	}
	return nil
}

// drawingUnit is the drawing's unit: as given, or as the file says.
func (r *drawingReading) drawingUnit(s *linework.Sheet) (linework.Unit, error) {
	units := map[string]linework.Unit{"in": linework.Inch, "ft": linework.Foot, "mm": linework.Millimetre, "cm": linework.Centimetre, "m": linework.Metre}
	if r.unit == "" {
		return s.Unit, nil
	}
	u, ok := units[strings.ToLower(r.unit)]
	if !ok {
		return 0, fmt.Errorf("%q is no unit of a drawing; there are: in, ft, mm, cm, m", r.unit)
	}
	return u, nil
}

func originTyped(text string) (plane.Point, error) {
	x, y, ok := strings.Cut(text, ",")
	px, errX := strconv.ParseFloat(strings.TrimSpace(x), 64)
	py, errY := strconv.ParseFloat(strings.TrimSpace(y), 64)
	p := plane.Point{X: px, Y: py}
	if !ok || errX != nil || errY != nil || !p.Finite() {
		return p, fmt.Errorf("%q is no place in the drawing; write two numbers in its units, as 12.5,-3", text)
	}
	return p, nil
}

// propose makes elements of the lines that are not left aside. Where scale or datum
// are not known there are none.
func (in *drawingIn) propose(p *prep.Production) {
	if !(in.perUnit > 0) || !in.datum {
		return
	}
	to := sense.Axes(in.origin, in.turn, in.perUnit).Inverse()
	in.made = sense.ProposeElements(in.Sheet, sense.Options{PerUnit: in.perUnit, Motion: to, Keep: in.Keep()}).Candidates
	for _, c := range in.made {
		in.elements = append(in.elements, prep.ElementOf(c, p.Plan.Levels, uuid.NewString))
	}
}

// bring makes the one change: the elements come onto the plan, and the file is kept
// as it came.
func (r *drawingReading) bring(ctx context.Context, p *production, in *drawingIn) ([]string, error) {
	if err := r.known(in); err != nil {
		return nil, err
	}
	file := in.file
	var names []string
	err := p.EditWith(ctx, p.Now(), r.brought("Bring in ", file), func(to *prep.Production) error {
		if scale := length.Scale(in.perUnit / float64(in.Sheet.Unit)); len(to.Plan.Elements) == 0 && file.Format == drawingfile.PDF && scale.Valid() {
			to.Plan.Scale = float64(scale)
		}
		if in.baseline != "" {
			to.Plan.Baseline = in.baseline
		}
		for _, id := range to.AddElements(in.elements, uuid.NewString) {
			names = append(names, to.Plan.Element(id).Name)
		}
		return nil
	})
	return names, err
}

// known tells what is missing before anything can come onto the plan.
func (r *drawingReading) known(in *drawingIn) error {
	switch name := in.file.Name; {
	case len(in.Sheet.Items) == 0 && len(in.Sheet.Left) > 0:
		return fmt.Errorf("%s has no lines that can be used; left aside: %s", name, plain(in.Sheet.Left[0].String()))
	case len(in.Sheet.Items) == 0:
		return fmt.Errorf("%s has no lines", name)
	case !(in.perUnit > 0):
		return fmt.Errorf("%s does not tell its scale clearly enough: add --scale, as 1:48, or --unit for a drawing at full size", name)
	case !in.datum:
		return fmt.Errorf("%s does not tell clearly enough where its datum is: add --origin, as 0,0 in the drawing's own units", name)
	case len(in.elements) == 0:
		return fmt.Errorf("%s has no lines that make an element; the report without --take says what was left aside", name)
	}
	return prep.FitForFloors(in.elements)
}

// brought is the file as the production keeps it.
func (r *drawingReading) brought(what string, file *drawingfile.File) store.Brought {
	return store.Brought{Label: what + file.Name, Bytes: file.Content, Drawing: prep.Drawing{
		ID: uuid.NewString(), Name: file.Name, Format: string(file.Format), On: r.now(), By: r.worker(),
	}}
}

// layersOf sums up the sheet layer by layer, in the file's order.
func (in *drawingIn) layersOf() []layerReport {
	k := in.perUnit
	if !(k > 0) {
		k = float64(in.Sheet.Unit)
	}
	if !(k > 0) {
		k = math.NaN() // written as null
	}
	at := map[string]int{}
	var out []layerReport
	add := func(name string) *layerReport {
		if _, ok := at[name]; !ok {
			at[name] = len(out)
			out = append(out, layerReport{Layer: name})
		}
		return &out[at[name]]
	}
	for _, l := range in.Sheet.Layers {
		add(l.Name).Off = l.Off || l.Frozen
	}
	for i := range in.Sheet.Items {
		item := &in.Sheet.Items[i]
		l := add(item.Layer)
		l.Entities++
		l.Length += metres(item.Length() * k)
		if item.Shown() {
			l.Visible++
			l.VisibleLength += metres(item.Length() * k)
		}
	}
	return slices.DeleteFunc(out, func(l layerReport) bool { return l.Entities == 0 && l.Off })
}
