package prep

import (
	"slices"
	"strings"
	"testing"
	"time"

	"groundrow/supplies"
)

func partOf(t *testing.T, w Week, place string) Part {
	t.Helper()
	i := slices.IndexFunc(w.Parts, func(p Part) bool { return p.Place == place })
	if i < 0 {
		t.Fatalf("no line for %s", place)
	}
	return w.Parts[i]
}

func TestANewProductionOffersTheFirstStepOfEveryPart(t *testing.T) {
	p := &Production{Settings: DefaultSettings()}
	w := WeekOf(p, worker(p), clock(0, 9, 0))
	for _, part := range w.Parts {
		if part.State != Nothing || part.Sentence == "" {
			t.Errorf("%s: %s, %q; want nothing yet and what to do", part.Place, part.State, part.Sentence)
		}
	}
	if w.Dated || len(w.Dangers) == 0 {
		t.Errorf("dated %v, dangers %+v", w.Dated, w.Dangers)
	}
}

func TestEveryPlaceHasAState(t *testing.T) {
	for _, p := range []*Production{{}, small()} {
		states := PlaceStates(p, worker(p))
		for _, place := range Places {
			if states[place] == "" {
				t.Errorf("%s has no state", place)
			}
		}
	}
}

func TestWeekInWords(t *testing.T) {
	p := small()
	w := WeekOf(p, worker(p), clock(1, 12, 0))
	for place, want := range map[string]struct {
		state State
		words []string
	}{
		PlacePlan:     {Ready, []string{"5 elements in 2 scenes, revision B, at 1/4\""}},
		PlaceFloors:   {Ready, []string{"2 floors, all measured and every treatment decided."}},
		PlaceMarks:    {UnderWay, []string{"marks to find", "0 placed, 0 checked"}},
		PlaceTape:     {NeedsYou, []string{"of tape over all floors", "no tape is chosen"}},
		PlaceSupplies: {NeedsYou, []string{"Short of"}},
		PlaceCrew:     {UnderWay, []string{"0 of 3 tasks done", "of work to spare."}},
		PlaceStandIns: {NeedsYou, []string{"2 pieces to stand in for: 2 with an object, 1 in the room; too few of 1 object."}},
		PlaceTransfer: {UnderWay, []string{"Handed on to Stage today, it would miss"}},
		PlacePaper:    {UnderWay, []string{"1 sheet printed, the last on Monday 10 March."}},
	} {
		part := partOf(t, w, place)
		if part.State != want.state {
			t.Errorf("%s is %s, want %s: %s", place, part.State, want.state, part.Sentence)
		}
		for _, words := range want.words {
			if !strings.Contains(part.Sentence, words) {
				t.Errorf("%s says %q, want %q in it", place, part.Sentence, words)
			}
		}
	}
}

func TestShortOfNothingIsNotSaid(t *testing.T) {
	supplies := func(change func(*Production)) string {
		p := small()
		change(p)
		return partOf(t, WeekOf(p, worker(p), clock(1, 12, 0)), PlaceSupplies).Sentence
	}
	for name, got := range map[string]string{
		"tape on the shelf": supplies(func(p *Production) {
			for i := range p.Stocks {
				p.Stocks[i].Shelf = 100
			}
		}),
		"kit on the shelf": supplies(func(p *Production) { p.Items = nil }),
	} {
		if !strings.Contains(got, "Short of") || strings.Contains(got, "Short of 0") || strings.Contains(got, "and 0") {
			t.Errorf("%s: %q", name, got)
		}
	}
}

func TestDaysToTheFirstRehearsal(t *testing.T) {
	p := small()
	for day, want := range map[int]int{0: 4, 3: 1, 4: 0, 6: -2} {
		if w := WeekOf(p, worker(p), clock(day, 23, 59)); w.DaysLeft != want || !w.Dated {
			t.Errorf("on day %d: %d days left, want %d", day, w.DaysLeft, want)
		}
	}
}

func TestDaysBetweenCountsByTheCalendarOverAClockChange(t *testing.T) {
	zone, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Skip("no zone data: " + err.Error())
	}
	// The clocks go forward on 30 March 2031.
	a, b := time.Date(2031, 3, 29, 23, 0, 0, 0, zone), time.Date(2031, 3, 31, 1, 0, 0, 0, zone)
	if n := daysBetween(a, b); n != 2 {
		t.Errorf("%d days, want 2", n)
	}
}

func TestDaysShowCallsDeadlinesTodayAndRehearsal(t *testing.T) {
	p := small()
	p.Tasks[0].Due = clock(2, 12, 0)
	p.Orders = append(p.Orders, supplies.Order{ID: "o3", For: "red", Quantity: 1, State: supplies.Ordered, Expected: clock(1, 9, 0)})
	w := WeekOf(p, worker(p), clock(1, 12, 0))
	if len(w.Days) != 5 || !w.Days[1].Today || !w.Days[4].Rehearsal {
		t.Fatalf("%d days %+v", len(w.Days), w.Days)
	}
	if len(w.Days[0].Calls) != 0 || len(w.Days[1].Calls) == 0 {
		t.Errorf("calls of days 0 and 1: %v, %v; work that is not done is still to come", w.Days[0].Calls, w.Days[1].Calls)
	}
	what := func(d Day) (out []string) {
		for _, l := range d.Deadlines {
			out = append(out, l.What)
		}
		return out
	}
	if got := what(w.Days[2]); !slices.Contains(got, "Clean the floor due") {
		t.Errorf("deadlines of day 2 %v", got)
	}
	if got := what(w.Days[1]); !slices.Contains(got, "Red cloth expected") {
		t.Errorf("deadlines of day 1 %v", got)
	}
}

func TestTodayNamesEveryone(t *testing.T) {
	p := small()
	w := WeekOf(p, worker(p), clock(0, 9, 0))
	if len(w.Today) != 3 {
		t.Fatalf("%d people today, want the whole team", len(w.Today))
	}
	if ada := w.Today[0]; ada.Call == nil || !slices.Contains(ada.Tasks, "Place the marks") {
		t.Errorf("Ada's day %+v, want her placing marks", ada)
	}
	if cy := w.Today[2]; cy.Call != nil && slices.Contains(cy.Tasks, "Lay the tape") {
		t.Error("Cy cannot kneel and lays tape")
	}
}

func TestNoMoreThanThreeDangersWorstFirst(t *testing.T) {
	p := small()
	p.Floors[0].Rule = ""
	p.Floors[0].Treatments[0].Decided.By = ""
	p.Settings.BudgetCents = 1
	p.Tasks[0].Hours = 200
	w := WeekOf(p, worker(p), clock(0, 9, 0))
	if len(w.Dangers) != 3 || w.Dangers[0].Rule != RuleOwner || w.Dangers[1].Rule != RuleLate {
		t.Errorf("dangers %+v, want three, the owner first and then the lateness", w.Dangers)
	}
}

func TestMoneyAndHoursInWords(t *testing.T) {
	p := &Production{Settings: Settings{Currency: "$"}}
	for cents, want := range map[int]string{0: "$0.00", 5: "$0.05", 123456: "$1234.56", -250: "−$2.50"} {
		if got := p.Money(cents); got != want {
			t.Errorf("%d is %q, want %q", cents, got, want)
		}
	}
	for d, want := range map[time.Duration]string{2 * time.Hour: "2 h", 150 * time.Minute: "2 h 30", -5 * time.Minute: "0 h 05"} {
		if got := hours(d); got != want {
			t.Errorf("%v is %q, want %q", d, got, want)
		}
	}
}
