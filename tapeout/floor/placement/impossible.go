package placement

import (
	"context"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// Give is one requirement that would have to give way for a placement to be
// possible.
type Give struct {
	What    Gives
	Element plan.ElementID // of WholeElement
	Name    string         // of an area or an obstacle
}

// Gives is a sort of requirement that can give way.
type Gives string

// What can give way.
const (
	WholeElement Gives = "that the element is whole"
	ClearArea    Gives = "that the area stays clear"
	ObstacleAway Gives = "that the obstacle stays where it is"
	FrontSides   Gives = "which sides may be the front"
	TurnRule     Gives = "how the plan may be turned"
)

// feasible bounds the work of one trial.
const feasible = 3_000_000

// possible tells whether a hunt has found a placement that keeps what must be whole
// and anything at all.
func (h *hunt) possible() bool { return h.found && h.best.score > 1e-9 }

// WhatGives says, for a case of which a search has proposed nothing, what would have
// to give. Every requirement is dropped alone, and each of those without which there
// is a placement is named: any one of them is enough. When none alone is enough,
// alone is false, and the elements are named that are not whole where the least of
// what must be whole is lost, which together are enough; nothing is named when even
// that was not found.
func (c *Case) WhatGives(ctx context.Context) (give []Give, alone bool) {
	for _, r := range c.relaxations() {
		if ctx.Err() != nil {
			return give, true
		}
		if possibleOn(ctx, c.plan, r.floor) {
			give = append(give, r.Give)
		}
	}
	if len(give) > 0 {
		return give, true
	}
	h := c.start(turns(c.floor), 1)
	h.run(ctx, feasible, nil)
	if h.boxes == 0 {
		return nil, false
	}
	for _, b := range c.At(c.motion(h.near)).Breaches {
		if b.Need == Whole {
			give = append(give, Give{What: WholeElement, Element: b.Element})
		}
	}
	return give, false
}

func possibleOn(ctx context.Context, pl *plan.Plan, f *floor.Floor) bool {
	c, err := New(pl, f)
	if err != nil {
		return false
	}
	h := c.start(turns(f), 1)
	h.run(ctx, feasible, nil)
	return h.possible()
}

// relaxed is a floor with one requirement dropped.
type relaxed struct {
	Give
	floor *floor.Floor
}

func (c *Case) relaxations() []relaxed {
	var out []relaxed
	add := func(g Give, change func(*floor.Floor)) {
		f := *c.floor
		change(&f)
		out = append(out, relaxed{g, &f})
	}
	if len(c.floor.Fronts) > 0 {
		add(Give{What: FrontSides}, func(f *floor.Floor) { f.Fronts = nil })
	}
	if c.floor.Wishes.Angles != floor.AnyAngle {
		add(Give{What: TurnRule}, func(f *floor.Floor) { f.Wishes.Angles = floor.AnyAngle })
	}
	for i, k := range c.floor.KeepClears {
		add(Give{What: ClearArea, Name: k.Name}, func(f *floor.Floor) {
			f.KeepClears = slices.Delete(slices.Clone(f.KeepClears), i, i+1)
		})
	}
	for i, o := range c.floor.Obstacles {
		add(Give{What: ObstacleAway, Name: o.Name}, func(f *floor.Floor) {
			f.Obstacles = slices.Delete(slices.Clone(f.Obstacles), i, i+1)
		})
	}
	for i := range c.items {
		if it := &c.items[i]; it.whole {
			add(Give{What: WholeElement, Element: it.id}, func(f *floor.Floor) {
				f.Treatments = cutShort(f.Treatments, it.id)
			})
		}
	}
	return out
}

func cutShort(list []floor.Treatment, id plan.ElementID) []floor.Treatment {
	out := slices.DeleteFunc(slices.Clone(list), func(t floor.Treatment) bool { return t.Element == id })
	return append(out, floor.Treatment{Element: id, How: floor.CutShort})
}
