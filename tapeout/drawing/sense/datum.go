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

// Axes returns the motion from plan axes to the sheet in metres, as linework.Sheet.Scaled
// gives it with perUnit, of a datum at origin (drawing units) with stage left at turn
// (radians counter-clockwise from X).
func Axes(origin plane.Point, turn, perUnit float64) plane.Motion {
	return plane.Motion{Turn: turn, Shift: origin.Times(perUnit)}
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
	out = unlike(out, long)
	return out[:min(len(out), 3)]
}

// unlike leaves out guesses that come to the same as one before: a centre line that
// is drawn in two pieces is found twice.
func unlike(guesses []DatumGuess, long []straightEdge) []DatumGuess {
	size := 0.0
	for _, l := range long {
		size = max(size, l.length)
	}
	var out []DatumGuess
	for _, g := range guesses {
		if !slices.ContainsFunc(out, func(o DatumGuess) bool {
			return o.Is == g.Is && o.Origin.To(g.Origin) < 1e-4*size && math.Abs(math.Remainder(o.Turn-g.Turn, 2*math.Pi)) < 1e-4
		}) {
			out = append(out, g)
		}
	}
	return out
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
