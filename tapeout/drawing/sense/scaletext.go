package sense

import (
	"regexp"
	"strings"

	"groundrow/tapeout/length"
)

// ScalesIn returns the scales that a text of a drawing states, in the order of the
// text, each once: 1/4" = 1'-0", SCALE 1:50, 1/2 inch scale, full size. A ratio
// beside a word for a slope is none, nor is a time of day. labelled tells whether
// the text itself says that it is about a scale.
func ScalesIn(text string) (scales []length.Scale, labelled bool) {
	if len(text) > maxScaleText {
		return nil, false
	}
	low := strings.ToLower(strings.Join(strings.Fields(text), " "))
	labelled = scaleWord.MatchString(low)
	add := func(s length.Scale, err error) {
		if err != nil {
			return
		}
		for _, has := range scales {
			if has == s {
				return
			}
		}
		scales = append(scales, s)
	}
	for _, m := range equations.FindAllString(low, -1) {
		add(length.ParseScale(m))
	}
	for _, m := range inchScale.FindAllStringSubmatch(low, -1) {
		add(length.ParseScale(m[1] + `"`))
	}
	if !slopeWord.MatchString(low) {
		for _, m := range ratios.FindAllStringSubmatch(low, -1) {
			if m[2] == "" {
				add(length.ParseScale(m[1]))
			}
		}
	}
	if labelled && fullSize.MatchString(low) {
		add(1, nil)
	}
	return scales, labelled
}

// maxScaleText bounds what is looked at as a statement of a scale, in bytes: a
// paragraph is none.
const maxScaleText = 400

const (
	paperNumber = `(?:\d+[ -])?\d+(?: ?[/⁄] ?\d+)?(?:[.,]\d+)?[½¼¾⅛⅜⅝⅞]?|[½¼¾⅛⅜⅝⅞]`
	inchMark    = `(?: ?(?:"|″|”|''|in\.?|inch(?:es)?))?`
	footLength  = `\d+ ?(?:'|′|’|ft\.?|foot|feet)(?: ?-? ?\d+(?: ?(?:"|″|”|''))?)?`
	metricOne   = `\d+(?:[.,]\d+)? ?(?:mm|cm) ?= ?\d+(?:[.,]\d+)? ?(?:m|cm|mm)\b`
)

var (
	scaleWord = regexp.MustCompile(`\bscale\b|\bplot(?:ted)? at\b`)
	slopeWord = regexp.MustCompile(`\b(?:slope|ramp|rake|raked|pitch|gradient|fall|incline|rise)\b`)
	equations = regexp.MustCompile(`(?:` + paperNumber + `)` + inchMark + ` ?= ?` + footLength + `|` + metricOne)
	inchScale = regexp.MustCompile(`(\d+ ?/ ?\d+|\d+) ?(?:"|″|”|-?inch) scale\b`)
	ratios    = regexp.MustCompile(`(?:^|[^\d.,:/])(1 ?: ?\d{1,5})(?:[^\d:]|$)( ?(?:am|pm)\b)?`)
	fullSize  = regexp.MustCompile(`\bfull (?:size|scale)\b`)
)
