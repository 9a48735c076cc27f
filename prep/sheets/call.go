package sheets

import (
	"fmt"
	"strings"
	"time"

	"groundrow/prep"
)

// call is who is wanted when and for what, by person, and the same for the wall.
func call(j Job) content {
	p := j.production()
	plan := prep.Schedule(p, prep.QuantitiesOf(p, j.workOf), j.Printed)
	t := table{
		Columns: []column{
			{Title: "day", Type: strongType},
			{Title: "from", Type: floorType, Align: right},
			{Title: "to", Type: floorType, Align: right},
			{Title: "what", Flex: true},
			{Title: "free between"},
		},
		Empty: "Nobody is called yet: give the team and its tasks under Crew, and the call follows from them.",
	}
	calls := plan.Calls()
	for _, person := range p.People {
		first := true
		for _, c := range calls {
			if c.Person != person.ID {
				continue
			}
			if first {
				t.Rows = append(t.Rows, span(personTitle(person)))
				first = false
			}
			t.Rows = append(t.Rows, cells(day(c.Day), clock(c.Start), clock(c.End), taskNames(p, c.Tasks), breaks(c)))
		}
	}
	blocks := []block{t}
	if len(t.Rows) == 0 {
		return content{blocks: blocks, wide: true}
	}
	blocks = append(blocks, crewNotes(p, plan)...)
	return content{blocks: append(blocks, walls(p, plan)...), wide: true}
}

func personTitle(p prep.Person) string {
	s := or(p.Name, p.ID)
	for _, part := range []string{p.Role, p.Phone} {
		if part != "" {
			s += ", " + part
		}
	}
	return s
}

func clock(t time.Time) string { return t.Format("15:04") }

// taskNames lists tasks by name.
func taskNames(p *prep.Production, ids []string) string {
	var names []string
	for _, id := range ids {
		names = append(names, taskName(p, id))
	}
	return strings.Join(names, "; ")
}

func taskName(p *prep.Production, id string) string {
	for _, t := range p.Tasks {
		if t.ID == id {
			return or(t.Name, "task without a name")
		}
	}
	return id
}

func personName(p *prep.Production, id string) string {
	for _, person := range p.People {
		if person.ID == id {
			return or(person.Name, id)
		}
	}
	return id
}

// breaks names the times between a call's stretches of work.
func breaks(c prep.Call) string {
	var out []string
	for i := 1; i < len(c.Segments); i++ {
		if from, to := c.Segments[i-1].End, c.Segments[i].Start; to.After(from) {
			out = append(out, clock(from)+"–"+clock(to))
		}
	}
	return strings.Join(out, ", ")
}

// crewNotes says what ends when, what is late or short, and why it takes so long.
func crewNotes(p *prep.Production, plan prep.CrewPlan) []block {
	items := []string{fmt.Sprintf("All work ends on %s at %s.", day(plan.End), clock(plan.End))}
	if !plan.Rehearsal.IsZero() && plan.Spare >= 0 {
		items = append(items, fmt.Sprintf("That leaves %s of working time before the first rehearsal.", hours(plan.Spare)))
	}
	for _, pr := range plan.Problems(p) {
		items = append(items, pr.Sentence())
	}
	blocks := []block{heading{"How it stands"}, bullets{Items: items}}
	var chain []string
	for i := len(plan.Limits) - 1; i >= 0; i-- {
		chain = append(chain, plan.Limits[i].Sentence(p))
	}
	if len(chain) > 1 {
		blocks = append(blocks, heading{"What makes the end so late"}, bullets{Items: chain})
	}
	return blocks
}

// hours writes working time.
func hours(d time.Duration) string {
	h, m := int(d.Hours()), int(d.Minutes())%60
	if m == 0 {
		return prep.Counted(h, "hour")
	}
	return fmt.Sprintf("%d h %02d min", h, m)
}
