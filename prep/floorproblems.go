package prep

import (
	"fmt"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// floorProblems collects what a person must look at on one floor, in the order in
// which it is cured: the room, the plan in it, the marks, the tape.
func floorProblems(p *Production, w *FloorWork) []Problem {
	var out []Problem
	out = append(out, roomProblems(w.Floor)...)
	out = append(out, layingProblems(p, w)...)
	out = append(out, overhangProblems(p, w)...)
	out = append(out, clearProblems(p, w)...)
	out = append(out, wayProblems(p, w)...)
	out = append(out, mirrorProblems(w)...)
	out = append(out, markProblems(p, w)...)
	return out
}

func roomProblems(f *floor.Floor) []Problem {
	var out []Problem
	add := func(rule, got string) {
		out = append(out, Problem{Rule: rule, Where: f.Name, Place: PlaceFloors, ID: string(f.ID), Got: got})
	}
	switch {
	case len(f.Outline.Vertices) == 0:
		add(RuleNotMeasured, "")
	default:
		if err := floor.CheckOutline(f.Outline); err != nil {
			add(RuleOutline, err.Error())
		}
	}
	if f.Rule == floor.AskFirst || f.Rule == floor.NoTape || f.Rule == "" {
		add(RuleOwner, string(ownerRule(f)))
	}
	if len(f.Pivots) < 2 {
		add(RulePivots, "")
	} else if f.Pivots[0].At.To(f.Pivots[1].At) < closePivots {
		add(RuleSamePivots, "")
	}
	return out
}

// closePivots is the distance in metres below which two pivots are one.
const closePivots = 0.001

func layingProblems(p *Production, w *FloorWork) []Problem {
	var out []Problem
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		t := w.Floor.Decide(e)
		add := func(rule string) {
			out = append(out, Problem{Rule: rule, Where: e.Name, Place: PlaceFloors, ID: string(e.ID), Got: string(t.How)})
		}
		if t.How != floor.AsDrawn && t.Decided.Open() && !(w.Floor.Kind == floor.Stage && e.Kind.House()) {
			add(RuleOpen)
		}
		if len(e.Paths) == 0 && t.How != floor.LeftOut {
			out = append(out, Problem{Rule: RuleNoLines, Where: e.Name, Place: PlacePlan, ID: string(e.ID)})
		}
	}
	return append(out, besideProblems(p, w.Floor)...)
}

// besideProblems names the levels that are laid beside the one below: on the
// floor they have no edge to fall from, and the real ones do.
func besideProblems(p *Production, f *floor.Floor) []Problem {
	var out []Problem
	said := map[plan.LevelID]bool{}
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		level := p.Plan.Level(e.Level)
		if level == nil || said[level.ID] || f.Decide(e).How != floor.MovedAside {
			continue
		}
		said[level.ID] = true
		out = append(out, Problem{Rule: RuleSecondLevel, Where: level.Name, Place: PlaceFloors, ID: string(e.ID)})
	}
	return out
}

// overhangProblems names what sticks out of the floor, unless the decision on it
// already says what is done about that.
func overhangProblems(p *Production, w *FloorWork) []Problem {
	style := p.Style()
	var out []Problem
	for _, o := range w.Overhangs {
		e := p.Plan.Element(o.Element)
		if w.Floor.Decide(e).How == floor.CutShort {
			continue
		}
		out = append(out, Problem{
			Rule: RuleOutside, Where: e.Name, Place: PlaceFloors, ID: string(e.ID),
			Got: style.Format(o.Length), Limit: style.Format(o.Of),
		})
	}
	return out
}

func nameOf(p *Production, id plan.ElementID) string {
	if e := p.Plan.Element(id); e != nil {
		return e.Name
	}
	return string(id)
}

// markProblems names the marks that the chosen pivots do not serve, all of one
// fault together, and the printed labels that nothing needs any more.
func markProblems(p *Production, w *FloorWork) []Problem {
	var weak, far, lost, poor []MeasuredMark
	for _, m := range w.Marks {
		switch {
		case m.Advised == "":
			lost = append(lost, m)
		case !m.Good:
			poor = append(poor, m)
		}
		if m.Weak {
			weak = append(weak, m)
		}
		if m.Far {
			far = append(far, m)
		}
	}
	var out []Problem
	if len(weak) > 0 {
		out = append(out, Problem{
			Rule: RuleWeak, Where: labelsOf(weak), Place: PlaceMarks, ID: weak[0].Label,
			Got: fmt.Sprintf("%.0f°", p.Settings.WeakAngle),
		})
	}
	if len(far) > 0 {
		out = append(out, Problem{
			Rule: RuleFar, Where: labelsOf(far), Place: PlaceMarks, ID: far[0].Label,
			Limit: p.Style().Format(p.Settings.TapeLength),
		})
	}
	if len(lost) > 0 {
		out = append(out, Problem{Rule: RuleUnreached, Where: labelsOf(lost), Place: PlaceMarks, ID: lost[0].Label, Got: lost[0].Ways[0].Why})
	}
	if len(poor) > 0 {
		out = append(out, Problem{Rule: RulePoor, Where: labelsOf(poor), Place: PlaceMarks, ID: poor[0].Label, Limit: p.Fine(p.Errors().Allowed)})
	}
	for _, g := range w.Gone {
		out = append(out, Problem{Rule: RuleGone, Where: g.Label, Place: PlaceMarks, ID: g.Label})
	}
	return out
}

// labelsShown bounds how many labels one sentence names.
const labelsShown = 6

// labelsOf words a list of marks: "mark A", "marks A and B", "14 marks (A, B, …)".
func labelsOf(ms []MeasuredMark) string {
	if len(ms) == 1 {
		return "mark " + ms[0].Label
	}
	var labels []string
	for _, m := range ms[:min(len(ms), labelsShown)] {
		labels = append(labels, m.Label)
	}
	if len(ms) > labelsShown {
		labels = append(labels, "…")
	}
	return fmt.Sprintf("%d marks (%s)", len(ms), strings.Join(labels, ", "))
}
