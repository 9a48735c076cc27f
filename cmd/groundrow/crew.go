package main

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"groundrow/prep"
)

// crewPlan is the crew plan in JSON.
type crewPlan struct {
	Start     string `json:"start,omitempty"`
	End       string `json:"end,omitempty"`
	Rehearsal string `json:"first_rehearsal,omitempty"`
	Spare     hours  `json:"spare_h"`
	Tasks     []task `json:"tasks"`
	Calls     []call `json:"calls"`
}

type task struct {
	ID       string   `json:"id"`
	Name     string   `json:"task"`
	Counted  string   `json:"counted_by"`
	Quantity float64  `json:"quantity"`
	People   []string `json:"people"`
	Wanted   int      `json:"people_wanted"`
	Start    string   `json:"start"`
	End      string   `json:"end"`
	Work     hours    `json:"work_h"`
	Late     hours    `json:"late_h"`
}

type call struct {
	Person string   `json:"person"`
	Start  string   `json:"start"`
	End    string   `json:"end"`
	Tasks  []string `json:"tasks"`
}

// crewCommand tells who does what when.
func crewCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "crew FILE",
		Short: "Tell who does what when",
		Long: "Plan the tasks that are not done: their durations follow from the quantities of the floors and the team's rates, nobody is in two places at once, " +
			"and all work lies within the room's hours and outside breaks. Then tell when each person is called.",
		Example: "  groundrow crew demo.groundrow\n  groundrow crew demo.groundrow --json\n" +
			"  → { \"start\": \"2031-03-04T10:00:00Z\", …, \"spare_h\": 6.5, \"tasks\": [ { \"task\": \"Place the marks\", \"quantity\": 120, \"people\": [\"…\"], \"work_h\": 3, … }, … ], \"calls\": […] }",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			plan := prep.WeekOf(p.P, p.work, s.now()).Crew
			if s.json {
				return s.writeJSON(crewIn(p.P, plan))
			}
			return s.tellCrew(p.P, plan)
		}),
	}
	s.asksJSON(c)
	return c
}

// moment writes a time in JSON, empty for none.
func moment(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.RFC3339)
}

func crewIn(p *prep.Production, plan prep.CrewPlan) crewPlan {
	out := crewPlan{
		Start: moment(plan.Start), End: moment(plan.End), Rehearsal: moment(plan.Rehearsal), Spare: hours(plan.Spare),
		Tasks: []task{}, Calls: []call{},
	}
	for _, t := range plan.Tasks {
		out.Tasks = append(out.Tasks, task{
			ID: t.Task, Name: t.Name, Counted: string(t.Count), Quantity: t.Quantity, People: none(peopleNames(p, t.People)),
			Wanted: t.Wanted, Start: moment(t.Start), End: moment(t.End), Work: hours(t.Work), Late: hours(t.Late),
		})
	}
	for _, c := range plan.Calls() {
		out.Calls = append(out.Calls, call{personName(p, c.Person), moment(c.Start), moment(c.End), taskNames(p, c.Tasks)})
	}
	return out
}

func personName(p *prep.Production, id string) string {
	for _, person := range p.People {
		if person.ID == id {
			return person.Name
		}
	}
	return id
}

func peopleNames(p *prep.Production, ids []string) []string {
	var out []string
	for _, id := range ids {
		out = append(out, personName(p, id))
	}
	return out
}

func taskNames(p *prep.Production, ids []string) []string {
	names := map[string]string{}
	for _, t := range p.Tasks {
		names[t.ID] = t.Name
	}
	out := []string{}
	for _, id := range ids {
		out = append(out, names[id])
	}
	return out
}

// clock is how a time of the week is written in tables.
const clock = "Mon 2 Jan 15:04"

func (s *session) tellCrew(p *prep.Production, plan prep.CrewPlan) error {
	t := newTable("Task", "From", "To", "Who")
	for _, a := range plan.Tasks {
		t.row(a.Name, a.Start.Format(clock), a.End.Format(clock), strings.Join(peopleNames(p, a.People), ", "))
	}
	if err := t.write(s.out); err != nil {
		return err
	}
	fmt.Fprintln(s.out)
	t = newTable("Call", "From", "To", "For")
	for _, c := range plan.Calls() {
		t.row(personName(p, c.Person), c.Start.Format(clock), c.End.Format("15:04"), strings.Join(taskNames(p, c.Tasks), ", "))
	}
	if err := t.write(s.out); err != nil {
		return err
	}
	for _, problem := range plan.Problems(p) {
		fmt.Fprintln(s.messages, problem.Sentence())
	}
	return nil
}
