package drawing

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// near is the tolerance of places in metres: a nanometre.
const near = 1e-9

// counter returns a maker of identifiers: id1, id2 …
func counter() func() string {
	n := 0
	return func() string { n++; return fmt.Sprintf("id%d", n) }
}

func mustReadPlan(t *testing.T, text string, o PlanOptions) PlanTable {
	t.Helper()
	if o.NewID == nil {
		o.NewID = counter()
	}
	got, err := ReadPlan(strings.NewReader(text), o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func wantNoProblems(t *testing.T, problems []RowProblem) {
	t.Helper()
	for _, p := range problems {
		t.Error(p)
	}
}

func wantPoints(t *testing.T, got plane.Path, want ...plane.Point) {
	t.Helper()
	if len(got.Vertices) != len(want) {
		t.Fatalf("%d points, want %d: %v", len(got.Vertices), len(want), got.Points())
	}
	for i, p := range got.Points() {
		if p.To(want[i]) > near {
			t.Errorf("point %d is %v, want %v", i+1, p, want[i])
		}
	}
}

const kitchen = `Element,Kind,Level,Height,Role,Close,Up,Over,Curve,Colour
Kitchen wall,wall,,,,,"12' 6""","4' SR",,blue
,,,,,,12' 6",8' SL,,
Platform,platform,Gallery,8',,yes,4',0,,
,,,,,,4',6',,
,,,,,,8',6',,
`

func TestReadPlanJoinsRows(t *testing.T) {
	got := mustReadPlan(t, kitchen, PlanOptions{Unit: length.FeetInches})
	wantNoProblems(t, got.Problems)
	if len(got.Elements) != 2 || len(got.Levels) != 1 || fmt.Sprint(got.Unused) != "[Colour]" {
		t.Fatalf("%+v", got)
	}
	wall, platform := got.Elements[0], got.Elements[1]
	if wall.Name != "Kitchen wall" || wall.Kind != plan.Wall || wall.Level != "" || wall.Paths[0].Closed {
		t.Errorf("wall: %+v", wall)
	}
	wantPoints(t, wall.Paths[0].Path, plane.Point{X: -1.2192, Y: 3.81}, plane.Point{X: 2.4384, Y: 3.81})
	if platform.Kind != plan.Platform || platform.Level != got.Levels[0].ID || !platform.Paths[0].Closed {
		t.Errorf("platform: %+v", platform)
	}
	if l := got.Levels[0]; l.Name != "Gallery" || math.Abs(l.Height-8*length.Foot) > near {
		t.Errorf("level: %+v", l)
	}
	ids := map[string]bool{string(wall.ID): true, string(platform.ID): true, string(got.Levels[0].ID): true,
		string(wall.Paths[0].ID): true, string(platform.Paths[0].ID): true}
	if len(ids) != 5 || ids[""] {
		t.Errorf("identifiers repeat or are empty: %v", ids)
	}
}

func TestReadPlanTakesWhatSpreadsheetsWrite(t *testing.T) {
	for name, text := range map[string]string{
		"commas":                    "element,up,over\nA,1.5,-2.25\nA,3,0\n",
		"columns in another order":  "over,element,up\n-2.25,A,1.5\n0,A,3\n",
		"capitals":                  "ELEMENT,UP,OVER\na,1.5,-2.25\nA,3,0\n",
		"a byte order mark, CRLF":   "\uFEFFelement,up,over\r\nA,1.5,-2.25\r\nA,3,0\r\n",
		"semicolons":                "element;up;over\nA;1,5;-2,25\nA;3;0\n",
		"tabs":                      "element\tup\tover\nA\t1.5\t-2.25\nA\t3\t0",
		"empty rows and short rows": "\n\nelement,up,over,note\n,,,\n\nA,1.5,-2.25\n,,\nA,3,0\n",
		"code page 1252":            "element,up,over,note\nA,1.5,\"2.25 SR\",caf\xe9\nA,3,0\n",
		"guarded formulas":          "element,up,over\nA,1.5,'-2.25\nA,3,0\n",
	} {
		t.Run(name, func(t *testing.T) {
			got := mustReadPlan(t, text, PlanOptions{Unit: length.Metres})
			wantNoProblems(t, got.Problems)
			if len(got.Elements) != 1 {
				t.Fatalf("%d elements", len(got.Elements))
			}
			wantPoints(t, got.Elements[0].Paths[0].Path, plane.Point{X: -2.25, Y: 1.5}, plane.Point{Y: 3})
		})
	}
}

func TestReadPlanScalesPaper(t *testing.T) {
	text := "element,up,over,curve\nRevolve,6 1/4,-1/2,circle 3\n"
	got := mustReadPlan(t, text, PlanOptions{Unit: length.Inches, Scale: 48})
	wantNoProblems(t, got.Problems)
	// A quarter of an inch is a foot.
	want := plane.Circle(plane.Point{X: -2 * length.Foot, Y: 25 * length.Foot}, 12*length.Foot)
	wantPoints(t, got.Elements[0].Paths[0].Path, want.Points()...)
}

func TestReadPlanCurves(t *testing.T) {
	cases := []struct {
		name, rows string
		length     float64 // metres of line, from the circle's formulas
		closed     bool
	}{
		{"through the top of a half circle", "A,0,1,,\nA,1,0,through,\nA,0,-1,,", math.Pi, false},
		{"a quarter and a straight line", "A,0,1,,\nA,0.70710678118654752,0.70710678118654752,through,\nA,1,0,,\nA,3,0,,", math.Pi/2 + 2, false},
		{"bulge of a half circle", "A,0,1,bulge 1,\nA,0,-1,,", math.Pi, false},
		{"bulge with a comma", "A,0,1,\"bulge -1,0\",\nA,0,-1,,", math.Pi, false},
		{"a circle", "A,5,5,circle 2 m,", 4 * math.Pi, true},
		{"an arc that closes", "A,0,-1,,yes\nA,0,1,,\nA,1,0,through,", 2 + math.Pi, true},
		{"points in line make no arc", "A,0,0,,\nA,1,0,through,\nA,2,0,,", 2, false},
		{"back to the first point", "A,0,0,,\nA,1,0,,\nA,1,1,,\nA,0,0,,", 2 + math.Sqrt2, true},
		{"back to the first point but open", "A,0,0,,no\nA,1,0,,\nA,1,1,,\nA,0,0,,", 2 + math.Sqrt2, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := mustReadPlan(t, "element,up,over,curve,close\n"+c.rows, PlanOptions{Unit: length.Metres})
			wantNoProblems(t, got.Problems)
			path := got.Elements[0].Paths[0]
			if math.Abs(path.Length()-c.length) > near || path.Closed != c.closed {
				t.Errorf("length %v, closed %v; want %v, %v", path.Length(), path.Closed, c.length, c.closed)
			}
		})
	}
}

func TestReadPlanKeepsPathsApart(t *testing.T) {
	text := `element,path,role,up,over,curve
Stair,1,outline,0,0,
Stair,2,inner,0.3,0,
Stair,1,,0,1,
Stair,2,,0.3,1,
Stair,,,0.6,1,
Stair,,above,1,1,circle 0.1
Stair,,above,1,2,circle 0.1
stair,1,,1,1,
`
	got := mustReadPlan(t, text, PlanOptions{Unit: length.Metres})
	wantNoProblems(t, got.Problems)
	var shape []string
	for _, p := range got.Elements[0].Paths {
		shape = append(shape, fmt.Sprint(p.Role, len(p.Vertices)))
	}
	if fmt.Sprint(shape) != "[outline3 inner3 above2 above2]" {
		t.Errorf("paths: %v", shape)
	}
}

func TestReadPlanUsesTheLevelsThereAre(t *testing.T) {
	levels := []plan.Level{{ID: "gallery", Name: "Gallery", Height: 2.5}}
	text := "element,level,height,up,over,curve\nA,GALLERY,2.5,0,0,circle 1\nB,stage floor,,0,0,circle 1\nC,Bridge,5,0,0,circle 1\nD,Bridge,,0,0,circle 1\n"
	got := mustReadPlan(t, text, PlanOptions{Unit: length.Metres, Levels: levels})
	wantNoProblems(t, got.Problems)
	e := got.Elements
	if e[0].Level != "gallery" || e[1].Level != "" || e[2].Level != e[3].Level || len(got.Levels) != 1 || got.Levels[0].Height != 5 {
		t.Errorf("%v %v %v %v, added %+v", e[0].Level, e[1].Level, e[2].Level, e[3].Level, got.Levels)
	}
}

func TestReadPlanListsEveryProblem(t *testing.T) {
	const header = "element,kind,level,height,use,path,role,close,up,over,curve\n"
	cases := []struct {
		name, rows string
		want       []string // what each problem's sentence has
	}{
		{"two on one row", "A,,,,,,,,x,1 yd,\nA,,,,,,,,0,0,circle 1", []string{"Row 2, up: “x”", "Row 2, over: “1 yd”"}},
		{"rows after empty ones", "\nA,,,,,,,,x,0,\nA,,,,,,,,0,0,circle 1", []string{"Row 3, up"}},
		{"rows after a cell of two lines", "\"A\nB\",,,,,,,,0,0,\nA B,,,,,,,,x,0,\nA B,,,,,,,,1,1,", []string{"Row 3, up"}},
		{"no coordinate", "A,,,,,,,,,0,\nA,,,,,,,,0,0,circle 1", []string{"Row 2, up: nothing is there. Wanted: "}},
		{"no element", ",,,,,,,,0,0,\n", []string{"Row 2, element: nothing is there"}},
		{"an unknown kind", "A,cloud,,,,,,,0,0,circle 1", []string{"Row 2, kind: “cloud” cannot be used. Wanted: wall or flat, door"}},
		{"an unknown use", "A,,,,often,,,,0,0,circle 1", []string{"essential"}},
		{"an unknown role", "A,,,,,,edge,,0,0,circle 1", []string{"outline, inner"}},
		{"neither yes nor no", "A,,,,,,,perhaps,0,0,circle 1", []string{"yes or no"}},
		{"two kinds", "A,wall,,,,,,,0,0,\nA,door,,,,,,,0,1,", []string{"Row 3, kind: “door” cannot be used, since row 2 says “wall”"}},
		{"two heights", "A,,Up,2,,,,,0,0,\nA,,,3,,,,,0,1,", []string{"has a height of 2.000 m already"}},
		{"a height of the stage floor", "A,,,2,,,,,0,0,circle 1", []string{"name its level"}},
		{"one point", "A,,,,,,,,0,0,", []string{"one point makes no line"}},
		{"two points closed", "A,,,,,,,yes,0,0,\nA,,,,,,,,0,1,", []string{"two points cannot be closed"}},
		{"an unknown curve", "A,,,,,,,,0,0,wavy\nA,,,,,,,,0,0,circle 1", []string{"the word is not known"}},
		{"a bulge without number", "A,,,,,,,,0,0,bulge\nA,,,,,,,,0,0,circle 1", []string{"the number after bulge"}},
		{"an endless bulge", "A,,,,,,,,0,0,bulge inf\nA,,,,,,,,0,0,circle 1", []string{"the number after bulge"}},
		{"a huge bulge", "A,,,,,,,,0,0,bulge 1e9\nA,,,,,,,,0,0,circle 1", []string{"goes up to 10000"}},
		{"a circle without radius", "A,,,,,,,,0,0,circle", []string{"the radius"}},
		{"a circle of nothing", "A,,,,,,,,0,0,circle 0", []string{"the radius"}},
		{"through at the start", "A,,,,,,,,0,0,through\nA,,,,,,,,0,1,", []string{"one is missing"}},
		{"through at the end", "A,,,,,,,,0,0,\nA,,,,,,,,0,1,through", []string{"one is missing"}},
		{"through twice", "A,,,,,,,,0,0,\nA,,,,,,,,0,1,through\nA,,,,,,,,1,1,through\nA,,,,,,,,2,1,", []string{"must be corners"}},
		{"no arc", "A,,,,,,,,0,0,\nA,,,,,,,,0,2,through\nA,,,,,,,,0,1,", []string{"no arc runs through"}},
		{"a cell too many", "A,,,,,,,,0,0,circle 1,more", []string{"to the right of the last column"}},
		{"an open quotation mark", "A,,,,,,,,0,0,circle 1\n\"B,,,,,,,,0,0,\n" + strings.Repeat("C,,,,,,,,0,0,\n", 500), []string{"Row 3: ", "not closed"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := mustReadPlan(t, header+c.rows, PlanOptions{Unit: length.Metres})
			var all []string
			for _, p := range got.Problems {
				all = append(all, p.String())
			}
			if len(all) == 0 || len(all) > len(c.want) {
				t.Fatalf("problems: %q", all)
			}
			for _, w := range c.want {
				if !strings.Contains(strings.Join(all, "\n"), w) {
					t.Errorf("%q not in %q", w, all)
				}
			}
		})
	}
}

func TestReadPlanBeyondTheLimitAtScale(t *testing.T) {
	got := mustReadPlan(t, "element,up,over,curve\nA,300,0,circle 1\n", PlanOptions{Unit: length.Metres, Scale: 48})
	if len(got.Elements) != 0 || len(got.Problems) != 1 || !strings.Contains(got.Problems[0].Why, "10 km") {
		t.Errorf("%+v", got)
	}
}

func TestAScaleThatNoPlanHas(t *testing.T) {
	for _, s := range []length.Scale{-48, 0.5, 1e6, length.Scale(math.NaN())} {
		_, err := ReadPlan(strings.NewReader(kitchen), PlanOptions{Scale: s, NewID: counter()})
		_, errRoom := ReadRoom(strings.NewReader("length\n1\n"), RoomOptions{Scale: s})
		if err == nil || errRoom == nil || !strings.Contains(err.Error(), "between 1:1 and 1:10000") {
			t.Errorf("scale %v: %v, %v", float64(s), err, errRoom)
		}
	}
}

func TestWhatIsNoPlanTable(t *testing.T) {
	big := "element,up,over\n" + strings.Repeat("A,1,1\n", maxRows+1)
	for name, c := range map[string]struct{ text, want string }{
		"nothing":          {"", "is empty"},
		"blank rows":       {"\n\n,,,\n", "is empty"},
		"no header":        {"A,1,2\n", "has to name the columns"},
		"a column missing": {"element,up,across\n", "does not name the column over; it has across"},
		"a column twice":   {"element,up,over,UP\n", "up is there twice"},
		"UTF-16":           {"\xff\xfee\x00", "UTF-16"},
		"a spreadsheet":    {"PK\x03\x04\x00\x00", "save the spreadsheet as CSV"},
		"too many rows":    {big, "more than 200000 rows"},
		"too many bytes":   {strings.Repeat("x", maxBytes+1), "larger than 32 MB"},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := ReadPlan(strings.NewReader(c.text), PlanOptions{NewID: counter()})
			if err == nil || !strings.Contains(err.Error(), c.want) || got.Elements != nil {
				t.Errorf("%v, %v; want %q", got, err, c.want)
			}
		})
	}
}
