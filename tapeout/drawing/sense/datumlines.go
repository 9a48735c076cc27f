package sense

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plan"
)

// longLines returns straight lines of at least a tenth of the drawing, the longest
// first, at most four hundred. Pieces of a dashed line that a reader gives one by
// one are too short to be among them.
func longLines(s *linework.Sheet) []straightEdge {
	least := 0.1 * max(s.Box.Width(), s.Box.Height())
	var out []straightEdge
	for _, e := range straightEdges(s) {
		if e.length >= least && least > 0 {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b straightEdge) int { return cmp.Compare(b.length, a.length) })
	return out[:min(len(out), 400)]
}

// dashDot tells whether a pattern has dashes of two very different lengths, as a
// centre line has.
func dashDot(dash []float64) bool {
	if len(dash) < 4 {
		return false
	}
	least, most := math.Inf(1), 0.0
	for i := 0; i < len(dash); i += 2 {
		least, most = min(least, math.Abs(dash[i])), max(most, math.Abs(dash[i]))
	}
	return most > 2*least
}

// centreText tells whether a text or the name of a layer is about the centre line.
func centreText(text string) bool {
	if strings.Contains(text, "℄") {
		return true
	}
	ts := tokens(text)
	joined := strings.Join(ts, "")
	return joined == "cl" || joined == "centreline" || joined == "centerline" ||
		hasPhrase(ts, "centre line") || hasPhrase(ts, "center line") || hasWord(ts, "centreline", "centerline")
}

// baseText returns the baseline that a text or the name of a layer is about.
func baseText(text string) (plan.Baseline, bool) {
	ts := tokens(text)
	joined := strings.Join(ts, "")
	switch {
	case joined == "pl" || joined == "plasterline" || hasPhrase(ts, "plaster line"):
		return plan.PlasterLine, true
	case joined == "settingline" || hasPhrase(ts, "setting line") || hasPhrase(ts, "set line"):
		return plan.SettingLine, true
	case hasPhrase(ts, "stage edge") || hasPhrase(ts, "edge of stage") || hasPhrase(ts, "apron edge"):
		return plan.StageEdge, true
	}
	return "", false
}

func centreLines(s *linework.Sheet, long []straightEdge) []line {
	middle := s.Box.Centre()
	var out []line
	for _, e := range long {
		l := line{straightEdge: e}
		item := &s.Items[e.item]
		if centreText(item.Layer) {
			l.add(2, fmt.Sprintf("The centre line is on the layer “%s”.", item.Layer))
		}
		if t, ok := labelOf(s, e, centreText); ok {
			l.add(3, fmt.Sprintf("“%s” stands at the centre line.", short(t)))
		}
		if dashDot(item.Dash) {
			l.add(1, "It is drawn in dashes and dots.")
		}
		if upright(e) && math.Abs(e.At(0.5).X-middle.X) < 0.05*s.Box.Width() && l.score > 0 {
			l.add(0.5, "It stands in the middle of the drawing.")
		}
		if l.score > 0.9 {
			out = append(out, l)
		}
	}
	return strongest(out)
}

func upright(e straightEdge) bool { return e.box.Width() < 0.02*e.length }

func baselines(s *linework.Sheet, long []straightEdge) []line {
	var out []line
	for _, e := range long {
		l := line{straightEdge: e}
		if b, ok := baseText(s.Items[e.item].Layer); ok {
			l.add(2, fmt.Sprintf("The %s is on the layer “%s”.", b, s.Items[e.item].Layer))
		}
		said := func(t string) bool { _, ok := baseText(t); return ok }
		if t, ok := labelOf(s, e, said); ok {
			b, _ := baseText(t)
			l.add(3, fmt.Sprintf("“%s” stands at the %s.", short(t), b))
		}
		if l.score > 0 {
			out = append(out, l)
		}
	}
	return strongest(out)
}

func baselineOf(s []string) plan.Baseline {
	for _, why := range s {
		for _, b := range plan.Baselines {
			if strings.Contains(why, "the "+string(b)) || strings.Contains(why, "The "+string(b)) {
				return b
			}
		}
	}
	return plan.PlasterLine
}

// strongest returns the best few lines.
func strongest(lines []line) []line {
	slices.SortStableFunc(lines, func(a, b line) int { return cmp.Compare(b.score, a.score) })
	return lines[:min(len(lines), 4)]
}

// labelOf returns a text that says what is asked and whose nearest long line this
// is, within four heights of it.
func labelOf(s *linework.Sheet, e straightEdge, asked func(string) bool) (string, bool) {
	for _, t := range s.Texts {
		if !t.Hidden && asked(t.Text) && t.Height > 0 && e.Distance(t.At) <= 4*t.Height {
			return t.Text, true
		}
	}
	return "", false
}

// datumLines returns the items that are the centre line, plaster line or setting
// line and nothing else. A stage edge is a thing that is laid.
func datumLines(s *linework.Sheet) Set {
	lines := pick(s, func(i *linework.Item) bool {
		b, ok := baseText(i.Layer)
		return centreText(i.Layer) || ok && b != plan.StageEdge
	})
	guesses := ProposeDatum(s)
	if len(guesses) == 0 {
		return lines
	}
	best := guesses[0]
	for _, i := range []int{best.CentreLine, best.Baseline} {
		laid := i == best.Baseline && best.Is == plan.StageEdge
		if i >= 0 && !laid && len(s.Items[i].Edges) == 1 {
			lines = lines.With(Set{i})
		}
	}
	return lines
}
