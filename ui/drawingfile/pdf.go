package drawingfile

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"github.com/tetratelabs/wazero"

	"groundrow/prep"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf"
)

// mostPages bounds how many pages of a PDF are looked at. A set of plans has a few
// dozen.
const mostPages = 60

// finePoints is how far a flattened curve may depart from the drawn one, in points
// on paper: a millimetre on the floor at 1:48.
const finePoints = 0.06

// pdfPages reads the lines of every page. What is on a page that has none says why.
func pdfPages(ctx context.Context, content []byte) ([]Page, error) {
	engine, done, err := startPDF()
	if err != nil {
		return nil, err
	}
	defer done()
	var pages []Page
	for n := 1; n <= mostPages; n++ {
		sheet, err := engine.Read(ctx, content, n, finePoints, nil)
		if errors.Is(err, pdf.ErrNoPage) {
			break
		}
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		page, wrong := pageOf(sheet, err)
		if wrong != nil && n == 1 && !ofOnePage(wrong) {
			return nil, wrong // the file as a whole
		}
		pages = append(pages, page)
	}
	return pages, nil
}

// ofOnePage tells whether a fault is that of one page, so that others may be sound.
func ofOnePage(err error) bool {
	var f *linework.Fault
	return errors.As(err, &f) && f.Where != ""
}

func pageOf(sheet *linework.Sheet, err error) (Page, error) {
	if err != nil {
		var f *linework.Fault
		title := err.Error()
		if errors.As(err, &f) {
			title = f.What
		}
		return Page{Title: title, Empty: true, err: err}, err
	}
	return Page{
		Title: largestWords(sheet), Size: prep.Counted(len(sheet.Items), "line"), sheet: sheet,
	}, nil
}

// largestWords are what a page calls itself in its largest letters.
func largestWords(s *linework.Sheet) string {
	best, height := "", 0.0
	for _, t := range s.Texts {
		text := strings.Join(strings.Fields(t.Text), " ")
		if t.Height > height && len([]rune(text)) > 2 {
			best, height = text, t.Height
		}
	}
	if r := []rune(best); len(r) > 60 {
		best = string(r[:60]) + "…"
	}
	if best == "" || math.IsNaN(height) {
		return "A page without words"
	}
	return best
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
