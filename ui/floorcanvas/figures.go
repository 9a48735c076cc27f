package floorcanvas

import (
	"math"
	"strconv"

	"groundrow/tapeout/length"
)

// unitWord is the unit of the figures on the rulers.
func (s *scene) unitWord() string {
	switch u := s.Style.Unit; u {
	case length.Centimetres, length.Millimetres:
		return string(u)
	case length.FeetInches, length.Inches:
		return "ft"
	}
	return "m"
}

// figureOf writes a ruler's figure: shorter than a length, which its strip has no
// room for, and not rounded to the production's step, which a ruler can be finer
// than.
func (s *scene) figureOf(m float64) string {
	u := s.Style.Unit
	if u.Metric() {
		const places = 1e6
		return strconv.FormatFloat(math.Round(m/u.InMetres()*places)/places, 'f', -1, 64)
	}
	n := int64(math.Round(m / length.Inch * 16))
	feet, inches, part := n/192, n%192/16, n%16
	text := strconv.FormatInt(feet, 10) + "′"
	if inches == 0 && part == 0 {
		return text
	}
	if feet == 0 {
		text = ""
	} else {
		text += " "
	}
	if inches > 0 || part == 0 {
		text += strconv.FormatInt(inches, 10)
	}
	return text + sixteenths[part] + "″"
}

var sixteenths = [16]string{
	"", "¹⁄₁₆", "⅛", "³⁄₁₆", "¼", "⁵⁄₁₆", "⅜", "⁷⁄₁₆", "½", "⁹⁄₁₆", "⅝", "¹¹⁄₁₆", "¾", "¹³⁄₁₆", "⅞", "¹⁵⁄₁₆",
}
