package layout_test

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/drawing/linework"
)

func written(t *testing.T, l *layout.Layout, unit linework.Unit) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := l.WriteDXF(&b, unit); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// byLayer are the lengths of a layout under the names of its layers in a sheet, in
// metres.
func byLayer(l *layout.Layout) map[string]float64 {
	lengths := map[string]float64{}
	for _, layer := range l.Layers {
		for _, p := range layer.Paths {
			lengths[strings.ReplaceAll(layer.Name, " ", "_")] += sum(p.Edges)
		}
	}
	return lengths
}

func TestTheDXFReadsBackWithItsLengths(t *testing.T) {
	for _, unit := range []linework.Unit{linework.Inch, linework.Metre, linework.Centimetre, linework.Millimetre} {
		l := layout.Of(source(), layout.FromDatum)
		s, err := dxf.Read(context.Background(), bytes.NewReader(written(t, l, unit)), 1e-4, nil)
		if err != nil {
			t.Fatal(err)
		}
		if s.Unit != unit {
			t.Errorf("the unit came back as %v, want %v", s.Unit, unit)
		}
		got := lengthByLayer(s)
		for name, want := range byLayer(l) {
			if got := got[name] * float64(unit); math.Abs(got-want) > 1e-6 {
				t.Errorf("%v, layer %s: %.7f m, want %.7f", unit, name, got, want)
			}
		}
		labels := 0
		for _, text := range s.Texts {
			if text.Layer == "Labels" {
				labels++
			}
		}
		if labels != len(l.Marks) {
			t.Errorf("%v: %d labels for %d marks", unit, labels, len(l.Marks))
		}
	}
}

// audited is what the script prints of a file that ezdxf has read.
type audited struct {
	Errors  []string
	Unit    int
	Lengths map[string]float64
	Points  [][2]float64
	Colours map[string]int
}

// measure is a script that audits a DXF file with ezdxf and measures its layers.
// Arcs are computed from their radius and angles, since flattening them loses length.
const measure = `
import json, math, sys
import ezdxf
doc = ezdxf.readfile(sys.argv[1])
found = doc.audit()
lengths, points = {}, []
for e in doc.modelspace():
    t, layer = e.dxftype(), e.dxf.layer
    if t == "LINE":
        n = (e.dxf.end - e.dxf.start).magnitude
    elif t == "ARC":
        n = e.dxf.radius * math.radians((e.dxf.end_angle - e.dxf.start_angle) % 360)
    elif t == "CIRCLE":
        n = 2 * math.pi * e.dxf.radius
    else:
        if t == "POINT":
            points.append([e.dxf.location.x, e.dxf.location.y])
        continue
    lengths[layer] = lengths.get(layer, 0) + n
print(json.dumps({"errors": [e.message for e in found.errors + found.fixes], "unit": doc.header["$INSUNITS"],
                  "lengths": lengths, "points": points, "colours": {l.dxf.name: l.dxf.color for l in doc.layers}}))
`

// TestTheDXFPassesTheAuditOfEzdxf runs where Debian's python3-ezdxf is installed.
func TestTheDXFPassesTheAuditOfEzdxf(t *testing.T) {
	const python = "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		t.Skip("python3-ezdxf is not installed")
	}
	l := layout.Of(source(), layout.FromRoom)
	path := filepath.Join(t.TempDir(), "floor.dxf")
	if err := os.WriteFile(path, written(t, l, linework.Inch), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(python, "-c", measure, path).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	var got audited
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	if len(got.Errors) > 0 || got.Unit != 1 {
		t.Errorf("the audit finds %v; $INSUNITS is %d, want 1 for inches", got.Errors, got.Unit)
	}
	for name, want := range byLayer(l) {
		if n := got.Lengths[name] * 0.0254; math.Abs(n-want) > 1e-6 {
			t.Errorf("layer %s: %.7f m, want %.7f", name, n, want)
		}
	}
	want := append(append([]layout.Point{}, l.Control...), l.Marks...)
	if len(got.Points) != len(want) {
		t.Fatalf("%d points, want %d", len(got.Points), len(want))
	}
	for i, p := range got.Points {
		if q := at(p[0]*0.0254, p[1]*0.0254); q.To(want[i].At) > 1e-9 {
			t.Errorf("point %d is at %v, want %v", i, q, want[i].At)
		}
	}
	if got.Colours["Tape_Blue"] == got.Colours["Tape_Red_1_cloth"] {
		t.Errorf("red and blue tape have one colour: %v", got.Colours)
	}
}

func TestADXFWithoutPlacesIsRefused(t *testing.T) {
	l := layout.Of(source(), layout.FromDatum)
	l.Marks[0].At.X = math.NaN()
	var b bytes.Buffer
	if err := l.WriteDXF(&b, linework.Metre); err == nil || b.Len() > 0 {
		t.Errorf("got %v and %d bytes", err, b.Len())
	}
}
