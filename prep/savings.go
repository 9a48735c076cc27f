package prep

import (
	"slices"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// Saving is one thing that could be given up, and what that would save. Both
// figures come from working out the whole purchase again without it, so that a
// saving that leaves as many rolls to buy says that it saves no money.
type Saving struct {
	Name   string
	Metres float64 // tape not laid, with what wears and is wasted
	Cents  int     // not spent on what is still to be bought
	Loses  int     // elements that are laid otherwise; zero when none is
}

// change is a saving not yet weighed: it edits a copy of the production and says
// how many elements it lays otherwise.
type change struct {
	name string
	edit func(*Production) (loses int)
}

// givingUp holds what a production manager would think of first, what actors miss least
// before what they miss more: common practice, no source.
var givingUp = []change{
	{"Leave out what no actor uses", func(p *Production) int {
		return treat(p, floor.LeftOut, func(e *plan.Element) bool { return e.Use == plan.Seen })
	}},
	{"Leave out escape stairs", func(p *Production) int {
		return treat(p, floor.LeftOut, func(e *plan.Element) bool { return e.Kind == plan.EscapeStair && e.Use != plan.Danced })
	}},
	{"Lay masking not at all", func(p *Production) int {
		return treat(p, floor.LeftOut, func(e *plan.Element) bool { return e.Kind == plan.Masking })
	}},
	{"Lay stairs in outline only, unless they are danced on", func(p *Production) int {
		return treat(p, floor.OutlineOnly, func(e *plan.Element) bool { return e.Kind == plan.Stair && e.Use != plan.Danced })
	}},
	{"Set only objects for what is merely useful", func(p *Production) int {
		return treat(p, floor.ObjectOnly, func(e *plan.Element) bool { return e.Use == plan.Useful && !e.Kind.House() })
	}},
	{"Do not tape the dance line", func(p *Production) int {
		for _, d := range p.DanceLines { // a removal makes a new list
			if f := p.Floor(d.Floor); f != nil && f.Kind != floor.Stage {
				p.RemoveDanceLine(d.ID)
			}
		}
		return 0
	}},
	{"Repair the floor for one week less", func(p *Production) int {
		p.Settings.Allowances.Weeks = max(0, p.Settings.Allowances.Weeks-1)
		return 0
	}},
	{"Put no patches on corners", func(p *Production) int {
		p.Settings.Allowances.Patch = 0
		return 0
	}},
}

// Savings returns what could be given up on the rehearsal floors, most money
// first and then most tape. Options that save no tape are left out. Only what is
// laid as drawn or in outline is touched: what somebody has already decided on
// otherwise stays.
func Savings(p *Production) []Saving {
	base := spend(p)
	var out []Saving
	for _, c := range givingUp {
		q := draft(p)
		loses := c.edit(&q)
		with := spend(&q)
		s := Saving{Name: c.name, Metres: base.metres - with.metres, Cents: base.cents - with.cents, Loses: loses}
		if s.Metres > 1e-6 {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b Saving) int {
		switch {
		case a.Cents != b.Cents:
			return b.Cents - a.Cents
		case a.Metres > b.Metres:
			return -1
		case a.Metres < b.Metres:
			return 1
		}
		return 0
	})
	return out
}

// GiveUp makes the change that the saving was weighed with, as one step of an
// edit; ok is false when there is no saving of that name. What is laid otherwise
// for it says why, and waits for somebody to decide.
func GiveUp(p *Production, name string) (ok bool) {
	i := slices.IndexFunc(givingUp, func(c change) bool { return c.name == name })
	if i < 0 {
		return false
	}
	givingUp[i].edit(p)
	return true
}

// draft returns a copy whose treatments can be changed without touching p.
func draft(p *Production) Production {
	q := *p
	q.Floors = slices.Clone(p.Floors)
	for i := range q.Floors {
		q.Floors[i].Treatments = slices.Clone(q.Floors[i].Treatments)
	}
	return q
}

// toSave is the reason that stands beside what is given up.
const toSave = "to save tape"

// treat lays the elements otherwise on every rehearsal floor and returns how
// many that changes.
func treat(p *Production, how floor.How, which func(*plan.Element) bool) int {
	changed := map[plan.ElementID]bool{}
	for i := range p.Floors {
		f := &p.Floors[i]
		if f.Kind == floor.Stage {
			continue
		}
		for k := range p.Plan.Elements {
			e := &p.Plan.Elements[k]
			now := f.Decide(e).How
			if !which(e) || now == how || now != floor.AsDrawn && now != floor.OutlineOnly {
				continue
			}
			f.Treatments = slices.DeleteFunc(f.Treatments, func(t floor.Treatment) bool { return t.Element == e.ID })
			f.Treatments = append(f.Treatments, floor.Treatment{Element: e.ID, How: how, Reason: toSave})
			changed[e.ID] = true
		}
	}
	return len(changed)
}

type spending struct {
	metres float64
	cents  int
}

func spend(p *Production) spending {
	var floors []*FloorWork
	for i := range p.Floors {
		floors = append(floors, Work(p, p.Floors[i].ID, ""))
	}
	return spentOn(p, floors)
}

// spentOn is what the floors take together.
func spentOn(p *Production, floors []*FloorWork) spending {
	var s spending
	for _, r := range purchase(p, floors) {
		s.metres += r.Total
		s.cents += r.Cents
	}
	return s
}

// BudgetOf sets what tape and kit cost against the production's budget.
func BudgetOf(p *Production, works func(floor.ID) *FloorWork) supplies.Budget {
	j := &job{p: p, floors: floorWorks(p, works)}
	j.shop()
	return j.budget
}
