package drawingin

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

// bench is the page in a window with a production file of its own. Background work
// waits for settle.
type bench struct {
	t    testing.TB
	desk *desk.Desk
	page *Page
	left bool
}

// host shows the page as the place Plan does.
type host struct{ page *Page }

func (h *host) Name() desk.Name            { return desk.Plan }
func (h *host) Content() fyne.CanvasObject { return h.page.Content() }
func (h *host) Show(v *desk.View)          { h.page.Show(v) }

func open(t testing.TB, p *prep.Production) *bench {
	t.Helper()
	b := &bench{t: t}
	h, d := desktest.Open(t, p, func(d *desk.Desk) *host {
		return &host{New(d, func() { b.left = true })}
	})
	d.Still()
	b.desk, b.page = d, h.page
	return b
}

// read opens a file with the content.
func (b *bench) read(name string, content []byte) {
	b.t.Helper()
	path := filepath.Join(b.t.TempDir(), name)
	if err := os.WriteFile(path, content, 0o600); err != nil {
		b.t.Fatal(err)
	}
	b.page.Open(path)
	b.desk.Settle()
}

// refusal is what the window says of a file that cannot be read; empty: nothing.
func (b *bench) refusal() string {
	top := b.desk.Window().Canvas().Overlays().Top()
	if top == nil {
		return ""
	}
	return words(top)
}

// line is a line of a drawing.
type line struct {
	layer          string
	x1, y1, x2, y2 float64
}

// kitchen is a drawing in inches: two walls and a table within a border, with a
// centre line and a plaster line.
var kitchen = []line{
	{"WALLS", -120, 60, 120, 60}, {"WALLS", 120, 60, 120, 180}, {"WALLS", -120, 60, -120, 180},
	{"FURNITURE", -24, 96, 24, 96}, {"FURNITURE", 24, 96, 24, 132}, {"FURNITURE", 24, 132, -24, 132}, {"FURNITURE", -24, 132, -24, 96},
	{"CENTER LINE", 0, -60, 0, 240}, {"PLASTER LINE", -180, 0, 180, 0},
}

// asDXF writes lines as a drawing of release R2000 in a unit: 1 is inches, 4
// millimetres, 0 not said ($INSUNITS of the published DXF reference).
func asDXF(unit int, lines []line) []byte {
	var s strings.Builder
	fmt.Fprintf(&s, "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n9\n$INSUNITS\n70\n%d\n0\nENDSEC\n", unit)
	s.WriteString("0\nSECTION\n2\nENTITIES\n")
	for _, l := range lines {
		fmt.Fprintf(&s, "0\nLINE\n8\n%s\n10\n%g\n20\n%g\n30\n0\n11\n%g\n21\n%g\n31\n0\n", l.layer, l.x1, l.y1, l.x2, l.y2)
	}
	s.WriteString("0\nENDSEC\n0\nEOF\n")
	return []byte(s.String())
}
