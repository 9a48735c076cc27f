package sense

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// DatumGuess is where the plan's datum may lie on the sheet.
type DatumGuess struct {
	Origin plane.Point // where the centre line meets the baseline, drawing units
	Turn   float64     // direction of stage left on the sheet, radians counter-clockwise from X

	CentreLine int // the item; −1: none was found
	Baseline   int // the item; −1: none was found
	Is         plan.Baseline

	Why        string  // sentences
	Confidence float64 // from 0 to 1; judgement, for the order only
}

// ToPlan returns the motion from the sheet in metres, as linework.Sheet.Scaled
// gives it with perUnit, to plan axes.
func (d DatumGuess) ToPlan(perUnit float64) plane.Motion {
	return plane.Motion{Turn: d.Turn, Shift: d.Origin.Times(perUnit)}.Inverse()
}

// line is a straight line of the sheet that may be one of the datum.
type line struct {
	straightEdge
	score float64
	whys  []string
}

func (l *line) add(score float64, why string) {
	l.score += score
	l.whys = append(l.whys, why)
}

// ProposeDatum returns where the datum may lie, the likeliest first, at most
// three. The centre line and the baseline are told by words beside a line or in
// the name of its layer, by a dash-dot pattern and by standing in the middle. With
// no centre line the middle of the baseline is proposed, and with no baseline the
// downstage end of the centre line. The audience is taken to be at the bottom of
// the sheet unless words say where it is.
func ProposeDatum(s *linework.Sheet) []DatumGuess {
	long := longLines(s)
	if len(long) == 0 {
		return nil
	}
	centres, bases := centreLines(s, long), baselines(s, long)
	var out []DatumGuess
	for _, c := range centres {
		for _, b := range bases {
			if g, ok := crossing(c, b); ok {
				out = append(out, g)
			}
		}
	}
	if len(out) == 0 {
		out = append(out, halfDatums(centres, bases)...)
	}
	for i := range out {
		out[i].face(s)
	}
	slices.SortStableFunc(out, func(a, b DatumGuess) int { return cmp.Compare(b.Confidence, a.Confidence) })
	return out[:min(len(out), 3)]
}

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

// crossing makes a guess of a centre line and a baseline square to it.
func crossing(c, b line) (DatumGuess, bool) {
	if c.item == b.item && c.edge == b.edge {
		return DatumGuess{}, false
	}
	u, v := c.B.Sub(c.A).Times(1/c.length), b.B.Sub(b.A).Times(1/b.length)
	if math.Abs(u.Dot(v)) > 0.02 {
		return DatumGuess{}, false
	}
	// Where the centre line, extended, meets the baseline, extended.
	t := b.A.Sub(c.A).Cross(v) / u.Cross(v)
	return DatumGuess{
		Origin: c.A.Add(u.Times(t)), Turn: v.Angle(), CentreLine: c.item, Baseline: b.item, Is: baselineOf(b.whys),
		Why:        strings.Join(slices.Concat(c.whys, b.whys), " "),
		Confidence: 1 - math.Pow(0.75, c.score+b.score),
	}, true
}

// halfDatums makes guesses of what was found of the two.
func halfDatums(centres, bases []line) []DatumGuess {
	var out []DatumGuess
	for _, b := range bases {
		out = append(out, DatumGuess{
			Origin: b.At(0.5), Turn: b.B.Sub(b.A).Angle(), CentreLine: -1, Baseline: b.item, Is: baselineOf(b.whys),
			Why:        strings.Join(b.whys, " ") + " No centre line was found, so the middle of that line is proposed.",
			Confidence: 0.5 * (1 - math.Pow(0.75, b.score)),
		})
	}
	for _, c := range centres {
		low := c.A
		if c.B.Y < c.A.Y {
			low = c.B
		}
		out = append(out, DatumGuess{
			Origin: low, Turn: c.B.Sub(c.A).Angle() - math.Pi/2, CentreLine: c.item, Baseline: -1, Is: plan.PlasterLine,
			Why:        strings.Join(c.whys, " ") + " No baseline was found, so the lower end of the centre line is proposed.",
			Confidence: 0.4 * (1 - math.Pow(0.75, c.score)),
		})
	}
	return out
}

// face turns the guess so that the audience is downstage: where words say it is,
// or at the bottom of the sheet.
func (d *DatumGuess) face(s *linework.Sheet) {
	up := plane.Polar(1, d.Turn+math.Pi/2)
	against := up.Y < -1e-9 || math.Abs(up.Y) <= 1e-9 && up.X > 0
	for _, t := range s.Texts {
		ts := tokens(t.Text)
		house := hasWord(ts, "audience", "house", "auditorium")
		back := hasWord(ts, "upstage") || strings.EqualFold(strings.TrimSpace(t.Text), "US")
		off := t.At.Sub(d.Origin).Dot(up)
		if t.Hidden || len(ts) > 3 || house == back || math.Abs(off) <= t.Height {
			continue
		}
		against = house == (off > 0)
		d.Why += fmt.Sprintf(" “%s” tells which way the audience is.", short(t.Text))
		break
	}
	if against {
		d.Turn += math.Pi
	}
	d.Turn = math.Remainder(d.Turn, 2*math.Pi)
}
