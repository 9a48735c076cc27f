package drawing

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func allWithin(path plane.Path) bool {
	for _, v := range path.Vertices {
		if !(math.Abs(v.X) <= 2*length.Limit && math.Abs(v.Y) <= 2*length.Limit && math.Abs(v.Bulge) <= maxBulge) {
			return false
		}
	}
	return true
}

func FuzzReadPlan(f *testing.F) {
	f.Add(kitchen, 0.0)
	f.Add("element;up;over;curve\nA;1,5;0;\nA;2;1;through\nA;0;3;bulge 0,4\nA;0;0;circle 1\n", 50.0)
	f.Add("element,path,close,level,height,up,over\nA,1,yes,G,3,0,0\nA,1,,,,1,1\nA,1,,,,0,2\n", 0.0)
	f.Add("element,up,over\n\"A,0,0\n", 0.0)
	f.Fuzz(func(t *testing.T, text string, scale float64) {
		got, err := ReadPlan(strings.NewReader(text), PlanOptions{Unit: length.Metres, Scale: length.Scale(scale), NewID: counter()})
		if err != nil {
			return
		}
		for _, p := range got.Problems {
			if s := p.String(); s == "" || strings.ContainsAny(s, "\r\n") {
				t.Fatalf("problem %q", s)
			}
		}
		for _, e := range got.Elements {
			if e.ID == "" || e.Name == "" || len(e.Paths) == 0 {
				t.Fatalf("element %+v", e)
			}
			for _, p := range e.Paths {
				if len(p.Vertices) < 2 || !allWithin(p.Path) {
					t.Fatalf("path %+v", p)
				}
			}
		}
		readsAgain(t, got)
	})
}

// readsAgain writes what was read and reads it once more.
func readsAgain(t *testing.T, read PlanTable) {
	t.Helper()
	var file bytes.Buffer
	p := plan.Plan{Elements: read.Elements, Levels: read.Levels}
	if err := WritePlan(&file, p, length.Metres); err != nil {
		// A circle around a place near the limit reaches beyond it.
		if strings.Contains(err.Error(), "beyond 10 km") {
			return
		}
		t.Fatal(err)
	}
	again, err := ReadPlan(&file, PlanOptions{Unit: length.Metres, NewID: counter()})
	if len(p.Elements) == 0 || tiny(p) {
		return
	}
	if err != nil || len(again.Problems) > 0 || len(again.Elements) != len(p.Elements) {
		t.Fatalf("%v, %v: %d elements, want %d", err, again.Problems, len(again.Elements), len(p.Elements))
	}
}

// tiny tells whether two neighbouring points of the plan are so near that the
// rounding of a table can make them one.
func tiny(p plan.Plan) bool {
	for _, e := range p.Elements {
		for _, path := range e.Paths {
			for _, edge := range path.Edges() {
				if edge.Chord() < 0.0001 {
					return true
				}
			}
		}
	}
	return false
}

func FuzzReadRoom(f *testing.F) {
	f.Add("wall,length,turn\nA,4,\nB,3,90 left\nC,4,\nD,3,\n")
	f.Add("x;y\n0;0\n1,5;0\n1;1\n")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ReadRoom(strings.NewReader(text), RoomOptions{Unit: length.FeetInches, Scale: 48})
		if err != nil {
			return
		}
		if (len(got.Problems) == 0) != (len(got.Outline.Vertices) >= 3 && got.Outline.Closed || len(got.Measured.Walls) >= 3) {
			t.Fatalf("%+v", got)
		}
	})
}

func BenchmarkReadPlan(b *testing.B) {
	var file bytes.Buffer
	if err := WritePlan(&file, randomPlan(1), length.FeetInches); err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(file.Len()))
	for b.Loop() {
		if _, err := ReadPlan(bytes.NewReader(file.Bytes()), PlanOptions{Unit: length.FeetInches, NewID: counter()}); err != nil {
			b.Fatal(err)
		}
	}
}
