package drawing

import (
	"bytes"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// randomPlan returns a plan with every kind, role and use, arcs and full circles.
func randomPlan(seed uint64) plan.Plan {
	r := rand.New(rand.NewPCG(seed, 1))
	p := plan.Plan{Levels: []plan.Level{{ID: "g", Name: "Gallery", Height: 2.44}, {ID: "c", Name: "=Cellar", Height: -1.5}}}
	for i := range 40 {
		e := plan.Element{
			Name: []string{"Chair", "Kitchen, wall", "12\" step", "-plinth", "'@ sign", "Zürich"}[r.IntN(6)],
			Kind: plan.Kinds[i%len(plan.Kinds)], Use: plan.Uses[i%len(plan.Uses)],
			Level: []plan.LevelID{"", "g", "c"}[i%3], Note: []string{"", "two\nlines", "+1 spare"}[r.IntN(3)],
		}
		for range 1 + r.IntN(3) {
			path := plan.Path{Role: plan.Roles[r.IntN(len(plan.Roles))]}
			path.Closed = r.IntN(2) == 0
			for range 3 + r.IntN(4) {
				v := plane.Vertex{Point: plane.Point{X: r.Float64()*30 - 15, Y: r.Float64()*20 - 5}}
				if r.IntN(3) == 0 {
					v.Bulge = r.NormFloat64()
				}
				path.Vertices = append(path.Vertices, v)
			}
			e.Paths = append(e.Paths, path)
		}
		e.Paths = append(e.Paths, plan.Path{Role: plan.Inner, Path: plane.Circle(plane.Point{X: 1, Y: float64(i)}, 0.4)})
		p.Elements = append(p.Elements, e)
	}
	return p
}

func TestWrittenPlanReadsBack(t *testing.T) {
	for _, u := range length.Units {
		t.Run(u.Name(), func(t *testing.T) {
			want := randomPlan(7)
			var file bytes.Buffer
			if err := WritePlan(&file, want, u); err != nil {
				t.Fatal(err)
			}
			got := mustReadPlan(t, file.String(), PlanOptions{Unit: u})
			wantNoProblems(t, got.Problems)
			if len(got.Elements) != len(want.Elements) || len(got.Levels) != 2 {
				t.Fatalf("%d elements, %d levels", len(got.Elements), len(got.Levels))
			}
			read := plan.Plan{Levels: got.Levels}
			for i, w := range want.Elements {
				sameElement(t, got.Elements[i], w)
				if l := read.Level(got.Elements[i].Level); w.Level != "" &&
					(l == nil || l.Name != want.Level(w.Level).Name || math.Abs(l.Height-want.Level(w.Level).Height) > 2e-5) {
					t.Errorf("level of %s: %+v", w.Name, l)
				}
			}
		})
	}
}

func sameElement(t *testing.T, got, want plan.Element) {
	t.Helper()
	if !strings.HasPrefix(got.Name, want.Name) || got.Kind != want.Kind || got.Use != want.Use || got.Note != want.Note ||
		len(got.Paths) != len(want.Paths) {
		t.Fatalf("got %+v\nwant %+v", got, want)
	}
	for i, w := range want.Paths {
		g := got.Paths[i]
		if g.Role != w.Role || g.Closed != w.Closed || len(g.Vertices) != len(w.Vertices) {
			t.Fatalf("%s, path %d: got %+v\nwant %+v", want.Name, i+1, g, w)
		}
		for j, v := range w.Vertices {
			// 0.01 mm or 0.001" in each axis, rounded.
			if g.Vertices[j].To(v.Point) > 2e-5 || g.Vertices[j].Bulge != v.Bulge {
				t.Fatalf("%s, path %d, point %d: %v, want %v", want.Name, i+1, j+1, g.Vertices[j], v)
			}
		}
	}
}

func TestWrittenPlanIsSafeInASpreadsheet(t *testing.T) {
	var file bytes.Buffer
	if err := WritePlan(&file, randomPlan(3), length.FeetInches); err != nil {
		t.Fatal(err)
	}
	got, err := readTable(&file, planColumns, maxRows)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range got.rows {
		for _, c := range r.cells {
			if c != "" && strings.ContainsRune(formulaStarts, rune(c[0])) {
				t.Fatalf("row %d: %q starts a formula", r.number, c)
			}
		}
	}
}

func TestWritePlanRefusesWhatLiesNowhere(t *testing.T) {
	p := plan.Plan{Elements: []plan.Element{{Name: "Door", Paths: []plan.Path{{Path: plane.Open(plane.Point{X: math.NaN()})}}}}}
	err := WritePlan(&bytes.Buffer{}, p, length.Metres)
	if err == nil || !strings.Contains(err.Error(), "Door: point 1 of line 1") {
		t.Errorf("%v", err)
	}
}

func TestGuard(t *testing.T) {
	for _, text := range []string{"", "Wall", "=1+1", "'=1", "''-x", "'tis", "@", "−", "+", "'"} {
		cell := guard(text)
		if strings.ContainsRune(formulaStarts, rune((cell + " ")[0])) || unguard(cell) != text {
			t.Errorf("%q is written %q and read %q", text, cell, unguard(cell))
		}
	}
}

func TestWriteMarks(t *testing.T) {
	marks := []MarkRow{
		{Label: "A", Kind: "corner", What: "Kitchen wall, =door", Up: 3.81, Over: -1.2192, Tapes: &Tapes{A: 5, B: 6.0001, Side: "left", Pivots: "1 and 3"}},
		{Label: "B", Kind: "end", Up: -0.3048, Over: 0},
		{Label: "C", Kind: "end", Up: math.NaN(), Over: -1e-9},
	}
	var out bytes.Buffer
	if err := WriteMarks(&out, marks, length.Style{Unit: length.FeetInches, Step: length.Inch / 8}); err != nil {
		t.Fatal(err)
	}
	want := `label,kind,up,over,tape A,tape B,side,pivots,what,up in metres,over in metres
A,corner,"12' 6""","4' 0"" SR","16' 4 7/8""","19' 8 1/4""",left,1 and 3,"Kitchen wall, =door",3.8100,-1.2192
B,end,"1' 0"" DS",on centre,,,,,,-0.3048,0.0000
C,end,?,on centre,,,,,,,0.0000
`
	if out.String() != want {
		t.Errorf("got\n%swant\n%s", out.String(), want)
	}
}

// broken is a writer that is full.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errFull }

var errFull = errorText("the disk is full")

type errorText string

func (e errorText) Error() string { return string(e) }

func TestWritersReportAFullDisk(t *testing.T) {
	if err := WritePlan(broken{}, randomPlan(1), length.Metres); err == nil || !strings.Contains(err.Error(), "disk is full") {
		t.Errorf("plan: %v", err)
	}
	if err := WriteMarks(broken{}, []MarkRow{{Label: "A"}}, length.Style{}); err == nil || !strings.Contains(err.Error(), "disk is full") {
		t.Errorf("marks: %v", err)
	}
}
