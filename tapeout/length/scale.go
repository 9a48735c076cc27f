package length

import (
	"math"
	"strconv"
)

// Scale is what one length on paper stands for on the floor: 48 for 1/4" to the
// foot, 50 for 1:50. Zero is a scale that nobody has stated.
type Scale float64

// The scales that are read: from full size to a site plan.
const (
	MinScale Scale = 1
	MaxScale Scale = 10_000
)

// architects are the scales of an architect's rule, smallest drawing first, each
// by the sixteenths of an inch, or halves of them, that stand for a foot.
var architects = []struct {
	thirtySeconds int64
	scale         Scale
}{
	{3, 128}, {4, 96}, {6, 64}, {8, 48}, {12, 32}, {16, 24}, {24, 16}, {32, 12}, {48, 8}, {96, 4},
}

// metricScales are those of ISO 5455 that a ground plan can have (from memory),
// and 1:25 and 1:200, which are usual in theatres (common practice, no source).
var metricScales = []Scale{200, 100, 50, 25, 20, 10, 5, 2}

// UsualScales returns the scales to offer, smallest drawing first: the
// architect's for feet and inches, the metric ones otherwise.
func UsualScales(u Unit) []Scale {
	if u.Metric() {
		return append([]Scale(nil), metricScales...)
	}
	var all []Scale
	for _, a := range architects {
		all = append(all, a.scale)
	}
	return all
}

// UsualScale returns the scale to start with: 1/2" to the foot, or 1:25 (common
// practice, no source).
func UsualScale(u Unit) Scale {
	if u.Metric() {
		return 25
	}
	return 24
}

// Valid tells whether the scale lies between MinScale and MaxScale.
func (s Scale) Valid() bool { return s >= MinScale && s <= MaxScale }

// OnFloor returns the length on the floor that a length measured on paper stands
// for, both in metres.
func (s Scale) OnFloor(paper float64) float64 { return paper * float64(s) }

// OnPaper returns the length on paper that stands for a length on the floor, both
// in metres. A scale that is not stated gives zero.
func (s Scale) OnPaper(floor float64) float64 {
	if s == 0 {
		return 0
	}
	return floor / float64(s)
}

// Ratio returns the scale as a ratio, 1:48, with up to three decimals.
func (s Scale) Ratio() string {
	return "1:" + trimZeros(strconv.FormatFloat(float64(s), 'f', 3, 64))
}

// String returns the architect's name and the ratio where there is one,
// 1/4" = 1'-0" (1:48), and the ratio otherwise. ParseScale reads it.
func (s Scale) String() string {
	if !s.Valid() {
		return "no scale"
	}
	if name, ok := s.Architect(); ok {
		return name + " (" + s.Ratio() + ")"
	}
	return s.Ratio()
}

// Architect returns the scale's name on an architect's rule, 1/4" = 1'-0"; ok is
// false when it is not on one.
func (s Scale) Architect() (name string, ok bool) {
	for _, a := range architects {
		if math.Abs(float64(s/a.scale)-1) < 1e-9 {
			return paperInches(a.thirtySeconds) + ` = 1'-0"`, true
		}
	}
	return "", false
}

// paperInches writes n thirty-seconds of an inch.
func paperInches(n int64) string {
	if n%2 != 0 {
		return strconv.FormatInt(n, 10) + `/32"`
	}
	if n < 32 {
		return fractionText(n/2) + `"`
	}
	return inchText(n / 2)
}
