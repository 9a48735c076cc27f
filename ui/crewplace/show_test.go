package crewplace

import (
	"slices"
	"strings"
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/ui/fields"
)

func TestReadNames(t *testing.T) {
	names := []string{"Lay the tape", "Lay the tape, Hall", "Clean", "Order"}
	for text, want := range map[string][]int{
		"":                          nil,
		" ; , ":                     nil,
		"Clean":                     {2},
		"clean, ORDER":              {2, 3},
		"Lay the tape, Hall":        {1},
		"Lay the tape; Clean":       {0, 2},
		"Lay the tape, Hall, Order": {1, 3},
		"Lay the tape, Clean":       {0, 2},
	} {
		got, err := readNames(text, names)
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%q reads as %v (%v), want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"Cleaning", "Clean and Order", "Nobody", "Clean; Nobody"} {
		if got, err := readNames(text, names); err == nil {
			t.Errorf("%q reads as %v", text, got)
		}
	}
}

func FuzzReadNames(f *testing.F) {
	for _, seed := range []string{"", "Clean", "Lay the tape, Hall; Clean", ";;,", "ſ", "Clean\x80"} {
		f.Add(seed)
	}
	names := []string{"Lay the tape", "Lay the tape, Hall", "Clean", "Ordſ", " "}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := readNames(text, names)
		for _, i := range got {
			if err != nil || i < 0 || i >= len(names) {
				t.Errorf("%q gives %v, %v", text, got, err)
			}
		}
	})
}

func TestWorked(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0 h", time.Hour: "1 h", 65 * time.Minute: "1 h 05", 400 * time.Minute: "6 h 40",
	} {
		if got := worked(d); got != want {
			t.Errorf("%v is %q, want %q", d, got, want)
		}
	}
}

func TestBarsThatClashLieBelowEachOther(t *testing.T) {
	at := func(h int) time.Time { return wednesday.Add(time.Duration(h) * time.Hour) }
	l := lane{bars: []bar{
		{task: "a", from: at(1), to: at(3)}, {task: "b", from: at(2), to: at(4)}, {task: "c", from: at(3), to: at(5)},
	}}
	l.stack()
	if l.depth != 2 || l.bars[0].level != 0 || l.bars[1].level != 1 || l.bars[2].level != 0 {
		t.Errorf("%+v", l)
	}
}

func TestTheBoardShowsEveryStretchOfWorkOnce(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings(), People: []prep.Person{{ID: "a", Name: "Ada", Hands: true}}}
	p.Settings.PrepStart = wednesday
	p.Tasks = []prep.Task{
		{ID: "long", Name: "Long", Count: prep.ByHours, Hours: 12, Hands: 1},
		{ID: "late", Name: "Late", Count: prep.ByHours, Hours: 1, Hands: 2, Due: wednesday, After: []string{"long"}},
	}
	plan := prep.Schedule(p, nil, wednesday)
	b := boardOf(p, plan, daysOf(plan), wednesday)
	if len(b.days) != 2 || len(b.lanes) != 1 {
		t.Fatalf("%d days, %d lanes", len(b.days), len(b.lanes))
	}
	if n := len(b.lanes[0].bars); n != 3 {
		t.Errorf("%d bars, want the long task on two days and the late one", n)
	}
	for _, bar := range b.lanes[0].bars {
		if bar.trouble != (bar.task == "late") {
			t.Errorf("%s: trouble %v (%s)", bar.name, bar.trouble, bar.detail)
		}
	}
}

func TestTheOutcomeInWords(t *testing.T) {
	at := wednesday.Add(8 * time.Hour)
	some := &prep.Production{Tasks: []prep.Task{{ID: "a"}}}
	for name, c := range map[string]struct {
		p        *prep.Production
		plan     prep.CrewPlan
		troubles int
		words    string
		kind     fields.Kind
	}{
		"no tasks":     {&prep.Production{}, prep.CrewPlan{}, 0, "", fields.Note},
		"all done":     {some, prep.CrewPlan{}, 0, "Every task is done.", fields.Good},
		"no rehearsal": {some, prep.CrewPlan{End: at}, 0, "No first rehearsal is set", fields.Note},
		"too late":     {some, prep.CrewPlan{End: at, Rehearsal: at, Spare: -90 * time.Minute}, 0, "1 h 30 of work too late", fields.Danger},
		"in time":      {some, prep.CrewPlan{End: at, Rehearsal: at, Spare: time.Hour}, 0, "1 h of work to spare", fields.Good},
		"one trouble":  {some, prep.CrewPlan{End: at, Rehearsal: at}, 1, "one thing cannot", fields.Warning},
		"two troubles": {some, prep.CrewPlan{End: at, Rehearsal: at}, 2, "2 things cannot", fields.Warning},
	} {
		words, kind := outcome(c.p, c.plan, c.troubles)
		if !strings.Contains(words, c.words) || kind != c.kind || c.words == "" && words != "" {
			t.Errorf("%s: %q of kind %v", name, words, kind)
		}
	}
}
