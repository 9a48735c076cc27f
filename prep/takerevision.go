package prep

import (
	"fmt"
	"slices"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plan/revision"
)

// TakeRevision takes over the accepted changes of a revision, by their indices:
// into the plan as revision.Apply does, and where an element is gone without its
// treatments, carries, stand-ins and notes. Levels that the drawing names and the plan
// has not are made. On an error nothing has changed.
func TakeRevision(p *Production, changes revision.Changes, accepted []int, newID func() string) error {
	var gone []plan.ElementID
	kept := slices.Clone(accepted)
	kept = slices.DeleteFunc(kept, func(i int) bool {
		if i < 0 || i >= len(changes) || changes[i].Outcome != revision.Gone {
			return false
		}
		gone = append(gone, changes[i].Before.ID)
		return true
	})
	for _, id := range gone {
		if p.Plan.Element(id) == nil {
			return fmt.Errorf("take over the revision: %w", revision.ErrStale)
		}
	}
	levels := len(p.Plan.Levels)
	changes = slices.Clone(changes)
	for _, i := range kept {
		if i >= 0 && i < len(changes) {
			changes[i].After.Level = p.SettleLevel(changes[i].After.Level, newID)
		}
	}
	paths := pathIDs(&p.Plan)
	if err := revision.Apply(&p.Plan, changes, kept); err != nil {
		p.Plan.Levels = p.Plan.Levels[:levels]
		return err
	}
	for _, id := range gone {
		p.RemoveElement(id)
	}
	left := pathIDs(&p.Plan)
	for id := range paths {
		if !left[id] {
			p.forget(string(id))
		}
	}
	return nil
}

func pathIDs(pl *plan.Plan) map[plan.PathID]bool {
	ids := map[plan.PathID]bool{}
	for _, e := range pl.Elements {
		for _, path := range e.Paths {
			ids[path.ID] = true
		}
	}
	return ids
}
