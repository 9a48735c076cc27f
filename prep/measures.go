package prep

import (
	"fmt"
	"math"

	"groundrow/tapeout/survey"
)

// Measure is one distance to measure that was not used to place anything, or what
// was read of it.
type Measure struct {
	From, To string    // as a person knows them
	Ends     [2]string // as a reading names them
	Expected float64   // metres
	Why      string
	Ready    bool    // both marks are placed
	Nth      int     // which reading of this distance it is, from 0
	Read     *Judged // nil: not read yet
}

// Key names the measure, whether it has been read yet or not.
func (m Measure) Key() string { return fmt.Sprintf("%s–%s %d", m.Ends[0], m.Ends[1], m.Nth) }

func (m Measure) joins(from, to string) bool {
	return Reading{From: m.Ends[0], To: m.Ends[1]}.Joins(from, to)
}

// MeasuresOf lists what is to be measured on a floor and what has been read, in
// walking order: the pivots, the check list of the scene, then what the verdict
// asks for and whatever else was read. A distance that was read several times is
// there as often, and once more where it is to be read again.
func MeasuresOf(p *Production, w *FloorWork) []Measure {
	l := measureList{verdict: w.Verdict(), used: map[string]bool{}}
	if pair, ok := Pivots(w.Floor); ok {
		l.add(Measure{From: w.Floor.Pivots[0].Name, To: w.Floor.Pivots[1].Name, Ends: [2]string{FirstPivot, SecondPivot},
			Expected: pair.Base(), Why: "pivot to pivot", Ready: true})
	}
	for _, c := range ChecksOf(p, w) {
		a, b := w.Marks[c.From], w.Marks[c.To]
		l.add(Measure{From: a.Label, To: b.Label, Ends: [2]string{a.Label, b.Label}, Expected: c.Expected, Why: string(c.Why),
			Ready: !a.Progress.Placed.Open() && !b.Progress.Placed.Open()})
	}
	more := l.verdict.Ask
	if l.verdict.State == Accepted {
		more = append(more[:len(more):len(more)], l.verdict.Cross...)
	}
	for _, a := range more {
		if !l.has(a.From, a.To) {
			l.add(Measure{From: a.From, To: a.To, Ends: [2]string{a.From, a.To}, Expected: a.Expected, Why: a.Why, Ready: true})
		}
	}
	for _, r := range l.verdict.Readings {
		if !l.used[r.ID] {
			l.add(Measure{From: r.From, To: r.To, Ends: [2]string{r.From, r.To}, Expected: r.Expected, Why: "one more measure", Ready: true})
		}
	}
	return l.list
}

// measureList is one on its way.
type measureList struct {
	verdict *Verdict
	used    map[string]bool // readings that are in the list
	list    []Measure
}

// add lists a distance with everything that has been read of it, and once more
// when nothing has been read or the verdict asks for it.
func (l *measureList) add(m Measure) {
	for i := range l.verdict.Readings {
		if r := &l.verdict.Readings[i]; !l.used[r.ID] && m.joins(r.From, r.To) {
			l.used[r.ID], m.Read = true, r
			l.list = append(l.list, m)
			m.Nth, m.Read, m.Why = m.Nth+1, nil, "read again"
		}
	}
	if m.Nth == 0 || l.asked(m) {
		l.list = append(l.list, m)
	}
}

func (l *measureList) asked(m Measure) bool {
	for _, a := range l.verdict.Ask {
		if m.joins(a.From, a.To) {
			return true
		}
	}
	return false
}

func (l *measureList) has(from, to string) bool {
	for _, m := range l.list {
		if m.joins(from, to) {
			return true
		}
	}
	return false
}

// Belongs says whether a length in metres belongs to a measure, and if not, why
// and what to do.
func (p *Production) Belongs(m Measure, read float64) (good bool, text string) {
	off, good := p.offBy(m, read)
	if good {
		return true, "It belongs: " + off
	}
	return false, "It does not belong: " + off + fmt.Sprintf(" Measure again; if it stays, %s or %s lies wrong.", m.From, m.To)
}

// offBy says how a length compares with what is expected, with the likely slip;
// good tells whether it is in order.
func (p *Production) offBy(m Measure, read float64) (text string, good bool) {
	allowed := p.CheckAllowed()
	good, cause := survey.Compare(m.Expected, read, allowed)
	format, small := p.Style().Format, p.Style().FormatSmall
	if good {
		return fmt.Sprintf("expected %s, and up to %s more or less is in order.", format(m.Expected), small(allowed)), true
	}
	way := "long"
	if read < m.Expected {
		way = "short"
	}
	text = fmt.Sprintf("%s too %s; %s is expected, give or take %s.", small(math.Abs(read-m.Expected)), way, format(m.Expected), small(allowed))
	if survey.Slip(cause) {
		return text + " Most likely " + cause + ".", false
	}
	return text + " None of the usual slips explains it.", false
}

// Judgement says what all readings together make of one that was kept, and what to
// do; good is true when it belongs.
func (p *Production) Judgement(m Measure) (good bool, text string) {
	off, _ := p.offBy(m, m.Read.Metres)
	switch m.Read.Grade {
	case GoodReading:
		return true, "It belongs."
	case EdgeReading:
		return true, "At the edge: " + off + " Placing and reading explain as much; go on."
	case WrongReading:
		return false, "The reading is wrong and the marks are in order: " + off + " Nothing has to be placed again."
	case AtWrongMark:
		return false, "One of its marks lies wrong: " + off + " See below which."
	case NoSuchMark:
		return false, "One of its marks is not on this floor any more, so that it says nothing."
	}
	_, text = p.Belongs(m, m.Read.Metres)
	return false, text
}
