package drawingfile

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"slices"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf"
	"groundrow/tapeout/drawing/picture"
)

// File is a drawing of which pages can be listed, read and drawn. Close it after use.
type File struct {
	Source
	Pages []Page

	engine *pdf.Engine // of a PDF
	end    func()
}

// Open finds out which pages a file has. A picture is one page.
func Open(ctx context.Context, src Source) (*File, error) {
	file := &File{Source: src}
	if src.Format != PDF {
		file.Pages = []Page{{Label: "The drawing", Scan: src.Format.Picture(), Counted: src.Format.Picture()}}
		return file, nil
	}
	var err error
	if file.engine, file.end, err = startPDF(); err != nil {
		return nil, err
	}
	if file.Pages, err = pagesOf(ctx, file.engine, src.Content); err != nil {
		file.Close()
		return nil, err
	}
	return file, nil
}

// Close gives back what reading needs, and gives up reading that is under way. It
// may have to wait for that. Closing again does nothing.
func (f *File) Close() {
	if f != nil && f.end != nil {
		f.end()
		f.end = nil
	}
}

// First is the page that is worth opening first: the first with lines, else the
// first that can be traced.
func (f *File) First() int {
	n := slices.IndexFunc(f.Pages, func(p Page) bool { return !p.Scan && !p.Blank() })
	if n < 0 {
		n = slices.IndexFunc(f.Pages, func(p Page) bool { return p.Scan })
	}
	return max(n, 0)
}

// fine is how far a flattened curve may depart from the drawn one, in metres.
const fine = 0.001

// Sheet reads the lines of a page, counted from zero. progress is told the share
// that is done, from 0 to 1, and may be nil.
func (f *File) Sheet(ctx context.Context, n int, progress func(float64)) (*linework.Sheet, error) {
	if err := f.has(n); err != nil {
		return nil, err
	}
	switch f.Format {
	case PDF:
		return sensible(f.engine.Read(ctx, f.Content, n+1, finePoints, progress))
	case DXF:
		return sensible(dxf.Read(ctx, bytes.NewReader(f.Content), fine, progress))
	}
	return nil, fmt.Errorf("%s is a picture and has no lines: lay it under the plan in the window and trace it", f.Name)
}

// mostLines is how many lines and pieces of curves a page may have: with more, sense
// is not made of it in seconds. A ground plan has some thousands.
const mostLines = 80_000

// sensible refuses what is too much to be a ground plan.
func sensible(s *linework.Sheet, err error) (*linework.Sheet, error) {
	if err != nil {
		return nil, err
	}
	lines := 0
	for i := range s.Items {
		lines += len(s.Items[i].Edges)
	}
	if lines > mostLines {
		return nil, &linework.Fault{
			Reason: linework.ErrTooLarge,
			What:   fmt.Sprintf("The drawing has %d lines, and at most %d can be told apart", lines, mostLines),
			Do:     "Export only the layers of the ground plan, without hatching",
		}
	}
	return s, nil
}

// Picture draws a page, counted from zero: that of a PDF at dpi dots to an inch of
// paper in shades of grey, a scan or photograph as it is. A DXF has no paper and
// cannot be drawn so.
func (f *File) Picture(ctx context.Context, n int, dpi float64) (image.Image, error) {
	if err := f.has(n); err != nil {
		return nil, err
	}
	switch f.Format {
	case PDF:
		img, err := f.engine.Render(ctx, f.Content, n+1, dpi)
		if err != nil {
			return nil, err
		}
		return inGrey(img), nil
	case DXF:
		return nil, fmt.Errorf("%s is a drawing of lines: bring its lines in", f.Name)
	}
	img, _, err := picture.Decode(bytes.NewReader(f.Content), int64(len(f.Content)))
	return img, err
}

// Drawn draws one page of a file, counted from zero, as Picture does, without
// finding out about the others.
func Drawn(ctx context.Context, src Source, n int, dpi float64) (image.Image, error) {
	file := &File{Source: src, Pages: make([]Page, n+1)}
	defer file.Close()
	if src.Format == PDF {
		var err error
		if file.engine, file.end, err = startPDF(); err != nil {
			return nil, err
		}
	}
	return file.Picture(ctx, n, dpi)
}

func (f *File) has(n int) error {
	if n < 0 || n >= len(f.Pages) {
		return fmt.Errorf("%s has no page %d: its last one is page %d", f.Name, n+1, len(f.Pages))
	}
	return nil
}
