package pdf_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/tetratelabs/wazero"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf"
)

// engine serves all tests, and cache those that start one of their own: without it
// that takes seconds.
var (
	engine *pdf.Engine
	cache  wazero.CompilationCache
)

func cacheDir() string { return filepath.Join(os.TempDir(), "groundrow-tests", "pdf") }

func TestMain(m *testing.M) {
	os.Exit(withEngine(m.Run))
}

// withEngine keeps what is compiled from one run of the tests to the next.
func withEngine(run func() int) int {
	var err error
	if cache, err = wazero.NewCompilationCacheWithDir(cacheDir()); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer cache.Close(context.Background())
	if engine, err = pdf.Start(cache, pdf.DefaultLimits); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer engine.Close()
	return run()
}

// tolerance of curves in the tests, in points: 0.85 mm on the floor at 1:48. A circle
// of four cubic curves is off by 0.027 % of its radius, so a finer one would find no
// arcs in many files.
const tolerance = 0.05

func read(t *testing.T, data []byte) *linework.Sheet {
	t.Helper()
	sheet, err := engine.Read(context.Background(), data, 1, tolerance, nil)
	if err != nil {
		t.Fatal(err)
	}
	return sheet
}

// page is what a hand-written PDF file of one page is made of.
type page struct {
	entries   string   // of the page's dictionary, beside the usual ones
	resources string   // of the page, beside its forms
	drawing   string   // its operators
	forms     []string // whole objects, from object 5 on; the page calls them F5, F6 …
	catalogue string   // entries of the catalogue
}

// file writes the page as a PDF 1.7 file on a letter sheet.
func (p page) file() []byte {
	var xobjects strings.Builder
	for i := range p.forms {
		fmt.Fprintf(&xobjects, "/F%d %d 0 R ", i+5, i+5)
	}
	return fileOf(append([]string{
		"<< /Type /Catalog /Pages 2 0 R " + p.catalogue + " >>",
		"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
		fmt.Sprintf("<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources << /XObject << %s>> %s >> %s >>", &xobjects, p.resources, p.entries),
		stream("", p.drawing),
	}, p.forms...)...)
}

// fileOf writes objects, numbered from 1, of which the first is the catalogue.
func fileOf(objects ...string) []byte {
	var s strings.Builder
	s.WriteString("%PDF-1.7\n")
	at := make([]int, len(objects))
	for i, o := range objects {
		at[i] = s.Len()
		fmt.Fprintf(&s, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	start := s.Len()
	fmt.Fprintf(&s, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, o := range at {
		fmt.Fprintf(&s, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&s, "trailer << /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, start)
	return []byte(s.String())
}

func stream(entries, content string) string {
	return fmt.Sprintf("<< /Length %d %s >>\nstream\n%s\nendstream", len(content), entries, content)
}

// form is a drawing that the page or another form places.
func form(matrix, resources, content string) string {
	return stream("/Type /XObject /Subtype /Form /BBox [-1000 -1000 1000 1000] /Matrix ["+matrix+"] /Resources << "+resources+" >>", content)
}
