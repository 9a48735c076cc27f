package readings

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

// inPlace lets the page stand where a place does, for the desk of the tests.
type inPlace struct{ *Page }

func (inPlace) Name() desk.Name { return desk.Marks }

func open(t *testing.T) (*Page, *desk.Desk) {
	p, d := desktest.Open(t, demo.Production(time.Now()), func(d *desk.Desk) inPlace { return inPlace{New(d)} })
	d.Window().Resize(Size)
	return p.Page, d
}

// enter types a reading as a person does.
func enter(t *testing.T, p *Page, text string) {
	t.Helper()
	p.Focus()
	test.Type(p.face.entry, text)
	p.face.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func TestReadingsThatBelongGoOnByThemselves(t *testing.T) {
	p, d := open(t)
	style := d.View().P.Style()
	first := p.list[p.at]
	for range 5 {
		enter(t, p, style.Bare(p.list[p.at].Expected))
	}
	if n := len(d.View().P.Readings); n != 5 {
		t.Fatalf("%d readings are kept", n)
	}
	if r := d.View().P.Readings[0]; r.From != first.Ends[0] || r.To != first.Ends[1] || r.By != "A tester" || r.On.IsZero() {
		t.Errorf("kept %+v", r)
	}
	if p.list[p.at].Read != nil || !strings.Contains(p.face.noted.Words(), "It belongs") || p.face.entry.Text != "" {
		t.Errorf("stands at %v with %q; said %q", p.list[p.at], p.face.entry.Text, p.face.noted.Words())
	}
}

func TestAReadingThatDoesNotBelongSaysWhyAndAsksAgain(t *testing.T) {
	p, d := open(t)
	style := d.View().P.Style()
	m := p.list[p.at]
	enter(t, p, style.Bare(m.Expected+length.Foot))
	said := p.face.noted.Words()
	for _, want := range []string{"does not belong", "a whole foot too long", "Measure again", "second time"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
	}
	if now := p.list[p.at]; now.Ends != m.Ends || now.Read != nil {
		t.Fatalf("it asks for %v, not for the same once more", now)
	}
	enter(t, p, style.Bare(m.Expected))
	if v := p.work.Verdict(); len(v.Faults) != 1 || !v.Faults[0].Found() || len(v.Faults[0].Readings) != 1 {
		t.Errorf("the second reading does not clear the first: %s", v.Sentence(d.View().P))
	}
	if _, verdict := p.verdict(); !strings.Contains(verdict, "is wrong, most likely a whole foot too long") {
		t.Errorf("the verdict is %q", verdict)
	}
}

func TestWhatIsNoReadingIsRefusedInWords(t *testing.T) {
	p, d := open(t)
	key := p.key
	for text, says := range map[string]string{"0": "longer than nothing", "900 m": "longer than any tape", "blue": "not a length"} {
		enter(t, p, text)
		if got := p.face.trouble.Words(); !strings.Contains(got, says) || p.key != key || p.face.entry.Text != text {
			t.Errorf("%s: said %q, stands at %s with %q", text, got, p.key, p.face.entry.Text)
		}
		p.face.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
	if len(d.View().P.Readings) != 0 {
		t.Error("something was kept")
	}
}

func TestNextPreviousAndTakingBack(t *testing.T) {
	p, d := open(t)
	at := p.at
	p.face.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown})
	enter(t, p, "")
	if p.at != at+2 {
		t.Errorf("two steps on is %d from %d", p.at, at)
	}
	p.face.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageUp})
	if p.at != at+1 {
		t.Errorf("a step back is %d", p.at)
	}
	key := p.key
	enter(t, p, "1'")
	p.takeBack()
	if len(d.View().P.Readings) != 0 || p.key != key || !p.face.back.Disabled() {
		t.Errorf("%d readings are left; stands at %s, was at %s", len(d.View().P.Readings), p.key, key)
	}
}

func TestWhatIsAskedForOutsideTheSceneIsKept(t *testing.T) {
	p, d := open(t)
	v := d.View()
	outside := func(m prep.Measure, scene plan.SceneID) bool {
		in := p.all.In(scene).Marks
		return m.Ends[0] != prep.FirstPivot && !slices.ContainsFunc(in, func(k prep.MeasuredMark) bool { return k.Label == m.Ends[0] || k.Label == m.Ends[1] })
	}
	for _, scene := range v.P.Plan.Scenes {
		i := slices.IndexFunc(p.list, func(m prep.Measure) bool { return outside(m, scene.ID) })
		if i < 0 {
			continue
		}
		m := p.list[i]
		p.look(i)
		enter(t, p, v.Style().Bare(m.Expected+length.Foot))
		d.ChooseScene(scene.ID)
		again := slices.IndexFunc(p.list, func(x prep.Measure) bool { return x.Ends == m.Ends && x.Read == nil })
		if again < 0 {
			t.Fatalf("in %s a second reading of %v is not asked for", scene.Name, m.Ends)
		}
		p.look(again)
		if at := turnOf(v.P, p.all, p.list, p.at).where; !strings.Contains(at, m.From+": ") {
			t.Errorf("of %s it is said to be %q", m.From, at)
		}
		enter(t, p, v.Style().Bare(m.Expected))
		if n := len(d.View().P.Readings); n != 2 {
			t.Errorf("%d readings are kept: %s", n, p.face.trouble.Words())
		}
		return
	}
	t.Fatal("every mark of the demo is in every scene")
}

func TestAnotherProductionIsReadInItsOwnUnit(t *testing.T) {
	p, d := open(t)
	enter(t, p, d.View().Style().Bare(p.list[p.at].Expected))
	if p.bare != length.FeetInches || p.last == "" {
		t.Fatalf("a bare number is %s", p.bare)
	}
	next := *d.View()
	of := *next.P
	of.Settings.Unit = string(length.Millimetres)
	next.Path, next.P = "another.groundrow", &of
	p.Show(&next)
	if p.bare != length.Millimetres || p.last != "" || !p.face.back.Disabled() {
		t.Errorf("a bare number is %s, and the reading %q can be taken back", p.bare, p.last)
	}
}

func TestMarksAreTickedWhereTheyAreMeasured(t *testing.T) {
	p, d := open(t)
	p.step(1) // past the pivots, which are no marks
	label := p.list[p.at].Ends[0]
	p.face.ticks[1].SetChecked(true)
	for _, m := range d.View().Work(d.View().Floor).Marks {
		if m.Label == label && (m.Progress.Placed.By != "A tester" || m.Progress.Checked.By != "A tester") {
			t.Errorf("progress %+v", m.Progress)
		}
	}
	if !p.face.ticks[0].Checked {
		t.Error("a mark that is checked is not shown as placed")
	}
	p.face.ticks[0].SetChecked(false)
	if len(d.View().P.Progress) != len(demo.Production(time.Now()).Progress) {
		t.Error("unticking leaves something")
	}
}

func TestFiguresByThumbAndInMetres(t *testing.T) {
	p, d := open(t)
	p.face.bare.SetSelected(inMetres)
	m := p.list[p.at]
	for _, key := range []string{"3", ".", "5", "1", "⌫", "2"} {
		p.face.press(key)
	}
	p.face.entry.enter()
	r := d.View().P.Readings
	if len(r) != 1 || r[0].Metres != 3.52 || r[0].Text != "3.52 m" || r[0].From != m.Ends[0] {
		t.Errorf("kept %+v", r)
	}
}

func TestThePageFitsASmallTablet(t *testing.T) {
	p, _ := open(t)
	for range 30 {
		if least := p.face.whole.MinSize(); least.Width > Size.Width || least.Height > Size.Height {
			t.Fatalf("%s needs %v", p.key, least)
		}
		p.step(1)
	}
}

func TestAFloorWithoutMarksSaysSo(t *testing.T) {
	p, d := open(t)
	d.Edit("Delete every floor", func(to *prep.Production) error {
		for len(to.Floors) > 0 {
			to.RemoveFloor(to.Floors[0].ID)
		}
		return nil
	})
	if p.body.Objects[0] != p.none {
		t.Error("it asks for a measure where there is none")
	}
}

func TestBareNumbersAreKeptAsTheyWereMeant(t *testing.T) {
	for _, c := range []struct {
		text      string
		bare, own length.Unit
		want      string
	}{
		{" 3.5 ", length.Metres, length.FeetInches, "3.5 m"},
		{"12' 6", length.Metres, length.FeetInches, "12' 6"},
		{"12", length.FeetInches, length.Metres, "12'"},
		{"12", length.Metres, length.Metres, "12"},
		{"", length.Metres, length.FeetInches, ""},
	} {
		if got := asTyped(c.text, c.bare, c.own); got != c.want {
			t.Errorf("%q is kept as %q, want %q", c.text, got, c.want)
		}
	}
}
