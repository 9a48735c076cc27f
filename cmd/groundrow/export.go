package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/drawing"
)

// exports are what can be taken out of a production, in the order offered.
var exports = []string{"marks", "plan", "calendar", "copy", "dxf", "svg", "points", "drawing"}

// export are the options of the command.
type export struct {
	*session
	goingOut
	to, person string
}

// exportCommand takes something out for another program.
func exportCommand(s *session) *cobra.Command {
	e := &export{session: s}
	c := &cobra.Command{
		Use:   "export FILE WHAT [NAME]",
		Short: "Write marks, plan or points as CSV, a floor as DXF or SVG, the calls, a drawing that came in, or a copy",
		Long: "Write something of a production for another program: marks (of a floor, as CSV), plan (as the CSV table that import reads), " +
			"calendar (the calls as iCalendar, of everybody or of one --person), copy (one complete production file, history included), " +
			"dxf and svg (what a floor lays, with the room, the datum and the marks: DXF with a layer for each tape, in the unit of the production or in --unit; " +
			"SVG in millimetres on paper at --scale), points (datum, pivots and marks for a layout instrument: number, northing, easting, height, description; " +
			"northing is up and easting is over, in decimal metres or feet; --north and --east are what the origin gets, so that nothing is negative), " +
			"drawing NAME (a drawing that was imported, byte for byte as it came). " +
			"Without --to the result goes to the standard output; a copy needs --to.",
		Example: "  groundrow export demo.groundrow marks --floor \"Tannery Hall\" --to marks.csv\n  groundrow export demo.groundrow plan > plan.csv\n" +
			"  groundrow export demo.groundrow calendar --to calls.ics\n  groundrow export demo.groundrow copy --to backup.groundrow\n" +
			"  groundrow export demo.groundrow dxf --floor \"Tannery Hall\" --scene 1.2 --to hall.dxf\n  groundrow export demo.groundrow svg --scale 1:50 --to hall.svg\n" +
			"  groundrow export demo.groundrow points --north 100 --east 100 --header --to points.csv\n  groundrow export demo.groundrow drawing \"plan rev C.pdf\" --to plan.pdf",
		Args: exportArgs,
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error {
			i, err := named("export", args[0], exports)
			if err != nil {
				return err
			}
			return e.write(c, p, exports[i], strings.Join(args[1:], " "))
		}),
	}
	c.Flags().StringVar(&e.to, "to", "", "the file to write (default: the standard output)")
	c.Flags().StringVar(&e.person, "person", "", "whose calls, by name (default: everybody's)")
	c.Flags().StringVar(&e.axes, "axes", axesNamed[0], "dxf, svg, points: from the datum, or as the room was measured (room)")
	c.Flags().StringVar(&e.scale, "scale", "", "svg: the scale (default: that of the plan)")
	c.Flags().StringVar(&e.unit, "unit", "", "dxf, points: ft, m, cm or mm (default: the production's; ft draws in inches)")
	c.Flags().StringVar(&e.north, "north", "", "points: the northing of the origin (default: 0)")
	c.Flags().StringVar(&e.east, "east", "", "points: the easting of the origin (default: 0)")
	c.Flags().BoolVar(&e.header, "header", false, "points: name the columns in a first row")
	s.asksFloor(c)
	s.asksScene(c)
	return c
}

// exportArgs asks for a file and what to export of it, and takes a name with a
// drawing only.
func exportArgs(c *cobra.Command, args []string) error {
	if len(args) == 3 && strings.HasPrefix("drawing", strings.ToLower(args[1])) {
		return nil
	}
	return takes("FILE", "WHAT")(c, args)
}

func (e *export) write(c *cobra.Command, p *production, what, name string) error {
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
	case "drawing":
		write, err = e.original(c.Context(), p, name)
	default:
		write, err = e.outgoing(p, what)
	}
	if err != nil {
		return err
	}
	if e.to == "" {
		return write(e.out)
	}
	return store.WriteWhole(e.to, write)
}

func (e *export) marks(p *production) (func(io.Writer) error, error) {
	f, scene, err := e.chosen(p.P)
	if err != nil {
		return nil, err
	}
	rows := prep.MarkRows(p.work(f.ID).In(scene))
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
