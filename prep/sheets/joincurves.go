package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// runs gathers the strips of a stock that run on into each other where no mark is but one
// on a curve: the chords or arcs of one curve, which is joined point by point.
func (l joiner) runs(strips []supplies.Strip, id plan.StockID) [][]supplies.Strip {
	var out [][]supplies.Strip
	for _, s := range strips {
		if s.Stock != id {
			continue
		}
		out = append(out, []supplies.Strip{s})
	}
	for i := 0; i < len(out); i++ {
		for k := i + 1; k < len(out); k++ {
			if joined, ok := l.linked(out[i], out[k]); ok {
				out[i] = joined
				out = append(out[:k], out[k+1:]...)
				k = i // the longer run may meet one that it has passed
			}
		}
	}
	return out
}

// linked puts two runs end to end; ok is false where they do not meet, or where another
// line ends or crosses.
func (l joiner) linked(a, b []supplies.Strip) (run []supplies.Strip, ok bool) {
	first, last := a[0], a[len(a)-1]
	begin, end := b[0], b[len(b)-1]
	if first.Whole || begin.Whole || first.Dashed != begin.Dashed {
		return nil, false
	}
	meets := func(one, next plane.Edge) bool {
		if one.B.To(next.A) > 2*l.rules.Weld || !bends(one, next) || l.swung(one) || l.swung(next) {
			return false
		}
		return !l.near.stops(one.B, l.rules.Weld)
	}
	switch {
	case meets(last.Edge, begin.Edge):
		return append(append([]supplies.Strip{}, a...), b...), true
	case meets(end.Edge, first.Edge):
		return append(append([]supplies.Strip{}, b...), a...), true
	case meets(last.Edge, end.Reversed()):
		return append(append([]supplies.Strip{}, a...), turned(b)...), true
	case meets(begin.Reversed(), first.Edge):
		return append(turned(b), a...), true
	}
	return nil, false
}

// swung tells whether an arc is swung from its centre.
func (l joiner) swung(e plane.Edge) bool {
	centre, _, ok := e.Circle()
	if ok {
		_, ok = l.near.at(centre, 0.01)
	}
	return ok
}

// bends tells whether the next piece goes on in a gentle curve: an arc does without a
// corner, a chord with a small turn.
func bends(one, next plane.Edge) bool {
	const gentle, none = 15 * math.Pi / 180, 1e-3
	u, v := one.Tangent(1), next.Tangent(0)
	turn := math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
	if one.Straight() != next.Straight() {
		return false
	}
	if one.Straight() {
		return turn > none && turn < gentle
	}
	return turn < gentle
}

func turned(run []supplies.Strip) []supplies.Strip {
	out := make([]supplies.Strip, len(run))
	for i, s := range run {
		s.Edge = s.Edge.Reversed()
		out[len(run)-1-i] = s
	}
	return out
}

// runRow words one run: one strip, or a curve of several.
func (l joiner) runRow(run []supplies.Strip) row {
	if len(run) == 1 {
		return l.row(run[0])
	}
	var labels []string
	length := 0.0
	for _, s := range run {
		for _, on := range l.passes(s) {
			if n := len(labels); n == 0 || labels[n-1] != on.label {
				labels = append(labels, on.label)
			}
		}
		length += s.Length()
	}
	how := "curved, point by point"
	if run[0].Dashed {
		how += ", broken line"
	}
	from, to := "–", "–"
	if n := len(labels); n > 0 {
		from, to = labels[0], labels[n-1]
		labels = labels[min(1, n-1):max(n-1, min(1, n-1))]
	}
	how += l.byChord(plane.Edge{A: run[0].A, B: run[len(run)-1].B}, labels)
	return cells(from, to, strings.Join(labels, ", "), how, l.f.length(length), "")
}

// shortChord is the chord in metres below which a curve as good as closes: there is no
// line to measure off.
const shortChord = 0.3

// byChord says how a curve is laid by its chord: how far each of its marks is along the
// straight line between the ends, and how far off it; of a curve that crosses the line, as
// an S does, also to which side; of one that reaches beyond the ends of the line, as more than
// half a circle does, also which are beyond them. The rise in the middle of an arc is the check.
func (l joiner) byChord(e plane.Edge, labels []string) string {
	along, ok := e.B.Sub(e.A).Unit()
	if !ok || e.Chord() < shortChord || len(labels) == 0 {
		return ""
	}
	var offsets []offset
	for _, label := range labels {
		if m, found := l.near.labelled(label); found {
			d := m.At.Sub(e.A)
			offsets = append(offsets, offset{label, d.Dot(along), l.f.style.Round(along.Cross(d))})
		}
	}
	text := "; by chord and offset from a line of " + l.f.length(e.Chord()) + l.offsetWords(offsets, e.Chord())
	if _, radius, arc := e.Circle(); arc && math.Abs(e.Sweep()) < math.Pi {
		if rise, ok := survey.Ordinate(radius, e.Chord(), 0); ok {
			text += "; check in the middle " + l.f.length(rise)
		}
	}
	return text
}

// offset is a mark of a curve by the line between its ends, in metres.
type offset struct {
	label       string
	along, left float64 // from the beginning of the line, and off it
}

// offsetWords lists offsets; where some are to the left of the line and some to the
// right, each says its side.
func (l joiner) offsetWords(offsets []offset, chord float64) string {
	left := slices.ContainsFunc(offsets, func(o offset) bool { return o.left > 0 })
	right := slices.ContainsFunc(offsets, func(o offset) bool { return o.left < 0 })
	head := ":"
	if left && right {
		head = ", left and right as seen from its beginning:"
	}
	said := make([]string, len(offsets))
	for i, o := range offsets {
		said[i] = fmt.Sprintf(" %s %s, %s", o.label, l.alongWords(o.along, chord), l.f.length(math.Abs(o.left)))
		switch {
		case !left || !right:
		case o.left > 0:
			said[i] += " left"
		case o.left < 0:
			said[i] += " right"
		}
	}
	return head + strings.Join(said, ",")
}

// alongWords says where along a line something is that may be beyond its ends.
func (l joiner) alongWords(along, chord float64) string {
	back, on := l.f.style.Round(-along), l.f.style.Round(along-chord)
	switch {
	case back > 0:
		return l.f.length(back) + " back beyond its beginning"
	case on > 0:
		return l.f.length(on) + " on beyond its end"
	}
	return l.f.length(math.Max(0, along))
}

// stops tells whether a mark within reach metres is more than a point on a curve.
func (fd finder) stops(p plane.Point, reach float64) bool {
	label, ok := fd.at(p, reach)
	if !ok {
		return false
	}
	m, _ := fd.labelled(label)
	return m.Kind != marks.Curve
}

// labelled returns the mark of a label.
func (fd finder) labelled(label string) (prep.MeasuredMark, bool) {
	for _, cell := range fd {
		for _, m := range cell {
			if m.Label == label {
				return m, true
			}
		}
	}
	return prep.MeasuredMark{}, false
}
