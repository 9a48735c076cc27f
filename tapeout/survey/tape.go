package survey

import "math"

// Class is how true a tape measure is: the error between two of its marks is at
// most A + B·L, with L the length in metres rounded up to the next whole metre.
type Class struct {
	Name string
	A    float64 // metres
	B    float64 // metres for each metre
}

// The accuracy classes of Directive 2014/32/EU, annex X (MI-008), chapter I. The
// text was read as quoted by SI 2016/1153, schedule 1I (legislation.gov.uk). The
// same figures are remembered, not read, of OIML R 35-1:2007. They hold at 20 °C
// and, from 5 m on, at a pull of 50 N; not for woven tapes, which stretch, nor
// from the hook, which adds up to 0.3 mm.
var (
	ClassI   = Class{"I", 0.0001, 0.0001}
	ClassII  = Class{"II", 0.0003, 0.0002}
	ClassIII = Class{"III", 0.0006, 0.0004}
)

// Classes in the order offered.
var Classes = []Class{ClassI, ClassII, ClassIII}

// Error returns the largest error allowed at l metres, in metres; the sign of l
// does not matter, and nothing measured has no error.
func (c Class) Error(l float64) float64 {
	l = math.Abs(l)
	if l == 0 {
		return 0
	}
	return c.A + c.B*math.Ceil(l-1e-9)
}

// Sigma returns the standard deviation in metres at l metres, taking every error
// up to the limit to be as likely as any other: limit/√3.
func (c Class) Sigma(l float64) float64 { return c.Error(l) / math.Sqrt(3) }
