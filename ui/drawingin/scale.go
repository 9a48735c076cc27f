package drawingin

import (
	"fmt"
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
)

// unitChoice is what one drawing unit may be, where a drawing does not say.
type unitChoice struct {
	name string
	unit linework.Unit
}

// unitChoices in the order offered.
var unitChoices = []unitChoice{
	{"inches", linework.Inch}, {"feet", linework.Foot}, {"millimetres", linework.Millimetre},
	{"centimetres", linework.Centimetre}, {"metres", linework.Metre},
}

// onPaper tells whether the drawing is a page of paper, whose scale is a ratio;
// one that is no page is drawn at full size in some unit.
func onPaper(s *linework.Sheet) bool { return s.Format == "PDF" }

// typedScale answers the scale in words. The unit of the drawing must be known.
func (d *drawn) typedScale(text string) error {
	scale, err := length.ParseScale(text)
	if err != nil {
		return err
	}
	if d.sheet.Unit == linework.Unknown {
		return fmt.Errorf("a scale says nothing here, since the drawing does not say what its units are: choose the unit, or give one known dimension")
	}
	d.scale = scaleAnswer{perUnit: float64(scale) * float64(d.sheet.Unit), why: "It was typed: " + scale.String() + ".", sure: true}
	return nil
}

// typedUnit answers what one unit of the drawing is.
func (d *drawn) typedUnit(u unitChoice) {
	d.scale = scaleAnswer{perUnit: float64(u.unit), why: "It was chosen: the drawing is in " + u.name + ".", sure: true}
}

// ratio returns the scale as a ratio of floor to paper; ok is false where the
// drawing's units are not known, or nothing is answered.
func (d *drawn) ratio() (length.Scale, bool) {
	if d.sheet.Unit == linework.Unknown {
		return 0, false
	}
	s := length.Scale(d.scale.perUnit / float64(d.sheet.Unit))
	return s, s > 0
}

// scaleName is the scale in a few words.
func (d *drawn) scaleName() string {
	if !(d.scale.perUnit > 0) {
		return "not known"
	}
	for _, u := range unitChoices {
		if !onPaper(d.sheet) && math.Abs(d.scale.perUnit/float64(u.unit)-1) < 1e-9 {
			return "full size, in " + u.name
		}
	}
	if s, ok := d.ratio(); ok {
		return nearRatio(s)
	}
	return fmt.Sprintf("one unit is %.6g m", d.scale.perUnit)
}

// nearRatio writes a scale without the noise of its last figures.
func nearRatio(s length.Scale) string {
	round := length.Scale(math.Round(float64(s)*1000) / 1000)
	if round.Valid() {
		return round.String()
	}
	return fmt.Sprintf("1:%.4g", float64(s))
}
