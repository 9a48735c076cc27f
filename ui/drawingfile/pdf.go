package drawingfile

import (
	"context"
	"errors"

	"groundrow/tapeout/drawing/linework"
)

// errNoPDF is what a PDF gets until its line work can be read; see the README's
// list of limits.
var errNoPDF = errors.New("this is a PDF, whose lines cannot be read yet: ask for the drawing as DXF, or save the page as a picture and trace it")

func pdfPages(context.Context, []byte) ([]Page, error) { return nil, errNoPDF }

func pdfSheet(context.Context, []byte, int, func(float64)) (*linework.Sheet, error) {
	return nil, errNoPDF
}
