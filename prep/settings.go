package prep

import (
	"groundrow/supplies"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
)

// DefaultSettings are what a new production starts from: common practice, no
// source. Every one of them can be changed.
func DefaultSettings() Settings {
	return Settings{
		Unit:       string(length.FeetInches),
		Step:       length.DefaultStep(length.FeetInches),
		Paper:      "Letter",
		Currency:   "$",
		Rules:      marks.DefaultRules,
		Allowances: supplies.DefaultAllowances,
		Rates:      DefaultRates,
		Errors:     DefaultErrors,
		WeakAngle:  30,
		TapeSigma:  0.003,
		TapeLength: 100 * length.Foot,
		ReadEdge:   "the edge nearest to the centre line",
	}
}
