package sheets

import (
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// asksOf returns the questions of a job's sheet.
func asksOf(t *testing.T, j Job) asking {
	t.Helper()
	for _, b := range questions(j).blocks {
		if a, ok := b.(asking); ok {
			return a
		}
	}
	t.Fatal("the sheet has no list of questions")
	return asking{}
}

func TestEachDoubtfulElementHasItsPicture(t *testing.T) {
	j := richJob(A4)
	list := asksOf(t, j)
	if len(list.Items) < 2 {
		t.Fatalf("%d questions", len(list.Items))
	}
	for _, q := range list.Items {
		var e *plan.Element
		for i := range j.P.Plan.Elements {
			if j.P.Plan.Elements[i].Name == q.About {
				e = &j.P.Plan.Elements[i]
			}
		}
		if e == nil {
			continue
		}
		want := j.P.Floors[0].EdgesOf(&j.P.Plan, e)
		if len(q.Picture.Edges) != len(want) || len(want) == 0 {
			t.Errorf("%s: %d lines in its picture, want %d", q.About, len(q.Picture.Edges), len(want))
		}
		if len(q.Picture.Room.Walls.Vertices) == 0 {
			t.Errorf("%s: the picture has no room around it", q.About)
		}
	}
	rows := list.records()
	if len(rows) != len(list.Items)+1 || rows[1][1] != list.Items[0].About {
		t.Errorf("as a table %q", rows)
	}
}

func TestAnswersStandOnTheSheetWithDateAndWho(t *testing.T) {
	j := richJob(A4)
	j.P.Answers = []prep.Answer{{ID: "a", Floor: "room", About: "Escape stair", Question: "Can it be rehearsed without?", Text: "Yes, leave it.", By: "Ines Holt", On: printed}}
	text := textOf(t, pdf(t, Questions, j))
	for _, want := range []string{"Answered", "Yes, leave it.", "Ines Holt", printed.Format("Mon 2 Jan")} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	before := State(Questions, j)
	j.P.Answers[0].Text = "No."
	if State(Questions, j) == before {
		t.Error("another answer leaves the sheet up to date")
	}
}

// A close-up of something absurdly far away or without extent must not hang.
func TestCloseUpOfOddThings(t *testing.T) {
	j := richJob(A4)
	for _, at := range []plane.Point{{X: 1e12}, {}} {
		j.P.Plan.Elements[0].Paths = []plan.Path{{ID: "odd", Role: plan.Outline, Path: plane.Open(at, at)}}
		j.P.Floors[0].Treatments = []floor.Treatment{{Element: j.P.Plan.Elements[0].ID, How: floor.ObjectOnly}}
		if len(pdf(t, Questions, j)) == 0 {
			t.Errorf("nothing is printed for an element at %v", at)
		}
	}
}

func TestComparisonAndScenesOnPaper(t *testing.T) {
	j := richJob(A4)
	text := textOf(t, pdf(t, Compared, j))
	if !strings.Contains(text, "compared with") || !strings.Contains(text, "Laid otherwise") {
		t.Errorf("the comparison says %q", text)
	}
	text = textOf(t, pdf(t, DownWhen, j))
	if !strings.Contains(text, "Down all the time") && !strings.Contains(text, "Down in some scenes") {
		t.Errorf("what is down when says %q", text)
	}
	j.P.Floors = j.P.Floors[:1]
	j.Works, j.To = nil, ""
	if text := textOf(t, pdf(t, Compared, j)); !strings.Contains(text, "no second floor") {
		t.Errorf("one floor alone is compared: %q", text)
	}
	empty := Job{Printed: printed}
	for _, k := range []Kind{Compared, DownWhen, Questions} {
		if len(pdf(t, k, empty)) == 0 {
			t.Errorf("%s of nothing prints nothing", k)
		}
	}
}

func TestCutAndOffsetAreWrittenOnTabsAndLists(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	p.Plan.Elements = []plan.Element{
		{ID: "w", Name: "Long wall", Kind: plan.Wall, Paths: []plan.Path{{ID: "w", Role: plan.Outline, Path: plane.Open(at(0, 4), at(0, 40))}}},
		{ID: "l", Name: "Loft", Kind: plan.Platform, Paths: []plan.Path{{ID: "l", Role: plan.Outline, Path: plane.Rectangle(at(-6, 4), at(-4, 6))}}},
	}
	p.Floors = []floor.Floor{{
		ID: "room", Name: "Room", Kind: floor.Room, Outline: plane.Rectangle(at(-20, -10), at(20, 20)),
		Pivots:     []floor.Pivot{{ID: "1", At: at(-18, 0)}, {ID: "2", At: at(18, 0)}},
		Treatments: []floor.Treatment{{Element: "w", How: floor.CutShort}, {Element: "l", How: floor.MovedAside, Over: at(12, 0).X}},
	}}
	j := Job{P: p, Floor: "room", Printed: printed}
	for kind, want := range map[Kind][]string{
		Tabs:     {"// cut short"},
		UpOver:   {"Write on the floor: Loft: moved 12' 0\" to stage left", "from its own datum 4' 0\", 6' 0\" SR", "cut short here"},
		TwoTapes: {"Write on the floor: Loft: moved 12' 0\" to stage left"},
		Joining:  {"where the scenery goes on"},
	} {
		text := strings.Join(strings.Fields(extracted(t, pdf(t, kind, j), "-raw")), " ")
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s lacks %q:\n%s", kind, w, text)
			}
		}
	}
}
