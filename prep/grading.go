package prep

import (
	"math"
	"slices"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// grade says of each reading what the faults make of it.
func (c *court) grade() {
	allowed := c.p.CheckAllowed()
	for i := range c.v.Readings {
		j := &c.v.Readings[i]
		if j.Grade == NoSuchMark {
			continue
		}
		if math.Abs(j.Off) > allowed {
			j.Grade, j.Cause = EdgeReading, slipOf(j.Expected, j.Metres, allowed)
		}
	}
	for _, f := range c.v.Faults {
		for _, i := range f.Readings {
			c.v.Readings[i].Grade = DoubtfulReading
			if f.Found() {
				c.v.Readings[i].Grade = WrongReading
			}
		}
		if len(f.Readings) > 0 {
			continue
		}
		for i := range c.v.Readings {
			j := &c.v.Readings[i]
			if j.Grade != EdgeReading || !slices.Contains(f.Places, j.From) && !slices.Contains(f.Places, j.To) {
				continue
			}
			if j.Grade = DoubtfulReading; f.Found() {
				j.Grade = AtWrongMark
			}
		}
	}
}

// slipOf names the usual slip that makes the one length of the other.
func slipOf(expected, read, allowed float64) string {
	if ok, cause := survey.Compare(expected, read, allowed); !ok && survey.Slip(cause) {
		return cause
	}
	return ""
}

// coverage says which marks the good readings leave unchecked, or check in one
// direction only.
func (c *court) coverage() {
	for i, name := range c.names {
		if name == FirstPivot || name == SecondPivot || c.suspected(name) {
			continue
		}
		if !c.any || len(c.weighed.At(i)) == 0 {
			c.v.Unchecked = append(c.v.Unchecked, name)
			continue
		}
		if c.weighed.Blind[i] > Blunder {
			c.v.OneWay = append(c.v.OneWay, name)
		}
	}
	if c.any {
		c.cross()
	}
}

func (c *court) suspected(name string) bool {
	return slices.ContainsFunc(c.v.Faults, func(f Fault) bool { return slices.Contains(f.Places, name) })
}

func (c *court) conclude() {
	c.v.State = Accepted
	if len(c.v.Unchecked) > 0 || len(c.w.Marks) == 0 || len(c.v.Readings) == 0 {
		c.v.State = NotEnough
	}
	for _, f := range c.v.Faults {
		switch {
		case f.Found() && len(f.Places) == 1:
			c.v.State = WrongMarks
		case !f.Found() && c.v.State != WrongMarks:
			c.v.State = DoubtfulMarks
		}
	}
}

// unitsOfSlips are what is counted once too often when a mark is placed.
var unitsOfSlips = []struct {
	metres float64
	name   string
}{
	{length.Foot, "a whole foot"}, {0.1, "ten centimetres"}, {1, "a whole metre"}, {length.Foot / 12, "an inch"},
	{2 * length.Foot, "two whole feet"},
}

// nearSlip is how near in metres a mark must lie to where a slip would have put it.
const nearSlip = 0.02

// causeOf names the usual slip that explains a reading or the place of a mark.
func (c *court) causeOf(s survey.Suspicion) string {
	if s.Reading >= 0 {
		j := c.v.Readings[c.active[s.Reading]]
		return slipOf(j.Expected, j.Metres, c.p.CheckAllowed())
	}
	at := c.places[s.Place].At
	lies := at.Add(s.Shift)
	if s.Shift.Len() > 4*nearSlip {
		if lies.To(plane.Point{X: -at.X, Y: at.Y}) < 2*nearSlip {
			return "left taken for right"
		}
		if lies.To(plane.Point{X: math.Copysign(at.Y, at.X), Y: math.Abs(at.X)}) < 2*nearSlip {
			return "up and over exchanged"
		}
	}
	for _, u := range unitsOfSlips {
		switch {
		case math.Abs(math.Abs(s.Shift.X)-u.metres) < nearSlip && math.Abs(s.Shift.Y) < nearSlip && u.metres > nearSlip:
			return u.name + " too far " + sideOf(s.Shift.X)
		case math.Abs(math.Abs(s.Shift.Y)-u.metres) < nearSlip && math.Abs(s.Shift.X) < nearSlip && u.metres > nearSlip:
			return u.name + " too far " + depthOf(s.Shift.Y)
		}
	}
	return ""
}

func sideOf(x float64) string {
	if x < 0 {
		return "to stage right"
	}
	return "to stage left"
}

func depthOf(y float64) string {
	if y < 0 {
		return "downstage"
	}
	return "upstage"
}
