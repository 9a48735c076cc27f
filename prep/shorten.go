package prep

import (
	"fmt"
	"slices"
	"time"
)

// Shorter is one thing that would end work earlier, and the end that it leads
// to. It comes from planning everything again with that one thing changed.
type Shorter struct {
	Name string
	End  time.Time
	Gain time.Duration // by the clock, nights and breaks included
}

// Shorten returns what would end work earlier, the most helpful first: a helper
// more, an hour more in the room, each pinned task let go. What does not help is
// left out. The arguments are those of Schedule.
func Shorten(p *Production, q TaskQuantities, from time.Time) []Shorter {
	now := Schedule(p, q, from)
	var out []Shorter
	try := func(name string, edit func(*Production)) {
		with := *p
		edit(&with)
		then := Schedule(&with, q, from)
		if gain := now.End.Sub(then.End); gain > 0 {
			out = append(out, Shorter{Name: name, End: then.End, Gain: gain})
		}
	}
	try("One more person who can lay tape", func(w *Production) { addHands(w, 1) })
	try("Two more people who can lay tape", func(w *Production) { addHands(w, 2) })
	try("Open the room an hour earlier", func(w *Production) { w.Settings.Rates.DayStart-- })
	try("Stay in the room an hour longer", func(w *Production) { w.Settings.Rates.DayEnd++ })
	for i, t := range p.Tasks {
		if t.Done || t.Pinned.IsZero() {
			continue
		}
		try(fmt.Sprintf("Let %q begin when it can", t.Name), func(w *Production) {
			w.Tasks = slices.Clone(w.Tasks)
			w.Tasks[i].Pinned = time.Time{}
		})
	}
	slices.SortStableFunc(out, func(a, b Shorter) int { return a.End.Compare(b.End) })
	return out
}

// addHands adds helpers and lets the counted tasks have them: a task that asks
// for two hands would be no shorter for a third person standing by.
func addHands(p *Production, n int) {
	p.People = slices.Clone(p.People)
	for i := range n {
		p.People = append(p.People, Person{ID: fmt.Sprint("helper ", i+1), Name: "Helper", Hands: true})
	}
	p.Tasks = slices.Clone(p.Tasks)
	for i := range p.Tasks {
		if t := &p.Tasks[i]; t.Count != ByHours && t.Count != "" {
			t.Hands = max(1, t.Hands) + n
		}
	}
}

// Sentence says in words why a task begins no earlier.
func (l Limit) Sentence(p *Production) string {
	name := p.taskName(l.Task)
	switch l.Why {
	case WaitsForTask:
		return fmt.Sprintf("%s waits until %s has ended.", name, p.taskName(l.By))
	case WaitsForPerson:
		return fmt.Sprintf("%s waits until %s is free.", name, p.personName(l.By))
	case WaitsForStock:
		return fmt.Sprintf("%s waits for the delivery of %s.", name, p.supplyName(l.By))
	case WaitsForDay:
		return fmt.Sprintf("%s may not begin earlier.", name)
	case IsPinned:
		return fmt.Sprintf("%s is pinned to its time.", name)
	}
	return fmt.Sprintf("%s begins as soon as work begins.", name)
}

func (p *Production) taskName(id string) string {
	for _, t := range p.Tasks {
		if t.ID == id {
			return t.Name
		}
	}
	return id
}
