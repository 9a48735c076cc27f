package planplace

import (
	"slices"
	"strings"
	"testing"
	"time"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

var today = time.Date(2031, 3, 3, 9, 0, 0, 0, time.UTC)

func TestTheListHoldsEveryElementOnceUnderItsLevelAndKind(t *testing.T) {
	p := demo.Production(today)
	got := list(p, search{})
	var ids []string
	for _, l := range got.Lines {
		if !l.Group {
			ids = append(ids, l.ID)
		}
	}
	if len(ids) != len(p.Plan.Elements) || got.Found != len(ids) {
		t.Fatalf("%d of %d elements listed", len(ids), len(p.Plan.Elements))
	}
	slices.Sort(ids)
	if len(slices.Compact(ids)) != len(p.Plan.Elements) {
		t.Error("an element is listed twice")
	}
	if !strings.HasPrefix(got.Lines[0].Text, "Stage floor (") || !got.Lines[0].Level {
		t.Errorf("begins with %+v", got.Lines[0])
	}
	if want := prep.Counted(len(p.Plan.Elements), "element"); got.counted() != want {
		t.Errorf("counted as %q", got.counted())
	}
}

func TestSearching(t *testing.T) {
	p := demo.Production(today)
	for words, some := range map[string]bool{
		"parlour door": true, "UPPER storey": true, "market": true, "danced": true, "zeppelin": false,
	} {
		got := list(p, search{words: words})
		if (got.Found > 0) != some || got.Found == got.All {
			t.Errorf("%q finds %s", words, got.counted())
		}
	}
}

func TestHiddenElementsLeaveTheirGroupUnticked(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 1}))
	p.Plan.Elements = append(p.Plan.Elements, plan.Element{ID: "f", Name: "Bare", Kind: plan.Door, Level: "gone"}, plan.Element{ID: "g", Name: "Bare", Kind: plan.Wall})
	got := list(p, search{hidden: map[plan.ElementID]bool{"e": true}}).Lines
	seen := map[string]bool{}
	for _, l := range got {
		seen[l.ID] = l.Seen
	}
	if seen["level:"] || seen["kind::wall or flat"] || seen["e"] || !seen["g"] {
		t.Errorf("ticked: %v", seen)
	}
	if got[len(got)-1].Problem == "" {
		t.Error("an element without lines has no mark")
	}
}

func TestDragRuleSaysWhatMoves(t *testing.T) {
	for _, c := range []struct {
		scene  plan.SceneID
		placed bool
		ids    []plan.ElementID
		want   string
	}{
		{"", true, []plan.ElementID{"e"}, "changes the drawing"},
		{"two", true, []plan.ElementID{"e"}, "1.2 Kitchen: dragging moves it in this scene only"},
		{"two", false, []plan.ElementID{"e"}, "moves it in all of them"},
		{"two", true, []plan.ElementID{"e", "ring"}, "placed by scene moves in this scene only"},
		{"two", true, nil, "where they stand"},
	} {
		if got := dragRule(staged("", c.placed), c.scene, c.ids); !strings.Contains(got, c.want) {
			t.Errorf("%q does not say %q", got, c.want)
		}
	}
}

func TestReadingOffThePaper(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 1}))
	r := reading{name: "Porch", kind: plan.Platform, on: inches, closed: true}
	for _, c := range [][3]string{{"1", "1 SR", ""}, {"1", "1", ""}, {`2 1/2"`, "1 SL", "1/4 right"}} {
		corner, _, err := lensOf(p, &r).read(c[0], c[1], c[2])
		if err != nil {
			t.Fatal(err)
		}
		if err := r.add(corner); err != nil {
			t.Fatal(err)
		}
	}
	e := p.Plan.Element(r.into(p, counter()))
	// At 1/4" to the foot an inch on the paper is four feet.
	want := []plane.Point{{X: -4, Y: 4}, {X: 4, Y: 4}, {X: 4, Y: 10}}
	path := e.Paths[0].Path
	for i, w := range want {
		if got := path.Vertices[i].Point; got.To(w.Times(length.Foot)) > near {
			t.Errorf("corner %d is at %v, want %v ft", i+1, got, w)
		}
	}
	if got := bowOf(&path, 1) / length.Foot; got > -0.99 || got < -1.01 {
		t.Errorf("bows by %v ft, want 1 ft to the right", got)
	}
	if !path.Closed || len(p.Typed) != 0 {
		t.Errorf("closed %v, kept %v", path.Closed, p.Typed)
	}
}

// A plot that was printed to fit at 1:50 and is read with the edge of 1/4" to the foot:
// each foot read is 50/48 of one.
func TestReadingOnTheScaleEdgeOfTheRule(t *testing.T) {
	p := inFeet(plane.Path{})
	p.Plan.Scale = 50
	for _, c := range []struct {
		edge, plot length.Scale
		feet       float64 // on the floor, of 24 read
	}{{0, 50, 25}, {48, 50, 25}, {24, 24, 24}, {24, 48, 48}, {48, 0, 24}} {
		p.Plan.Scale = float64(c.plot)
		l := lensOf(p, &reading{on: scaleEdge, edge: c.edge})
		corner, _, err := l.read("24", "12 SR", "")
		want := plane.Point{X: -c.feet / 2, Y: c.feet}.Times(length.Foot)
		if err != nil || corner.at.To(want) > near {
			t.Errorf("edge 1:%v on a plot at 1:%v: %v (%v), want %v", c.edge, c.plot, corner.at, err, want)
		}
		if l.words(p) == "" {
			t.Errorf("edge 1:%v on a plot at 1:%v: nothing is said of it", c.edge, c.plot)
		}
	}
	p.Plan.Scale = 50
	if got := lensOf(p, &reading{on: scaleEdge}).words(p); !strings.Contains(got, "10' 0\" on the edge are 10' 5\" on the floor") {
		t.Errorf("it says %q", got)
	}
}

func TestReadingFullSizeComesBackAsTyped(t *testing.T) {
	p := inFeet(plane.Open(plane.Point{}, plane.Point{X: 1}))
	r := reading{name: "Wall", kind: plan.Wall, on: fullSize}
	for _, c := range [][2]string{{"12-6", "3.5 SR"}, {"12-6", "CL"}} {
		corner, _, err := lensOf(p, &r).read(c[0], c[1], "")
		if err != nil {
			t.Fatal(err)
		}
		if err := r.add(corner); err != nil {
			t.Fatal(err)
		}
	}
	e := p.Plan.Element(r.into(p, counter()))
	rows := cornerRows(p, &e.Paths[0])
	if rows[0].Cells[cornerUp] != "12-6" || rows[0].Cells[cornerOver] != "3.5 SR" || rows[1].Cells[cornerOver] != "CL" {
		t.Errorf("shown as %v", rows)
	}
}

func TestReadingRefuses(t *testing.T) {
	p := inFeet(plane.Path{})
	p.Plan.Scale = 0
	if _, at, err := lensOf(p, &reading{on: inches}).read("1", "1", ""); err == nil || at != upColumn {
		t.Errorf("without a scale: at %q, %v", at, err)
	}
	if _, at, err := lensOf(p, &reading{on: fullSize}).read("1", "left of it", ""); err == nil || at != overColumn {
		t.Errorf("nonsense: at %q, %v", at, err)
	}
	r := reading{}
	if r.finish() == nil {
		t.Error("finished without a name")
	}
	r.name = "Wall"
	if r.finish() == nil {
		t.Error("finished without corners")
	}
	if err := r.add(readCorner{bow: 1}); err == nil {
		t.Error("the first corner bows")
	}
	if err := r.add(readCorner{}); err != nil {
		t.Fatal(err)
	}
	if err := r.add(readCorner{}); err == nil {
		t.Error("the same corner twice")
	}
	r.back()
	r.back()
	if len(r.corners) != 0 {
		t.Error("corners left")
	}
}

func TestShiftRow(t *testing.T) {
	rows := []string{"a", "b", "c"}
	for _, c := range []struct {
		at, by int
		want   string
	}{{0, 1, "bac"}, {2, -1, "acb"}, {0, -1, "abc"}, {2, 9, "abc"}, {0, 9, "bca"}, {-1, 1, "abc"}, {3, -1, "abc"}} {
		if got := strings.Join(shiftRow(rows, c.at, c.by), ""); got != c.want {
			t.Errorf("%d by %d: %s, want %s", c.at, c.by, got, c.want)
		}
	}
	if strings.Join(rows, "") != "abc" {
		t.Error("the list given was changed")
	}
}

func TestOptionsOfOneNameAreToldApart(t *testing.T) {
	var o options[plan.LevelID]
	o.add("Porch", "a")
	o.add("Porch", "b")
	if id, ok := o.id(o.name("b")); !ok || id != "b" || o.name("b") == o.name("a") {
		t.Errorf("options %v", o.names)
	}
	if o.name("gone") != "" {
		t.Error("a name for what is not there")
	}
}

func TestTheKindSaysWhetherItsLineCloses(t *testing.T) {
	r := reading{kind: plan.Wall}
	for _, c := range []struct {
		kind   plan.Kind
		closed bool
	}{{plan.Platform, true}, {plan.Door, false}, {plan.Furniture, true}} {
		if r.as(c.kind); r.closed != c.closed {
			t.Errorf("%s: closed %v", c.kind, r.closed)
		}
	}
	r.closed = false
	if r.as(plan.Furniture); r.closed {
		t.Error("the same kind again took back what was said about the line")
	}
}
