package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/prep/sheets"
	"groundrow/store"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
)

// printed is one sheet on paper, in JSON.
type printed struct {
	Sheet string `json:"sheet"`
	Floor string `json:"floor,omitempty"`
	PDF   string `json:"pdf"`
	CSV   string `json:"csv,omitempty"`
}

// printing are the options of the command, and what it has written.
type printing struct {
	*session
	to, paper, scale string
	csv, preview     bool

	done  []printed
	taken map[string]bool // file names
}

// printCommand writes sheets.
func printCommand(s *session) *cobra.Command {
	r := &printing{session: s, taken: map[string]bool{}}
	c := &cobra.Command{
		Use:   "print FILE [SHEET]",
		Short: "Write the sheets as PDF, and their tables as CSV",
		Long: "Write one sheet, or all of them, as PDF into a folder; sheets that belong to a floor once for each floor, or for the one that --floor names. " +
			"The printing is recorded, and from then on the labels of the marks stay where they are; --preview does neither.\n\nSheets: " + sheetNames() + ".",
		Example: "  groundrow print demo.groundrow --to paper\n  groundrow print demo.groundrow \"floor plan\" --floor \"Tannery Hall\" --scale 1:48 --paper Tabloid --to paper\n" +
			"  groundrow print demo.groundrow kit --csv --to paper --json\n  → [ { \"sheet\": \"kit\", \"pdf\": \"paper/kit.pdf\", \"csv\": \"paper/kit.csv\" } ]",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 2 {
				return nil
			}
			return takes("FILE")(c, args)
		},
		RunE: s.reads(r.print),
	}
	c.Flags().StringVar(&r.to, "to", "", "the folder to write to")
	c.Flags().StringVar(&r.paper, "paper", "", "Letter, A4, Tabloid or A3 (default: the production's)")
	c.Flags().StringVar(&r.scale, "scale", "", "of drawings, as 1:48 (default: the largest usual one that fits)")
	c.Flags().BoolVar(&r.csv, "csv", false, "write the tables as CSV too")
	c.Flags().BoolVar(&r.preview, "preview", false, "record no printing and freeze no labels")
	s.asksFloor(c)
	s.asksScene(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

func sheetNames() string {
	var names []string
	for _, sheet := range sheets.All() {
		names = append(names, string(sheet.Kind))
	}
	return strings.Join(names, "; ")
}

func (r *printing) print(c *cobra.Command, p *production, args []string) error {
	which, err := sheetsNamed(args)
	if err != nil {
		return err
	}
	jobs, err := r.jobs(p, which)
	if err != nil {
		return err
	}
	if err := folder(r.to); err != nil {
		return err
	}
	for _, j := range jobs {
		if err := r.write(p, j); err != nil {
			return err
		}
	}
	if err := r.record(c, p, jobs); err != nil {
		return err
	}
	if r.json {
		return r.writeJSON(none(r.done))
	}
	for _, d := range r.done {
		fmt.Fprintln(r.out, d.PDF)
		if d.CSV != "" {
			fmt.Fprintln(r.out, d.CSV)
		}
	}
	return nil
}

// sheetsNamed returns the sheet that is asked for by its kind or its name, or all.
func sheetsNamed(args []string) ([]sheets.Sheet, error) {
	all := sheets.All()
	if len(args) == 0 {
		return all, nil
	}
	var names []string
	for _, sheet := range all {
		if strings.EqualFold(sheet.Name, args[0]) {
			return []sheets.Sheet{sheet}, nil
		}
		names = append(names, string(sheet.Kind))
	}
	i, err := named("sheet", args[0], names)
	if err != nil {
		return nil, err
	}
	return []sheets.Sheet{all[i]}, nil
}

// sheetJob is one sheet to be written.
type sheetJob struct {
	sheets.Sheet
	sheets.Job
}

func (r *printing) jobs(p *production, which []sheets.Sheet) ([]sheetJob, error) {
	job := sheets.Job{P: p.P, Works: p.works, Printed: r.now(), By: r.worker()}
	var err error
	if job.Scene, err = r.chosenScene(p.P); err != nil {
		return nil, err
	}
	if r.paper != "" {
		size, ok := sheets.Paper(r.paper)
		if !ok {
			return nil, fmt.Errorf("there is no paper called %q; there are: Letter, A4, Tabloid, A3", r.paper)
		}
		job.Size = size
	}
	if r.scale != "" {
		if job.Scale, err = length.ParseScale(r.scale); err != nil {
			return nil, err
		}
	}
	floors, err := r.floors(p.P)
	if err != nil {
		return nil, err
	}
	for _, id := range floors {
		p.work(id)
	}
	var out []sheetJob
	for _, sheet := range which {
		if !sheet.PerFloor {
			out = append(out, sheetJob{sheet, job})
			continue
		}
		for _, id := range floors {
			job := job
			job.Floor = id
			out = append(out, sheetJob{sheet, job})
		}
	}
	if len(out) == 0 {
		return nil, errors.New("the production has no floor yet, and such a sheet is that of a floor")
	}
	return out, nil
}

// floors are those to print: the one that --floor names, or all.
func (r *printing) floors(p *prep.Production) ([]floor.ID, error) {
	if r.floor != "" {
		f, err := floorNamed(p, r.floor)
		if err != nil {
			return nil, err
		}
		return []floor.ID{f.ID}, nil
	}
	var out []floor.ID
	for _, f := range p.Floors {
		out = append(out, f.ID)
	}
	return out, nil
}

func (r *printing) write(p *production, j sheetJob) error {
	d := printed{Sheet: string(j.Kind)}
	base := fileName(string(j.Kind))
	if f := p.P.Floor(j.Floor); f != nil {
		d.Floor = f.Name
		base = fileName(f.Name) + "-" + base
	}
	base = r.free(base)
	d.PDF = filepath.Join(r.to, base+".pdf")
	if err := store.WriteWhole(d.PDF, func(w io.Writer) error { return sheets.Write(w, j.Kind, j.Job) }); err != nil {
		return err
	}
	if r.csv && j.Table {
		d.CSV = filepath.Join(r.to, base+".csv")
		if err := store.WriteWhole(d.CSV, func(w io.Writer) error { return sheets.WriteCSV(w, j.Kind, j.Job) }); err != nil {
			return err
		}
	}
	r.done = append(r.done, d)
	return nil
}

// free returns the name, with a number after it when another sheet of this printing
// has it already: two floors may be called the same.
func (r *printing) free(base string) string {
	name := base
	for n := 2; r.taken[name]; n++ {
		name = fmt.Sprintf("%s-%d", base, n)
	}
	r.taken[name] = true
	return name
}

// record keeps what was printed and freezes the labels on it. A file that can
// only be looked at prints all the same.
func (r *printing) record(c *cobra.Command, p *production, jobs []sheetJob) error {
	if r.preview {
		return nil
	}
	if only, why := p.ReadOnly(); only {
		fmt.Fprintln(r.messages, "The printing is not recorded:", why)
		return nil
	}
	label := "Print all sheets"
	if jobs[0].Kind == jobs[len(jobs)-1].Kind {
		label = "Print " + strings.ToLower(jobs[0].Name)
	}
	return p.Edit(c.Context(), p.Snapshot, label, func(to *prep.Production) error {
		for _, j := range jobs {
			sheets.Record(to, j.Kind, j.Job)
		}
		return nil
	})
}
