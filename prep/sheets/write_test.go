package sheets

import (
	"bytes"
	"fmt"
	"math"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

func TestEverySheetIsSoundPDFOnEveryPaper(t *testing.T) {
	qpdf := tool(t, "qpdf")
	for _, size := range PageSizes {
		for _, s := range All() {
			t.Run(size.Name+" "+string(s.Kind), func(t *testing.T) {
				t.Parallel()
				out, err := exec.Command(qpdf, "--check", saved(t, pdf(t, s.Kind, richJob(size)))).CombinedOutput()
				if err != nil {
					t.Errorf("qpdf --check: %v\n%s", err, out)
				}
			})
		}
	}
}

// Sizes of A4 and A3 from ISO 216, of letter and tabloid from ASME Y14.1 sizes A
// and B; all from memory.
func TestPagesHaveTheSizeOfThePaper(t *testing.T) {
	tests := []struct {
		size          PageSize
		width, height float64 // millimetres
	}{
		{A4, 210, 297},
		{A3, 297, 420},
		{Letter, 215.9, 279.4},
		{Tabloid, 279.4, 431.8},
	}
	box := regexp.MustCompile(`/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]`)
	for _, tt := range tests {
		t.Run(tt.size.Name, func(t *testing.T) {
			for _, k := range []Kind{UpOver, Call} {
				got := box.FindSubmatch(pdf(t, k, richJob(tt.size)))
				if got == nil {
					t.Fatal("no MediaBox in the file")
				}
				w, h := pointsToMM(t, got[1]), pointsToMM(t, got[2])
				if k == Call { // lies on its long side
					w, h = h, w
				}
				if math.Abs(w-tt.width) > 0.05 || math.Abs(h-tt.height) > 0.05 {
					t.Errorf("%s: page is %.2f × %.2f mm, want %g × %g", k, w, h, tt.width, tt.height)
				}
			}
		})
	}
}

func pointsToMM(t *testing.T, s []byte) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(string(s), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v / 72 * 25.4
}

func TestSameJobGivesSameBytes(t *testing.T) {
	for _, s := range All() {
		if !bytes.Equal(pdf(t, s.Kind, richJob(A4)), pdf(t, s.Kind, richJob(A4))) {
			t.Errorf("%s: two writings differ", s.Kind)
		}
	}
}

func TestEveryPageCarriesHeadAndFoot(t *testing.T) {
	for _, s := range All() {
		t.Run(string(s.Kind), func(t *testing.T) {
			j := richJob(Letter)
			data := pdf(t, s.Kind, j)
			n := Pages(s.Kind, j)
			pages := strings.Split(strings.TrimSuffix(textOf(t, data), "\f"), "\f")
			if len(pages) != n {
				t.Fatalf("%d pages of text, Pages says %d", len(pages), n)
			}
			for i, page := range pages {
				wants := []string{s.Name, "The Lantern House", "revision C of 24 February", "Mon 3 Mar 2031, 09:30 by Robin", fmt.Sprintf("page %d of %d", i+1, n), "Ask: Robin Marsh"}
				if s.PerFloor {
					wants = append(wants, "Weaver's Hall", "AUDIENCE", "Datum: up is read from the plaster line", "rounded to 1/8\"", "outside the line", "nearest to the centre line")
				}
				if s.PerScene {
					wants = append(wants, "all scenes")
				}
				for _, want := range wants {
					if !strings.Contains(page, want) {
						t.Errorf("page %d lacks %q", i+1, want)
					}
				}
			}
		})
	}
}

func TestEveryLabelIsOnTheSheetsOfTheFloor(t *testing.T) {
	j := richJob(A4)
	w := j.work()
	if len(w.Marks) < 30 {
		t.Fatalf("the rich floor has only %d marks", len(w.Marks))
	}
	for _, k := range []Kind{FloorPlan, UpOver, TwoTapes, Tabs, Checks} {
		count := wordsOf(t, pdf(t, k, j))
		for _, m := range w.Marks {
			if count[m.Label] == 0 {
				t.Errorf("%s lacks the label %s", k, m.Label)
			}
		}
	}
}

func TestFiguresAreThoseOfTheMark(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	f := floor.Floor{ID: "room", Name: "Room", Pivots: []floor.Pivot{{Name: "left"}, {Name: "right", At: at(30, 0)}}}
	p.Floors = []floor.Floor{f}
	work := &prep.FloorWork{Floor: &f, Marks: []prep.MeasuredMark{
		{Mark: marks.Mark{Label: "Q", At: at(-12.5, 9+1.0/24), What: "Yard wall"}, Method: survey.TwoTapes, Advised: survey.TwoTapes,
			Ways: []survey.Way{{Method: survey.UpAndOver, Ellipse: survey.Ellipse{Major: 0.0254}}}},
		{Mark: marks.Mark{Label: "R", At: at(0, -3.25), What: "Yard wall"}},
	}}
	j := Job{P: p, Floor: "room", Works: map[floor.ID]*prep.FloorWork{"room": work}, Printed: printed}
	table := upOverTable(p, j.work())
	want := [][]string{
		{"R", "DS 3' 3\"", "centre", "0' 0\"", "Yard wall", "–", "none", "", ""},
		{"Q", "9' 0 1/2\"", "SR", "12' 6\"", "Yard wall", "1\"", "tapes", "", ""},
	}
	var got [][]string
	for _, r := range table.Rows {
		if !r.Span {
			got = append(got, r.Cells)
		}
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("rows\n%q, want\n%q", got, want)
	}
}

func TestStateFollowsWhatIsShown(t *testing.T) {
	base := richJob(A4)
	state := func(k Kind, change func(*Job)) string {
		j := richJob(A4)
		change(&j)
		return State(k, j)
	}
	same := map[string]func(*Job){
		"later":          func(j *Job) { j.Printed = j.Printed.Add(50 * time.Hour) },
		"other person":   func(j *Job) { j.By = "Ines" },
		"other paper":    func(j *Job) { j.Size = Tabloid },
		"computed work":  func(j *Job) { j.Works = map[floor.ID]*prep.FloorWork{"room": prep.Work(j.P, "room", "")} },
		"stock on shelf": func(j *Job) { j.P.Stocks[0].Shelf++ },
	}
	for name, change := range same {
		if got, want := state(UpOver, change), State(UpOver, base); got != want {
			t.Errorf("%s: placing list counts as out of date", name)
		}
	}
	other := map[string]func(*Job){
		"new revision":  func(j *Job) { j.P.Plan.Revision = "D" },
		"element moved": func(j *Job) { j.P.Plan.Elements[0].Paths[0].Vertices[0].X += 0.1 },
		"other scene":   func(j *Job) { j.Scene = "1.2" },
		"metric":        func(j *Job) { j.P.Settings.Unit = "mm" },
		"mark placed": func(j *Job) {
			j.P.Progress = append(j.P.Progress, marks.Progress{Floor: "room", Label: "B", Placed: floor.Decision{By: "Kit"}})
		},
	}
	for name, change := range other {
		if state(UpOver, change) == State(UpOver, base) {
			t.Errorf("%s: placing list does not count as out of date", name)
		}
	}
	if State("no such sheet", base) != "" {
		t.Error("a sheet that does not exist has a state")
	}
}

func TestSheetsOfNothingSayWhatBelongsThere(t *testing.T) {
	jobs := map[string]Job{
		"no production":    {},
		"empty production": {P: &prep.Production{Settings: prep.DefaultSettings()}, Printed: printed},
		"empty floor":      {P: &prep.Production{Floors: []floor.Floor{{ID: "room", Name: "Room"}}}, Floor: "room", Printed: printed},
	}
	for name, j := range jobs {
		for _, s := range All() {
			t.Run(name+" "+string(s.Kind), func(t *testing.T) {
				body := textOf(t, pdf(t, s.Kind, j))
				if len(strings.Fields(body)) < 20 || !strings.Contains(body, ".") {
					t.Errorf("says nothing: %q", body)
				}
			})
		}
	}
}

// crowded is a floor with n marks in a grid.
func crowded(n int) Job {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	f := floor.Floor{ID: "room", Name: "Room", Pivots: []floor.Pivot{{Name: "a", At: at(-15, -2)}, {Name: "b", At: at(15, -2)}}}
	p.Floors = []floor.Floor{f}
	w := &prep.FloorWork{Floor: &f}
	columns := int(math.Sqrt(float64(n)))
	for i := range n {
		m := marks.Mark{Label: marks.Label(i, false), Kind: marks.Corner, At: at(2*float64(i%columns-columns/2), 2*float64(i/columns)), What: "Wall"}
		w.Marks = append(w.Marks, prep.MeasuredMark{Mark: m, HasTapes: true})
	}
	return Job{P: p, Floor: "room", Works: map[floor.ID]*prep.FloorWork{"room": w}, Printed: printed}
}

func TestThousandsOfMarksLoseNone(t *testing.T) {
	j := crowded(3_000) // as many as a large production has
	for _, k := range []Kind{UpOver, Tabs} {
		count := wordsOf(t, pdf(t, k, j))
		lost := 0
		for _, m := range j.work().Marks {
			if count[m.Label] == 0 {
				lost++
			}
		}
		if lost > 0 {
			t.Errorf("%s lost %d labels", k, lost)
		}
	}
	for _, k := range []Kind{FloorPlan, TwoTapes, Joining} {
		if Pages(k, j) < 1 {
			t.Errorf("%s has no pages", k)
		}
	}
}

func TestStrangeTextIsSetAndLeavesATrace(t *testing.T) {
	long := strings.Repeat("The longest name of a wall that anybody ever gave ", 15)
	names := map[string]struct {
		name string
		find []string // words that must be left of it
	}{
		"accents, greek and signs":  {"Żółta ściana Ωδείο ☃ ½ ″ ✓", []string{"Żółta", "Ωδείο"}},
		"right to left":             {"קיר המטבח", nil},
		"emoji and zero width":      {"Wall 🎭 two Wa\u200dll\u202e six", []string{"two", "six"}},
		"controls and broken UTF-8": {"Wall\x00\x07\x1b[31m three\r\n\tfour \xff\xfe five", []string{"three", "five"}},
		"very long":                 {long, []string{"longest"}},
		"one long word":             {strings.Repeat("W", 300), []string{"WWW"}},
	}
	for what, n := range names {
		t.Run(what, func(t *testing.T) {
			t.Parallel()
			j := richJob(A4)
			j.P = strange(n.name)
			for _, s := range All() {
				data := pdf(t, s.Kind, j)
				if s.Kind != FloorPlan && s.Kind != Transfer {
					continue // it could be written; two are enough for the reader's opinion
				}
				if out, err := exec.Command(tool(t, "qpdf"), "--check", saved(t, data)).CombinedOutput(); err != nil {
					t.Errorf("%s: %v\n%s", s.Kind, err, out)
				}
			}
			list := textOf(t, pdf(t, UpOver, j))
			for _, word := range n.find {
				if !strings.Contains(list, word) {
					t.Errorf("the placing list lacks %q", word)
				}
			}
		})
	}
}

// strange is the rich production with a name everywhere that a name can be.
func strange(name string) *prep.Production {
	p := rich()
	p.Settings.Title, p.Settings.Company, p.Settings.Contact, p.Settings.ReadEdge = name, name, name, name
	p.Plan.Title, p.Plan.Revision = name, name
	for i := range p.Plan.Elements {
		p.Plan.Elements[i].Name = name
	}
	for i := range p.Plan.Scenes {
		p.Plan.Scenes[i].Name = name
	}
	f := &p.Floors[0]
	f.Name, f.Surface = name, name
	for i := range f.Pivots {
		f.Pivots[i].Name = name
	}
	for i := range f.Treatments {
		f.Treatments[i].Reason = name
	}
	f.Obstacles[0].Name, f.KeepClears[0].Name = name, name
	p.Notes[0].Text, p.Notes[0].Owner = name, name
	for i := range p.Stocks {
		p.Stocks[i].Name, p.Stocks[i].Colour = name, name
	}
	for i := range p.Items {
		p.Items[i].Name, p.Items[i].Group = name, name
	}
	for i := range p.People {
		p.People[i].Name, p.People[i].Role = name, name
	}
	for i := range p.Tasks {
		p.Tasks[i].Name = name
	}
	for i := range p.Objects {
		p.Objects[i].Name = name
	}
	p.DanceLines[0].Name = name
	return p
}

func TestAbsurdFiguresDoNotCrash(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, v := range []float64{nan, inf, -inf, 1e300, -1e12, 1e-300} {
		t.Run(fmt.Sprint(v), func(t *testing.T) {
			j := richJob(Letter)
			p := j.P
			p.Settings.Step, p.Settings.TapeSigma, p.Settings.TapeLength = v, v, v
			p.Settings.Rules.Weld = 0.006
			p.DanceLines[0].Up = v
			p.Stocks[0].Roll, p.Tasks[0].Hours = v, v
			p.Floors[0].KeepClears[0].Shape.Vertices[0].X = v
			w := &prep.FloorWork{Floor: &p.Floors[0], Marks: []prep.MeasuredMark{{Mark: marks.Mark{Label: "A", At: plane.Point{X: v}}}, {Mark: marks.Mark{Label: "B", At: plane.Point{Y: v}}}},
				Lines: []floor.Line{{Edge: plane.Edge{A: plane.Point{X: v}, B: plane.Point{Y: 1}}, Stock: "red"}, {Edge: plane.Edge{B: plane.Point{X: 1}, Bulge: v}}},
				Tape:  []supplies.Run{{Stock: "red", Total: v, Lines: v}}}
			j.Works = map[floor.ID]*prep.FloorWork{"room": w}
			for _, s := range All() {
				if s.Kind == DanceLine || s.Kind == DanceNumerals || s.PerFloor && s.Kind != Transfer && s.Kind != Tape {
					pdf(t, s.Kind, j)
				}
			}
		})
	}
}

func TestUnknownSheetIsRefused(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, "no such sheet", richJob(A4)); err == nil || b.Len() > 0 {
		t.Errorf("Write: error %v and %d bytes", err, b.Len())
	}
	if err := WriteCSV(&b, FloorPlan, richJob(A4)); err == nil {
		t.Error("a drawing was written as CSV")
	}
	if got := Pages("no such sheet", richJob(A4)); got != 0 {
		t.Errorf("Pages of no sheet: %d", got)
	}
}

func TestMetricProductionReadsInMillimetres(t *testing.T) {
	j := richJob(A4)
	j.P.Settings.Unit, j.P.Settings.Step = string(length.Millimetres), 0.005
	text := textOf(t, pdf(t, UpOver, j))
	for _, want := range []string{"3660 mm", "rounded to 5 mm"} { // 12 ft is 3657.6 mm
		if !strings.Contains(text, want) {
			t.Errorf("the placing list lacks %q", want)
		}
	}
}

func TestSceneShowsOnlyItsOwn(t *testing.T) {
	j := richJob(A4)
	bench := j.P.Plan.Element("bench")
	bench.Stands = []plan.Stand{{Scene: "1.2"}}
	j.Scene = "1.1"
	if text := textOf(t, pdf(t, UpOver, j)); strings.Contains(text, "Bench") || !strings.Contains(text, "1.1 The yard") {
		t.Error("the list of 1.1 holds the bench of 1.2, or does not name its scene")
	}
	j.Scene = "1.2"
	if text := textOf(t, pdf(t, UpOver, j)); !strings.Contains(text, "Bench") {
		t.Error("the list of 1.2 lacks its bench")
	}
}

func BenchmarkWholePaperwork(b *testing.B) {
	p := rich()
	works := map[floor.ID]*prep.FloorWork{"room": prep.Work(p, "room", ""), "stage": prep.Work(p, "stage", "")}
	for b.Loop() {
		for _, s := range All() {
			var out bytes.Buffer
			if err := Write(&out, s.Kind, Job{P: p, Works: works, Floor: "room", Printed: printed}); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func TestSheetsCanBeMadeAtOnce(t *testing.T) {
	want := pdf(t, UpOver, richJob(A4))
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, UpOver, richJob(A4)); err != nil || !bytes.Equal(b.Bytes(), want) {
				t.Errorf("made at the same time as others, the sheet differs (error %v)", err)
			}
		})
	}
	wait.Wait()
}
