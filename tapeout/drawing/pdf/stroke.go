package pdf

import (
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/requests"

	"groundrow/tapeout/drawing/linework"
)

const (
	textObject    = enums.FPDF_PAGEOBJ_TEXT
	pathObject    = enums.FPDF_PAGEOBJ_PATH
	imageObject   = enums.FPDF_PAGEOBJ_IMAGE
	shadingObject = enums.FPDF_PAGEOBJ_SHADING
	formObject    = enums.FPDF_PAGEOBJ_FORM
)

// path adds a path as one item; as two where only part of it is strips.
func (r *reader) path(o object, in setting) {
	filled, stroked := o.drawn()
	if !filled && !stroked {
		return
	}
	place := o.matrix().then(in.place)
	outlines := r.onPaper(o, place)
	clips := r.clips(o, in)
	item := linework.Item{Layer: in.layer, Group: in.group, Hidden: r.off[in.layer]}
	if !stroked {
		r.fill(o, item, outlines, clips)
		return
	}
	pen := o.pen()
	if pen.alpha == 0 {
		r.left.Add("lines", "they are drawn in a transparent colour", 1)
		return
	}
	item.Kind, item.Colour = KindStroke, pen.colour
	item.Width = o.width() * place.scale() * float64(linework.Point)
	item.Dash = scaled(o.dash(), place.scale())
	for i := range outlines {
		item.Edges = append(item.Edges, outlines[i].edges(r.tol)...)
	}
	r.add(item, clips)
}

// onPaper returns the outlines of a path where they lie on the paper.
func (r *reader) onPaper(o object, place matrix) []outline {
	own, whole := o.path()
	if !whole {
		r.left.Add("parts of very long paths", "they have too many points", 1)
	}
	var out []outline
	for i := range own {
		moved := own[i].moved(place)
		if !moved.finite() {
			r.left.Add("lines", "they lie nowhere near the paper", 1)
			continue
		}
		out = append(out, moved)
	}
	return out
}

// fill adds an area without a pen: its strips by their centre lines, else its
// contour.
func (r *reader) fill(o object, item linework.Item, outlines []outline, clips []window) {
	ink := o.filling()
	if ink.alpha == 0 || ink.isWhite() {
		r.left.Add("white or transparent areas", "they draw nothing themselves; what they cover is read", 1)
		return
	}
	item.Colour = ink.colour
	contour := item
	item.Kind, contour.Kind = KindStrip, KindFill
	for i := range outlines {
		if s, ok := outlines[i].asStrip(); ok {
			item.Edges = append(item.Edges, s.centre)
			item.Width = max(item.Width, s.width*float64(linework.Point))
			continue
		}
		closed := outlines[i]
		closed.closed = true
		contour.Edges = append(contour.Edges, closed.edges(r.tol)...)
	}
	r.add(item, clips)
	r.add(contour, clips)
}

// add takes in what is seen of an item.
func (r *reader) add(item linework.Item, clips []window) {
	if len(item.Edges) == 0 {
		return
	}
	for i := range clips {
		item.Edges = clips[i].cut(item.Edges, r.tol)
	}
	if len(item.Edges) == 0 {
		r.left.Add("lines", "they are clipped away", 1)
		return
	}
	if item.Edges = r.frame.cut(item.Edges, r.tol); len(item.Edges) == 0 {
		r.left.Add("lines", "they lie outside the page", 1)
		return
	}
	r.sheet.Items = append(r.sheet.Items, item)
}

// clips returns the windows through which an object is seen. A clip of several
// outlines, or of too many sides, is left aside: all that it clips is kept.
func (r *reader) clips(o object, in setting) []window {
	var out []window
	for _, clip := range o.clips() {
		if len(clip) != 1 {
			r.left.Add("clipping of some lines", "its outline is too complicated, so they are kept in full length", 1)
			continue
		}
		moved := clip[0].moved(in.place)
		w, ok := windowOf(&moved, r.tol)
		if !ok {
			r.left.Add("clipping of some lines", "its outline is too complicated, so they are kept in full length", 1)
			continue
		}
		out = append(out, w)
	}
	return out
}

func scaled(lengths []float64, k float64) []float64 {
	for i := range lengths {
		lengths[i] *= k
	}
	return lengths
}

// remarks returns the number of annotations on a page, links left out of account as
// far as PDFium does.
func (s *session) remarks(index int) int {
	r, err := s.lib.FPDFPage_GetAnnotCount(&requests.FPDFPage_GetAnnotCount{Page: s.at(index)})
	if err != nil {
		return 0
	}
	return r.Count
}
