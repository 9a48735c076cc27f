package prep

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// DanceReach is how far a dance line can run to either side of centre.
type DanceReach string

// Reaches of a dance line.
const (
	ToProscenium DanceReach = "to the proscenium"
	ToWings      DanceReach = "to the wings"
)

// ReachOf returns how far from centre, in metres, the plan on a floor leaves free: to
// the opening of the proscenium, or to the side walls and masking beyond it, on the
// narrower side. ok is false when the plan has none on both sides.
func ReachOf(p *Production, f *floor.Floor, to DanceReach) (reach float64, ok bool) {
	left, right := math.Inf(1), math.Inf(1)
	m := f.PlanToDatum()
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		proscenium := e.Kind == plan.Proscenium
		wings := e.Kind == plan.SideWall || e.Kind == plan.Masking
		if to == ToProscenium && !proscenium || to == ToWings && !wings {
			continue
		}
		for _, path := range e.Paths {
			l, r := clearOfCentre(path.Path.Moved(m))
			left, right = min(left, l), min(right, r)
		}
	}
	reach = min(left, right)
	return reach, !math.IsInf(max(left, right), 1)
}

// clearOfCentre returns how near to the centre line a path comes on either side; what
// crosses the centre line, a beam or a border, stands in nobody's way.
func clearOfCentre(path plane.Path) (left, right float64) {
	left, right = math.Inf(1), math.Inf(1)
	box, ok := path.Bounds()
	switch {
	case !ok:
	case box.Min.X > 0:
		left = box.Min.X
	case box.Max.X < 0:
		right = -box.Max.X
	}
	return left, right
}
