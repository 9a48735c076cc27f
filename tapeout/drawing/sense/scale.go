package sense

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
)

// ScaleGuess is one way to read the size of a drawing.
type ScaleGuess struct {
	PerUnit    float64      // metres on the floor in one drawing unit
	Scale      length.Scale // what one length on the paper stands for; 1 for a drawing at full size, 0 where its unit is not known
	Why        string       // one or more sentences
	Confidence float64      // from 0 to 1; judgement, for the order only
}

// ProposeScale returns what the drawing itself tells about its scale, the likeliest
// first: scales written on it, dimensions compared with the figures beside them, and
// the unit of a drawing at full size. Guesses that agree within half a per cent are
// one. It is empty when nothing tells.
func ProposeScale(s *linework.Sheet) []ScaleGuess {
	var all []ScaleGuess
	all = append(all, fromFigures(s)...)
	all = append(all, fromWords(s)...)
	all = append(all, fromUnit(s)...)
	var out []ScaleGuess
	for _, g := range all {
		i := slices.IndexFunc(out, func(o ScaleGuess) bool { return math.Abs(o.PerUnit/g.PerUnit-1) < agreeWithin })
		if i < 0 {
			out = append(out, g)
			continue
		}
		// What independent signs agree on is as unlikely to be wrong as both are.
		out[i].Confidence = 1 - (1-out[i].Confidence)*(1-g.Confidence)
		out[i].Why += " " + g.Why
		if out[i].Scale == 0 {
			out[i].Scale = g.Scale
		}
	}
	slices.SortStableFunc(out, func(a, b ScaleGuess) int { return cmp.Compare(b.Confidence, a.Confidence) })
	return out
}

// agreeWithin is the share by which two guesses may differ and be one.
const agreeWithin = 0.005

// Sizes in metres that tell paper from a drawing at full size: the longer side of
// the sheets that plotters take, and of what theatres play on (judgement).
const (
	paperLeast, paperMost = 0.12, 2.5
	stageLeast, stageMost = 4.0, 250.0
)

// onPaper tells whether coordinates are places on paper: always in points, and in
// other units where the whole drawing is no larger than a sheet.
func onPaper(s *linework.Sheet) bool {
	if s.Unit == linework.Point {
		return true
	}
	side := max(s.Box.Width(), s.Box.Height()) * float64(s.Unit)
	return side >= paperLeast && side <= paperMost
}

// fromWords returns the scales written on the drawing.
func fromWords(s *linework.Sheet) []ScaleGuess {
	if s.Unit == 0 || !onPaper(s) {
		return nil
	}
	type saying struct {
		text     string
		count    int
		labelled bool
	}
	said := map[length.Scale]*saying{}
	var order []length.Scale
	for _, t := range s.Texts {
		if t.Hidden {
			continue
		}
		scales, labelled := ScalesIn(t.Text)
		for _, sc := range scales {
			if said[sc] == nil {
				said[sc] = &saying{text: t.Text}
				order = append(order, sc)
			}
			said[sc].count++
			said[sc].labelled = said[sc].labelled || labelled
		}
	}
	var out []ScaleGuess
	for _, sc := range order {
		w := said[sc]
		c := 0.4
		if w.labelled {
			c = 0.7
		}
		// Details at other scales share a sheet with the plan.
		c /= math.Sqrt(float64(len(order)))
		c = 1 - (1-c)*math.Pow(0.95, float64(w.count-1))
		out = append(out, ScaleGuess{
			PerUnit: float64(s.Unit) * float64(sc), Scale: sc, Confidence: c,
			Why: fmt.Sprintf("The drawing says “%s”.", short(w.text)),
		})
	}
	return out
}

// likelyUnits are tried where the file does not tell its unit, the usual first.
var likelyUnits = []linework.Unit{linework.Millimetre, linework.Inch, linework.Metre, linework.Foot, linework.Centimetre}

// fromUnit returns the readings of a drawing at full size.
func fromUnit(s *linework.Sheet) []ScaleGuess {
	side := max(s.Box.Width(), s.Box.Height())
	if !(side > 0) || s.Unit == linework.Point {
		return nil
	}
	fits := func(u linework.Unit) bool { m := side * float64(u); return m >= stageLeast && m <= stageMost }
	if s.Unit > 0 {
		g := ScaleGuess{
			PerUnit: float64(s.Unit), Scale: 1, Confidence: 0.8,
			Why: fmt.Sprintf("The file counts in units of one %s, and at full size the drawing is %s across.", s.Unit, metres(side*float64(s.Unit))),
		}
		if !fits(s.Unit) {
			g.Confidence = 0.15
			g.Why += " That is an unlikely size for a stage."
		}
		return []ScaleGuess{g}
	}
	var out []ScaleGuess
	for i, u := range likelyUnits {
		if !fits(u) {
			continue
		}
		g := ScaleGuess{
			PerUnit: float64(u), Scale: 1, Confidence: 0.3 - 0.03*float64(i),
			Why: fmt.Sprintf("The file does not say its unit; in units of one %s the drawing is %s across.", u, metres(side*float64(u))),
		}
		if u == s.UnitHint {
			g.Confidence = 0.5
			g.Why += " The file hints at it."
		}
		out = append(out, g)
	}
	return out
}

func metres(m float64) string {
	if m >= 10 {
		return fmt.Sprintf("%.0f m", m)
	}
	return fmt.Sprintf("%.2g m", m)
}

// short cuts a text to what fits in a sentence.
func short(text string) string {
	const most = 40
	r := []rune(text)
	for i, c := range r {
		if c == '\n' {
			r[i] = ' '
		}
	}
	if len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return string(r)
}
