package prep

import (
	"fmt"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
)

// parts returns one line for each part of the job, in the order of the places.
func (j *job) parts() []Part {
	return []Part{
		j.planPart(), j.floorsPart(), j.marksPart(), j.tapePart(), j.suppliesPart(),
		j.crewPart(), j.standInsPart(), j.transferPart(), j.paperPart(),
	}
}

func (j *job) planPart() Part {
	part := Part{Place: PlacePlan, State: Ready}
	pl := &j.p.Plan
	n := len(pl.Elements)
	if n == 0 {
		part.State = Nothing
		part.Sentence = "Nothing is drawn yet: read the designer's plan in, or draw its first element."
		return part
	}
	part.Figure = Counted(n, "element")
	part.Sentence = fmt.Sprintf("%s in %s", part.Figure, Counted(len(pl.Scenes), "scene"))
	if pl.Revision != "" {
		part.Sentence += ", revision " + pl.Revision
	}
	bare := 0
	for _, e := range pl.Elements {
		if len(e.Paths) == 0 {
			bare++
		}
	}
	switch {
	case bare > 0:
		part.State = NeedsYou
		part.Sentence += fmt.Sprintf("; %s without lines.", Counted(bare, "element"))
	case !(pl.Scale > 0):
		part.State = UnderWay
		part.Sentence += "; its scale is not known."
	default:
		part.Sentence += ", at " + length.Scale(pl.Scale).String() + "."
	}
	return part
}

func (j *job) floorsPart() Part {
	part := Part{Place: PlaceFloors, State: Ready}
	if len(j.floors) == 0 {
		part.State = Nothing
		part.Sentence = "No floor yet: add the rehearsal room and measure its walls."
		return part
	}
	unmeasured, open, out, asked, narrow := 0, 0, 0, 0, 0
	for _, w := range j.floors {
		for _, pr := range w.Problems {
			switch pr.Rule {
			case RuleNotMeasured:
				unmeasured++
			case RuleOpen:
				open++
			case RuleOutside, RuleKeepClear, RuleFigures:
				out++
			case RuleWay, RuleNoWay:
				narrow++
			case RuleOwner:
				asked++
			}
		}
	}
	part.Figure = Counted(len(j.floors), "floor")
	part.Sentence = part.Figure
	for _, f := range []struct {
		n    int
		text string
	}{
		{unmeasured, "not measured"}, {asked, "whose owner must still be asked about tape"},
		{out, "in the way or outside"}, {narrow, wordFor(narrow, "way") + " too narrow"}, {open, "not decided by anyone"},
	} {
		if f.n > 0 {
			part.Sentence += fmt.Sprintf("; %d %s", f.n, f.text)
			part.State = NeedsYou
		}
	}
	if part.State == Ready {
		part.Sentence += ", all measured and every treatment decided"
	}
	part.Sentence += "."
	return part
}

func (j *job) marksPart() Part {
	part := Part{Place: PlaceMarks, State: UnderWay}
	total, placed, checked, weak := 0, 0, 0, 0
	for _, w := range j.rooms() {
		for _, m := range w.Marks {
			total++
			if !m.Progress.Placed.Open() {
				placed++
			}
			if !m.Progress.Checked.Open() {
				checked++
			}
			if m.Weak || m.Far {
				weak++
			}
		}
	}
	if total == 0 {
		part.State = Nothing
		part.Sentence = "No marks yet: they follow from the plan and a floor."
		return part
	}
	part.Figure = fmt.Sprintf("%d of %d", placed, total)
	part.Sentence = fmt.Sprintf("%s to find in the rehearsal rooms: %d placed, %d checked", Counted(total, "mark"), placed, checked)
	if weak > 0 {
		part.Sentence += fmt.Sprintf("; %d better found by up and over than by two tapes", weak)
	}
	part.Sentence += "."
	if placed == total && checked == total {
		part.State = Ready
	}
	return part
}

// rooms returns the floors that are rehearsed on.
func (j *job) rooms() []*FloorWork {
	return filter(j.floors, func(w *FloorWork) bool { return w.Floor.Kind != floor.Stage })
}

func (j *job) tapePart() Part {
	part := Part{Place: PlaceTape, State: Ready}
	metres, undecided := 0.0, 0.0
	rolls, stocks := 0, 0
	for _, r := range j.buy {
		metres += r.Total
		rolls += r.Rolls
		switch {
		case r.Stock == "":
			undecided = r.Total
		case r.Total > 0:
			stocks++
		}
	}
	if !(metres > 0) {
		part.State = Nothing
		part.Sentence = "No tape to lay yet: it follows from the plan and a floor."
		return part
	}
	style := j.p.Style()
	part.Figure = style.Format(metres)
	part.Sentence = fmt.Sprintf("%s of tape over all floors: %s of %s", part.Figure, Counted(rolls, "roll"), Counted(stocks, "stock"))
	if undecided > 0 {
		part.State = NeedsYou
		part.Sentence += fmt.Sprintf("; for %s no tape is chosen", style.Format(undecided))
	}
	part.Sentence += "."
	return part
}

func (j *job) suppliesPart() Part {
	part := Part{Place: PlaceSupplies, State: Ready}
	if len(j.p.Stocks)+len(j.p.Items) == 0 {
		part.State = Nothing
		part.Sentence = "No tape or kit listed yet: start from the usual lists."
		return part
	}
	rolls, things := 0, 0
	first := j.p.Needed()
	for _, r := range j.buy {
		if r.Short() {
			rolls += r.Buy
			first = earlier(first, r.OrderBy)
		}
	}
	for _, n := range j.needs {
		if n.Short {
			things += n.Buy
			first = earlier(first, n.OrderBy)
		}
	}
	part.Figure = j.p.Money(j.budget.Total)
	switch {
	case rolls+things == 0:
		part.Sentence = "Nothing is short"
	default:
		part.State = NeedsYou
		var short []string
		if rolls > 0 {
			short = append(short, Counted(rolls, "roll"))
		}
		if things > 0 {
			short = append(short, Counted(things, "piece")+" of the kit")
		}
		part.Sentence = "Short of " + Listed(short)
		if !first.IsZero() {
			part.Sentence += ", the first " + j.toBeOrdered(first) + " by " + day(first)
		}
	}
	switch b := j.budget; {
	case b.Over > 0:
		part.State = NeedsYou
		part.Sentence += fmt.Sprintf("; %s is %s over the budget", part.Figure, j.p.Money(b.Over))
	case b.Limit > 0:
		part.Sentence += fmt.Sprintf("; %s of %s", part.Figure, j.p.Money(b.Limit))
	}
	part.Sentence += "."
	return part
}

// toBeOrdered words whether there is still time to order; by the calendar, since
// an order goes out at any hour of its day.
func (j *job) toBeOrdered(by time.Time) string {
	if !j.now.IsZero() && daysBetween(j.now, by) < 0 {
		return "should have been ordered"
	}
	return "to be ordered"
}
