package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// tickCommand records what became of marks.
func tickCommand(s *session) *cobra.Command {
	var steps []string
	for _, step := range marks.Steps {
		steps = append(steps, string(step))
	}
	c := &cobra.Command{
		Use:   "tick FILE STEP LABEL…",
		Short: "Record that marks were placed, checked, worn, taped again or lifted",
		Long: "Record what became of marks of a floor, with who and when. STEP is one of: " + strings.Join(steps, ", ") +
			". All the labels are taken or none. Then say what is worn.",
		Example: "  groundrow tick demo.groundrow placed A C K --floor \"Tannery Hall\" --who Wren\n  groundrow tick demo.groundrow worn C --json\n" +
			"  → { \"floor\": \"Tannery Hall\", \"worn\": [ { \"label\": \"C\", \"by\": \"Wren\", … } ], \"strips\": […], \"tape\": […] }",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) < 3 {
				return takes("FILE", "STEP", "LABEL")(c, args)
			}
			return nil
		},
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			i, err := named("step", args[0], steps)
			if err != nil {
				return err
			}
			labels, by := args[1:], floor.Decision{By: s.worker(), On: s.now()}
			for i := range labels {
				labels[i] = strings.ToUpper(labels[i])
			}
			label := fmt.Sprintf("Tell that marks are %s: %s", steps[i], strings.Join(labels, ", "))
			if err := p.Edit(c.Context(), p.Snapshot, label, func(to *prep.Production) error {
				return to.TakeStep(f.ID, labels, marks.Steps[i], by)
			}); err != nil {
				return err
			}
			now := p.Now().P
			return s.tellRetape(now, prep.Work(now, f.ID, ""))
		}),
	}
	s.asksFloor(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

// retapeCommand lists what is worn.
func retapeCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "retape FILE",
		Short: "List what has worn on a floor and the tape that it takes",
		Long:  "List the marks that were said to be worn on a floor, the strips that are to be laid again for them, and the tape to bring.",
		Example: "  groundrow retape demo.groundrow --floor \"Tannery Hall\"\n  groundrow retape demo.groundrow --json\n" +
			"  → { \"floor\": \"Tannery Hall\", \"worn\": [ … ], \"strips\": [ { \"strip\": \"Kitchen wall, around C\", \"stock\": \"Red cloth\", \"length_m\": 0.6 } ], \"tape\": [ … ] }",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			return s.tellRetape(p.P, p.work(f.ID))
		}),
	}
	s.asksFloor(c)
	s.asksJSON(c)
	return c
}

// wear is what is to be taped again in JSON.
type wear struct {
	Floor  string      `json:"floor"`
	Worn   []wornMark  `json:"worn"`
	Strips []wornStrip `json:"strips"`
	Tape   []tapeOf    `json:"tape"`
}

type wornMark struct {
	Label string `json:"label"`
	What  string `json:"what"`
	By    string `json:"by"`
	On    string `json:"on"`
}

type wornStrip struct {
	Strip  string   `json:"strip"`
	Marks  []string `json:"marks"`
	Stock  string   `json:"stock"`
	Length metres   `json:"length_m"`
}

type tapeOf struct {
	Stock string `json:"stock"`
	Total metres `json:"total_m"`
}

func (s *session) tellRetape(p *prep.Production, w *prep.FloorWork) error {
	r := prep.RetapeOf(p, w)
	if s.json {
		return s.writeJSON(wearOf(p, w, r))
	}
	if len(r.Marks) == 0 {
		_, err := fmt.Fprintf(s.out, "%s: nothing is said to be worn.\n", w.Floor.Name)
		return err
	}
	t := newTable("Tape again", "At", "Tape", ">Length", "Seen by")
	for _, x := range r.Strips {
		t.row(prep.StripWords(p, x), strings.Join(x.Worn, ", "), stockNamed(p, x.Line), p.Style().Format(x.Length()), "")
	}
	for _, m := range r.Marks {
		t.row("tab: "+m.What, m.Label, "", "", strings.TrimPrefix(prep.ByWhom(m.Progress.Worn.By, m.Progress.Worn.On), " by "))
	}
	if err := t.write(s.out); err != nil {
		return err
	}
	_, err := fmt.Fprintf(s.out, "Bring %s; overlaps and waste are in it.\n", prep.Listed(prep.RetapeWords(p, r)))
	return err
}

func stockNamed(p *prep.Production, l floor.Line) string {
	if stock := p.Stock(l.Stock); stock != nil {
		return stock.Name
	}
	return ""
}

func wearOf(p *prep.Production, w *prep.FloorWork, r prep.Retape) wear {
	out := wear{Floor: w.Floor.Name, Worn: []wornMark{}, Strips: []wornStrip{}, Tape: []tapeOf{}}
	for _, m := range r.Marks {
		out.Worn = append(out.Worn, wornMark{m.Label, m.What, m.Progress.Worn.By, m.Progress.Worn.On.Format("2006-01-02T15:04:05Z07:00")})
	}
	for _, x := range r.Strips {
		out.Strips = append(out.Strips, wornStrip{prep.StripWords(p, x), x.Worn, stockNamed(p, x.Line), metres(x.Length())})
	}
	for _, t := range r.Tape {
		out.Tape = append(out.Tape, tapeOf{stockNamed(p, floor.Line{Stock: t.Stock}), metres(t.Total)})
	}
	return out
}
