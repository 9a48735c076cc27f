package drawingin

import (
	"bytes"
	"context"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
)

// openFile finds out which pages a file has.
func openFile(_ context.Context, src source) (opened, error) {
	file := opened{source: src}
	switch src.format {
	case formatDXF:
		file.sheets = []sheetInfo{{title: "The drawing"}}
		return file, nil
	}
	return file, errFormat
}

// first is the page that is opened first.
func (o opened) first() int { return 0 }

// sheet reads a page, with what can be found out about it.
func (o opened) sheet(ctx context.Context, n int) (*sensed, error) {
	s, err := o.lines(ctx, n)
	if err != nil {
		return nil, err
	}
	return makeSense(ctx, s)
}

// fine is how far a flattened curve may depart from the drawn one, in metres.
const fine = 0.001

func (o opened) lines(ctx context.Context, _ int) (*linework.Sheet, error) {
	return dxf.Read(ctx, bytes.NewReader(o.content), fine, nil)
}
