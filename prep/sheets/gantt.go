package sheets

import (
	"fmt"
	"slices"
	"time"

	"groundrow/prep"
)

// walls are the charts for the wall: people down the side, the hours of a day
// across, one chart a day.
func walls(p *prep.Production, plan prep.CrewPlan) []block {
	number := map[string]int{}
	for i, a := range plan.Tasks {
		number[a.Task] = i + 1
	}
	var days []time.Time
	for _, c := range plan.Calls() {
		if len(days) == 0 || !days[len(days)-1].Equal(c.Day) {
			days = append(days, c.Day)
		}
	}
	blocks := []block{pageBreak{}}
	for _, d := range days {
		g := gantt{Day: d.Format("Monday 2 January"), From: p.Settings.Rates.DayStart, To: p.Settings.Rates.DayEnd}
		for _, person := range p.People {
			g.Rows = append(g.Rows, ganttRow{or(person.Name, person.ID), barsOf(plan, person.ID, d, number)})
		}
		blocks = append(blocks, g)
	}
	return append(blocks, taskTable(p, plan))
}

// barsOf returns what a person does on a day.
func barsOf(plan prep.CrewPlan, person string, d time.Time, number map[string]int) []bar {
	var out []bar
	for _, a := range plan.Tasks {
		if !slices.Contains(a.People, person) {
			continue
		}
		for _, s := range a.Segments {
			if sameDay(s.Start, d) {
				out = append(out, bar{s.Start.Sub(d).Hours(), s.End.Sub(d).Hours(), number[a.Task], a.Name, a.Pinned})
			}
		}
	}
	return out
}

func sameDay(a, b time.Time) bool {
	y, m, d := a.Date()
	y2, m2, d2 := b.Date()
	return y == y2 && m == m2 && d == d2
}

// taskTable explains the numbers of the bars.
func taskTable(p *prep.Production, plan prep.CrewPlan) table {
	t := table{Columns: []column{
		{Title: "no.", Align: right, Type: strongType},
		{Title: "task", Flex: true},
		{Title: "how much", Align: right},
		{Title: "who", Flex: true},
		{Title: "begins"},
		{Title: "ends"},
		{Title: "due"},
		{Title: "done", Kind: tick},
	}}
	for i, a := range plan.Tasks {
		var who []string
		for _, id := range a.People {
			who = append(who, personName(p, id))
		}
		due := "–"
		if !a.Due.IsZero() {
			due = day(a.Due)
		}
		if a.Late > 0 {
			due += " – LATE"
		}
		people := prep.Listed(who)
		if a.Short() {
			people += fmt.Sprintf(" (%d wanted)", a.Wanted)
		}
		t.Rows = append(t.Rows, cells(fmt.Sprint(i+1), a.Name, quantityWords(p, a), people,
			day(a.Start)+" "+clock(a.Start), day(a.End)+" "+clock(a.End), due, ""))
	}
	return t
}

func quantityWords(p *prep.Production, a prep.Assignment) string {
	switch a.Count {
	case prep.ByMarks:
		return prep.Counted(int(a.Quantity), "mark")
	case prep.ByChecks:
		return prep.Counted(int(a.Quantity), "measure")
	case prep.ByTape:
		return tapeLength(p, a.Quantity)
	case prep.ByPatches:
		return fmt.Sprintf("%d patches", int(a.Quantity))
	}
	return hours(a.Work)
}

// gantt is one day of everybody's work. Hours are after midnight.
type gantt struct {
	Day      string
	From, To float64
	Rows     []ganttRow
}

type ganttRow struct {
	Name string
	Bars []bar
}

// bar is one stretch of work.
type bar struct {
	From, To float64
	Number   int
	Task     string
	Pinned   bool
}

const (
	ganttNames = 42.0 // millimetres for the people's names
	ganttRowMM = 10.0
	ganttHead  = 14.0
)

// span returns the hours shown: those of the room, and more where work needs it.
func (g gantt) span() (from, to float64) {
	from, to = g.From, g.To
	for _, r := range g.Rows {
		for _, b := range r.Bars {
			from, to = min(from, b.From), max(to, b.To)
		}
	}
	if !(to-from >= 1) {
		to = from + 1
	}
	return from, min(to, from+36)
}

func (g gantt) set(p *press) {
	p.need(ganttHead + min(float64(len(g.Rows)), 4)*ganttRowMM)
	g.hours(p)
	for _, r := range g.Rows {
		if p.left() < ganttRowMM {
			p.newPage()
			g.hours(p)
		}
		g.row(p, r)
	}
	p.y += 5
}

// x returns where an hour lies on the page.
func (g gantt) x(p *press, hour float64) float64 {
	from, to := g.span()
	w := p.body.w - ganttNames
	return p.body.x + ganttNames + w*min(max((hour-from)/(to-from), 0), 1)
}

// hours draws the day and the hours over the chart.
func (g gantt) hours(p *press) {
	p.text(p.body.x, p.y+headingType.line()*0.8, clean(g.Day), headingType)
	p.y += headingType.line() + 2
	from, to := g.span()
	for h := int(from + 0.999); float64(h) <= to; h++ {
		x := g.x(p, float64(h))
		p.textIn(inset{x - 8, 0, 16, 0}, p.y+3.4, fmt.Sprintf("%d:00", h%24), smallType, middle)
	}
	p.y += ganttHead - headingType.line() - 2
	p.rule(p.body.x, p.y, p.body.right(), p.y, 0.4)
}

func (g gantt) row(p *press, r ganttRow) {
	p.textIn(inset{p.body.x, 0, ganttNames - 3, 0}, p.y+ganttRowMM*0.62, r.Name, strongType, left)
	p.fill(inset{p.body.x + ganttNames, p.y, p.body.w - ganttNames, ganttRowMM}, 232)
	from, to := g.span()
	for h := int(from + 0.999); float64(h) <= to; h++ {
		p.rule(g.x(p, float64(h)), p.y, g.x(p, float64(h)), p.y+ganttRowMM, 0.1)
	}
	for _, b := range r.Bars {
		at := inset{g.x(p, b.From), p.y + 1, g.x(p, b.To) - g.x(p, b.From), ganttRowMM - 2}
		if at.w < 0.5 {
			continue
		}
		p.fill(at, 255)
		p.box(at, 0.4)
		p.pdf.ClipRect(at.x, at.y, at.w, at.h, false)
		text := fmt.Sprintf("%d %s", b.Number, b.Task)
		if b.Pinned {
			text += " (fixed)"
		}
		if smallType.width(clean(text)) > at.w-1.6 {
			text = fmt.Sprint(b.Number)
		}
		p.textIn(inset{at.x + 0.8, 0, at.w - 1.6, 0}, at.y+at.h*0.66, text, smallType, left)
		p.pdf.ClipEnd()
	}
	p.y += ganttRowMM
	p.rule(p.body.x, p.y, p.body.right(), p.y, 0.15)
}
