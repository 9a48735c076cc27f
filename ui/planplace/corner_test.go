package planplace

import (
	"math"
	"strconv"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// near is far below what anyone can lay: a micrometre.
const near = 1e-6

// counter makes identifiers that can be told in a failure.
func counter() newID {
	n := 0
	return func() string {
		n++
		return "id" + strconv.Itoa(n)
	}
}

// inFeet is a production in feet with one element of one line.
func inFeet(path plane.Path) *prep.Production {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	p.Plan.Scale = 48
	p.Plan.Elements = []plan.Element{{
		ID: "e", Name: "Wall", Kind: plan.Wall, Use: plan.Essential,
		Paths: []plan.Path{{ID: "line", Role: plan.Outline, Path: path}},
	}}
	return p
}

func lineOf(p *prep.Production) *plan.Path { return &p.Plan.Elements[0].Paths[0] }

func TestABowToTheLeftLiesToTheLeftOfTheWay(t *testing.T) {
	for _, c := range []struct {
		name string
		bow  float64
		want plane.Point // the middle of the arc from the origin to 4 m over
	}{
		{"left of the way to stage left is upstage", 0.5, plane.Point{X: 2, Y: 0.5}},
		{"right of it is downstage", -0.5, plane.Point{X: 2, Y: -0.5}},
		{"half the way is a half circle", 2, plane.Point{X: 2, Y: 2}},
		{"more than a half circle", 3, plane.Point{X: 2, Y: 3}},
		{"straight", 0, plane.Point{X: 2}},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := plane.Open(plane.Point{}, plane.Point{X: 4})
			if err := setBow(&path, 0, c.bow); err != nil {
				t.Fatal(err)
			}
			if got := path.Edges()[0].At(0.5); got.To(c.want) > near {
				t.Errorf("the middle is at %v, want %v", got, c.want)
			}
			if got := bowOf(&path, 0); math.Abs(got-c.bow) > near {
				t.Errorf("reads back as %v, want %v", got, c.bow)
			}
		})
	}
}

func TestABowThatCannotBeIsRefused(t *testing.T) {
	open := plane.Open(plane.Point{}, plane.Point{X: 1})
	same := plane.Open(plane.Point{X: 1}, plane.Point{X: 1})
	for name, err := range map[string]error{
		"after the end of an open line": setBow(&open, 1, 0.1),
		"between two corners in one":    setBow(&same, 0, 0.1),
		"nearly a full circle":          setBow(&open, 0, 50),
	} {
		if err == nil {
			t.Errorf("%s: taken", name)
		}
	}
	if err := setBow(&open, 1, 0); err != nil {
		t.Errorf("no bow after the end: %v", err)
	}
}

func TestACornerComesBackAsTyped(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 1}))
	for cell, text := range map[int]string{cornerUp: `12' 6 1/2"`, cornerOver: `4'6 SR`, cornerBow: ""} {
		if err := setCorner(p, lineOf(p), 0, cell, text); err != nil {
			t.Fatal(err)
		}
	}
	at := lineOf(p).Vertices[0].Point
	if want := (plane.Point{X: -4.5 * length.Foot, Y: 12*length.Foot + 6.5*length.Inch}); at.To(want) > near {
		t.Errorf("at %v, want %v", at, want)
	}
	got := cornerRows(p, lineOf(p))[0].Cells
	if got[cornerUp] != `12' 6 1/2"` || got[cornerOver] != `4'6 SR` || got[cornerBow] != "" {
		t.Errorf("shown as %q", got)
	}
	lineOf(p).Vertices[0].X = -1
	if got := cornerRows(p, lineOf(p))[0].Cells[cornerOver]; got != `3' 3.37" SR` {
		t.Errorf("moved since, shown as %q", got)
	}
}

func TestAWrongFigureChangesNothing(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{X: 1, Y: 2}, plane.Point{X: 3}))
	for cell, text := range map[int]string{cornerUp: "about six", cornerOver: "-4 SR", cornerBow: "round", cornerNumber: "2"} {
		if err := setCorner(p, lineOf(p), 0, cell, text); err == nil {
			t.Errorf("%q is taken", text)
		}
	}
	if got := lineOf(p).Vertices[0]; got != (plane.Vertex{Point: plane.Point{X: 1, Y: 2}}) || len(p.Typed) != 0 {
		t.Errorf("the corner became %v, kept %v", got, p.Typed)
	}
}

func TestInsertingACornerKeepsTheFormAndWhatWasTyped(t *testing.T) {
	path := plane.Open(plane.Point{}, plane.Point{X: 4}, plane.Point{X: 4, Y: 3})
	if err := setBow(&path, 0, 1); err != nil {
		t.Fatal(err)
	}
	p := inFeet(path)
	p.KeepTyped("line", "up 3", "about 3m")
	p.KeepTyped("other", "up 3", "stays")
	if got := insertCorner(p, lineOf(p), 0); got != 1 {
		t.Fatalf("the new corner is %d", got)
	}
	if got, want := lineOf(p).Path.Length(), path.Length(); math.Abs(got-want) > near {
		t.Errorf("the line is %v long, was %v", got, want)
	}
	if got := lineOf(p).Vertices[1].Point; got.To(plane.Point{X: 2, Y: 1}) > near {
		t.Errorf("the new corner is at %v", got)
	}
	if p.Typed[0].Column != "up 4" || p.Typed[1].Column != "up 3" {
		t.Errorf("kept %v", p.Typed)
	}
	if err := deleteCorners(p, lineOf(p), []int{1}); err != nil {
		t.Fatal(err)
	}
	if len(lineOf(p).Vertices) != 3 || p.Typed[0].Column != "up 3" {
		t.Errorf("after deleting it again: %v, kept %v", lineOf(p).Vertices, p.Typed)
	}
}

func TestALineGoesOnAfterItsEnd(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 2, Y: 1}))
	insertCorner(p, lineOf(p), 1)
	if got := lineOf(p).Vertices[2].Point; got.To(plane.Point{X: 4, Y: 2}) > near {
		t.Errorf("goes on to %v", got)
	}
}

func TestALineKeepsTwoCorners(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 2}, plane.Point{X: 3}))
	if err := deleteCorners(p, lineOf(p), []int{0, 2}); err == nil || len(lineOf(p).Vertices) != 3 {
		t.Errorf("deleted to %v", lineOf(p).Vertices)
	}
}

func TestPastedCornersGoOnBeyondTheEnd(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 2}))
	block := [][]string{{"1'", "2' SL"}, {"3'", "4' SR"}, {"5'", "6'"}}
	if err := pasteCorners(p, lineOf(p), block, 1, cornerUp); err != nil {
		t.Fatal(err)
	}
	want := []plane.Point{{}, {X: 2, Y: 1}, {X: -4, Y: 3}, {X: 6, Y: 5}}
	for i, w := range want {
		if i == 0 {
			continue
		}
		if got := lineOf(p).Vertices[i].Point; got.To(w.Times(length.Foot)) > near {
			t.Errorf("corner %d is at %v, want %v ft", i+1, got, w)
		}
	}
	if err := pasteCorners(p, lineOf(p), [][]string{{"nonsense", "1"}}, 0, cornerUp); err == nil {
		t.Error("nonsense is taken")
	}
	if err := pasteCorners(p, lineOf(p), [][]string{{"1"}, {"2"}}, 3, cornerOver); err == nil {
		t.Error("a new corner without its up is taken")
	}
}

func TestOffset(t *testing.T) {
	square := plane.Rectangle(plane.Point{}, plane.Point{X: 4, Y: 4})
	circle := plane.Circle(plane.Point{X: 1, Y: 1}, 2)
	arc := plane.Open(plane.Point{}, plane.Point{X: 4})
	arc.Vertices[0].Bulge = 0.4
	mixed := plane.Open(plane.Point{}, plane.Point{X: 4}, plane.Point{X: 4, Y: 4})
	mixed.Vertices[0].Bulge = 0.4
	for _, c := range []struct {
		name   string
		path   plane.Path
		by     float64
		length float64 // 0: refused
	}{
		{"a line beside itself", plane.Open(plane.Point{}, plane.Point{X: 3}), 0.5, 3},
		{"inside a square", square, 1, 8},
		{"outside a square", square, -1, 24},
		{"no room inside", square, 3, 0},
		{"inside a circle", circle, 0.5, 2 * math.Pi * 1.5},
		{"outside a circle", circle, -0.5, 2 * math.Pi * 2.5},
		{"beyond the centre", circle, 2.5, 0},
		{"an arc with a corner", mixed, 0.1, 0},
		{"by nothing", square, 0, 0},
		{"a line that comes straight back", plane.Open(plane.Point{}, plane.Point{X: 2}, plane.Point{}), 0.1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := offset(c.path, c.by)
			if (err != nil) != (c.length == 0) {
				t.Fatalf("refused: %v", err)
			}
			if err == nil && math.Abs(got.Length()-c.length) > near {
				t.Errorf("%v long, want %v", got.Length(), c.length)
			}
		})
	}
	beside, err := offset(arc, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []float64{0.1, 0.5, 0.9} {
		if d := arc.Edges()[0].Distance(beside.Edges()[0].At(at)); math.Abs(d-0.3) > near {
			t.Errorf("the copy of an arc is %v away, want 0.3", d)
		}
	}
}

func TestTreadsAreCopiesOneBehindTheOther(t *testing.T) {
	tread := plan.Path{Role: plan.Inner, Path: plane.Open(plane.Point{Y: 1}, plane.Point{X: 2, Y: 1})}
	e := &plan.Element{Paths: []plan.Path{tread}}
	if err := addCopies(e, tread, 0.3, 3, counter()); err != nil {
		t.Fatal(err)
	}
	if len(e.Paths) != 4 {
		t.Fatalf("%d lines", len(e.Paths))
	}
	for n, path := range e.Paths {
		want := 1 + 0.3*float64(n)
		if got := path.Vertices[0].Y; got < want-near || got > want+near || path.Role != plan.Inner {
			t.Errorf("tread %d is %v up, %s; want %v", n+1, got, path.Role, want)
		}
	}
	ring := plan.Path{Path: plane.Circle(plane.Point{}, 1)}
	if err := addCopies(e, ring, 0.4, 3, counter()); err == nil || len(e.Paths) != 4 {
		t.Errorf("a ring inside itself three times: %v, %d lines", err, len(e.Paths))
	}
}
