package weekplace

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
	"groundrow/ui/poster"
)

// wednesday is the day of prep week that the tests look at, in the morning.
var wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// shown returns the place with a production in a window of the size that it has beside the rail.
func shown(t testing.TB, production *prep.Production) (*place, *desk.Desk) {
	return desktest.Open(t, production, func(d *desk.Desk) *place {
		return newPlace(d, func() time.Time { return wednesday })
	})
}

func TestEveryLineLeadsSomewhere(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	went := map[desk.Name]bool{}
	d.Went = func(name desk.Name) { went[name] = true }
	for _, z := range p.poster.Zones() {
		if z.Hint == "" {
			t.Errorf("the zone at %v does not say what it does", z.At)
		}
		if !strings.HasPrefix(z.Hint, "Set the dates") {
			z.Do()
		}
	}
	for _, name := range desk.Names[1:] {
		if !went[name] {
			t.Errorf("nothing leads to %s", name)
		}
	}
}

func TestAPartThatNeedsYouLeadsToItsFirstTrouble(t *testing.T) {
	_, d := shown(t, demo.Production(wednesday))
	for _, part := range pageOf(d.View(), wednesday).parts {
		if part.place == desk.Floors && part.goes.what.Kind != desk.Element {
			t.Errorf("Floors leads to %+v, want an element", part.goes)
		}
	}
}

func TestANewProductionOffersFirstSteps(t *testing.T) {
	p, d := shown(t, &prep.Production{Settings: prep.DefaultSettings()})
	page := pageOf(d.View(), wednesday)
	if page.dated || page.figure != "?" {
		t.Errorf("%q days left without a date", page.figure)
	}
	for _, part := range page.parts {
		if part.state != prep.Nothing || strings.HasPrefix(part.link, "Go to ") {
			t.Errorf("%s is %s and offers %q", part.place, part.state, part.link)
		}
	}
	for _, z := range p.poster.Zones() {
		if z.Hint == "Set the dates" {
			z.Do()
		}
	}
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Fatal("the dates are not asked for")
	}
}

func TestThePageFitsItsScreens(t *testing.T) {
	p, _ := shown(t, demo.Production(wednesday))
	for _, size := range []fyne.Size{fyne.NewSize(1249, 665), fyne.NewSize(1803, 970)} {
		if f := measured(&p.page, size.Width); f.height > size.Height {
			t.Errorf("at %v the page needs %v", size, f.height)
		}
	}
}

func TestCountdown(t *testing.T) {
	for _, c := range []struct {
		week          prep.Week
		figure, words string
	}{
		{prep.Week{}, "?", "No date"},
		{prep.Week{Dated: true, DaysLeft: 5}, "5", "days to"},
		{prep.Week{Dated: true, DaysLeft: 1}, "1", "day to"},
		{prep.Week{Dated: true}, "0", "today"},
		{prep.Week{Dated: true, DaysLeft: -1}, "1", "day since"},
		{prep.Week{Dated: true, DaysLeft: -9}, "9", "days since"},
	} {
		figure, words := countdown(c.week)
		if figure != c.figure || !strings.Contains(words, c.words) {
			t.Errorf("%+v reads %q %q", c.week, figure, words)
		}
	}
}

func TestManyDaysAreDrawnWeekByWeek(t *testing.T) {
	days := make([]dayColumn, 30)
	days[0].today = true
	days[29].rehearsal = "10:00"
	rows := weeks(days)
	if len(rows) != 5 {
		t.Fatalf("%d rows of 30 days, want 5", len(rows))
	}
	for i, r := range rows {
		if bare := i > 0 && i < 4; (r.bare != "") != bare {
			t.Errorf("row %d: %q", i, r.bare)
		}
	}
	if rows := weeks(days[:8]); len(rows) != 1 || len(rows[0].days) != 8 {
		t.Errorf("eight days make %d rows", len(rows))
	}
	if rows := weeks(nil); len(rows) != 0 {
		t.Errorf("no days make %d rows", len(rows))
	}
}

func TestACrowdedDayStaysInItsColumn(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	d.Edit("Call everybody", func(pr *prep.Production) error {
		for i := range 14 {
			id := fmt.Sprint(i)
			pr.People = append(pr.People, prep.Person{ID: id, Name: "Helper " + id})
			pr.Tasks = append(pr.Tasks, prep.Task{ID: "task " + id, Name: "Carry " + id, Count: prep.ByHours, Hours: 1,
				People: []string{id}, Due: wednesday.Add(3 * time.Hour)})
		}
		return nil
	})
	zones := p.poster.Zones()
	first := slices.IndexFunc(zones, func(z poster.Zone) bool { return z.Hint == p.page.parts[0].sentence })
	if first < 0 {
		t.Fatal("the parts of the job are not drawn")
	}
	for _, z := range zones[:first] {
		if z.At.Y+z.Size.Height > zones[first].At.Y {
			t.Errorf("%q reaches down into the parts of the job", z.Hint)
		}
	}
}

func TestShortNames(t *testing.T) {
	got := shortNames([]prep.Person{{ID: "a", Name: "Ines Marlowe"}, {ID: "b", Name: "Wren Hall"}, {ID: "c", Name: "Wren Ash"}})
	if got["a"] != "Ines" || got["b"] != "Wren Hall" || got["c"] != "Wren Ash" {
		t.Errorf("%v", got)
	}
}

func BenchmarkShow(b *testing.B) {
	p, d := shown(b, demo.Production(wednesday))
	for b.Loop() {
		p.Show(d.View())
	}
}
