package marksplace

import (
	"fmt"
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/route"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// checkStep is how far apart the rows are in which check measures are walked, in
// metres (common practice, no source).
const checkStep = 1.5

// pivotToPivot is why the base of the two-tape method is measured.
const pivotToPivot = "pivot to pivot"

// check is one distance to measure that was not used to place anything.
type check struct {
	from, to string
	expected float64 // metres
	why      string
	ready    bool // both marks are placed
}

// checksOf lists the check measures: the pivots first, then the marks in walking
// order.
func checksOf(w *prep.FloorWork) []check {
	var out []check
	if pair, ok := prep.Pivots(w.Floor); ok {
		out = append(out, check{w.Floor.Pivots[0].Name, w.Floor.Pivots[1].Name, pair.Base(), pivotToPivot, true})
	}
	list := w.Checks()
	middles := make([]plane.Point, len(list))
	for i, c := range list {
		middles[i] = w.Marks[c.From].At.Towards(w.Marks[c.To].At, 0.5)
	}
	for _, i := range route.ByRows(plane.Point{}, middles, checkStep) {
		c := list[i]
		a, b := w.Marks[c.From], w.Marks[c.To]
		out = append(out, check{a.Label, b.Label, c.Expected, string(c.Why),
			!a.Progress.Placed.Open() && !b.Progress.Placed.Open()})
	}
	return out
}

func checkColumns() []grid.Column {
	return []grid.Column{
		{Title: "From", Width: 100, Grow: true, ReadOnly: true, Compare: byLabel},
		{Title: "To", Width: 100, Grow: true, ReadOnly: true, Compare: byLabel},
		{Title: "Expected", Width: 100, Right: true, ReadOnly: true, Compare: byLength},
		{Title: "Why", Width: 170, ReadOnly: true},
		{Title: "Both placed", Width: 100, ReadOnly: true},
	}
}

func checkRows(v *desk.View, list []check) []grid.Row {
	rows := make([]grid.Row, len(list))
	for i, c := range list {
		ready := "not yet"
		if c.ready {
			ready = "yes"
		}
		rows[i] = grid.Row{ID: strconv.Itoa(i), Dim: !c.ready, Cells: []string{
			c.from, c.to, v.Style().Format(c.expected), c.why, ready,
		}}
	}
	return rows
}

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
