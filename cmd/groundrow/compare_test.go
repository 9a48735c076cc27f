package main

import (
	"strings"
	"testing"

	"groundrow/tapeout/floor"
)

func TestCompareTellsWhatDiffersBetweenAnyTwoFloors(t *testing.T) {
	path := demoFile(t)
	for _, to := range []string{"Loft Studio", "Tidewrack Playhouse, stage"} {
		got := decode[comparison](t, must(t, "compare", path, "--from", "Tannery Hall", "--to", to, "--json"))
		if got.From != "Tannery Hall" || got.To != to || len(got.Elements) < 10 || len(got.Tape) == 0 {
			t.Fatalf("%s: %s and %s, %d elements, %d tapes", to, got.From, got.To, len(got.Elements), len(got.Tape))
		}
		for _, e := range got.Elements {
			if e.Here.Treatment != e.There.Treatment && len(e.Differs) == 0 {
				t.Errorf("%s: %s is %s and %s, and nothing differs", to, e.Element, e.Here.Treatment, e.There.Treatment)
			}
			if e.Here.Treatment == string(floor.LeftOut) && e.Here.Up != nil {
				t.Errorf("%s: %s is left out and lies somewhere", to, e.Element)
			}
		}
	}
	stage := decode[comparison](t, must(t, "compare", path, "--json"))
	if !strings.Contains(stage.Datum, `5' 0" upstage`) {
		t.Errorf("of the stage's datum, five feet downstage of the plan's, it says %q", stage.Datum)
	}
	if r := command(t, "compare", path, "--from", "Loft Studio", "--to", "Loft Studio"); r.status != failed {
		t.Errorf("a floor is compared with itself: status %d", r.status)
	}
	if text := must(t, "compare", path); !strings.Contains(text, "laid otherwise") {
		t.Errorf("in words it says %q", text[:80])
	}
}

func TestQuestionsAreAskedAndAnswered(t *testing.T) {
	path := demoFile(t)
	ask := func() questioned {
		return decode[questioned](t, must(t, "questions", path, "--floor", "Tannery Hall", "--json"))
	}
	open := ask()
	track := 0
	for _, q := range open.Open {
		if q.About == "Boat track" {
			track = q.Number
		}
	}
	if track == 0 {
		t.Fatalf("the boat track is not asked about: %+v", open.Open)
	}
	number := string(rune('0' + track))
	if r := command(t, "questions", path, "--answer", number, "--text", "Leave it"); r.status != failed {
		t.Errorf("an answer that nobody gave: status %d", r.status)
	}
	if r := command(t, "questions", path, "--answer", "99", "--by", "Ines"); r.status != failed || !strings.Contains(r.messages, "there is no question 99") {
		t.Errorf("status %d: %s", r.status, r.messages)
	}
	if r := command(t, "questions", path, "--answer", number, "--by", "Ines", "--how", "burnt"); r.status != failed {
		t.Errorf("an unknown treatment: status %d", r.status)
	}
	must(t, "questions", path, "--answer", number, "--text", "Leave it", "--by", "Ines Marlowe", "--how", "left out")
	after := ask()
	if len(after.Open) != len(open.Open)-1 || len(after.Answered) != 1 || after.Answered[0].By != "Ines Marlowe" || after.Answered[0].On != "2031-03-04" {
		t.Errorf("%d of %d open, answered %+v", len(after.Open), len(open.Open), after.Answered)
	}
	must(t, "undo", path)
	if again := ask(); len(again.Open) != len(open.Open) || len(again.Answered) != 0 {
		t.Errorf("after undo %d open and %d answered", len(again.Open), len(again.Answered))
	}
	must(t, "questions", path, "--propose")
	for _, q := range ask().Open {
		if q.About == "Porch steps" && !strings.Contains(q.Proposal, "outline only") {
			t.Errorf("the porch steps are laid as %q", q.Proposal)
		}
	}
}

func TestScenesTellWhatIsDownWhen(t *testing.T) {
	path := demoFile(t)
	got := decode[downWhen](t, must(t, "scenes", path, "--floor", "Tannery Hall", "--json"))
	always, some := 0, 0
	for _, e := range got.Elements {
		if e.Always {
			always++
		} else {
			some++
		}
	}
	if always == 0 || some == 0 || len(got.Scenes) != 7 || len(got.Rests) == 0 {
		t.Errorf("%d always, %d sometimes, %d scenes, %d stops", always, some, len(got.Scenes), len(got.Rests))
	}
	for _, s := range got.Scenes {
		if s.Only > s.Lines {
			t.Errorf("%+v: more lies there sometimes than at all", s)
		}
	}
	if !strings.Contains(must(t, "scenes", path), "all the time") {
		t.Error("in words nothing is down all the time")
	}
	// What stands in no scene can be spared, on record and with undo.
	if r := command(t, "scenes", path, "--spare"); r.status != failed {
		t.Errorf("there is nothing to spare in the demo's hall: status %d, %s", r.status, r.messages)
	}
}
