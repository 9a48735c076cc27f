package floor

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Beside returns the smallest offset in plan axes, in whole steps of metres, by
// which the elements together come to lie free: the box around them inside the
// walls, and on no obstacle, area to keep clear, swing of a door, line or platform of another element
// that the floor lays. ok is false when no offset within the room does, or the room has
// not been measured, or the elements have no lines.
//
// It tries every offset of the grid that keeps the middle of the box in the room,
// the nearest first; the box is that along the plan's axes, so that it can call
// taken what a slanted shape would leave free, and never the other way round.
func (f *Floor) Beside(pl *plan.Plan, ids []plan.ElementID, step, within float64) (over, up float64, ok bool) {
	box, has := BoxAbout(pl, ids)
	if !has || len(f.Outline.Vertices) == 0 || !(step > 0) {
		return 0, 0, false
	}
	toPlan := f.Placement.Inverse()
	outline := f.Outline.Moved(toPlan)
	room, _ := outline.Bounds()
	var taken []plane.Path
	for _, o := range f.Obstacles {
		taken = append(taken, o.Shape.Moved(toPlan))
	}
	for _, k := range f.Clears() {
		taken = append(taken, k.Shape.Moved(toPlan))
	}
	var others []plane.Edge
	fromDatum := f.PlanToDatum().Inverse()
	for _, l := range f.Lines(pl) {
		if !slices.Contains(ids, l.Element) {
			others = append(others, l.Edge.Moved(fromDatum))
		}
	}
	for i := range pl.Elements {
		if e := &pl.Elements[i]; e.Kind.Area() && !slices.Contains(ids, e.ID) {
			taken = append(taken, f.areas(pl, e, fromDatum)...)
		}
	}
	way := newWayClear(outline, taken, others)
	for _, d := range offsets(box, room, step, within) {
		if way.isFree(plane.Box{Min: box.Min.Add(d), Max: box.Max.Add(d)}) {
			return d.X, d.Y, true
		}
	}
	return 0, 0, false
}

// areas are the closed outlines of the element where the floor lays it, after the
// motion.
func (f *Floor) areas(pl *plan.Plan, e *plan.Element, then plane.Motion) []plane.Path {
	t := f.Decide(e)
	if t.How == LeftOut {
		return nil
	}
	var out []plane.Path
	for _, s := range pl.Standings(e) {
		for _, path := range e.Paths {
			if path.Closed && path.Role == plan.Outline {
				out = append(out, path.Path.Moved(f.motion(t, s.Motion).Then(then)))
			}
		}
	}
	return out
}

// BoxAbout is the box around the elements in all their positions, in plan axes.
func BoxAbout(pl *plan.Plan, ids []plan.ElementID) (box plane.Box, ok bool) {
	for _, id := range ids {
		e := pl.Element(id)
		if e == nil {
			continue
		}
		for _, s := range pl.Standings(e) {
			b, has := plan.BoundsOf(e.Paths, s.Motion)
			switch {
			case !has:
			case !ok:
				box, ok = b, true
			default:
				box = box.Union(b)
			}
		}
	}
	return box, ok
}

// offsets are the steps of the grid, no longer than within, that keep the middle of
// the box in the room, the nearest first; those of one distance are in a fixed order.
func offsets(box, room plane.Box, step, within float64) []plane.Point {
	const most = 1000 // steps each way: no room is so large that more would be wanted
	c := box.Centre()
	steps := func(low, high float64) (from, to int) {
		low, high = max(low, -within), min(high, within)
		return int(max(math.Ceil(low/step), -most)), int(min(math.Floor(high/step), most))
	}
	x0, x1 := steps(room.Min.X-c.X, room.Max.X-c.X)
	y0, y1 := steps(room.Min.Y-c.Y, room.Max.Y-c.Y)
	var out []plane.Point
	for x := x0; x <= x1; x++ {
		for y := y0; y <= y1; y++ {
			if d := (plane.Point{X: float64(x) * step, Y: float64(y) * step}); d.Len() <= within {
				out = append(out, d)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b plane.Point) int { return cmp.Compare(a.Len(), b.Len()) })
	return out
}

// wayClear is what a box must keep clear of, with the bounds of everything, which
// spare nearly all of the looking.
type wayClear struct {
	outline plane.Path
	walls   []plane.Edge
	taken   []plane.Path
	others  []plane.Edge
	bounds  [3][]plane.Box // of walls, taken and others
}

func newWayClear(outline plane.Path, taken []plane.Path, others []plane.Edge) wayClear {
	w := wayClear{outline: outline, walls: outline.Edges(), taken: taken, others: others}
	for _, e := range w.walls {
		w.bounds[0] = append(w.bounds[0], e.Bounds())
	}
	for _, shape := range taken {
		b, _ := shape.Bounds()
		w.bounds[1] = append(w.bounds[1], b)
	}
	for _, e := range others {
		w.bounds[2] = append(w.bounds[2], e.Bounds())
	}
	return w
}

// isFree tells whether the box lies inside the outline and meets nothing taken.
func (w wayClear) isFree(box plane.Box) bool {
	path := plane.Rectangle(box.Min, box.Max)
	for _, p := range path.Points() {
		if !w.outline.Contains(p, tight) {
			return false
		}
	}
	for i, b := range w.bounds[1] {
		if b.Meets(box) && plane.Overlap(w.taken[i], path) > tight {
			return false
		}
	}
	for k, edges := range [][]plane.Edge{w.walls, w.others} {
		for i, b := range w.bounds[2*k] {
			if b.Meets(box) && crossesInside(edges[i], box, path) {
				return false
			}
		}
	}
	return true
}

// crossesInside tells whether some of the edge lies in the box and not only along
// its sides.
func crossesInside(e plane.Edge, box plane.Box, path plane.Path) bool {
	inside, _ := plane.Clip(e, path, tight)
	return slices.ContainsFunc(inside, func(piece plane.Edge) bool {
		m := piece.At(0.5)
		return min(m.X-box.Min.X, box.Max.X-m.X, m.Y-box.Min.Y, box.Max.Y-m.Y) > tight
	})
}
