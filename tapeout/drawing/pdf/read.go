package pdf

import (
	"context"
	"fmt"
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// Kinds of items. A stroke was drawn with a pen; a strip is a thin filled rectangle,
// given by its centre line; a fill is the contour of a filled area without a pen.
const (
	KindStroke = "stroke"
	KindStrip  = "strip"
	KindFill   = "fill"
)

// FinestTolerance is the least distance, in points, that curves are allowed to be
// off; PDFium's own numbers are no finer on a large sheet.
const FinestTolerance = 0.001

// Read takes a page apart, the first one being page 1. Curves that are circular arcs
// within tol (points on paper) become arcs, other curves chords within tol. progress
// is told the part done, from 0 to 1, in the goroutine of the call; nil is allowed.
// The error is a linework.Fault, whose reason is one of this package or of linework,
// or that of ctx.
func (e *Engine) Read(ctx context.Context, data []byte, number int, tol float64, progress func(float64)) (*linework.Sheet, error) {
	var sheet *linework.Sheet
	err := e.open(ctx, data, func(s *session) error {
		p, err := s.page(number)
		if err != nil {
			return err
		}
		r := newReader(s, p, tol, progress)
		if err := r.all(); err != nil {
			return err
		}
		sheet, err = r.finish(number)
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("read the PDF file: %w", err)
	}
	return sheet, nil
}

// reader collects what is on one page.
type reader struct {
	s        *session
	page     *sheetOf
	tol      float64 // points on paper
	progress func(float64)

	sheet   linework.Sheet
	left    linework.Leftovers
	off     map[string]bool // layers
	frame   window          // the page's own
	words   *words
	seen    int // objects
	forms   int // placed on the page
	picture float64
}

func newReader(s *session, p *sheetOf, tol float64, progress func(float64)) *reader {
	r := &reader{s: s, page: p, tol: tol, progress: progress, off: map[string]bool{}}
	if !(tol >= FinestTolerance) {
		r.tol = FinestTolerance
	}
	if progress == nil {
		r.progress = func(float64) {}
	}
	r.sheet = linework.Sheet{
		Format: "PDF", Version: s.version(), Unit: linework.Point,
		UnitWhy: "A PDF page is measured in points of 1/72 inch on paper; the scale of the drawing is not in the file.",
		Layers:  layersIn(s.doc.plain),
	}
	for _, l := range r.sheet.Layers {
		r.off[l.Name] = l.Off
	}
	r.frame = window{region: plane.Rectangle(p.visible.Min, p.visible.Max), box: p.visible, upright: true}
	r.words = openWords(s, p.index)
	return r
}

// setting is what an object has from what it lies in.
type setting struct {
	place matrix // from the coordinates of what it lies in to the paper
	layer string
	group int
	depth int
}

// deepest nesting of forms that is followed; PDFium itself stops at less.
const deepest = 40

func (r *reader) all() error {
	for i := range r.page.objects {
		r.progress(float64(i) / float64(r.page.objects))
		o, ok := r.s.onPage(r.page.index, i)
		if !ok {
			r.left.Add("damaged objects", "they cannot be read", 1)
		} else if !r.object(o, setting{place: r.page.place}) {
			break
		}
		if err := r.s.ctx.Err(); err != nil {
			return err
		}
	}
	if err := r.s.ctx.Err(); err != nil {
		return err
	}
	r.progress(1)
	return nil
}

// object reads one object with all that it holds; it returns false when enough has
// been read.
func (r *reader) object(o object, in setting) bool {
	if r.seen >= r.s.limits.Objects {
		r.left.Add("further objects", fmt.Sprintf("only %d on one page are read", r.s.limits.Objects), 1)
		return false
	}
	r.seen++
	if r.s.ctx.Err() != nil {
		return false
	}
	in.layer = r.layerOf(o, in.layer)
	switch o.kind() {
	case pathObject:
		r.path(o, in)
	case textObject:
		r.text(o, in)
	case formObject:
		return r.form(o, in)
	case imageObject:
		r.image(o, in)
	case shadingObject:
		r.left.Add("shadings", "they have no lines", 1)
	default:
		r.left.Add("unknown objects", "they cannot be read", 1)
	}
	return true
}

func (r *reader) layerOf(o object, outer string) string {
	name, marked, named := o.layer()
	if marked && !named {
		r.left.Add("layers of some objects", "they belong to a combination of layers, of which the file does not tell the name", 1)
	}
	if !named {
		return outer
	}
	return name
}

// form reads the objects of a form. Each child's matrix contains the form's own
// /Matrix already, so that only the one with which it is placed is left to apply.
func (r *reader) form(o object, in setting) bool {
	if in.depth >= deepest {
		r.left.Add("nested drawings", "they are nested too deeply", 1)
		return true
	}
	if in.group == 0 {
		r.forms++
		in.group = r.forms
	}
	in.depth++
	in.place = o.matrix().then(in.place)
	for i := range o.children() {
		child, ok := o.child(i)
		if !ok {
			r.left.Add("damaged objects", "they cannot be read", 1)
			continue
		}
		if !r.object(child, in) {
			return false
		}
	}
	return true
}

// image notes how much of the page a picture covers.
func (r *reader) image(o object, in setting) {
	r.left.Add("pictures", "they have no lines", 1)
	b, ok := o.box()
	if !ok {
		return
	}
	on := boxAfter(b, in.place)
	shown := func(from, to, limit float64) float64 { return max(0, min(to, limit)-max(from, 0)) }
	seen := r.page.visible.Max
	area := shown(on.Min.X, on.Max.X, seen.X) * shown(on.Min.Y, on.Max.Y, seen.Y)
	r.picture = max(r.picture, area/(seen.X*seen.Y))
}

// boxAfter returns the box around a box that has been moved.
func boxAfter(b plane.Box, m matrix) plane.Box {
	out, _ := plane.BoxOf(m.apply(b.Min), m.apply(b.Max),
		m.apply(plane.Point{X: b.Min.X, Y: b.Max.Y}), m.apply(plane.Point{X: b.Max.X, Y: b.Min.Y}))
	return out
}

// mostlyPicture is the part of a page above which a picture on it is probably a scan
// of the plan.
const mostlyPicture = 0.5

// finish puts the sheet together, or says why there is none.
func (r *reader) finish(number int) (*linework.Sheet, error) {
	if len(r.sheet.Items) == 0 {
		return nil, r.nothing(number)
	}
	r.sheet.Texts = r.words.lines()
	if r.words.skipped > 0 {
		r.left.Add("further words", fmt.Sprintf("only %d pieces on one page are read", mostPieces), r.words.skipped)
	}
	if r.picture > mostlyPicture {
		r.left.Add("a picture that fills most of the page", "it may be a scan of the plan, of which only what was drawn over it can be read", 1)
	}
	if n := r.s.remarks(r.page.index); n > 0 {
		r.left.Add("comments and form fields", "they lie over the drawing", n)
	}
	r.sheet.Box, _ = r.sheet.Bounds((*linework.Item).Shown)
	r.sheet.Left = r.left.List()
	return &r.sheet, nil
}

func (r *reader) nothing(number int) error {
	if r.picture > 0 {
		return &linework.Fault{Reason: ErrPicture, Where: page(number),
			What: "this is a picture or a scan, with " + percent(r.picture) + " of the page covered and no lines to read",
			Do:   "Ask for the PDF that the drawing program exports, or trace the picture"}
	}
	if len(r.words.pieces) > 0 {
		return &linework.Fault{Reason: ErrBlank, Where: page(number), What: "there are words, but no lines",
			Do: "Choose the page with the ground plan"}
	}
	return &linework.Fault{Reason: ErrBlank, Where: page(number), What: "nothing is drawn here",
		Do: "Choose the page with the ground plan"}
}

func percent(part float64) string { return fmt.Sprintf("%.0f %%", 100*math.Min(1, part)) }
