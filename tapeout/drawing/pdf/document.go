package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"math"

	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf/internal/syntax"
	"groundrow/tapeout/plane"
)

// document is the open file.
type document struct {
	ref   references.FPDF_DOCUMENT
	pages int
	size  int          // bytes of the file
	plain *syntax.File // nil where nothing in it is wanted, or it cannot be had
	units []float64    // of each page, in points
}

// load opens the file. Its contents are read page by page later.
func (s *session) load(data []byte) error {
	opened, err := s.lib.OpenDocument(&requests.OpenDocument{File: &data})
	if err != nil {
		return refused(err)
	}
	s.doc.ref, s.doc.size = opened.Document, len(data)
	count, err := s.lib.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: s.doc.ref})
	if err != nil {
		return refused(err)
	}
	s.doc.pages = count.PageCount
	if s.doc.pages <= 0 {
		return damaged("", "There are no pages in the file", nil)
	}
	if mayTellMore(data) {
		s.doc.plain = s.plainCopy()
	}
	s.doc.units = s.doc.userUnits()
	return nil
}

// mayTellMore tells whether a file may have user units or layers: it names them, or
// its objects are packed so that they cannot be seen.
func mayTellMore(data []byte) bool {
	for _, word := range []string{"/UserUnit", "/OCProperties", "/ObjStm", "/Encrypt"} {
		if bytes.Contains(data, []byte(word)) {
			return true
		}
	}
	return false
}

// withoutSecurity and notIncremental make PDFium write every object anew and readable
// (fpdf_save.h).
const notIncremental, withoutSecurity = 2, 3

// plainCopy has PDFium write the file without packed objects, and reads those. A file
// of which that fails is read as if it had no layers and no user unit.
func (s *session) plainCopy() *syntax.File {
	for _, how := range []requests.SaveFlags{notIncremental, withoutSecurity} {
		out := bounded{room: 2*s.doc.size + 1<<20}
		_, err := s.lib.FPDF_SaveAsCopy(&requests.FPDF_SaveAsCopy{Document: s.doc.ref, Flags: how, FileWriter: &out})
		if err != nil {
			continue
		}
		if file, err := syntax.Parse(out.data); err == nil {
			return file
		}
	}
	return nil
}

// bounded keeps what is written to it, up to room bytes.
type bounded struct {
	data []byte
	room int
}

var errNoRoom = errors.New("the copy is larger than expected")

func (b *bounded) Write(p []byte) (int, error) {
	if len(b.data)+len(p) > b.room {
		return 0, errNoRoom
	}
	b.data = append(b.data, p...)
	return len(p), nil
}

// widestUserUnit is the largest that readers accept (PDF reference 1.7, implementation
// note 171 gives 75 000 for the size of a page in points).
const widestUserUnit = 75_000

// userUnits returns the size of a unit of each page, in points. PDFium leaves the
// entry out of account.
func (d *document) userUnits() []float64 {
	units := make([]float64, d.pages)
	for i := range units {
		units[i] = 1
	}
	if d.plain == nil {
		return units
	}
	for i, dict := range d.plain.Pages(d.pages) {
		if u, ok := d.plain.Number(dict["UserUnit"]); ok && u > 0 && u <= widestUserUnit {
			units[i] = u
		}
	}
	return units
}

// sheetOf is a page as it lies on the table.
type sheetOf struct {
	index   int
	place   matrix    // from the page's user space to the paper, in points
	visible plane.Box // on the paper, from the origin
	turned  int       // quarter turns clockwise
	objects int
}

// page finds the page with a number from 1, without looking at what is on it.
func (s *session) page(number int) (*sheetOf, error) {
	if number < 1 || number > s.doc.pages {
		return nil, &linework.Fault{Reason: ErrNoPage, What: fmt.Sprintf("There is no page %d", number),
			Do: fmt.Sprintf("The last one is page %d", s.doc.pages)}
	}
	p := &sheetOf{index: number - 1}
	at := s.at(p.index)
	count, err := s.lib.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: at})
	if err != nil {
		return nil, damaged(page(number), "the page is damaged, or needs more memory than there is", err)
	}
	p.objects = count.Count
	rect, err := s.lib.FPDF_GetPageBoundingBox(&requests.FPDF_GetPageBoundingBox{Page: at})
	if err != nil {
		return nil, damaged(page(number), "the page does not say how large it is", err)
	}
	box := plane.Box{
		Min: plane.Point{X: float64(rect.Rect.Left), Y: float64(min(rect.Rect.Bottom, rect.Rect.Top))},
		Max: plane.Point{X: float64(rect.Rect.Right), Y: float64(max(rect.Rect.Bottom, rect.Rect.Top))},
	}
	if rotation, err := s.lib.FPDFPage_GetRotation(&requests.FPDFPage_GetRotation{Page: at}); err == nil {
		p.turned = int(rotation.PageRotation)
	}
	p.place = onPage(box, p.turned, s.doc.units[p.index])
	a, b := p.place.apply(box.Min), p.place.apply(box.Max)
	p.visible = plane.Box{Max: plane.Point{X: math.Abs(b.X - a.X), Y: math.Abs(b.Y - a.Y)}}
	if !onPaper(p.visible.Max) || p.visible.Width() == 0 || p.visible.Height() == 0 {
		return nil, damaged(page(number), "the page has no sensible size", nil)
	}
	return p, nil
}

func (s *session) at(index int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: s.doc.ref, Index: index}}
}

// version returns that of the format, such as 1.7.
func (s *session) version() string {
	v, err := s.lib.FPDF_GetFileVersion(&requests.FPDF_GetFileVersion{Document: s.doc.ref})
	if err != nil || v.FileVersion <= 0 {
		return ""
	}
	return fmt.Sprintf("%d.%d", v.FileVersion/10, v.FileVersion%10)
}
