package prep

import (
	"math"

	"groundrow/tapeout/length"
	"groundrow/tapeout/survey"
)

// Fine writes a small error: in millimetres, or in sixteenths of an inch without
// feet and inches that are nought.
func (p *Production) Fine(m float64) string {
	style := length.Style{Unit: length.Millimetres, Step: 0.001}
	if !p.Unit().Metric() {
		style = length.Style{Unit: length.FeetInches, Step: 0.0254 / 16}
	}
	if m < style.Step {
		return "less than " + style.FormatSmall(style.Step)
	}
	return style.FormatSmall(m)
}

// roundish is the share of the longer axis beyond which an ellipse looks round.
const roundish = 0.75

// ErrorInWords says where a mark may come to lie: how far from its place 95 times in
// a hundred, and in which direction most.
func (p *Production) ErrorInWords(e survey.Ellipse) string {
	text := "within " + p.Fine(e.Major)
	if e.Minor > roundish*e.Major {
		return text + " in any direction"
	}
	return text + " " + directionWords(e.Direction) + ", " + p.Fine(e.Minor) + " the other way"
}

// directionWords names a direction in datum axes, either way along it.
func directionWords(direction float64) string {
	degrees := math.Mod(direction*180/math.Pi+360, 180)
	switch {
	case degrees < 22.5 || degrees > 157.5:
		return "across the stage"
	case degrees < 67.5:
		return "from downstage right to upstage left"
	case degrees <= 112.5:
		return "up and down stage"
	}
	return "from downstage left to upstage right"
}
