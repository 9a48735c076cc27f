package demo

import (
	"time"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// Names of the team, all invented.
const (
	ines  = "Ines Marlowe"
	tobin = "Tobin Ashdown"
	wren  = "Wren Halloway"
	pia   = "Pia Castellan"
)

// team names the people and the work of the week.
func (b *builder) team() {
	for _, who := range []struct {
		name, role string
		hands      bool
	}{
		{ines, "production stage manager", true},
		{tobin, "assistant stage manager", true},
		{wren, "assistant stage manager", true},
		{pia, "dance captain", false},
	} {
		b.p.People = append(b.p.People, prep.Person{ID: id("person " + who.name), Name: who.name, Role: who.role, Hands: who.hands})
	}
	b.tasks()
}

// task is one line of the week's plan before it becomes a prep.Task.
type task struct {
	name  string
	count prep.Count
	on    floor.ID
	hours float64
	hands int
	day   int // days after the start of prep week; the earliest it can begin
	after []string
	who   []string
	done  bool
}

func (b *builder) tasks() {
	byHours := prep.ByHours
	for _, t := range []task{
		{"Check the scale of revision 4", byHours, "", 1, 1, 0, nil, []string{ines}, true},
		{"Measure Tannery Hall", byHours, "", 2, 2, 0, nil, []string{tobin, wren}, true},
		{"Questions to the director", byHours, "", 1, 1, 1, []string{"Check the scale of revision 4"}, []string{ines}, false},
		{"Order tape and kit", byHours, "", 1, 1, 1, []string{"Check the scale of revision 4"}, []string{tobin}, false},
		{"Cut and letter the tabs", byHours, "", 1.5, 2, 2, []string{"Questions to the director"}, nil, false},
		{"Test the tape on the floor", byHours, "", 0.5, 1, 2, []string{"Measure Tannery Hall"}, []string{wren}, false},
		{"Lay the datum, Tannery Hall", byHours, "", 1, 2, 4, []string{"Test the tape on the floor"}, nil, false},
		{"Place the marks, Tannery Hall", prep.ByMarks, roomID, 0, 2, 4, []string{"Lay the datum, Tannery Hall", "Cut and letter the tabs"}, nil, false},
		{"Check the marks, Tannery Hall", prep.ByChecks, roomID, 0, 2, 4, []string{"Place the marks, Tannery Hall"}, nil, false},
		{"Lay the tape, Tannery Hall", prep.ByTape, roomID, 0, 2, 4, []string{"Check the marks, Tannery Hall", "Order tape and kit"}, nil, false},
		{"Protect corners, Tannery Hall", prep.ByPatches, roomID, 0, 1, 4, []string{"Lay the tape, Tannery Hall"}, nil, false},
		{"Mark the dance line", byHours, "", 0.75, 1, 4, []string{"Lay the datum, Tannery Hall"}, nil, false},
		{"Collect the stand-ins", byHours, "", 3, 2, 2, nil, nil, false},
		{"Set the stand-ins and spike them", byHours, "", 2, 2, 5, []string{"Lay the tape, Tannery Hall", "Collect the stand-ins"}, nil, false},
		{"Lay the upper storey, Loft Studio", prep.ByMarks, studioID, 0, 2, 5, []string{"Cut and letter the tabs"}, nil, false},
		{"Walk the floor with the dance captain", byHours, "", 0.5, 1, 5, []string{"Set the stand-ins and spike them"}, []string{pia}, false},
	} {
		b.p.Tasks = append(b.p.Tasks, b.planned(t))
	}
}

func (b *builder) planned(t task) prep.Task {
	out := prep.Task{
		ID: id("task " + t.name), Name: t.name, Count: t.count, Floor: t.on, Hours: t.hours,
		Hands: t.hands, Done: t.done, Due: b.first,
		Earliest: b.start.AddDate(0, 0, t.day).Add(10 * time.Hour),
	}
	for _, a := range t.after {
		out.After = append(out.After, id("task "+a))
	}
	for _, w := range t.who {
		out.People = append(out.People, id("person "+w))
	}
	return out
}
