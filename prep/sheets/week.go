package sheets

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"groundrow/prep"
)

// week is the prep week for the wall: what endangers the first rehearsal, the
// days with what is due and who is called, and how each part of the job stands.
// Like the call it plans what is not done from the time of printing on, so that
// the two on one wall agree.
func week(j Job) content {
	p := j.production()
	if p.Settings.FirstRehearsal.IsZero() {
		return content{blocks: []block{paragraph{Text: "Set the day of the first rehearsal, and the week is counted back from it."}}}
	}
	w := prep.WeekOf(p, j.workOf, j.Printed)
	blocks := []block{paragraph{Strong: true, Text: "First rehearsal: " + p.Settings.FirstRehearsal.Format("Monday 2 January 2006, 15:04") + "."}}
	var dangers []string
	for _, d := range w.Dangers {
		dangers = append(dangers, d.Sentence())
	}
	if len(dangers) > 0 {
		blocks = append(blocks, heading{"What endangers it"}, bullets{Items: dangers})
	}
	return content{blocks: append(blocks, heading{"The days"}, daysTable(p, w), heading{"The parts of the job"}, partsTable(w))}
}

func daysTable(p *prep.Production, w prep.Week) table {
	t := table{
		Columns: []column{
			{Title: "due", Flex: true},
			{Title: "who owns it", Flex: true},
			{Title: "done", Kind: tick},
		},
		Empty: "No days yet: set when prep week begins.",
	}
	for _, d := range w.Days {
		t.Rows = append(t.Rows, span(dayTitle(p, d)))
		for _, l := range d.Deadlines {
			t.Rows = append(t.Rows, cells(l.What, owners(p, l.ID), tickedIf(l.Done)))
		}
		for _, c := range d.Calls {
			t.Rows = append(t.Rows, cells(fmt.Sprintf("Called %s to %s: %s", clock(c.Start), clock(c.End), taskNames(p, c.Tasks)), personName(p, c.Person), noTick))
		}
		if len(d.Deadlines)+len(d.Calls) == 0 {
			t.Rows = append(t.Rows, cells("nothing due, nobody called", "", noTick))
		}
	}
	return t
}

// dayTitle says which day it is and how many are left.
func dayTitle(p *prep.Production, d prep.Day) string {
	title := d.Date.Format("Monday 2 January")
	if d.Rehearsal {
		return title + " – FIRST REHEARSAL at " + clock(p.Settings.FirstRehearsal)
	}
	first := p.Settings.FirstRehearsal
	y, m, dd := first.Date()
	left := int(time.Date(y, m, dd, 12, 0, 0, 0, first.Location()).Sub(d.Date).Hours() / 24)
	switch {
	case left > 0:
		return fmt.Sprintf("%s – %s to first rehearsal", title, prep.Counted(left, "day"))
	case left < 0:
		return title + " – after first rehearsal"
	}
	return title
}

// owners names the people whom a deadline's task asks for.
func owners(p *prep.Production, id string) string {
	i := slices.IndexFunc(p.Tasks, func(t prep.Task) bool { return t.ID == id })
	if i < 0 {
		return ""
	}
	var names []string
	for _, person := range p.Tasks[i].People {
		names = append(names, personName(p, person))
	}
	return or(prep.Listed(names), "anyone")
}

// partsTable leaves out how the paper stands: a sheet that said so would be out
// of date as soon as it has been printed.
func partsTable(w prep.Week) table {
	t := table{Columns: []column{
		{Title: "part", Type: strongType},
		{Title: "how it stands", Flex: true},
		{Title: "state"},
	}}
	for _, part := range w.Parts {
		if part.Place == prep.PlacePaper {
			continue
		}
		state := string(part.State)
		if part.State == prep.NeedsYou {
			state = strings.ToUpper(state)
		}
		t.Rows = append(t.Rows, cells(part.Place, part.Sentence, state))
	}
	return t
}
