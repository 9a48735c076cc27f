package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/drawing"
)

// exports are what can be taken out of a production, in the order offered.
var exports = []string{"marks", "plan", "calendar", "copy"}

// export are the options of the command.
type export struct {
	*session
	to, person string
}

// exportCommand takes something out for another program.
func exportCommand(s *session) *cobra.Command {
	e := &export{session: s}
	c := &cobra.Command{
		Use:   "export FILE WHAT",
		Short: "Write marks or plan as CSV, the calls as a calendar, or a copy",
		Long: "Write something of a production for another program: marks (of a floor, as CSV), plan (as the CSV table that import reads), " +
			"calendar (the calls as iCalendar, of everybody or of one --person), copy (one complete production file, history included). " +
			"Without --to the result goes to the standard output; a copy needs --to.",
		Example: "  groundrow export demo.groundrow marks --floor \"Tannery Hall\" --to marks.csv\n  groundrow export demo.groundrow plan > plan.csv\n" +
			"  groundrow export demo.groundrow calendar --to calls.ics\n  groundrow export demo.groundrow copy --to backup.groundrow",
		Args: takes("FILE", "WHAT"),
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error {
			i, err := named("export", args[0], exports)
			if err != nil {
				return err
			}
			return e.write(c, p, exports[i])
		}),
	}
	c.Flags().StringVar(&e.to, "to", "", "the file to write (default: the standard output)")
	c.Flags().StringVar(&e.person, "person", "", "whose calls, by name (default: everybody's)")
	s.asksFloor(c)
	s.asksScene(c)
	return c
}

func (e *export) write(c *cobra.Command, p *production, what string) error {
	var write func(io.Writer) error
	var err error
	switch what {
	case "marks":
		write, err = e.marks(p)
	case "plan":
		write = func(w io.Writer) error { return drawing.WritePlan(w, p.P.Plan, p.P.Unit()) }
	case "calendar":
		write, err = e.calendar(p)
	case "copy":
		if e.to == "" {
			return errors.New("a copy needs --to and the file to write")
		}
		return p.SaveCopy(c.Context(), e.to)
	}
	if err != nil {
		return err
	}
	if e.to == "" {
		return write(e.out)
	}
	return writeFile(e.to, write)
}

func (e *export) marks(p *production) (func(io.Writer) error, error) {
	f, scene, err := e.chosen(p.P)
	if err != nil {
		return nil, err
	}
	var rows []drawing.MarkRow
	for _, m := range p.work(f.ID).In(scene).Marks {
		row := drawing.MarkRow{Label: m.Label, Kind: string(m.Kind), What: m.What, Up: m.Up(), Over: m.Over()}
		if m.HasTapes {
			row.Tapes = &drawing.Tapes{A: m.Tapes.A, B: m.Tapes.B, Side: string(m.Tapes.Side)}
		}
		rows = append(rows, row)
	}
	return func(w io.Writer) error { return drawing.WriteMarks(w, rows, p.P.Style()) }, nil
}

func (e *export) calendar(p *production) (func(io.Writer) error, error) {
	id := ""
	if e.person != "" {
		var names []string
		for _, person := range p.P.People {
			names = append(names, person.Name)
		}
		i, err := named("person", e.person, names)
		if err != nil {
			return nil, err
		}
		id = p.P.People[i].ID
	}
	crew := prep.WeekOf(p.P, p.work, e.now()).Crew
	if len(crew.Calls()) == 0 {
		fmt.Fprintln(e.messages, "There are no calls yet; the calendar holds the first rehearsal alone.")
	}
	return func(w io.Writer) error { return prep.WriteCalendar(w, p.P, crew, id, e.now()) }, nil
}
