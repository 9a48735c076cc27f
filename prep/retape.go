package prep

import (
	"cmp"
	"slices"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// Retape is what has to be taped again on a floor because it is worn.
type Retape struct {
	Marks  []MeasuredMark // worn ones, in the order of the marks
	Strips []RetapeStrip
	Tape   []supplies.Run // what it takes, a run for each stock that is needed
}

// RetapeStrip is one line, or a stretch of one, to be laid again.
type RetapeStrip struct {
	floor.Line
	Worn  []string // the worn marks on it, along the line
	Whole bool     // from end to end
}

// RetapeEnd is how far beyond a worn mark a strip is laid again when the next mark
// still holds, in metres (common practice, no source).
const RetapeEnd = 0.3

// RetapeOf lists what is worn on a floor. Lines are laid again between
// worn marks, and for RetapeEnd on each side of a worn mark whose neighbour still
// holds. Worn marks get a tab again, and worn corners a patch.
func RetapeOf(p *Production, w *FloorWork) Retape {
	var r Retape
	q := supplies.Quantities{}
	for _, m := range w.Marks {
		if !m.Progress.Worn.Open() {
			r.Marks = append(r.Marks, m)
			q.Marks = append(q.Marks, m.Mark)
		}
	}
	if len(r.Marks) == 0 {
		return r
	}
	for _, l := range w.Lines {
		for _, s := range wornStrips(l, w.Marks) {
			r.Strips = append(r.Strips, s)
			q.Lines = append(q.Lines, s.Line)
		}
	}
	a := p.Settings.Allowances
	a.WearWeek, a.Weeks = 0, 0 // this is the wear
	r.Tape = slices.DeleteFunc(supplies.TapeRun(q, p.Stocks, p.Orders, a, p.Needed()), func(t supplies.Run) bool { return t.Total == 0 })
	return r
}

// wornStrips returns the stretches of a line that worn marks on it call for: one
// for each row of worn marks that no sound one interrupts.
func wornStrips(l floor.Line, all []MeasuredMark) []RetapeStrip {
	length := l.Length()
	var out []RetapeStrip
	var s RetapeStrip
	var from, to float64
	end := func() {
		if len(s.Worn) > 0 {
			s.Line, s.Whole = l, from <= 0 && to >= length
			s.Edge = l.Part(max(0, from/length), min(1, to/length))
			out = append(out, s)
		}
		s = RetapeStrip{}
	}
	for _, m := range marksAlong(l, all) {
		if m.Progress.Worn.Open() {
			end()
			continue
		}
		if len(s.Worn) == 0 {
			from = m.along - RetapeEnd
		}
		s.Worn, to = append(s.Worn, m.Label), m.along+RetapeEnd
	}
	end()
	return out
}

// markAlong is a mark on a line, and how far along it, in metres.
type markAlong struct {
	MeasuredMark
	along float64
}

func marksAlong(l floor.Line, all []MeasuredMark) []markAlong {
	var out []markAlong
	for _, m := range all {
		if m.Kind == marks.Spike || l.Length() <= 0 {
			continue
		}
		if at, t := l.Nearest(m.At); at.To(m.At) <= sameMark {
			out = append(out, markAlong{m, t * l.Length()})
		}
	}
	slices.SortStableFunc(out, func(a, b markAlong) int { return cmp.Compare(a.along, b.along) })
	return out
}

// StripWords names a strip that is to be laid again, and how much of it.
func StripWords(p *Production, s RetapeStrip) string {
	name := string(s.Role)
	if e := p.Plan.Element(s.Element); e != nil && e.Name != "" {
		name = e.Name
	}
	switch {
	case s.Whole:
		return name + ", the whole strip"
	case len(s.Worn) == 1:
		return name + ", around " + s.Worn[0]
	}
	return name + ", from " + s.Worn[0] + " to " + s.Worn[len(s.Worn)-1]
}

// RetapeWords says what tape it takes, stock by stock.
func RetapeWords(p *Production, r Retape) []string {
	var out []string
	for _, t := range r.Tape {
		name := "tape that is not chosen yet"
		if s := p.Stock(t.Stock); s != nil {
			name = s.Name
		}
		out = append(out, p.Style().Format(t.Total)+" of "+name)
	}
	return out
}
