package passage

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"groundrow/tapeout/plane"
)

// referencePath is a path of testdata/passage/rooms.json.
type referencePath struct {
	Closed  bool
	Corners [][3]float64
}

func (r referencePath) path() plane.Path {
	p := plane.Path{Closed: r.Closed}
	for _, c := range r.Corners {
		p.Vertices = append(p.Vertices, plane.Vertex{Point: at(c[0], c[1]), Bulge: c[2]})
	}
	return p
}

// Widths on a 5 mm grid by numpy and scipy; see testdata/passage/README.md.
func TestWidthsAgreeWithTheGridReference(t *testing.T) {
	raw, err := os.ReadFile("../../../testdata/passage/rooms.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Rooms []struct {
			Outline referencePath
			Solids  []referencePath
			A, B    [2]float64
			Width   float64
		}
	}
	if err := json.Unmarshal(raw, &file); err != nil {
		t.Fatal(err)
	}
	if len(file.Rooms) < 10 {
		t.Fatalf("%d rooms", len(file.Rooms))
	}
	worst, sum := 0.0, 0.0
	for i, r := range file.Rooms {
		var list []Solid
		for _, s := range r.Solids {
			list = append(list, Solid{Path: s.path()})
		}
		f := Of(r.Outline.path(), list).Between(at(r.A[0], r.A[1]), at(r.B[0], r.B[1]))
		off := math.Abs(f.Width - r.Width)
		if off > 0.010 {
			t.Errorf("room %d: %.4f m by %q at %v, %.4f m on the grid", i, f.Width, f.Limit, f.At, r.Width)
		}
		worst, sum = max(worst, off), sum+off
	}
	t.Logf("%d rooms: worst %.1f mm, mean %.1f mm off the grid", len(file.Rooms), 1000*worst, 1000*sum/float64(len(file.Rooms)))
}
