// Package survey turns floor points into the numbers that a crew reads off a
// tape, and back: up and over, two tapes from two pivots, the right angle, and
// how far a mark so found is likely to be off.
package survey

// Reading is what two tapes from two pivots read at a mark.
type Reading struct {
	A, B  float64 // metres from the first and from the second pivot
	Side  Side    // on which side of the line from the first to the second pivot
	Angle float64 // radians between the tapes at the mark, 0 to π
}

// Side of the line between two pivots, looking from the first to the second.
type Side string

// Sides. A mark on the line itself is found by either distance but has no side.
const (
	Left   Side = "left"
	Right  Side = "right"
	OnLine Side = "on the line"
)
