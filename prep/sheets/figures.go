package sheets

import (
	"math"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// figures writes lengths as the production's tape measures are read.
type figures struct{ style length.Style }

func figuresOf(p *prep.Production) figures { return figures{p.Style()} }

// step names the rounding step.
func (f figures) step() string { return length.StepText(f.style.Unit, f.style.Step) }

// length writes a distance in metres.
func (f figures) length(m float64) string { return f.style.Format(m) }

// up writes a distance from the baseline; what lies towards the audience has DS
// before it, since a minus sign is lost at arm's length, and so that figures stay
// under figures.
func (f figures) up(m float64) string {
	if f.style.Round(m) < 0 {
		return "DS " + f.length(-m)
	}
	return f.length(m)
}

// over writes a distance from the centre line without its side.
func (f figures) over(m float64) string { return f.length(math.Abs(m)) }

// side returns "SL", "SR", or "centre" where the rounded distance is none.
func (f figures) side(m float64) string {
	switch r := f.style.Round(m); {
	case r > 0:
		return "SL"
	case r < 0:
		return "SR"
	}
	return "centre"
}

// upWords writes a distance from the baseline with its word: "up 3' 0"" or
// "DS 3' 0"".
func (f figures) upWords(m float64) string {
	if f.style.Round(m) < 0 {
		return f.up(m)
	}
	return "up " + f.up(m)
}

// overWords writes a distance from the centre line with its word and side.
func (f figures) overWords(m float64) string {
	s := f.style.FormatOver(m)
	if f.side(m) == "centre" {
		return s
	}
	return "over " + s
}

// place writes up and over of a point in datum axes, in that order.
func (f figures) place(p plane.Point) string { return f.upWords(p.Y) + ", " + f.overWords(p.X) }
