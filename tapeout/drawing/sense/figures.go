package sense

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// figure is a length that the drawing states, with a line that it may be of.
type figure struct {
	says    float64 // metres
	text    string
	source  int     // the statement: figures of one text share it
	item    int     // the line; −1 for a dimension of the file's own
	edge    int     // of the item
	ratio   float64 // metres in one drawing unit
	certain bool    // with a unit
}

// statedLength reads a text that is a length and nothing else. A number without a
// unit is a length only in millimetres, where it is whole and of three figures or
// more, or in metres, where it has two or three decimals; and it is not certain.
func statedLength(text string) (m float64, certain, ok bool) {
	text = strings.TrimSpace(text)
	if text == "" || len(text) > 40 || !strings.ContainsAny(text, "0123456789") {
		return 0, false, false
	}
	unit, certain := length.Millimetres, true
	if plainNumber(text) {
		certain = false
		_, decimals, broken := strings.Cut(text, ".")
		switch {
		case broken && (len(decimals) == 2 || len(decimals) == 3):
			unit = length.Metres
		case broken || len(text) < 3 || len(text) > 5:
			return 0, false, false
		}
	}
	m, err := length.Parse(text, unit)
	return m, certain, err == nil && m > 0
}

func plainNumber(text string) bool {
	return strings.Trim(text, "0123456789.") == ""
}

// figures returns what the drawing states about lengths of its own.
func figures(s *linework.Sheet) []figure {
	var out []figure
	for i, m := range s.Measures {
		if m.Hidden || m.Angular || !(m.Measured > 0) || math.IsInf(m.Measured, 0) {
			continue
		}
		if says, certain, ok := statedLength(m.Says); ok {
			out = append(out, figure{says, m.Says, i, -1, 0, says / m.Measured, certain})
		}
	}
	straight := straightEdges(s)
	for i, t := range s.Texts {
		if t.Hidden || t.Kind == "DIMENSION" && len(s.Measures) > 0 {
			continue
		}
		says, certain, ok := statedLength(t.Text)
		if !ok {
			continue
		}
		for _, e := range straight {
			if alongside(t, e) {
				out = append(out, figure{says, t.Text, len(s.Measures) + i, e.item, e.edge, says / e.length, certain})
			}
		}
	}
	return out
}

// straightEdge is a straight line of the sheet.
type straightEdge struct {
	plane.Edge
	item, edge int
	length     float64
	box        plane.Box
}

func straightEdges(s *linework.Sheet) []straightEdge {
	var out []straightEdge
	for i := range s.Items {
		if s.Items[i].Hidden {
			continue
		}
		for k, e := range s.Items[i].Edges {
			if n := e.Length(); n > 0 && !math.IsInf(n, 0) && e.Straight() {
				out = append(out, straightEdge{e, i, k, n, e.Bounds()})
			}
		}
	}
	return out
}

// alongside tells whether the line runs beside the text in its direction, where a
// dimension line does: within three heights of it, and at least as long.
func alongside(t linework.Text, e straightEdge) bool {
	reach := 3 * t.Height
	width := 0.6 * t.Height * float64(utf8.RuneCountInString(t.Text))
	if !(reach > 0) || e.length < width/2 || !e.box.Grow(reach+width).Holds(t.At) {
		return false
	}
	along := plane.Polar(1, t.Turn)
	dir := e.B.Sub(e.A).Times(1 / e.length)
	if math.Abs(along.Cross(dir)) > 0.02 {
		return false
	}
	d := t.At.Sub(e.A)
	at := d.Dot(dir)
	return math.Abs(dir.Cross(d)) <= reach && at >= -width && at <= e.length+width
}

// fromFigures lets the stated lengths vote: every line beside a figure is for the
// ratio of the two, and the ratio for which most figures speak is likely the
// drawing's. One figure alone is beside other lines too often to be believed.
func fromFigures(s *linework.Sheet) []ScaleGuess {
	best, agree, total := vote(figures(s))
	if len(agree) == 0 {
		return nil
	}
	g := ScaleGuess{PerUnit: best}
	share := float64(len(agree)) / float64(total)
	g.Confidence = min(0.95, (0.35+0.6*share)*(1-math.Pow(0.6, float64(len(agree)))))
	if s.Unit > 0 {
		g.Scale = length.Scale(best / float64(s.Unit))
		for _, usual := range slices.Concat([]length.Scale{1}, length.UsualScales(length.FeetInches), length.UsualScales(length.Metres)) {
			if math.Abs(float64(g.Scale/usual)-1) < 0.002 {
				g.Scale, g.PerUnit = usual, float64(usual)*float64(s.Unit)
				break
			}
		}
		if !g.Scale.Valid() {
			g.Scale = 0
		}
	}
	g.Why = fmt.Sprintf("%d of %d lengths written on the drawing agree with the lines beside them, such as “%s”.", len(agree), total, short(agree[0].text))
	if total == 1 {
		g.Why = fmt.Sprintf("The line beside “%s” would have that length.", short(agree[0].text))
	}
	return []ScaleGuess{g}
}

// voteWithin is the share by which ratios may differ and speak for one.
const voteWithin = 0.004

// vote returns the ratio for which most statements speak, those figures, one for
// each statement, and the number of all statements. agree is empty when none is
// spoken for by at least two, or by a dimension of the file's own.
func vote(all []figure) (best float64, agree []figure, total int) {
	slices.SortStableFunc(all, func(a, b figure) int { return cmp.Compare(a.ratio, b.ratio) })
	sources := map[int]bool{}
	for _, f := range all {
		sources[f.source] = true
	}
	most, from, to := 0.0, 0, 0
	here := map[int]int{}
	weight := 0.0
	end := 0
	for start := range all {
		for end < len(all) && all[end].ratio <= all[start].ratio*(1+voteWithin) {
			if here[all[end].source]++; here[all[end].source] == 1 {
				weight += all[end].weight()
			}
			end++
		}
		if weight > most+1e-9 {
			most, from, to = weight, start, end
		}
		if here[all[start].source]--; here[all[start].source] == 0 {
			weight -= all[start].weight()
		}
	}
	seen := map[int]bool{}
	sum := 0.0
	for _, f := range all[from:to] {
		if !seen[f.source] {
			seen[f.source] = true
			agree = append(agree, f)
			sum += f.ratio
		}
	}
	if len(agree) == 0 || len(agree) == 1 && agree[0].item >= 0 {
		return 0, nil, len(sources)
	}
	return sum / float64(len(agree)), agree, len(sources)
}

func (f figure) weight() float64 {
	if f.certain {
		return 1
	}
	return 0.6
}
