package passage

import (
	"cmp"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// Found is the best way from one place to another.
type Found struct {
	// Width is that of the widest person who gets through, in metres: zero where
	// nobody does, infinite where nothing stands near.
	Width float64
	Limit Limit
	At    [2]plane.Point // the two sides of the narrowest place; none without a limit
	Of    [2]int         // whose sides they are: numbers of solids, or Walls
}

// Limit is what makes a way as narrow as it is.
type Limit string

// Limits of a way.
const (
	ByNothing Limit = ""
	ByGap     Limit = "a narrow place"
	ByStart   Limit = "where it begins"  // no wider person can stand there
	ByEnd     Limit = "where it ends"    // no wider person can stand there
	StartIn   Limit = "it begins within" // a solid or the wall, Of
	EndIn     Limit = "it ends within"   // a solid or the wall, Of
)

// Between returns the width of the best way from a to b. A narrow place that is as
// narrow as the room at one end counts as the cause.
func (s *Space) Between(a, b plane.Point) Found {
	for _, end := range []struct {
		at    plane.Point
		limit Limit
	}{{a, StartIn}, {b, EndIn}} {
		if of, blocked := s.Blocked(end.at); blocked {
			return Found{Limit: end.limit, At: [2]plane.Point{end.at, end.at}, Of: [2]int{of, of}}
		}
	}
	found := s.standing(a, ByStart)
	if end := s.standing(b, ByEnd); end.Width < found.Width {
		found = end
	}
	if g, parted := s.parting(a, b, found.Width); parted {
		found = Found{Width: g.width, Limit: ByGap, At: [2]plane.Point{g.p, g.q}, Of: [2]int{s.atoms[g.i].of, s.atoms[g.j].of}}
	}
	return found
}

// standing returns the widest person who can stand at p.
func (s *Space) standing(p plane.Point, limit Limit) Found {
	d, at, of := s.Clear(p)
	if math.IsInf(d, 1) {
		return Found{Width: d}
	}
	return Found{Width: 2 * d, Limit: limit, At: [2]plane.Point{at, p.Add(p.Sub(at))}, Of: [2]int{of, of}}
}

// parting returns the smallest gap that, with smaller ones, parts a from b, of those
// up to the width. Wide gaps are looked at only when the narrow ones do not part.
func (s *Space) parting(a, b plane.Point, width float64) (gap, bool) {
	for reach := min(width, firstReach); ; reach = min(width, 2*reach) {
		if g, parted := s.partingWithin(a, b, reach); parted || reach >= width {
			return g, parted
		}
	}
}

// firstReach is the width up to which gaps are looked at first, in metres.
const firstReach = 0.5

func (s *Space) partingWithin(a, b plane.Point, width float64) (gap, bool) {
	rings := newForest(len(s.atoms))
	for _, g := range s.gapsUpTo(width) {
		if g.width > width {
			break
		}
		i, j := s.atoms[g.i].A, s.atoms[g.j].A
		odd := parts(i, g.p, a, b) != parts(g.p, g.q, a, b) != parts(g.q, j, a, b)
		if rings.join(g.i, g.j, odd) {
			return g, true
		}
	}
	return gap{}, false
}

// parts tells whether the segment from p to q crosses a ray from a and not one from
// b, or the other way round. Round a ring the count is odd when one of a and b is
// inside and the other is not. A point on a ray counts as above it.
func parts(p, q, a, b plane.Point) bool { return crossesRay(p, q, a) != crossesRay(p, q, b) }

// crossesRay tells whether the segment crosses the ray from a to stage left.
func crossesRay(p, q, a plane.Point) bool {
	if (p.Y > a.Y) == (q.Y > a.Y) {
		return false
	}
	if p.Y > q.Y { // the same answer whichever way it is walked
		p, q = q, p
	}
	return q.Sub(p).Cross(a.Sub(p)) > 0 // a lies to the left of the upward segment
}

// gapsUpTo returns every gap between two atoms that is no wider than width, and
// perhaps wider ones, ascending.
func (s *Space) gapsUpTo(width float64) []gap {
	if width <= s.reach {
		return s.gaps
	}
	s.gaps, s.reach = nil, width
	across := s.across()
	for n, a := range across {
		for _, b := range across[n+1:] {
			if s.atoms[b].box.Min.X > s.atoms[a].box.Max.X+width {
				break
			}
			if boxDistance(s.atoms[a].box, s.atoms[b].box) > width {
				continue
			}
			i, j := max(a, b), min(a, b)
			p, q := s.atoms[i].Gap(s.atoms[j].Edge)
			if d := p.To(q); d <= width {
				s.gaps = append(s.gaps, gap{i, j, p, q, d})
			}
		}
	}
	slices.SortFunc(s.gaps, func(g, h gap) int { return cmp.Or(cmp.Compare(g.width, h.width), g.i-h.i, g.j-h.j) })
	return s.gaps
}

// across returns the numbers of the atoms in the order in which a line that sweeps
// the floor from left to right meets them.
func (s *Space) across() []int {
	out := make([]int, len(s.atoms))
	for i := range out {
		out[i] = i
	}
	slices.SortFunc(out, func(i, j int) int { return cmp.Compare(s.atoms[i].box.Min.X, s.atoms[j].box.Min.X) })
	return out
}
