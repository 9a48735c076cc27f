package revision

import (
	"errors"
	"fmt"
	"slices"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// ErrStale is returned when the plan is no longer the one that was compared.
var ErrStale = errors.New("the plan has changed since it was compared; compare it again")

// Apply takes over the accepted changes, by their indices, into the plan. An
// element that was there keeps its identifier and all that the team has decided
// about it: name, kind, use, tape, level, note, what it rides and where it stands
// scene by scene. It takes its lines from the new drawing, and those paths that
// have a successor keep their identifiers. One that is gone leaves the plan with
// its carries, and what rode it rides nothing. A new one is added at the end.
//
// Accepting an unchanged element changes nothing. On an error the plan is as it
// was.
func Apply(p *plan.Plan, changes Changes, accepted []int) error {
	order := slices.Clone(accepted)
	slices.Sort(order)
	order = slices.Compact(order)
	if err := applicable(p, changes, order); err != nil {
		return fmt.Errorf("take over the revision: %w", err)
	}
	for _, i := range order {
		c := &changes[i]
		switch c.Outcome {
		case Gone:
			remove(p, c.Before.ID)
		case New:
			p.Elements = append(p.Elements, clone(c.After))
		case Moved, Reshaped:
			e := p.Element(c.Before.ID)
			e.Paths = succeed(e.Paths, c)
		}
	}
	return nil
}

// applicable tells whether all of the changes can be made.
func applicable(p *plan.Plan, changes Changes, order []int) error {
	added := map[plan.ElementID]bool{}
	for _, i := range order {
		if i < 0 || i >= len(changes) {
			return fmt.Errorf("there is no change number %d", i+1)
		}
		c := &changes[i]
		if c.Outcome != New {
			if p.Element(c.Before.ID) == nil {
				return fmt.Errorf("%s: %w", c.Name(), ErrStale)
			}
			continue
		}
		id := c.After.ID
		if id == "" {
			return fmt.Errorf("%s has no identifier", c.Name())
		}
		if p.Element(id) != nil || added[id] {
			return fmt.Errorf("%s is in the plan already: %w", c.Name(), ErrStale)
		}
		added[id] = true
	}
	return nil
}

func remove(p *plan.Plan, id plan.ElementID) {
	p.Elements = slices.DeleteFunc(p.Elements, func(e plan.Element) bool { return e.ID == id })
	p.Carries = slices.DeleteFunc(p.Carries, func(c plan.Carry) bool { return c.Carrier == id })
	for i := range p.Elements {
		if p.Elements[i].Rides == id {
			p.Elements[i].Rides = ""
		}
	}
}

func clone(e plan.Element) plan.Element {
	e.Paths = clonePaths(e.Paths)
	e.Stands = slices.Clone(e.Stands)
	return e
}

func clonePaths(paths []plan.Path) []plan.Path {
	out := slices.Clone(paths)
	for i := range out {
		out[i].Vertices = slices.Clone(out[i].Vertices)
	}
	return out
}

// succeed returns the new paths of a changed element. Each old path hands its
// identifier to the new one of its role that lies nearest to where the motion
// takes it, the old ones in their order.
func succeed(old []plan.Path, c *Change) []plan.Path {
	out := clonePaths(c.After.Paths)
	heir := make([]bool, len(out))
	for _, path := range old {
		best, least := -1, 0.0
		for j := range out {
			if heir[j] || out[j].Role != path.Role {
				continue
			}
			if d := pathsApart(path.Path.Moved(c.Motion), out[j].Path); best < 0 || d < least {
				best, least = j, d
			}
		}
		if best >= 0 {
			out[best].ID, heir[best] = path.ID, true
		}
	}
	return out
}

// pathsApart returns how far the boxes around two paths are from being one, in
// metres.
func pathsApart(a, b plane.Path) float64 {
	p, _ := a.Bounds()
	q, _ := b.Bounds()
	return p.Min.To(q.Min) + p.Max.To(q.Max)
}
