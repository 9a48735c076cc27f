package prep

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"groundrow/tapeout/plane"
)

// namesShown bounds how many marks or measures one sentence names.
const namesShown = 6

// Sentence says the verdict in plain words, with what has to be known about it.
func (v Verdict) Sentence(p *Production) string {
	said := []string{v.Headline(p)}
	for _, f := range v.Faults {
		said = append(said, v.FaultSentence(p, f))
	}
	for _, n := range v.Flat[:min(len(v.Flat), namesShown)] {
		said = append(said, v.TriangleSentence(p, n))
	}
	if len(v.Unchecked) > 0 && len(v.Readings) > 0 {
		said = append(said, fmt.Sprintf("No good reading joins %s.", MarksNamed(v.Unchecked)))
	}
	if v.State == Accepted && len(v.OneWay) > 0 {
		said = append(said, fmt.Sprintf("Measured one way only, so that a slip across the tape does not show: %s.", MarksNamed(v.OneWay)))
	}
	return strings.Join(said, " ")
}

// Headline says the verdict in one sentence, with how much was read, by whom and
// when last.
func (v Verdict) Headline(p *Production) string {
	if len(v.Readings) == 0 {
		return "Not enough checked: no check measure has been read yet."
	}
	said := map[Acceptance]string{
		Accepted: "The floor is accepted", WrongMarks: "The floor has wrong marks", DoubtfulMarks: "The floor has doubtful marks",
		NotEnough: fmt.Sprintf("Not enough checked: %s in no good reading", markCount(len(v.Unchecked))),
	}[v.State]
	var who []string
	last := v.Readings[0].Reading
	for _, r := range v.Readings {
		if r.By != "" && !slices.Contains(who, r.By) {
			who = append(who, r.By)
		}
		if r.On.After(last.On) {
			last = r.Reading
		}
	}
	said += fmt.Sprintf("; %s read", Counted(len(v.Readings), "measure"))
	if len(who) > 0 {
		said += " by " + Listed(who)
	}
	return said + ByWhom("", last.On) + "."
}

func markCount(n int) string {
	if n == 1 {
		return "1 mark is"
	}
	return fmt.Sprintf("%d marks are", n)
}

// ByWhom says who did something and when, as the end of a sentence; empty when
// neither is known.
func ByWhom(who string, on time.Time) string {
	said := ""
	if who != "" {
		said = " by " + who
	}
	if !on.IsZero() {
		said += ", " + on.Local().Format("Mon 2 Jan 15:04")
	}
	return said
}

// Next says what to do next; empty when there is nothing.
func (v Verdict) Next(p *Production) string {
	switch {
	case len(v.Ask) > 0:
		return "Measure also " + asksNamed(p, v.Ask) + "."
	case v.State == WrongMarks:
		return "Place the wrong marks again, delete their readings and read them again before joining anything."
	case v.State == DoubtfulMarks:
		return "Find the doubtful marks by the other method before joining anything."
	case v.State == NotEnough:
		return "Read the rest of the check measures."
	case len(v.OneWay) > 0 && len(v.Cross) > 0:
		return "Join up, or to be sure of every direction measure also " + asksNamed(p, v.Cross) + "."
	}
	return "Join up."
}

// FaultSentence says what one fault is, or what it may be.
func (v Verdict) FaultSentence(p *Production, f Fault) string {
	cause := ""
	if f.Cause != "" {
		cause = ", most likely " + f.Cause
	}
	switch {
	case f.Found() && len(f.Readings) == 1:
		r := v.Readings[f.Readings[0]]
		order := " and the marks are in order"
		if v.suspects(r.From) || v.suspects(r.To) {
			order = ""
		}
		return fmt.Sprintf("The reading %s–%s of %s is wrong%s: %s is expected%s.",
			r.From, r.To, p.ShowReading(r.Reading), cause, p.Style().Format(r.Expected), order)
	case f.Found():
		sure := ""
		if f.Sure > 0 {
			sure = fmt.Sprintf(" (to within %s)", p.Style().FormatSmall(max(f.Sure, p.Style().Grain())))
		}
		return fmt.Sprintf("%s lies wrong, about %s from its place%s: %s%s.",
			capital(placeNamed(f.Places[0])), p.Style().FormatSmall(f.Shift.Len()), sure, p.shiftWords(f.Shift), cause)
	}
	var may []string
	for _, name := range f.Places {
		may = append(may, placeNamed(name))
	}
	for _, i := range f.Readings {
		r := v.Readings[i]
		may = append(may, fmt.Sprintf("the reading %s–%s", r.From, r.To))
	}
	if len(may) > namesShown {
		may = append(may[:namesShown], "others")
	}
	return fmt.Sprintf("One of these is wrong, and the readings do not tell which: %s.", Listed(may))
}

// suspects tells whether a fault lies, or may lie, in a place.
func (v Verdict) suspects(place string) bool {
	return slices.ContainsFunc(v.Faults, func(f Fault) bool { return slices.Contains(f.Places, place) })
}

// shiftWords says how far a place is off by depth and side; what is below the
// rounding step is not said.
func (p *Production) shiftWords(by plane.Point) string {
	style := p.Style()
	var out []string
	if math.Abs(by.Y) >= style.Grain() {
		out = append(out, style.FormatSmall(math.Abs(by.Y))+" too far "+depthOf(by.Y))
	}
	if math.Abs(by.X) >= style.Grain() {
		out = append(out, style.FormatSmall(math.Abs(by.X))+" too far "+sideOf(by.X))
	}
	return strings.Join(out, " and ")
}

// Words says what a reading is in one or two words, for a table.
func (j Judged) Words() string {
	if j.Cause != "" && j.Grade != GoodReading && j.Grade != AtWrongMark {
		return string(j.Grade) + ": " + j.Cause
	}
	return string(j.Grade)
}

// Sign is a shape for each grade, for those who do not see its colour.
func (g Grade) Sign() string {
	switch g {
	case GoodReading:
		return "✓"
	case EdgeReading:
		return "~"
	case DoubtfulReading, NoSuchMark:
		return "?"
	}
	return "✗"
}

func placeNamed(name string) string {
	if name == FirstPivot || name == SecondPivot {
		return name
	}
	return "mark " + name
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// MarksNamed names marks in a sentence, the first few where they are many: "mark K",
// "marks K and M", "12 marks (A, B, C, D, E, F, …)".
func MarksNamed(labels []string) string {
	if len(labels) == 1 {
		return "mark " + labels[0]
	}
	shown := labels
	if len(labels) > namesShown {
		shown = append(labels[:namesShown:namesShown], "…")
		return fmt.Sprintf("%d marks (%s)", len(labels), strings.Join(shown, ", "))
	}
	return "marks " + Listed(shown)
}

func asksNamed(p *Production, asks []Ask) string {
	var out []string
	for _, a := range asks[:min(len(asks), namesShown)] {
		out = append(out, fmt.Sprintf("%s–%s (%s)", a.From, a.To, p.Style().Format(a.Expected)))
	}
	if more := len(asks) - len(out); more > 0 {
		out = append(out, fmt.Sprintf("%d more", more))
	}
	return Listed(out)
}

// readingProblems names the marks that the readings of a floor say are wrong or
// leave in doubt. A reading that has been found wrong harms nothing.
func readingProblems(p *Production, w *FloorWork) []Problem {
	if len(p.ReadingsOn(w.Floor.ID)) == 0 {
		return nil
	}
	var out []Problem
	v := w.Verdict()
	for _, f := range v.Faults {
		if len(f.Places) == 0 {
			continue
		}
		pr := Problem{Rule: RuleWrongMark, Where: w.Floor.Name, Place: PlaceMarks, ID: f.Places[0], Got: v.FaultSentence(p, f)}
		if !f.Found() {
			pr.Rule, pr.Limit = RuleDoubtful, v.Next(p)
		}
		out = append(out, pr)
	}
	return out
}
