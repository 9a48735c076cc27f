package room

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"groundrow/tapeout/length"
	"groundrow/tapeout/survey"
)

// Why puts the reason for which there is no room into a sentence with lengths as
// the style writes them.
func Why(err error, style length.Style) string { return sentence(Clause(err, style)) }

// Clause is Why without a capital and a full stop, to go on with.
func Clause(err error, style length.Style) string {
	var c *Contradiction
	if errors.As(err, &c) {
		return c.say(style.Format)
	}
	return err.Error()
}

// Say tells in sentences what the measurements make of the room: whether its shape
// is fixed and checked, which of them is doubtful and why, and what to measure next.
func (s Solution) Say(style length.Style) []string {
	var out []string
	switch {
	case s.Open > 0:
		out = append(out, "The shape is not fixed: where it can still move it is drawn by the turns as guessed.")
		if len(s.Next) > 0 {
			out = append(out, "Measure "+joined(s.Next, "and")+" to fix it.")
		}
	case s.Freedom == 0:
		out = append(out, "The shape is fixed, and nothing checks it: a wrong length would not show.")
	case len(s.Verdict.Faults) == 0:
		out = append(out, fmt.Sprintf("The shape is fixed and %s agree: every corner lies within %s of its place, 19 times in 20.",
			counted(len(s.Measures)), style.Format(s.Sure())))
	}
	out = append(out, s.Verdict.say(s, style)...)
	if s.Open == 0 && len(s.Next) > 0 {
		out = append(out, "Measure "+joined(s.Next, "and")+" next: it checks best what is hardly checked.")
	}
	return out
}

// Sure returns the largest half axis in metres of the corners' 95 % ellipses, as
// seen from corner A and along the first wall.
func (s Solution) Sure() float64 {
	most := 0.0
	for _, c := range s.Likely {
		most = math.Max(most, math.Sqrt(survey.Chi95)*c.Standard().Major)
	}
	return most
}

func counted(measures int) string {
	if measures == 1 {
		return "its one measurement"
	}
	return fmt.Sprintf("all %d measurements", measures)
}

func (v Verdict) say(s Solution, style length.Style) []string {
	var out []string
	switch {
	case len(v.Faults) == 0:
		return nil
	case v.Together:
		out = append(out, "The measurements contradict each other, and no single one explains it. These are doubtful; measure them again:")
	case !v.Sure():
		out = append(out, fmt.Sprintf("One measurement is wrong, and which of these %d it is cannot be told. Measure them again, the first one first:", len(v.Faults)))
	}
	for _, f := range v.Faults {
		out = append(out, s.sayFault(f, style))
	}
	return out
}

// sayFault is what is said of one doubtful measurement.
func (s Solution) sayFault(f Fault, style length.Style) string {
	m := s.Measures[f.Measure]
	if m.Kind == Square {
		return fmt.Sprintf("Corner %s is no right angle: the others make it %.1f°.", m.Name, math.Abs(f.Expected)*180/math.Pi)
	}
	style.Step = 0 // what was read is said as finely as it was read, so that the three figures agree
	off := m.Read - f.Expected
	way := "long"
	if off < 0 {
		way = "short"
	}
	said := fmt.Sprintf("%s: %s was read, the others make it %s; %s too %s", m.Name, style.Format(m.Read), style.Format(f.Expected), style.Format(math.Abs(off)), way)
	if f.Cause != "" {
		said += " (likely: " + f.Cause + ")"
	}
	return said + "."
}

// Doubtful tells whether a measurement is among those that may be wrong.
func (s Solution) Doubtful(measure int) bool {
	for _, f := range s.Verdict.Faults {
		if f.Measure == measure {
			return true
		}
	}
	return false
}

// Checked says how well the others check a measurement: from which size on a mistake
// would show.
func (m Measure) Checked(style length.Style) string {
	if math.IsInf(m.Shows, 1) {
		return "not checked"
	}
	return "from " + m.small(m.Shows, style)
}

// SayResidual is by how much all measurements together change this one; nothing for
// one that no other checks.
func (m Measure) SayResidual(style length.Style) string {
	r := m.Residual()
	text := m.small(math.Abs(r), style)
	switch {
	case m.Redundancy == 0:
		return ""
	case strings.Trim(text, "0. m°in") == "":
		return text
	case r < 0:
		return "−" + text
	}
	return "+" + text
}

// small writes what is too small for feet and inches, or an angle.
func (m Measure) small(v float64, style length.Style) string {
	switch {
	case m.Kind == Square:
		return fmt.Sprintf("%.2f°", v*180/math.Pi)
	case style.Unit.Metric():
		return fmt.Sprintf("%.0f mm", v*1000)
	}
	return fmt.Sprintf("%.2f in", v/length.Inch)
}

func joined(pairs []Pair, last string) string {
	names := make([]string, len(pairs))
	for i, p := range pairs {
		names[i] = p.Name
	}
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " " + last + " " + names[len(names)-1]
}

// sentence begins with a capital and ends with a full stop.
func sentence(text string) string {
	return strings.ToUpper(text[:1]) + strings.TrimSuffix(text[1:], ".") + "."
}
