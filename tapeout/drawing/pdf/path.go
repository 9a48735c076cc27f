package pdf

import (
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"groundrow/tapeout/plane"
)

// tracing puts the segments of a path together to outlines.
type tracing struct {
	s        *session
	outlines []outline
	controls []plane.Point // control points that wait for their curve's end
}

// mostSegments of one path: a picture that has been traced, not a plan.
const mostSegments = 200_000

// path returns the outlines of a path in its own coordinates. whole is false when
// there are more segments than can be read.
func (o object) path() (outlines []outline, whole bool) {
	r, err := o.s.lib.FPDFPath_CountSegments(&requests.FPDFPath_CountSegments{PageObject: o.ref})
	if err != nil {
		return nil, false
	}
	t := tracing{s: o.s}
	for i := range min(r.Count, mostSegments) {
		segment, err := o.s.lib.FPDFPath_GetPathSegment(&requests.FPDFPath_GetPathSegment{PageObject: o.ref, Index: i})
		if err != nil {
			return t.outlines, false
		}
		t.add(segment.PathSegment)
		if i%1000 == 999 && o.s.ctx.Err() != nil {
			return nil, false
		}
	}
	return t.outlines, r.Count <= mostSegments
}

// add takes in the next segment. A curve is three of them, and only the last says
// that the outline closes.
func (t *tracing) add(ref references.FPDF_PATHSEGMENT) {
	kind, err := t.s.lib.FPDFPathSegment_GetType(&requests.FPDFPathSegment_GetType{PathSegment: ref})
	if err != nil {
		return
	}
	place, err := t.s.lib.FPDFPathSegment_GetPoint(&requests.FPDFPathSegment_GetPoint{PathSegment: ref})
	if err != nil {
		return
	}
	p := plane.Point{X: float64(place.X), Y: float64(place.Y)}
	last := len(t.outlines) - 1
	if kind.Type == enums.FPDF_SEGMENT_MOVETO || last < 0 {
		t.outlines = append(t.outlines, outline{start: p})
		t.controls = nil
		return
	}
	at := &t.outlines[last]
	switch {
	case kind.Type == enums.FPDF_SEGMENT_BEZIERTO && len(t.controls) < 2:
		t.controls = append(t.controls, p)
	case kind.Type == enums.FPDF_SEGMENT_BEZIERTO:
		at.rest = append(at.rest, segment{[3]plane.Point{t.controls[0], t.controls[1], p}, true})
		t.controls = nil
	default:
		at.rest = append(at.rest, lineTo(p))
	}
	closes, err := t.s.lib.FPDFPathSegment_GetClose(&requests.FPDFPathSegment_GetClose{PathSegment: ref})
	at.closed = at.closed || err == nil && closes.IsClose
}

// clips returns the outlines to which an object is clipped, in the coordinates of
// what it lies in: PDFium has already applied the object's own matrix. The outlines
// of one clip are a list of their own.
func (o object) clips() [][]outline {
	r, err := o.s.lib.FPDFPageObj_GetClipPath(&requests.FPDFPageObj_GetClipPath{PageObject: o.ref})
	if err != nil {
		return nil
	}
	count, err := o.s.lib.FPDFClipPath_CountPaths(&requests.FPDFClipPath_CountPaths{ClipPath: r.ClipPath})
	if err != nil {
		return nil
	}
	var out [][]outline
	for i := range min(count.Count, mostClips) {
		out = append(out, o.s.clip(r.ClipPath, i))
	}
	return out
}

// mostClips around one object, and mostClipSegments of one of them, that are looked at.
const (
	mostClips        = 32
	mostClipSegments = 4 * mostSides
)

func (s *session) clip(ref references.FPDF_CLIPPATH, index int) []outline {
	t := tracing{s: s}
	r, err := s.lib.FPDFClipPath_CountPathSegments(&requests.FPDFClipPath_CountPathSegments{ClipPath: ref, PathIndex: index})
	if err != nil || r.Count > mostClipSegments {
		return nil
	}
	for i := range r.Count {
		segment, err := s.lib.FPDFClipPath_GetPathSegment(&requests.FPDFClipPath_GetPathSegment{ClipPath: ref, PathIndex: index, SegmentIndex: i})
		if err != nil {
			return nil
		}
		t.add(segment.PathSegment)
	}
	return t.outlines
}
