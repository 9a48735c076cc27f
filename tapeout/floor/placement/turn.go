package placement

import (
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// Side is one side of a room: the walls that look out the same way.
type Side struct {
	Toward float64 // radians in floor axes, out through the walls
	Walls  []int   // from 0, in the order of the outline
	Middle plane.Point
}

// sameSide is how far, in radians, two walls of one side can look apart: half a
// degree.
const sameSide = math.Pi / 360

// Sides returns the sides of a room in the order of their first walls. A curved
// wall looks where its chord does.
func Sides(outline plane.Path) []Side {
	var out []Side
	for i, e := range outline.Edges() {
		d := e.B.Sub(e.A)
		if outline.SignedArea() < 0 {
			d = d.Times(-1)
		}
		toward := d.Angle() - math.Pi/2
		k := slices.IndexFunc(out, func(s Side) bool { return apart(s.Toward, toward) < sameSide })
		if k < 0 {
			out = append(out, Side{Toward: math.Remainder(toward, 2*math.Pi), Middle: e.At(0.5)})
			k = len(out) - 1
		}
		out[k].Walls = append(out[k].Walls, i)
	}
	return out
}

// apart is the angle between two directions, in [0, π].
func apart(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 2*math.Pi)) }

// span is the turns from mid−half to mid+half.
type span struct{ mid, half float64 }

// aside is how far downstage may look away from a wall that is the front.
const aside = math.Pi / 4

// square is how far a turn may be from one that is asked for, in radians: less than
// shows on a tape across a room.
const square = 0.05 * math.Pi / 180

// sidesAllowed are the directions of the sides that may be the front; all of them
// when the floor names none.
func sidesAllowed(f *floor.Floor) []float64 {
	var out []float64
	for _, s := range f.Fronts {
		out = append(out, s.Toward)
	}
	if out == nil {
		for _, s := range Sides(f.Outline) {
			out = append(out, s.Toward)
		}
	}
	return out
}

// turns are the turns of the plan that the floor allows; half a span of zero is one
// turn alone.
func turns(f *floor.Floor) []span {
	var out []span
	add := func(s span) {
		if !math.IsNaN(s.mid) && !slices.ContainsFunc(out, func(o span) bool { return apart(o.mid, s.mid) < 1e-9 && o.half == s.half }) {
			out = append(out, s)
		}
	}
	switch f.Wishes.Angles {
	case floor.ToWalls:
		for _, toward := range sidesAllowed(f) {
			add(span{mid: math.Remainder(toward+math.Pi/2, 2*math.Pi)})
		}
	case floor.InSteps:
		for _, t := range steps(f) {
			if facing(f, t) {
				add(span{mid: t})
			}
		}
	default:
		if len(f.Fronts) == 0 {
			for k := range 8 {
				add(span{float64(k) * math.Pi / 4, math.Pi / 8})
			}
			return out
		}
		for _, s := range f.Fronts {
			for k := -1.0; k < 2; k += 2 {
				add(span{math.Remainder(s.Toward+math.Pi/2+k*aside/2, 2*math.Pi), aside / 2})
			}
		}
	}
	return out
}

// steps are all turns in steps from the direction of the boards, in radians; none
// when the step is below a tenth of a degree.
func steps(f *floor.Floor) []float64 {
	step := f.Wishes.Step
	if !(step >= 0.1) {
		return nil
	}
	var out []float64
	for k := 0; float64(k)*step < 360-1e-9; k++ {
		out = append(out, math.Remainder((f.BoardDirection+float64(k)*step)*math.Pi/180, 2*math.Pi))
	}
	return out
}

// facing tells whether downstage looks to a side that may be the front.
func facing(f *floor.Floor, turn float64) bool {
	if len(f.Fronts) == 0 {
		return true
	}
	for _, s := range f.Fronts {
		if apart(turn-math.Pi/2, s.Toward) <= aside+1e-6 {
			return true
		}
	}
	return false
}

// turnAllowed tells whether the rule for turning allows the turn, apart from which
// side is the front.
func turnAllowed(f *floor.Floor, turn float64) bool {
	var allowed []float64
	switch f.Wishes.Angles {
	case floor.ToWalls:
		for _, s := range Sides(f.Outline) {
			allowed = append(allowed, s.Toward+math.Pi/2)
		}
	case floor.InSteps:
		allowed = steps(f)
	default:
		return true
	}
	return slices.ContainsFunc(allowed, func(t float64) bool { return apart(t, turn) <= square })
}
