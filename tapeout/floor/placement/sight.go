package placement

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// FrontTable is the kind of the area to keep clear from which sight counts.
const FrontTable = "front table"

// findTable finds the middle of the front table and what it sees of the floor.
func (c *Case) findTable() {
	for _, k := range c.floor.KeepClears {
		if k.Kind != FrontTable {
			continue
		}
		at, ok := k.Shape.Centroid()
		if !ok || !c.floor.Outline.Contains(at, 0) || c.onObstacle(at) {
			continue
		}
		c.table, c.hasTable = at, true
		c.sight = c.seenFrom(at)
		return
	}
}

func (c *Case) onObstacle(p plane.Point) bool {
	for _, o := range c.floor.Obstacles {
		if o.Shape.Contains(p, touch) {
			return true
		}
	}
	return false
}

// seenFrom returns the floor that can be seen from a point in straight lines past
// walls and obstacles: where rays to every corner, and a hair to either side of
// it, first meet something. Curves are taken as chords within a millimetre.
func (c *Case) seenFrom(at plane.Point) plane.Path {
	rings := []ring{ringOf(c.floor.Outline)}
	for _, o := range c.floor.Obstacles {
		rings = append(rings, ringOf(o.Shape))
	}
	const hair = 1e-7 // radians
	var ways []float64
	for _, r := range rings {
		for _, e := range r.edges {
			way := plane.Point{X: e.ax, Y: e.ay}.Sub(at).Angle()
			ways = append(ways, way-hair, way, way+hair)
		}
	}
	slices.Sort(ways)
	var seen []plane.Point
	for _, way := range ways {
		if d, ok := firstMet(rings, at, way); ok {
			seen = append(seen, at.Add(plane.Polar(d, way)))
		}
	}
	return plane.Closed(seen...)
}

// firstMet is how far a ray goes before it meets a side.
func firstMet(rings []ring, at plane.Point, way float64) (float64, bool) {
	dir := plane.Polar(1, way)
	best := math.Inf(1)
	for _, r := range rings {
		for _, e := range r.edges {
			d := plane.Point{X: e.dx, Y: e.dy}
			across := dir.Cross(d)
			if math.Abs(across) < 1e-12 {
				continue
			}
			to := plane.Point{X: e.ax, Y: e.ay}.Sub(at)
			along, part := to.Cross(d)/across, to.Cross(dir)/across
			if along > 0 && part >= -1e-9 && part <= 1+1e-9 {
				best = min(best, along)
			}
		}
	}
	return best, !math.IsInf(best, 1)
}
