package dxf_test

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

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

func mustWrite(t *testing.T, s *linework.Sheet) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := dxf.Write(&out, s); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func mustRead(t *testing.T, file string) *linework.Sheet {
	t.Helper()
	s, err := dxf.Read(context.Background(), strings.NewReader(file), 0.001, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// What is written comes back: line work as seen, words, layers, dashes, unit.
func TestWrittenDrawingsComeBack(t *testing.T) {
	for _, name := range []string{"plan.dxf", "kinds-R12.dxf", "kinds-R2018.dxf"} {
		t.Run(name, func(t *testing.T) {
			want := mustReadFile(t, name, 0.001)
			got := mustRead(t, string(mustWrite(t, want)))
			near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*(1+math.Abs(a)) })
			if diff := cmp.Diff(lengthByLayer(want, (*linework.Item).Shown), lengthByLayer(got, (*linework.Item).Shown), near); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(want.Box, got.Box, near); diff != "" {
				t.Error(diff)
			}
			if want.Unit != got.Unit {
				t.Errorf("unit is %v, want %v", got.Unit, want.Unit)
			}
			if diff := cmp.Diff(dashes(want), dashes(got), near); diff != "" {
				t.Error(diff)
			}
			if len(got.Left) > 0 {
				t.Errorf("left aside: %v", got.Left)
			}
		})
	}
}

// dashes returns the pattern of each layer's first item that is seen.
func dashes(s *linework.Sheet) map[string][]float64 {
	out := map[string][]float64{}
	for _, i := range s.Items {
		if _, ok := out[i.Layer]; !ok && i.Shown() {
			out[i.Layer] = i.Dash
		}
	}
	return out
}

func TestWrittenSheet(t *testing.T) {
	s := &linework.Sheet{
		Unit: linework.Foot,
		Layers: []linework.Layer{
			{Name: "0", Colour: linework.RGB(0)},
			{Name: "TAPE: RED?", Colour: linework.RGB(0xFF0000)},
			{Name: "OFF", Colour: linework.RGB(0x0000FF), Off: true},
			{Name: "ICE", Colour: linework.RGB(0x00FF00), Frozen: true},
		},
		Items: []linework.Item{
			{Layer: "TAPE: RED?", Edges: []plane.Edge{{A: plane.Point{X: 1, Y: 2}, B: plane.Point{X: 3, Y: 4}, Bulge: -0.5}}, Dash: []float64{2, 0.5, 0, 0.5}},
			{Layer: "OFF", Edges: plane.ArcOf(plane.Point{X: 5}, 2, 1, 2*math.Pi), Hidden: true, Colour: linework.RGB(0x00FFFF)},
			{Layer: "ICE", Edges: []plane.Edge{{B: plane.Point{X: 1e-7}}}, Hidden: true},
			{Layer: "0", Edges: []plane.Edge{{B: plane.Point{X: 9}}}, Hidden: true},
			{Layer: "NEW", Edges: []plane.Edge{{B: plane.Point{X: 1}}, {A: plane.Point{X: 1}, B: plane.Point{X: 11}, Bulge: 1e-9}}}, // of a radius beyond any drawing
		},
		Texts: []linework.Text{
			{Text: "50%% of ^ Señor Ω 𝄞\nDOWN", At: plane.Point{X: 1, Y: 1}, Height: 0.5, Turn: math.Pi / 2, Layer: "NEW"},
		},
	}
	got := mustRead(t, string(mustWrite(t, s)))
	near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-12*(1+math.Abs(a)) })
	wantLayers := []linework.Layer{
		s.Layers[0], {Name: "TAPE_ RED_", Colour: linework.RGB(0xFF0000)}, s.Layers[2], s.Layers[3], {Name: "NEW", Colour: linework.RGB(0)},
	}
	if diff := cmp.Diff(wantLayers, got.Layers); diff != "" {
		t.Error(diff)
	}
	wantTexts := []linework.Text{
		{Text: "50%% of ^ Señor Ω 𝄞", At: plane.Point{X: 1, Y: 1}, Height: 0.5, Turn: math.Pi / 2, Layer: "NEW", Kind: "TEXT"},
		{Text: "DOWN", At: plane.Point{X: 1 + 2.5/3, Y: 1}, Height: 0.5, Turn: math.Pi / 2, Layer: "NEW", Kind: "TEXT"},
	}
	if diff := cmp.Diff(wantTexts, got.Texts, near); diff != "" {
		t.Error(diff)
	}
	kinds := ""
	for _, i := range got.Items {
		kinds += i.Kind + " " + i.Layer + "; "
	}
	if want := "ARC TAPE_ RED_; CIRCLE OFF; LINE ICE; LINE NEW; LINE NEW; "; kinds != want {
		t.Errorf("items are %s, want %s", kinds, want)
	}
	arc := s.Items[0].Edges[0].Reversed() // counter-clockwise
	if diff := cmp.Diff(arc, got.Items[0].Edges[0], near); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(s.Items[0].Dash, got.Items[0].Dash, near); diff != "" {
		t.Error(diff)
	}
	if got.Unit != linework.Foot || got.Items[1].Colour != linework.RGB(0x00FFFF) || !got.Items[1].Hidden {
		t.Errorf("unit %v, second item %v", got.Unit, got.Items[1])
	}
}

func TestLayersThatWouldMeetStayApart(t *testing.T) {
	edges := []plane.Edge{{B: plane.Point{X: 1}}}
	s := &linework.Sheet{Items: []linework.Item{
		{Layer: "A/B", Edges: edges}, {Layer: "A:B", Edges: edges}, {Layer: "a_b", Edges: edges}, {Layer: "", Edges: edges},
	}}
	got := lengthByLayer(mustRead(t, string(mustWrite(t, s))), every)
	if diff := cmp.Diff(map[string]float64{"A_B": 1, "A_B_2": 1, "a_b_3": 1, "0_2": 1}, got); diff != "" {
		t.Error(diff)
	}
}

func TestWriteRefusesWhatIsNoNumber(t *testing.T) {
	bad := []*linework.Sheet{
		{Items: []linework.Item{{Layer: "WALLS", Edges: []plane.Edge{{A: plane.Point{X: math.NaN()}}}}}},
		{Items: []linework.Item{{Layer: "WALLS", Edges: []plane.Edge{{B: plane.Point{X: math.Inf(1)}}}}}},
		{Texts: []linework.Text{{Text: "a", Height: math.Inf(1)}}},
	}
	for _, s := range bad {
		var out bytes.Buffer
		if err := dxf.Write(&out, s); err == nil || out.Len() > 0 {
			t.Errorf("got %d bytes, %v", out.Len(), err)
		}
	}
}

// ezdxf reads what is written, its audit finds nothing, and it is as long.
func TestWrittenDrawingsReadByEZDXF(t *testing.T) {
	const python = "/usr/bin/python3"
	if testing.Short() {
		t.Skip("it starts another program")
	}
	if exec.Command(python, "-c", "import ezdxf, scipy").Run() != nil {
		t.Skip("no ezdxf here")
	}
	for _, name := range []string{"plan.dxf", "kinds-R2018.dxf"} {
		want := mustReadFile(t, name, 0.001)
		file := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(file, mustWrite(t, want), 0o600); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(python, "-B", "audit.py", file)
		cmd.Dir = testdata
		raw, err := cmd.Output()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var got struct {
			Errors, Fixes []string
			Seen          map[string]float64
			Unit          int
		}
		if err := json.Unmarshal(raw, &got); err != nil {
			t.Fatal(err)
		}
		if len(got.Errors)+len(got.Fixes) > 0 {
			t.Errorf("%s: %v %v", name, got.Errors, got.Fixes)
		}
		near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Abs(a) })
		if diff := cmp.Diff(lengthByLayer(want, (*linework.Item).Shown), got.Seen, near); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		const millimetres = 4
		if got.Unit != millimetres {
			t.Errorf("%s: unit is %d", name, got.Unit)
		}
	}
}
