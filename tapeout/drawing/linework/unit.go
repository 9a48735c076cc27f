package linework

import "strconv"

// Unit is the number of metres in one drawing unit.
type Unit float64

// Units of drawings. The inch is 0.0254 m and the foot 0.3048 m exactly, the US
// survey foot 1200/3937 m (NIST SP 811, appendix B); a point is 1/72 inch
// (PDF reference, 8.3.2.3).
const (
	Unknown    Unit = 0
	Millimetre Unit = 0.001
	Centimetre Unit = 0.01
	Decimetre  Unit = 0.1
	Metre      Unit = 1
	Kilometre  Unit = 1000
	Inch       Unit = 0.0254
	Foot       Unit = 0.3048
	SurveyFoot Unit = 1200.0 / 3937
	Yard       Unit = 0.9144
	Mile       Unit = 1609.344
	Point      Unit = 0.0254 / 72
)

var unitNames = map[Unit]string{
	Unknown: "unknown", Millimetre: "millimetre", Centimetre: "centimetre", Decimetre: "decimetre",
	Metre: "metre", Kilometre: "kilometre", Inch: "inch", Foot: "foot", SurveyFoot: "US survey foot",
	Yard: "yard", Mile: "mile", Point: "point",
}

// String returns the unit's name, in the singular, or its size.
func (u Unit) String() string {
	if name, ok := unitNames[u]; ok {
		return name
	}
	return strconv.FormatFloat(float64(u), 'g', 6, 64) + " m"
}
