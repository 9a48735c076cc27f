package marksplace

import (
	"fmt"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// pivotToPivot is why the base of the two-tape method is measured.
const pivotToPivot = "pivot to pivot"

// check is one distance to measure that was not used to place anything.
type check struct {
	from, to string
	expected float64 // metres
	why      string
	ready    bool // both marks are placed

	ends [2]string    // as a reading names them
	nth  int          // which reading of this distance it is, from 0
	read *prep.Judged // nil: not read yet
}

// key names the row of a check, whether it has been read yet or not.
func (c check) key() string { return fmt.Sprintf("%s–%s %d", c.ends[0], c.ends[1], c.nth) }

// checksOf lists the check measures: the pivots first, then the marks in walking
// order.
func checksOf(p *prep.Production, w *prep.FloorWork) []check {
	var out []check
	if pair, ok := prep.Pivots(w.Floor); ok {
		out = append(out, check{w.Floor.Pivots[0].Name, w.Floor.Pivots[1].Name, pair.Base(), pivotToPivot, true, [2]string{prep.FirstPivot, prep.SecondPivot}, 0, nil})
	}
	for _, c := range prep.ChecksOf(p, w) {
		a, b := w.Marks[c.From], w.Marks[c.To]
		out = append(out, check{a.Label, b.Label, c.Expected, string(c.Why),
			!a.Progress.Placed.Open() && !b.Progress.Placed.Open(), [2]string{a.Label, b.Label}, 0, nil})
	}
	return out
}

// measuresOf lists what is to be measured and what has been read: the check
// measures, what the verdict asks for, and whatever else was read.
func measuresOf(p *prep.Production, w *prep.FloorWork, v *prep.Verdict) []check {
	var out []check
	used := map[string]bool{}
	add := func(c check, more bool) {
		for i := range v.Readings {
			if r := &v.Readings[i]; !used[r.ID] && r.Joins(c.ends[0], c.ends[1]) {
				used[r.ID], c.read = true, r
				out = append(out, c)
				c.nth, c.read, c.why = c.nth+1, nil, "read again"
			}
		}
		if c.nth == 0 || more {
			out = append(out, c)
		}
	}
	asked := func(from, to string) (why string, ok bool) {
		for _, a := range v.Ask {
			if (prep.Reading{From: a.From, To: a.To}).Joins(from, to) {
				return a.Why, true
			}
		}
		return "", false
	}
	for _, c := range checksOf(p, w) {
		_, again := asked(c.ends[0], c.ends[1])
		add(c, again)
	}
	listed := func(from, to string) bool {
		for _, c := range out {
			if (prep.Reading{From: c.ends[0], To: c.ends[1]}).Joins(from, to) {
				return true
			}
		}
		return false
	}
	for _, a := range v.Ask {
		if !listed(a.From, a.To) {
			add(check{from: a.From, to: a.To, expected: a.Expected, why: a.Why, ready: true, ends: [2]string{a.From, a.To}}, true)
		}
	}
	for _, r := range v.Readings {
		if !used[r.ID] {
			add(check{from: r.From, to: r.To, expected: r.Expected, why: "one more measure", ready: true, ends: [2]string{r.From, r.To}}, false)
		}
	}
	return out
}

func checkColumns() []grid.Column {
	return []grid.Column{
		{Title: "From", Width: 64, ReadOnly: true, Compare: byLabel},
		{Title: "To", Width: 64, ReadOnly: true, Compare: byLabel},
		{Title: "Expected", Width: 100, Right: true, ReadOnly: true, Compare: byLength},
		{Title: "Read", Width: 90, Right: true},
		{Title: "Differs", Width: 80, Right: true, ReadOnly: true},
		{Title: "Verdict", Width: 190, Grow: true, ReadOnly: true},
		{Title: "Why", Width: 150, ReadOnly: true},
		{Title: "Both placed", Width: 90, ReadOnly: true},
		{Title: "Read by", Width: 150, ReadOnly: true},
	}
}

func checkRows(v *desk.View, list []check) []grid.Row {
	rows := make([]grid.Row, len(list))
	for i, c := range list {
		ready := "not yet"
		if c.ready {
			ready = "yes"
		}
		cells := []string{c.from, c.to, v.Style().Format(c.expected), "", "", "", c.why, ready, ""}
		row := grid.Row{ID: c.key(), Dim: !c.ready && c.read == nil, Cells: cells}
		if r := c.read; r != nil {
			cells[readColumn], cells[readColumn+1] = v.P.ShowReading(r.Reading), v.Style().Format(r.Off)
			cells[readColumn+2] = r.Grade.Sign() + " " + r.Words()
			cells[readColumn+5] = decision(floor.Decision{By: r.By, On: r.On})
			row.Bold = r.Grade != prep.GoodReading && r.Grade != prep.EdgeReading
		}
		rows[i] = row
	}
	return rows
}

// readColumn is the column into which a reading is typed.
const readColumn = 3

// verdict says whether a reading belongs to a check, and if not, why.
func verdict(p *prep.Production, c check, read float64) (good bool, text string) {
	allowed := p.CheckAllowed()
	good, cause := survey.Compare(c.expected, read, allowed)
	format := p.Style().Format
	if good {
		return true, fmt.Sprintf("It belongs: expected %s, and up to %s more or less is in order.", format(c.expected), format(allowed))
	}
	off, way := read-c.expected, "long"
	if off < 0 {
		off, way = -off, "short"
	}
	text = fmt.Sprintf("It does not belong: %s too %s; %s is expected, give or take %s.", format(off), way, format(c.expected), format(allowed))
	if likely(cause) {
		text += " Most likely " + cause + "."
	} else {
		text += " None of the usual slips explains it."
	}
	return false, text + fmt.Sprintf(" Measure again; if it stays, %s or %s lies wrong.", c.from, c.to)
}

// likely tells whether a cause of survey.Compare names a slip.
func likely(cause string) bool { return !strings.Contains(cause, "measure again") }

// located says where two tapes meet, and which mark is meant to be near there.
func located(p *prep.Production, w *prep.FloorWork, r survey.Reading) (good bool, text string) {
	pair, ok := prep.Pivots(w.Floor)
	if !ok {
		return false, "Two pivots are needed first."
	}
	style := p.Style()
	at, err := pair.Locate(r)
	if err != nil {
		return false, cannotMeet(err, pair.Base(), style.Format)
	}
	text = fmt.Sprintf("The tapes meet at %s up, %s.", style.FormatUp(at.Y), style.FormatOver(at.X))
	best := -1
	for i, m := range w.Marks {
		if best < 0 || m.At.To(at) < w.Marks[best].At.To(at) {
			best = i
		}
	}
	if best >= 0 {
		m := w.Marks[best]
		text += fmt.Sprintf(" The nearest mark is %s, %s away, at %s up, %s.",
			m.Label, style.Format(m.At.To(at)), style.FormatUp(m.Up()), style.FormatOver(m.Over()))
	}
	return true, text
}
