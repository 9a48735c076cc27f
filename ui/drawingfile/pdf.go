package drawingfile

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"github.com/tetratelabs/wazero"

	"groundrow/tapeout/drawing/pdf"
)

// finePoints is how far a flattened curve may depart from the drawn one, in points
// on paper: a millimetre on the floor at 1:48.
const finePoints = 0.06

// Warm has the reader of PDF files ready sooner: what it takes several seconds to
// compile is kept on the machine. Where that has been done before it costs little.
func Warm() {
	if _, done, err := startPDF(); err == nil { // what is wrong is said when a PDF is opened
		done()
	}
}

// startPDF starts the reader of PDF files, with what an earlier run has compiled.
// A store of that which is damaged is thrown away; without one it takes longer.
func startPDF() (engine *pdf.Engine, done func(), err error) {
	folder := ""
	if dir, err := os.UserCacheDir(); err == nil {
		folder = filepath.Join(dir, "groundrow", "pdf")
	}
	engine, done, err = startWith(folder)
	if err != nil && folder != "" {
		os.RemoveAll(folder)
		if engine, done, err = startWith(folder); err != nil {
			engine, done, err = startWith("")
		}
	}
	if err != nil {
		return nil, nil, fmt.Errorf("the reader of PDF files does not start: %w", err)
	}
	return engine, done, nil
}

// startWith keeps what is compiled in the folder; the empty one keeps nothing.
func startWith(folder string) (*pdf.Engine, func(), error) {
	var cache wazero.CompilationCache
	if folder != "" {
		if made, err := wazero.NewCompilationCacheWithDir(folder); err == nil {
			cache = made
		}
	}
	end := func() {
		if cache != nil {
			_ = cache.Close(context.Background()) // only files that are there already
		}
	}
	engine, err := pdf.Start(cache, pdf.DefaultLimits)
	if err != nil {
		end()
		return nil, nil, err
	}
	return engine, func() {
		_ = engine.Close() // everything that was read has been copied out of it
		end()
	}, nil
}
