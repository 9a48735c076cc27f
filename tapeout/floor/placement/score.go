package placement

import (
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Kept is what one placement keeps of the plan, computed exactly.
type Kept struct {
	Placement plane.Motion // plan axes to floor axes
	Score     float64      // as the package says; 1 keeps everything
	Lines     Share        // metres, each times the worth of its element
	Area      Share        // square metres likewise
	Sight     Share        // metres likewise
	Losses    []Loss       // the elements of which something is lost, in plan order
	Breaches  []Breach     // the requirements that it does not keep
}

// Share is how much of something is kept. Of is zero when there is nothing of it.
type Share struct{ Kept, Of float64 }

// Part is the share as a number from 0 to 1; 1 when there is nothing to keep.
func (s Share) Part() float64 {
	if s.Of == 0 {
		return 1
	}
	return s.Kept / s.Of
}

// Loss is what of one element is off the free floor.
type Loss struct {
	Element      plan.ElementID
	Length, Of   float64 // metres of its lines lost, and in all
	Area, AreaOf float64 // square metres of playing area likewise
	Why          []Why   // where the lost lines lie
}

// Why says where some of the lost lines lie.
type Why struct {
	Cause  Cause
	Name   string // of the obstacle or the area; empty beyond the walls
	Length float64
}

// Cause is what keeps a line from being laid.
type Cause string

// The causes.
const (
	BeyondWalls Cause = "beyond the walls"
	OnObstacle  Cause = "on an obstacle"
	OnClear     Cause = "on an area that must stay clear"
)

// Breach is a requirement that a placement does not keep.
type Breach struct {
	Need    Need
	Element plan.ElementID // of Whole
	Name    string         // of the obstacle or area inside its outline, if that is what is wrong
}

// Need is a requirement.
type Need string

// The requirements.
const (
	Whole     Need = "an element that must be whole is not"
	RightTurn Need = "the turn is none that the rule allows"
	RightSide Need = "its front looks to no side that may be the front"
)

// OK tells whether the placement keeps to everything that is required.
func (k Kept) OK() bool { return len(k.Breaches) == 0 }

// At scores one placement. It takes about a millisecond.
func (c *Case) At(m plane.Motion) Kept {
	k := Kept{Placement: m, Breaches: c.turnBreaches(m.Turn)}
	for i := range c.items {
		l := c.lossOf(&c.items[i], m, &k)
		if l.Length > touch || l.Area > 1e-6 {
			k.Losses = append(k.Losses, l)
		}
		if b, broken := c.breach(&c.items[i], l, m); broken {
			k.Breaches = append(k.Breaches, b)
		}
	}
	w := c.worth
	k.Score = w.lineW*k.Lines.Part() + w.areaW*k.Area.Part() + w.sightWorth*k.Sight.Part()
	if w.sightWorth == 0 {
		k.Sight = Share{}
	}
	return k
}

func (c *Case) turnBreaches(turn float64) []Breach {
	var out []Breach
	if !turnAllowed(c.floor, turn) {
		out = append(out, Breach{Need: RightTurn})
	}
	if !facing(c.floor, turn) {
		out = append(out, Breach{Need: RightSide})
	}
	return out
}

// lossOf measures one item and adds it to the sums.
func (c *Case) lossOf(it *item, m plane.Motion, k *Kept) Loss {
	l := Loss{Element: it.id}
	for _, e := range it.lines {
		on := c.clip(e.Moved(m), &l)
		kept := lengthOf(on)
		k.Lines.Kept += it.worth * kept
		k.Lines.Of += it.worth * e.Length()
		l.Of += e.Length()
		if c.worth.sightWorth > 0 {
			k.Sight.Kept += it.worth * lengthOf(c.inSight(on, m))
			k.Sight.Of += it.worth * e.Length()
		}
	}
	for _, a := range it.areas {
		all := a.Area()
		kept := min(plane.FreeArea(a.Moved(m), c.floor.Outline, blocked(c.floor)), all)
		k.Area.Kept += it.worth * kept
		k.Area.Of += it.worth * all
		l.AreaOf += all
		l.Area += all - kept
	}
	return l
}

// clip returns the pieces of an edge that lie on the free floor and notes why others
// do not.
func (c *Case) clip(e plane.Edge, l *Loss) []plane.Edge {
	if c.clear(e) {
		return []plane.Edge{e}
	}
	on, off := plane.Clip(e, c.floor.Outline, touch)
	l.note(BeyondWalls, "", off)
	for _, o := range c.floor.Obstacles {
		on, off = cutAway(on, o.Shape)
		l.note(OnObstacle, o.Name, off)
	}
	for _, k := range c.floor.KeepClears {
		on, off = cutAway(on, k.Shape)
		l.note(OnClear, k.Name, off)
	}
	return on
}

// clear tells from the field alone that an edge is free.
func (c *Case) clear(e plane.Edge) bool {
	b := e.Bounds()
	mid := b.Centre()
	lo, _ := c.free.about(mid.X, mid.Y)
	return lo > b.Min.To(mid)+2*chord
}

func cutAway(edges []plane.Edge, shape plane.Path) (rest, off []plane.Edge) {
	box, ok := shape.Bounds()
	for _, e := range edges {
		if !ok || !box.Grow(touch).Meets(e.Bounds()) {
			rest = append(rest, e)
			continue
		}
		in, out := plane.Clip(e, shape, touch)
		rest, off = append(rest, out...), append(off, in...)
	}
	return rest, off
}

func lengthOf(edges []plane.Edge) float64 {
	sum := 0.0
	for _, e := range edges {
		sum += e.Length()
	}
	return sum
}

func (l *Loss) note(cause Cause, name string, off []plane.Edge) {
	n := lengthOf(off)
	if n == 0 {
		return
	}
	l.Length += n
	i := slices.IndexFunc(l.Why, func(w Why) bool { return w.Cause == cause && w.Name == name })
	if i < 0 {
		l.Why = append(l.Why, Why{Cause: cause, Name: name})
		i = len(l.Why) - 1
	}
	l.Why[i].Length += n
}

// inSight returns what the front table sees of some edges on the free floor.
func (c *Case) inSight(edges []plane.Edge, m plane.Motion) []plane.Edge {
	up := m.Rotate(plane.Point{Y: 1})
	var out []plane.Edge
	for _, e := range edges {
		in, _ := plane.Clip(e, c.sight, touch)
		for _, piece := range in {
			out = append(out, upstageOf(piece, c.table, up, c.radius+c.free.box.Width()+c.free.box.Height())...)
		}
	}
	return out
}

// upstageOf returns what of an edge lies on one side of a line through a point: in a
// square large enough to hold all that matters.
func upstageOf(e plane.Edge, at, up plane.Point, far float64) []plane.Edge {
	turn := plane.Motion{Turn: up.Angle() - math.Pi/2, Shift: at}
	half := plane.Rectangle(plane.Point{X: -2 * far}, plane.Point{X: 2 * far, Y: 2 * far}).Moved(turn)
	in, _ := plane.Clip(e, half, touch)
	return in
}

// breach tells whether an item that must be whole is not.
func (c *Case) breach(it *item, l Loss, m plane.Motion) (Breach, bool) {
	if !it.whole {
		return Breach{}, false
	}
	b := Breach{Need: Whole, Element: it.id}
	if l.Length > touch {
		return b, true
	}
	for _, s := range it.solid {
		moved := s.Moved(m)
		name, inside := inWay(moved, c.floor)
		if inside {
			b.Name = name
			return b, true
		}
	}
	return b, false
}

// inWay names an obstacle or an area to keep clear that lies inside a shape whose
// outline is free of it.
func inWay(shape plane.Path, f *floor.Floor) (string, bool) {
	holds := func(p plane.Path) bool {
		return len(p.Vertices) > 0 && shape.Contains(p.Vertices[0].Point, 0)
	}
	for _, o := range f.Obstacles {
		if holds(o.Shape) {
			return o.Name, true
		}
	}
	for _, k := range f.KeepClears {
		if holds(k.Shape) {
			return k.Name, true
		}
	}
	return "", false
}
