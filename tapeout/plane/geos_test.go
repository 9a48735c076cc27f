package plane

import (
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// The reference results were made with GEOS 3.11.1 through shapely 1.8.5 by
// make.py, beside them.
const geosFolder = "../../testdata/geos"

// unit is the reference data's unit of length in metres.
const unit = 1.0 / 1024

type geosLines struct {
	Name     string
	Nodes    int
	Links    int
	Length   float64 `json:"length_m"`
	Segments [][4]float64
}

func (g geosLines) edges() []Edge {
	out := make([]Edge, len(g.Segments))
	for i, s := range g.Segments {
		out[i] = edgeInUnits(s)
	}
	return out
}

func edgeInUnits(s [4]float64) Edge {
	return Edge{A: Point{s[0] * unit, s[1] * unit}, B: Point{s[2] * unit, s[3] * unit}}
}

type geosRegions struct {
	A, B     [][2]float64
	Cut      [4]float64
	Area     float64    `json:"area_a_m2"`
	Centroid [2]float64 `json:"centroid_a_m"`
	Overlap  float64    `json:"overlap_m2"`
	Distance float64    `json:"distance_m"`
	Clipped  float64    `json:"clip_length_m"`
}

func pathInUnits(corners [][2]float64) Path {
	points := make([]Point, len(corners))
	for i, c := range corners {
		points[i] = Point{c[0] * unit, c[1] * unit}
	}
	return Closed(points...)
}

func readGEOS[T any](tb testing.TB, name string) []T {
	tb.Helper()
	text, err := os.ReadFile(filepath.Join(geosFolder, name))
	if err != nil {
		tb.Fatal(err)
	}
	var file struct{ Cases []T }
	if err := json.Unmarshal(text, &file); err != nil {
		tb.Fatal(err)
	}
	if len(file.Cases) == 0 {
		tb.Fatalf("%s has no cases", name)
	}
	return file.Cases
}

// near compares with a relative tolerance, or an absolute one below a metre.
func near(got, want, tol float64) bool {
	return math.Abs(got-want) <= tol*max(1, math.Abs(want))
}

func TestArrangeLikeGEOS(t *testing.T) {
	for _, c := range readGEOS[geosLines](t, "segments.json") {
		t.Run(c.Name, func(t *testing.T) {
			a := Arrange(c.edges(), 1e-6)
			if len(a.Nodes) != c.Nodes || len(a.Links) != c.Links {
				t.Errorf("%d nodes and %d links, want %d and %d", len(a.Nodes), len(a.Links), c.Nodes, c.Links)
			}
			if got := lengthOf(a.Links); !near(got, c.Length, 1e-9) {
				t.Errorf("the links are %.12g m, want %.12g", got, c.Length)
			}
			if got := UnionLength(c.edges(), 1e-6); !near(got, c.Length, 1e-9) {
				t.Errorf("union length %.12g m, want %.12g", got, c.Length)
			}
		})
	}
}

func lengthOf(links []Link) float64 {
	sum := 0.0
	for _, l := range links {
		sum += l.Length()
	}
	return sum
}

func TestRegionsLikeGEOS(t *testing.T) {
	for i, c := range readGEOS[geosRegions](t, "regions.json") {
		a, b := pathInUnits(c.A), pathInUnits(c.B)
		if got := a.Area(); !near(got, c.Area, 1e-9) {
			t.Errorf("case %d: area %.12g, want %.12g", i, got, c.Area)
		}
		want := Point{c.Centroid[0], c.Centroid[1]}
		if got, ok := a.Centroid(); !ok || got.To(want) > 1e-9 {
			t.Errorf("case %d: centroid %v, want %v", i, got, want)
		}
		if got := Overlap(a, b); !near(got, c.Overlap, 1e-9) {
			t.Errorf("case %d: overlap %.12g, want %.12g", i, got, c.Overlap)
		}
		if got := distanceBetween(a, b); !near(got, c.Distance, 1e-9) {
			t.Errorf("case %d: distance %.12g, want %.12g", i, got, c.Distance)
		}
		cut := edgeInUnits(c.Cut)
		inside, outside := Clip(cut, a, 1e-9)
		if got := total(inside); !near(got, c.Clipped, 1e-9) {
			t.Errorf("case %d: %.12g m inside, want %.12g", i, got, c.Clipped)
		}
		if got := total(inside) + total(outside); !near(got, cut.Length(), 1e-9) {
			t.Errorf("case %d: the pieces are %.12g m, want %.12g", i, got, cut.Length())
		}
	}
}

func total(edges []Edge) float64 {
	sum := 0.0
	for _, e := range edges {
		sum += e.Length()
	}
	return sum
}

// BenchmarkUnion measures the arrangement and the union length of 10,000 segments,
// and GEOS on the same input in the same run; its time is that of the union and its
// length alone, without starting Python.
func BenchmarkUnion(b *testing.B) {
	cases := readGEOS[geosLines](b, "segments.json")
	edges := cases[len(cases)-1].edges()
	b.Run("arrange", func(b *testing.B) {
		for b.Loop() {
			Arrange(edges, 1e-6)
		}
	})
	b.Run("arrange-1cm", func(b *testing.B) {
		for b.Loop() {
			Arrange(edges, 0.01)
		}
	})
	b.Run("length", func(b *testing.B) {
		for b.Loop() {
			UnionLength(edges, 1e-6)
		}
	})
	b.Run("geos", func(b *testing.B) {
		run := exec.Command("/usr/bin/python3", "make.py", "time", "3")
		run.Dir = geosFolder
		out, err := run.Output()
		if err != nil {
			b.Skip("Python with shapely is needed to measure GEOS")
		}
		seconds, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		if err != nil {
			b.Fatal(err)
		}
		for b.Loop() {
		}
		b.ReportMetric(seconds*1e9, "ns/op")
	})
}
