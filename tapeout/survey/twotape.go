package survey

import (
	"math"

	"groundrow/tapeout/plane"
)

// Near is the distance in metres, a millimetre, below which two places are one
// to a tape: two pivots, a mark and a pivot, a mark and the line of the pivots.
const Near = 0.001

// flat is how far, in metres, the readings of a mark on the line may miss each
// other before the mark cannot be on the line: twice a rounding to ten
// millimetres.
const flat = 0.02

// longest is the length in metres, a hundred kilometres, beyond which a number
// is no length on a floor.
const longest = 1e5

// TwoTape is a pair of pivots, in the frame of the marks. Swapping the two swaps
// the readings and the side, and leaves the mark where it is.
type TwoTape struct{ A, B plane.Point }

// Base returns the distance between the pivots in metres.
func (t TwoTape) Base() float64 { return t.A.To(t.B) }

// Swapped returns the same two pivots in the other order.
func (t TwoTape) Swapped() TwoTape { return TwoTape{t.B, t.A} }

// Read returns what the two tapes read at p. ok is false when the pivots are one
// place, p is on a pivot, or a distance is no number or over a hundred kilometres.
// A mark nearer than Near to the line of the pivots is OnLine.
func (t TwoTape) Read(p plane.Point) (r Reading, ok bool) {
	base := t.Base()
	a, b := p.Sub(t.A), p.Sub(t.B)
	r.A, r.B = a.Len(), b.Len()
	if !(base >= Near && r.A >= Near && r.B >= Near && r.A+r.B+base <= longest) {
		return Reading{}, false
	}
	r.Angle = math.Atan2(math.Abs(a.Cross(b)), a.Dot(b))
	off := t.B.Sub(t.A).Cross(a) / base
	switch {
	case math.Abs(off) < Near:
		r.Side = OnLine
	case off > 0:
		r.Side = Left
	default:
		r.Side = Right
	}
	return r, true
}

// Locate returns the place at the distances r.A and r.B from the pivots, on
// r.Side of their line; r.Angle is not used. The foot on the line comes from the
// law of cosines, the distance from the line from the area of the triangle by
// Heron's formula in Kahan's arrangement, which stays exact for flat triangles
// (W. Kahan, Miscalculating Area and Angles of a Needle-like Triangle, 2014,
// from memory). A reading on the line is located on it if the two distances
// agree within two centimetres.
//
// The error is a *LocateError.
func (t TwoTape) Locate(r Reading) (plane.Point, error) {
	base := t.Base()
	if fault := t.fault(r, base); fault != nil {
		return plane.Point{}, fault
	}
	along := base/2 + (r.A-r.B)*((r.A+r.B)/(2*base))
	u := t.B.Sub(t.A).Times(1 / base)
	foot := t.A.Add(u.Times(along))
	off := 2 * triangleArea(r.A, r.B, base) / base
	switch r.Side {
	case Left:
		return foot.Add(u.Left().Times(off)), nil
	case Right:
		return foot.Sub(u.Left().Times(off)), nil
	}
	return foot, nil
}

// fault returns why r cannot be located, or nil.
func (t TwoTape) fault(r Reading, base float64) error {
	if !(r.A >= 0 && r.B >= 0 && r.A+r.B+base <= longest) {
		return &LocateError{Fault: NotALength, Reading: r}
	}
	if base < Near {
		return &LocateError{Fault: PivotsCoincide, Reading: r}
	}
	short := base - r.A - r.B
	long := math.Abs(r.A-r.B) - base
	slack := 1e-12 * (base + r.A + r.B)
	if r.Side == OnLine {
		if miss := math.Min(math.Abs(short), math.Abs(long)); miss > flat && short <= 0 && long <= 0 {
			return &LocateError{Fault: OffTheLine, By: miss, Reading: r}
		}
		slack = flat
	} else if r.Side != Left && r.Side != Right {
		return &LocateError{Fault: SideUnknown, Reading: r}
	}
	if short > slack {
		return &LocateError{Fault: TapesTooShort, By: short, Reading: r}
	}
	if long > slack {
		return &LocateError{Fault: OneTapeTooLong, By: long, Reading: r}
	}
	return nil
}

// triangleArea returns the area in square metres of the triangle with these
// sides; zero when they close only flat.
func triangleArea(a, b, c float64) float64 {
	if a < b {
		a, b = b, a
	}
	if b < c {
		b, c = c, b
	}
	if a < b {
		a, b = b, a
	}
	squared := (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c))
	return math.Sqrt(math.Max(0, squared)) / 4
}
