package prep

import (
	"time"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
)

// job is a production with what follows from it over all its floors: the purse,
// the crew plan and the stand-ins.
type job struct {
	p      *Production
	now    time.Time
	floors []*FloorWork // in the floors' order
	buy    []supplies.Run
	needs  []supplies.Need
	budget supplies.Budget
	crew   CrewPlan
}

func newJob(p *Production, works func(floor.ID) *FloorWork, now time.Time) *job {
	j := &job{p: p, now: now, floors: floorWorks(p, works)}
	j.shop()
	j.crew = Schedule(p, QuantitiesOf(p, works), now)
	return j
}

// shop works out what must be bought.
func (j *job) shop() {
	j.buy = purchase(j.p, j.floors)
	j.needs = kitNeeds(j.p, j.floors)
	j.budget = supplies.BudgetOf(j.buy, j.needs, j.p.Stocks, j.p.Orders, j.p.Settings.BudgetCents)
}

func floorWorks(p *Production, works func(floor.ID) *FloorWork) []*FloorWork {
	var out []*FloorWork
	for i := range p.Floors {
		if w := works(p.Floors[i].ID); w != nil {
			out = append(out, w)
		}
	}
	return out
}
