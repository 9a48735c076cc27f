package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/drawing"
	"groundrow/tapeout/length"
)

// taken is what reading a table did, in JSON.
type taken struct {
	Added    []string `json:"added"`
	Redrawn  []string `json:"redrawn"`
	Kept     []string `json:"kept"`
	Unused   []string `json:"columns_not_read"`
	Problems []string `json:"problems"`
	Walls    int      `json:"walls"`
	Gap      metres   `json:"gap_m"`
}

// tableReading are the options of a table and what it is read for.
type tableReading struct {
	*session
	room, unit, scale string
	partly            bool
	name              string
	content           []byte
}

// importCommand reads a plan or a room.
func importCommand(s *session) *cobra.Command {
	r := &tableReading{session: s}
	d := &drawingReading{session: s}
	c := &cobra.Command{
		Use:   "import FILE TABLE|DRAWING",
		Short: "Read a plan from a table or a drawing, or a room with --room from a table",
		Long: "Read a ground plan from a table (CSV, or a spreadsheet's tab-separated text) with a row for each point: the columns element, up and over, " +
			"and as wanted kind, level, height, use, note, path, role, close, curve. An element whose name is on the plan already is drawn anew and keeps what was decided about it. " +
			"With --room, read that floor's walls instead: wall, length, turn, square, rise, as they are walked with the room on the left, and lengths across: from, to, length; " +
			"or its corners: corner, x, y. " +
			"When something in the table cannot be used nothing is changed, the rows are named, and the exit status is 1. " +
			"A drawing (DXF, PDF) is reported on: its unit, scale and datum with the reasons, its layers with their lengths, what is left aside, and the elements that it proposes. " +
			"With --take these come onto the plan, and the drawing is kept in the production as it came. " +
			"Where the plan has elements already the report also tells what the drawing changes: what moved and by how much, what has another shape, what is new and what is gone, " +
			"and on each floor the marks to lift and to lay with their measurements, the tape and the minutes. With --revise these changes are taken over.",
		Example: "  groundrow import demo.groundrow kitchen.csv --unit ft\n  groundrow import demo.groundrow hall.csv --room \"Tannery Hall\"\n  groundrow import demo.groundrow measured.csv --scale 1:48 --json\n" +
			"  → { \"added\": [\"Kitchen wall\"], \"redrawn\": [], \"kept\": […], \"columns_not_read\": [], \"problems\": [], \"walls\": 0, \"gap_m\": 0 }\n" +
			"  groundrow import demo.groundrow plan.dxf --json\n" +
			"  → { \"format\": \"DXF\", \"version\": \"R2010\", \"unit\": \"millimetre\", \"unit_m\": 0.001, \"unit_why\": …, \"scales\": […], \"datum\": {…}, " +
			"\"layers\": [{ \"layer\": \"WALLS\", \"entities\": 12, \"length_m\": 41.6, \"visible_length_m\": 41.6, … }], … }\n" +
			"  groundrow import demo.groundrow revision-2.pdf --json\n" +
			"  → { …, \"revision\": { \"changes\": [{ \"element\": \"Table\", \"outcome\": \"moved\", \"moved_m\": 0.5, … }], \"unchanged\": 28, " +
			"\"floors\": [{ \"floor\": \"Tannery Hall\", \"lift\": […], \"lay\": […], \"tape\": […], \"minutes_for_two\": 12, … }] } }\n" +
			"  groundrow import demo.groundrow revision-2.pdf --revise",
		Args: takes("FILE", "TABLE"),
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error {
			if !isDrawing(args[0]) {
				return r.read(c, p, args[0])
			}
			d.unit, d.scale = r.unit, r.scale
			return d.read(c, p, args[0])
		}),
	}
	c.Flags().StringVar(&r.room, "room", "", "the floor whose walls the table holds")
	c.Flags().StringVar(&r.unit, "unit", "", "what a bare number counts in: ft, m, cm or mm (default: the production's unit); of a drawing at full size its own unit, in as well")
	c.Flags().StringVar(&r.scale, "scale", "", "the lengths were measured on paper, or the drawing is, at this scale, as 1:48")
	c.Flags().BoolVar(&r.partly, "partly", false, "take what can be used of a plan and leave out the rest")
	d.asks(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

// most is the size in bytes beyond which a file is no table of a plan.
const most = 32 << 20

func (r *tableReading) read(c *cobra.Command, p *production, path string) error {
	r.name = filepath.Base(path)
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return fmt.Errorf("reading the table: there is no file %s that can be read: %w", path, err)
	case info.IsDir():
		return fmt.Errorf("reading the table: %s is a folder", path)
	case info.Size() > most:
		return fmt.Errorf("reading the table: %s is larger than %d MB, which no table of a plan is", path, most>>20)
	}
	switch ext := strings.ToLower(filepath.Ext(path)); ext {
	case ".csv", ".tsv", ".txt":
	default:
		return fmt.Errorf("%s: tables (.csv, .tsv, .txt) and drawings (.dxf, .pdf) are read", r.name)
	}
	if r.content, err = os.ReadFile(path); err != nil {
		return fmt.Errorf("reading the table: %w", err)
	}
	unit, scale, err := r.options(p.P)
	if err != nil {
		return err
	}
	if r.room != "" {
		return r.takeRoom(c, p, drawing.RoomOptions{Unit: unit, Scale: scale, NewID: uuid.NewString})
	}
	return r.takePlan(c, p, drawing.PlanOptions{Unit: unit, Scale: scale, Levels: p.P.Plan.Levels, NewID: uuid.NewString})
}

func (r *tableReading) options(p *prep.Production) (length.Unit, length.Scale, error) {
	unit := p.Unit()
	if r.unit != "" {
		u, err := unitNamed(r.unit)
		if err != nil {
			return "", 0, err
		}
		unit = u
	}
	if r.scale == "" {
		return unit, 0, nil
	}
	scale, err := length.ParseScale(r.scale)
	return unit, scale, err
}

func (r *tableReading) takePlan(c *cobra.Command, p *production, o drawing.PlanOptions) error {
	t, err := drawing.ReadPlan(bytes.NewReader(r.content), o)
	if err != nil {
		return fmt.Errorf("%s is no table of a plan: %w", r.name, err)
	}
	result := taken{Unused: t.Unused}
	if len(t.Problems) > 0 && !r.partly {
		return r.refuse(result, t.Problems)
	}
	err = r.keep(c, p, func(to *prep.Production) error {
		in := to.TakePlan(t)
		result.Added, result.Redrawn, result.Kept = in.Added, in.Redrawn, in.Kept
		return nil
	})
	if err != nil {
		return err
	}
	if len(t.Problems) > 0 {
		return r.refuse(result, t.Problems)
	}
	return r.tell(result)
}

func (r *tableReading) takeRoom(c *cobra.Command, p *production, o drawing.RoomOptions) error {
	room, err := floorNamed(p.P, r.room)
	if err != nil {
		return err
	}
	t, err := drawing.ReadRoom(bytes.NewReader(r.content), o)
	if err != nil {
		return fmt.Errorf("%s is no table of a room: %w", r.name, err)
	}
	tried := p.P.TryRoom(room, t)
	result := taken{Unused: t.Unused, Gap: metres(t.Gap)}
	if len(tried.Wrong) > 0 {
		return r.refuse(result, tried.Wrong)
	}
	result.Walls = len(tried.After.Outline.Edges())
	err = r.keep(c, p, func(to *prep.Production) error {
		return to.TakeRoom(room.ID, t)
	})
	if err != nil {
		return err
	}
	return r.tell(result)
}

// keep makes the change and keeps the table in the file as it came. The change is
// the last entry of the history, so that undo takes back what the person meant.
func (r *tableReading) keep(c *cobra.Command, p *production, change func(*prep.Production) error) error {
	d := prep.Drawing{ID: uuid.NewString(), Name: r.name, Format: "CSV", On: r.now(), By: r.worker()}
	if err := p.AddDrawing(c.Context(), p.Snapshot, d, r.content); err != nil {
		return err
	}
	return p.Edit(c.Context(), p.Now(), "Bring in "+r.name, change)
}

// refuse names what cannot be used of the table.
func (r *tableReading) refuse(result taken, found []drawing.RowProblem) error {
	for _, f := range found {
		result.Problems = append(result.Problems, f.String())
		fmt.Fprintln(r.messages, f.String())
	}
	if r.json {
		if err := r.tell(result); err != nil {
			return err
		}
	}
	return errProblems
}

func (r *tableReading) tell(result taken) error {
	if r.json {
		result.Added, result.Redrawn, result.Kept = none(result.Added), none(result.Redrawn), none(result.Kept)
		result.Unused, result.Problems = none(result.Unused), none(result.Problems)
		return r.writeJSON(result)
	}
	for _, u := range result.Unused {
		fmt.Fprintf(r.messages, "The column %q was not read.\n", u)
	}
	_, err := fmt.Fprintf(r.out, "Elements added: %d; drawn anew: %d; walls: %d\n", len(result.Added), len(result.Redrawn), result.Walls)
	return err
}
