package drawingfile

import (
	"bytes"
	"context"
	"fmt"
	"slices"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
)

// Page is one page of a file as a list shows it.
type Page struct {
	Title string
	Size  string // in words
	Empty bool   // there are no lines on it

	sheet *linework.Sheet // of a PDF, whose pages are read at once
	err   error           // why there is none
}

// File is a drawing of lines whose pages can be read.
type File struct {
	Source
	Pages []Page
}

// Open finds out which pages a file has. A picture has none: there are no lines in
// it.
func Open(ctx context.Context, src Source) (File, error) {
	file := File{Source: src}
	switch src.Format {
	case DXF:
		file.Pages = []Page{{Title: "The drawing"}}
		return file, nil
	case PDF:
		pages, err := pdfPages(ctx, src.Content)
		file.Pages = pages
		return file, err
	}
	return file, fmt.Errorf("%s is a picture and has no lines: lay it under the plan in the window and trace it", src.Name)
}

// First is the page that is worth opening first: the first with lines.
func (f File) First() int {
	return max(slices.IndexFunc(f.Pages, func(p Page) bool { return !p.Empty }), 0)
}

// fine is how far a flattened curve may depart from the drawn one, in metres.
const fine = 0.001

// Sheet reads the lines of a page, counted from zero. progress is told the share
// that is done, from 0 to 1, and may be nil.
func (f File) Sheet(ctx context.Context, n int, progress func(float64)) (*linework.Sheet, error) {
	if n < 0 || n >= len(f.Pages) {
		return nil, fmt.Errorf("%s has no page %d: its last one is page %d", f.Name, n+1, len(f.Pages))
	}
	if f.Format == PDF {
		return f.Pages[n].sheet, f.Pages[n].err
	}
	return dxf.Read(ctx, bytes.NewReader(f.Content), fine, progress)
}
