package prep

import (
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"
)

func TestWhatWouldShortenTheWork(t *testing.T) {
	tape := Task{ID: "t", Name: "Lay the tape", Count: ByTape, Floor: "room", Hands: 1}
	late := Task{ID: "l", Name: "Walk the floor", Count: ByHours, Hours: 1, Hands: 1, After: []string{"t"}, Pinned: clock(3, 16, 0)}
	q := TaskQuantities{"room": {Tape: 600}}
	for name, c := range map[string]struct {
		p    *Production
		want string
		end  time.Time
	}{
		// 600 m at 60 m an hour are ten hours for one, five for two.
		"one more person": {planned(1, tape), "One more person who can lay tape", clock(0, 15, 15)},
		"an hour earlier": {planned(1, tape), "Open the room an hour earlier", clock(1, 10, 45)},
		"an hour longer":  {planned(1, tape), "Stay in the room an hour longer", clock(1, 11, 45)},
		"a pinned task":   {planned(1, tape, late), `Let "Walk the floor" begin when it can`, clock(1, 13, 45)},
	} {
		t.Run(name, func(t *testing.T) {
			all := Shorten(c.p, q, time.Time{})
			i := slices.IndexFunc(all, func(s Shorter) bool { return s.Name == c.want })
			if i < 0 || !all[i].End.Equal(c.end) || all[i].Gain <= 0 {
				t.Errorf("%+v, want %q ending %v", all, c.want, c.end)
			}
		})
	}
}

func TestNothingShortensWhatMustWait(t *testing.T) {
	p := planned(2, Task{ID: "a", Name: "a", Count: ByHours, Hours: 1, Hands: 1, Earliest: clock(1, 10, 0)})
	want := planned(2, p.Tasks...)
	if all := Shorten(p, nil, time.Time{}); len(all) != 0 {
		t.Errorf("%+v, want nothing", all)
	}
	if !reflect.DeepEqual(p, want) {
		t.Error("the production was changed")
	}
}

func TestLimitsInWords(t *testing.T) {
	p := planned(1, typedTask("a", 1), typedTask("b", 1, "a"), typedTask("c", 1), Task{ID: "d", Name: "d", Hours: 1, Pinned: clock(2, 10, 0)},
		Task{ID: "e", Name: "e", Hours: 1, Earliest: clock(1, 10, 0)})
	for want, l := range map[string]Limit{
		"b waits until a has ended.":          {Task: "b", Why: WaitsForTask, By: "a"},
		"c waits until Person 0 is free.":     {Task: "c", Why: WaitsForPerson, By: "p0"},
		"d is pinned to its time.":            {Task: "d", Why: IsPinned},
		"e may not begin earlier.":            {Task: "e", Why: WaitsForDay},
		"a begins as soon as work begins.":    {Task: "a", Why: IsFirst},
		"gone begins as soon as work begins.": {Task: "gone"},
	} {
		if got := l.Sentence(p); got != want {
			t.Errorf("says %q, want %q", got, want)
		}
	}
	for _, l := range Schedule(p, nil, time.Time{}).Limits {
		if s := l.Sentence(p); !strings.HasPrefix(s, "d ") || l.Why != IsPinned {
			t.Errorf("limit %+v says %q, want the pinned task that ends last", l, s)
		}
	}
}
