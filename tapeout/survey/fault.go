package survey

import "fmt"

// Fault is why two readings give no mark.
type Fault string

// Faults of a reading.
const (
	NotALength     Fault = "not a length"
	PivotsCoincide Fault = "pivots coincide"
	TapesTooShort  Fault = "tapes too short"
	OneTapeTooLong Fault = "one tape too long"
	OffTheLine     Fault = "off the line"
	SideUnknown    Fault = "side unknown"
)

// LocateError tells why two readings give no mark. By is by how many metres they
// fail: what is missing for the tapes to meet, or what one is too long to come
// back to the other.
type LocateError struct {
	Fault   Fault
	By      float64
	Reading Reading
}

// Error says what is wrong and what to do, with lengths in metres.
func (e *LocateError) Error() string {
	r := e.Reading
	switch e.Fault {
	case NotALength:
		return "a reading is not a length: read both tapes again"
	case PivotsCoincide:
		return "the two pivots are the same place: choose two that are apart"
	case TapesTooShort:
		return fmt.Sprintf("readings of %.3f m and %.3f m cannot meet: together they are %.3f m shorter than the distance between the pivots; read both again",
			r.A, r.B, e.By)
	case OneTapeTooLong:
		which := "first"
		if r.B > r.A {
			which = "second"
		}
		return fmt.Sprintf("readings of %.3f m and %.3f m cannot meet: the %s is %.3f m too long for the other; read both again",
			r.A, r.B, which, e.By)
	case OffTheLine:
		return fmt.Sprintf("readings of %.3f m and %.3f m meet beside the line of the pivots (they miss it by %.3f m): say on which side the mark is",
			r.A, r.B, e.By)
	}
	return fmt.Sprintf("the side of the line is missing: say whether the mark is %s or %s, looking from the first pivot to the second", Left, Right)
}
