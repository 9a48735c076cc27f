package dxf_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
)

// testdata holds drawings that ezdxf made, with lengths computed beside it.
const testdata = "../../../testdata/dxf"

type reference struct {
	Curved  []string
	Colours []uint32
	Files   []struct {
		File, Version string
		All, Seen     map[string]float64
	}
}

func readReference(t *testing.T) reference {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join(testdata, "lengths.json"))
	if err != nil {
		t.Fatal(err)
	}
	var ref reference
	if err := json.Unmarshal(raw, &ref); err != nil {
		t.Fatal(err)
	}
	if len(ref.Files) == 0 {
		t.Fatal("no reference files")
	}
	return ref
}

func mustReadFile(t *testing.T, name string, tol float64) *linework.Sheet {
	t.Helper()
	f, err := os.Open(filepath.Join(testdata, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	s, err := dxf.Read(context.Background(), f, tol, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Lengths of layers that hold only straight and circular line work agree to 1e-6,
// those with ellipses and splines to 1e-4; see testdata's make.py.
func TestLengthsLikeEZDXF(t *testing.T) {
	ref := readReference(t)
	for _, f := range ref.Files {
		t.Run(f.File, func(t *testing.T) {
			s := mustReadFile(t, f.File, 1e-6)
			if s.Version != f.Version {
				t.Errorf("version %q, want %q", s.Version, f.Version)
			}
			compareLengths(t, lengthByLayer(s, every), f.All, ref.Curved)
			compareLengths(t, lengthByLayer(s, (*linework.Item).Shown), f.Seen, ref.Curved)
		})
	}
}

func compareLengths(t *testing.T, got, want map[string]float64, curved []string) {
	t.Helper()
	for layer, l := range want {
		tol := 1e-6
		if slices.Contains(curved, layer) {
			tol = 1e-4
		}
		if g := got[layer]; !(math.Abs(g-l) <= tol*l) {
			t.Errorf("layer %s is %.9g long, want %.9g", layer, g, l)
		}
	}
	for layer, g := range got {
		if _, ok := want[layer]; !ok {
			t.Errorf("layer %s is %.9g long, and not in the reference", layer, g)
		}
	}
}

// lengthByLayer is the length of the items on each layer that count, in drawing units.
func lengthByLayer(s *linework.Sheet, counts func(*linework.Item) bool) map[string]float64 {
	lengths := map[string]float64{}
	for i := range s.Items {
		if counts(&s.Items[i]) {
			lengths[s.Items[i].Layer] += s.Items[i].Length()
		}
	}
	return lengths
}

func every(*linework.Item) bool { return true }
