package pdf

import (
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/structs"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf/internal/syntax"
	"groundrow/tapeout/plane"
)

// object is one thing on a page or in a form: a path, a text, an image, a form. Its
// methods ask PDFium, which answers with an error where there is nothing to tell, as
// for the colour of a pattern: hence the ok.
type object struct {
	s   *session
	ref references.FPDF_PAGEOBJECT
}

// onPage returns the n-th object of a page.
func (s *session) onPage(index, n int) (object, bool) {
	r, err := s.lib.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: s.at(index), Index: n})
	if err != nil {
		return object{}, false
	}
	return object{s, r.PageObject}, true
}

func (o object) kind() enums.FPDF_PAGEOBJ {
	r, err := o.s.lib.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: o.ref})
	if err != nil {
		return enums.FPDF_PAGEOBJ_UNKNOWN
	}
	return r.Type
}

// children returns the number of objects in a form.
func (o object) children() int {
	r, err := o.s.lib.FPDFFormObj_CountObjects(&requests.FPDFFormObj_CountObjects{PageObject: o.ref})
	if err != nil {
		return 0
	}
	return r.Count
}

// child returns the n-th object in a form; the page's own list does not have it.
func (o object) child(n int) (object, bool) {
	r, err := o.s.lib.FPDFFormObj_GetObject(&requests.FPDFFormObj_GetObject{PageObject: o.ref, Index: uint64(n)})
	if err != nil {
		return object{}, false
	}
	return object{o.s, r.PageObject}, true
}

// matrix leads from the object's own coordinates to those of what it lies in.
func (o object) matrix() matrix {
	r, err := o.s.lib.FPDFPageObj_GetMatrix(&requests.FPDFPageObj_GetMatrix{PageObject: o.ref})
	if err != nil {
		return unmoved
	}
	m := r.Matrix
	return matrix{float64(m.A), float64(m.B), float64(m.C), float64(m.D), float64(m.E), float64(m.F)}
}

// layer returns the name of the innermost layer that the object is marked with.
// named is false when there is a mark that does not say which layer is meant: a
// membership in several.
func (o object) layer() (name string, marked, named bool) {
	count, err := o.s.lib.FPDFPageObj_CountMarks(&requests.FPDFPageObj_CountMarks{PageObject: o.ref})
	if err != nil {
		return "", false, false
	}
	for i := count.Count - 1; i >= 0; i-- {
		mark, err := o.s.lib.FPDFPageObj_GetMark(&requests.FPDFPageObj_GetMark{PageObject: o.ref, Index: uint64(i)})
		if err != nil {
			continue
		}
		kind, err := o.s.lib.FPDFPageObjMark_GetName(&requests.FPDFPageObjMark_GetName{PageObjectMark: mark.Mark})
		if err != nil || kind.Name != "OC" {
			continue
		}
		// Asked for the words, PDFium takes the bytes for UTF-8, which they rarely are.
		v, err := o.s.lib.FPDFPageObjMark_GetParamBlobValue(&requests.FPDFPageObjMark_GetParamBlobValue{PageObjectMark: mark.Mark, Key: "Name"})
		if err != nil {
			return "", true, false
		}
		return syntax.String(v.Value).Text(), true, true
	}
	return "", false, false
}

// drawn tells how a path is painted.
func (o object) drawn() (filled, stroked bool) {
	r, err := o.s.lib.FPDFPath_GetDrawMode(&requests.FPDFPath_GetDrawMode{PageObject: o.ref})
	if err != nil {
		return false, false
	}
	return r.FillMode != enums.FPDF_FILLMODE_NONE, r.Stroke
}

// ink is a colour with its opacity, 0 to 255.
type ink struct {
	colour linework.Colour
	alpha  uint
}

func inkOf(c structs.FPDF_COLOR, err error) ink {
	if err != nil { // a pattern, or a colour of which nothing is known
		return ink{alpha: 255}
	}
	return ink{linework.RGB(uint32(c.R&255)<<16 | uint32(c.G&255)<<8 | uint32(c.B&255)), c.A}
}

func (i ink) isWhite() bool { return i.colour == linework.RGB(0xFFFFFF) }

func (o object) pen() ink {
	r, err := o.s.lib.FPDFPageObj_GetStrokeColor(&requests.FPDFPageObj_GetStrokeColor{PageObject: o.ref})
	if err != nil {
		return inkOf(structs.FPDF_COLOR{}, err)
	}
	return inkOf(r.StrokeColor, nil)
}

func (o object) filling() ink {
	r, err := o.s.lib.FPDFPageObj_GetFillColor(&requests.FPDFPageObj_GetFillColor{PageObject: o.ref})
	if err != nil {
		return inkOf(structs.FPDF_COLOR{}, err)
	}
	return inkOf(r.FillColor, nil)
}

// width returns that of the pen, in the object's own coordinates.
func (o object) width() float64 {
	r, err := o.s.lib.FPDFPageObj_GetStrokeWidth(&requests.FPDFPageObj_GetStrokeWidth{PageObject: o.ref})
	if err != nil {
		return 0
	}
	return float64(r.StrokeWidth)
}

// dash returns drawn, gap, drawn, gap … in the object's own coordinates; nil: solid.
func (o object) dash() []float64 {
	r, err := o.s.lib.FPDFPageObj_GetDashArray(&requests.FPDFPageObj_GetDashArray{PageObject: o.ref})
	if err != nil {
		return nil
	}
	return dashes(r.DashArray)
}

// dashes turns a dash array into whole pairs: of an odd number every other round
// begins with a gap. Arrays that draw nothing or make no sense are solid, as readers
// show them.
func dashes(array []float32) []float64 {
	if len(array)%2 == 1 {
		array = append(array[:len(array):len(array)], array...)
	}
	var out []float64
	gaps := 0.0
	for i, v := range array {
		if !(v >= 0 && v < furthest) {
			return nil
		}
		if i%2 == 1 {
			gaps += float64(v)
		}
		out = append(out, float64(v))
	}
	if gaps == 0 {
		return nil
	}
	return out
}

// box returns the bounds of an object in the coordinates of what it lies in.
func (o object) box() (b plane.Box, ok bool) {
	r, err := o.s.lib.FPDFPageObj_GetBounds(&requests.FPDFPageObj_GetBounds{PageObject: o.ref})
	if err != nil {
		return plane.Box{}, false
	}
	return plane.BoxOf(plane.Point{X: float64(r.Left), Y: float64(r.Bottom)}, plane.Point{X: float64(r.Right), Y: float64(r.Top)})
}
