package sheets

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// joined is the joining list of a floor with the lines and marks.
func joined(lines []floor.Line, ms ...marks.Mark) [][]string {
	p := rich()
	w := &prep.FloorWork{Floor: &p.Floors[0], Lines: lines}
	for _, m := range ms {
		w.Marks = append(w.Marks, prep.MeasuredMark{Mark: m})
	}
	c := joining(Job{P: p, Floor: "room", Works: map[floor.ID]*prep.FloorWork{"room": w}})
	var out [][]string
	for _, b := range c.blocks {
		if t, ok := b.(table); ok {
			for _, r := range t.Rows {
				if !r.Span {
					out = append(out, r.Cells)
				}
			}
		}
	}
	return out
}

func TestJoiningNamesTheMarksOnEachStrip(t *testing.T) {
	m := func(label string, p plane.Point) marks.Mark { return marks.Mark{Label: label, At: p} }
	line := func(a, b plane.Point, bulge float64) floor.Line {
		return floor.Line{Edge: plane.Edge{A: a, B: b, Bulge: bulge}, Stock: "red"}
	}
	quarter := math.Tan(math.Pi / 8)
	tests := []struct {
		name  string
		lines []floor.Line
		marks []marks.Mark
		want  string // from, to, through, how, length
	}{
		{"straight through a crossing", []floor.Line{line(at(0, 0), at(10, 0), 0)},
			[]marks.Mark{m("A", at(0, 0)), m("B", at(4, 0)), m("C", at(10, 0)), m("D", at(4, 1))}, `A C B straight 10' 0"`},
		{"two lines that touch are one strip", []floor.Line{line(at(0, 0), at(4, 0), 0), line(at(4, 0), at(10, 0), 0)},
			[]marks.Mark{m("A", at(0, 0)), m("C", at(10, 0))}, `A C  straight 10' 0"`},
		{"swung from a marked centre", []floor.Line{line(at(4, 0), at(0, 4), quarter)},
			[]marks.Mark{m("A", at(4, 0)), m("B", at(0, 4)), m("M", at(0, 0))}, `A B  swung from M, radius 4' 0" 6' 3 3/8"`},
		{"end without a mark says where it is", []floor.Line{line(at(0, 2), at(3, 2), 0)},
			[]marks.Mark{m("A", at(0, 2))}, `A –  straight; ends at up 2' 0", over 3' 0" SL 3' 0"`},
		{"cut short where the room ends", []floor.Line{{Edge: plane.Edge{A: at(0, 0), B: at(10, 0)}, Stock: "red", Cut: floor.CutEnds{B: true}}},
			[]marks.Mark{m("A", at(0, 0)), m("C", at(10, 0))},
			`A C  straight; cut short at C, where the scenery goes on: put the sign // there 10' 0"`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rows := joined(tt.lines, tt.marks...)
			if len(rows) != 1 {
				t.Fatalf("%d strips: %q", len(rows), rows)
			}
			if got := strings.Join(rows[0][:5], " "); got != tt.want {
				t.Errorf("got  %q\nwant %q", got, tt.want)
			}
		})
	}
}

// A wall that ends where another is cut short is not itself cut.
func TestJoiningTellsAnEndFromACutBesideIt(t *testing.T) {
	cut := floor.Line{Edge: plane.Edge{A: at(0, 0), B: at(10, 0)}, Stock: "red", Cut: floor.CutEnds{B: true}}
	end := floor.Line{Edge: plane.Edge{A: at(10, 4), B: at(10, 0)}, Stock: "red"}
	said := 0
	for _, r := range joined([]floor.Line{cut, end}) {
		if strings.Contains(r[3], "cut short") {
			said++
		}
	}
	if said != 1 {
		t.Errorf("%d strips are cut short, want one", said)
	}
}

// A pair on the centre line gives two sets, each with a heading and a table of its own.
func TestTheSetsOfACentreLinePairAreNeverMixed(t *testing.T) {
	p := rich()
	f := &p.Floors[0]
	m := f.FloorToDatum().Inverse()
	f.Pivots = []floor.Pivot{{ID: "a", Name: "stage edge", At: m.Apply(at(0, -6))}, {ID: "b", Name: "back wall", At: m.Apply(at(0, 30))}}
	w := prep.Work(p, f.ID, "")
	c := twoTapes(Job{P: p, Floor: f.ID, Works: map[floor.ID]*prep.FloorWork{f.ID: w}})
	sets := map[string]int{}
	for i, b := range c.blocks {
		h, ok := b.(heading)
		if !ok || !strings.HasSuffix(fmt.Sprint(h), "set}") {
			continue
		}
		for _, r := range c.blocks[i+1].(table).Rows {
			if !r.Span {
				sets[r.Cells[3]]++
			}
		}
		if len(sets) != 1 && len(sets) != 2 {
			t.Errorf("after %v: %v", h, sets)
		}
	}
	if sets["left"] == 0 || sets["right"] == 0 || !strings.Contains(fmt.Sprint(c.blocks), "Never mix them") {
		t.Errorf("sets %v", sets)
	}
}

func TestTwoTapeListKeepsTheSidesApart(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings(), Floors: []floor.Floor{{
		ID: "room", Name: "Room", Pivots: []floor.Pivot{{Name: "left", At: at(-10, 0)}, {Name: "right", At: at(10, 0)}},
	}}}
	f := &p.Floors[0]
	pair, _ := prep.Pivots(f)
	w := &prep.FloorWork{Floor: f}
	for label, place := range map[string]plane.Point{"A": at(0, -5), "B": at(1, 8), "C": at(3, 0)} {
		mm := prep.MeasuredMark{Mark: marks.Mark{Label: label, At: place}}
		mm.Tapes, mm.HasTapes = pair.Read(place)
		mm.Weak, mm.Pair = label == "C", prep.PivotPair{B: 1, Tapes: pair}
		w.Marks = append(w.Marks, mm)
	}
	c := twoTapes(Job{P: p, Floor: "room", Works: map[floor.ID]*prep.FloorWork{"room": w}})
	text := fmt.Sprint(c.blocks)
	for _, want := range []string{
		`It must be 20' 0"`, "the upstage side", "the downstage side", "On the line from pivot 1 to pivot 2", "WEAK",
		`B 13' 7 1/4" 12' 0 1/2" left`, `A 11' 2 1/8" 11' 2 1/8" right`, // √185, √145, √125 ft
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the list lacks %q\n%s", want, text)
		}
	}
}

func TestRightAngleFitsTheRoom(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	room := func(outline plane.Path) *prep.FloorWork {
		return &prep.FloorWork{Floor: &floor.Floor{Outline: outline}}
	}
	// 22 ft up, 13.5 ft to the nearer side, a foot less for elbows: four times 3-4-5.
	text := fmt.Sprint(squareRecipe(p, room(box(-14.5, -5, 34.5, 27))))
	for _, want := range []string{`16' 0" up`, `12' 0" from the datum`, `20' 0" from that mark`, `24' 0" apart`} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q: %s", want, text)
		}
	}
	if got := squareRecipe(p, room(box(5, 5, 20, 20))); got != nil {
		t.Errorf("a datum outside the room has a recipe: %v", got)
	}
	if got := squareRecipe(p, room(plane.Path{})); got != nil {
		t.Errorf("a room that was not measured has a recipe: %v", got)
	}
}

func TestChecksCoverEveryMarkAndBothDiagonals(t *testing.T) {
	j := richJob(A4)
	w := j.work()
	covered := map[string]bool{}
	diagonals := 0
	for _, c := range prep.ChecksOf(j.production(), w) {
		covered[w.Marks[c.From].Label], covered[w.Marks[c.To].Label] = true, true
		if strings.HasPrefix(string(c.Why), "diagonal") {
			diagonals++
		}
	}
	for _, m := range w.Marks {
		if !covered[m.Label] {
			t.Errorf("%s is in no check measure", m.Label)
		}
	}
	// The landing, the main stair and the cellar trap are rectangles.
	if diagonals != 6 {
		t.Errorf("%d diagonals, want 6", diagonals)
	}
}

func TestRowsRunFromDownstageAndFromStageRight(t *testing.T) {
	for i, rows := 0, rowsOf(richJob(A4).work().Marks, 0.15); i < len(rows); i++ {
		if i > 0 && rows[i][0].Up() < rows[i-1][0].Up() {
			t.Errorf("row %d lies downstage of the one before", i+1)
		}
		for k := 1; k < len(rows[i]); k++ {
			if rows[i][k].Over() < rows[i][k-1].Over() {
				t.Errorf("row %d does not run from stage right", i+1)
			}
			if rows[i][k].Up()-rows[i][0].Up() > 0.15+1e-9 && rows[i][0].Up() <= rows[i][k].Up() {
				t.Errorf("row %d is deeper than a row", i+1)
			}
		}
	}
}

func TestTransferPacketTellsWhatChanges(t *testing.T) {
	text := textOf(t, pdf(t, Transfer, richJob(A4)))
	for _, want := range []string{"→ Millpond stage", "What matters", "Main stair: Outline only here", "Cellar trap: Moved here", "The third tread creaks", "handed over by", "Tape to bring", "Apron numbers", "Marks on Millpond stage"} {
		if !strings.Contains(text, want) {
			t.Errorf("the packet lacks %q", want)
		}
	}
	j := richJob(A4)
	j.To = "room"
	if Pages(Transfer, j) < 1 {
		t.Error("a floor handed on to itself has no page that says so")
	}
}

func TestQuestionsAreOnlyThoseThatAreOpen(t *testing.T) {
	text := textOf(t, pdf(t, Questions, richJob(A4)))
	for _, want := range []string{"Escape stair", "Cellar trap", "1' 0\" to stage left", "The third tread creaks"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	j := richJob(A4)
	for i := range j.P.Floors[0].Treatments {
		j.P.Floors[0].Treatments[i].Decided = floor.Decision{By: "director", On: printed}
	}
	j.P.Notes = nil
	if text := textOf(t, pdf(t, Questions, j)); !strings.Contains(text, "There is nothing to ask") {
		t.Error("a floor where all is decided still asks")
	}
}

func TestCallNamesEveryoneWhoIsWanted(t *testing.T) {
	text := textOf(t, pdf(t, Call, richJob(A4)))
	for _, want := range []string{"Robin Marsh, production stage manager, 555 0134", "Ines Holt", "Kit Barrow", "Sam Vale", "Measure the room", "10:00", "Monday 3 March", "What makes the end so late"} {
		if !strings.Contains(text, want) {
			t.Errorf("the call lacks %q", want)
		}
	}
}

func TestWeekCountsDownToTheFirstRehearsal(t *testing.T) {
	text := textOf(t, pdf(t, Week, richJob(A4)))
	for _, want := range []string{"Monday 3 March – 7 days to first rehearsal", "Sunday 9 March – 1 day to first rehearsal", "Monday 10 March – FIRST REHEARSAL at 09:30", "Order tape due", "NEEDS YOU"} {
		if !strings.Contains(text, want) {
			t.Errorf("the week lacks %q", want)
		}
	}
}

func TestStandInsSayWhatIsMissingAndWhatTips(t *testing.T) {
	j := richJob(A4)
	j.Scene = "1.2"
	text := textOf(t, pdf(t, StandIns, j))
	for _, want := range []string{"NOTHING FOUND YET", "WEIGHT IT", "Music stand", "To pull", "1.2 The kitchen"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet lacks %q", want)
		}
	}
	if strings.Contains(text, "1.1 The yard") && strings.Contains(text[:strings.Index(text, "To pull")], "1.1 The yard") {
		t.Error("the sheet of 1.2 lists the scene 1.1")
	}
}

// The steps of the sum, added up as they are printed, must give the printed
// total to within the rounding of each.
func TestSumOfTapeCanBeFollowed(t *testing.T) {
	p := rich()
	sum, steps := 0.0, 0
	for _, r := range sumTable(p, richJob(A4).work().Tape).Rows {
		if r.Span {
			continue
		}
		var feet float64
		if _, err := fmt.Sscanf(r.Cells[2], "%f ft", &feet); err != nil {
			t.Fatalf("%q is no length in feet", r.Cells[2])
		}
		if !r.Total {
			sum, steps = sum+feet, steps+1
			continue
		}
		if math.Abs(sum-feet) > 0.05*float64(steps+1) {
			t.Errorf("the steps add up to %.1f ft, the total says %.1f", sum, feet)
		}
		sum, steps = 0, 0
	}
}

func TestEverySheetIsListedOnceAndDescribed(t *testing.T) {
	seen := map[Kind]bool{}
	for _, s := range All() {
		if seen[s.Kind] {
			t.Errorf("%s is listed twice", s.Kind)
		}
		seen[s.Kind] = true
		if s.Name == "" || !strings.HasSuffix(s.Holds, ".") {
			t.Errorf("%s is not described", s.Kind)
		}
		if found, ok := Find(s.Kind); !ok || found.Name != s.Name {
			t.Errorf("Find(%q) does not find it", s.Kind)
		}
	}
	for _, k := range []Kind{FloorPlan, UpOver, TwoTapes, Joining, Checks, Retape, Tabs, DanceLine, DanceNumerals, Tape, Kit, Call, Week, StandIns, Questions, DownWhen, Compared, Transfer, Care} {
		if !seen[k] {
			t.Errorf("%s is not listed", k)
		}
	}
}

func TestChangeOfTreatmentIsSeenOnTheCareSheet(t *testing.T) {
	j := richJob(A4)
	before := State(Care, j)
	j.P.Floors[0].Treatments = append(j.P.Floors[0].Treatments, floor.Treatment{Element: plan.ElementID("platform"), How: floor.LeftOut})
	if State(Care, j) == before {
		t.Error("leaving out the landing leaves the cautions as they were")
	}
}

// Two arcs of 4 ft with a rise of 0.6 ft, one to each side of the line between the ends.
func TestACurveThatCrossesItsChordSaysTheSideOfEachOffset(t *testing.T) {
	arc := func(a, b plane.Point, bulge float64) floor.Line {
		return floor.Line{Edge: plane.Edge{A: a, B: b, Bulge: bulge}, Stock: "red"}
	}
	m := func(label string, kind marks.Kind, p plane.Point) marks.Mark {
		return marks.Mark{Label: label, Kind: kind, At: p}
	}
	rows := joined([]floor.Line{arc(at(0, 0), at(4, 0), 0.3), arc(at(4, 0), at(8, 0), -0.3)},
		m("A", marks.End, at(0, 0)), m("B", marks.Curve, at(2, -0.6)), m("C", marks.Curve, at(6, 0.6)), m("D", marks.End, at(8, 0)))
	if len(rows) != 1 {
		t.Fatalf("%d strips: %q", len(rows), rows)
	}
	want := `from a line of 8' 0", left and right as seen from its beginning: B 2' 0", 0' 7 1/4" right, C 6' 0", 0' 7 1/4" left`
	if !strings.HasSuffix(rows[0][3], want) {
		t.Errorf("it is laid %q, want %q", rows[0][3], want)
	}
}

// An arc of three quarters of a circle reaches beyond both ends of its chord, by the
// radius less half the chord.
func TestAnArcOverHalfACircleSaysWhatLiesBeyondItsChord(t *testing.T) {
	bulge := math.Tan(3 * math.Pi / 8)
	r := 4.0
	from, to := at(-r*math.Sin(math.Pi/4), 0), at(r*math.Sin(math.Pi/4), 0)
	line := floor.Line{Edge: plane.Edge{A: from, B: to, Bulge: -bulge}}
	centre := at(0, r*math.Cos(math.Pi/4))
	rows := joined([]floor.Line{line},
		marks.Mark{Label: "A", At: from}, marks.Mark{Label: "D", At: to},
		marks.Mark{Label: "B", Kind: marks.Curve, At: centre.Add(at(-r, 0))}, marks.Mark{Label: "C", Kind: marks.Curve, At: centre.Add(at(r, 0))})
	f := figuresOf(rich())
	beyond, off := f.length(at(r-r*math.Sin(math.Pi/4), 0).X), f.length(centre.Y)
	for _, want := range []string{" C " + beyond + " back beyond its beginning, " + off, " B " + beyond + " on beyond its end, " + off} {
		if len(rows) != 1 || !strings.Contains(rows[0][3], want) {
			t.Errorf("it is laid %q, not %q", rows, want)
		}
	}
}

// A spline drawn as forty chords is one row: its marks by chord and offset, which lead
// back to where the marks are.
func TestACurveDrawnAsChordsIsJoinedInOneRowByChordAndOffset(t *testing.T) {
	var path plane.Path
	for i := range 41 {
		x := -10 + float64(i)/2
		path.Vertices = append(path.Vertices, plane.Vertex{Point: at(x, 8+3*math.Cos(x/5))})
	}
	p := &prep.Production{Settings: prep.DefaultSettings(), Floors: []floor.Floor{{ID: "room", Name: "Room"}}}
	p.Plan.Elements = []plan.Element{{ID: "rail", Name: "Rail", Kind: plan.Wall, Paths: []plan.Path{{ID: "rail", Role: plan.Outline, Path: path}}}}
	w := prep.Work(p, "room", "")
	c := joining(Job{P: p, Floor: "room", Works: map[floor.ID]*prep.FloorWork{"room": w}})
	var rows []row
	for _, r := range c.blocks[len(c.blocks)-1].(table).Rows {
		if !r.Span {
			rows = append(rows, r)
		}
	}
	if len(rows) != 1 || len(w.Marks) < 5 || len(w.Marks) > 20 {
		t.Fatalf("%d rows for %d marks: %v", len(rows), len(w.Marks), rows)
	}
	if n := len(strings.Split(rows[0].Cells[2], ", ")); n != len(w.Marks)-2 {
		t.Errorf("through %d of %d marks", n, len(w.Marks)-2)
	}
	var middle prep.MeasuredMark
	for _, m := range w.Marks {
		if math.Abs(m.At.X) < math.Abs(middle.At.X) || middle.Label == "" {
			middle = m
		}
	}
	f := figuresOf(p)
	// The chord lies straight across, so that along and offset are plain differences.
	want := fmt.Sprintf(" %s %s, %s", middle.Label, f.length(math.Abs(middle.At.X-at(-10, 0).X)), f.length(math.Abs(middle.At.Y-path.Vertices[0].Y)))
	if !strings.Contains(rows[0].Cells[3], "by chord and offset") || !strings.Contains(rows[0].Cells[3], want) {
		t.Errorf("it says %q, not %q", rows[0].Cells[3], want)
	}
}
