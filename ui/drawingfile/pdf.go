package drawingfile

import (
	"context"

	"groundrow/tapeout/drawing/linework"
)

func pdfPages(ctx context.Context, content []byte) ([]Page, error) { return nil, errFormat }

func pdfSheet(ctx context.Context, content []byte, n int, progress func(float64)) (*linework.Sheet, error) {
	return nil, errFormat
}
