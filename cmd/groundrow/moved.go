package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/survey"
)

// measured is a piece measured back in JSON.
type measured struct {
	Piece    string      `json:"piece"`
	Finding  string      `json:"finding"`
	Sentence string      `json:"sentence"`
	Next     string      `json:"next"`
	Over     metres      `json:"over_m"`
	Up       metres      `json:"up_m"`
	Turn     float64     `json:"turn_deg"`
	Points   []foundMark `json:"points"`
	Kept     bool        `json:"kept"`
	Taken    bool        `json:"in_the_plan"`
}

type foundMark struct {
	Label string `json:"label"`
	Up    metres `json:"up_m"`
	Over  metres `json:"over_m"`
	Miss  metres `json:"off_m"`
}

// back is the options of measuring a piece back.
type back struct {
	at     []string
	side   string
	reason string
	take   bool
	note   bool
}

// movedCommand measures back a piece that was moved in rehearsal.
func movedCommand(s *session) *cobra.Command {
	var o back
	c := &cobra.Command{
		Use:   "moved FILE PIECE",
		Short: "Measure back a piece that was moved in rehearsal, and take it into the plan",
		Long: "Judge marks of a piece that were measured where they lie now: whether the piece has moved or turned as a whole, is where it should be, " +
			"or whether a reading is wrong or the tape-out is stretched. Each --at is a label and two measures: up and over, or with --tapes what the tapes from pivot 1 and pivot 2 read. " +
			"With --take the plan follows, with --note the transfer tells of it; both need a reason.",
		Example: "  groundrow moved demo.groundrow \"Kitchen table\" --at \"C=4' 6\\\", 2' SL\" --at \"D=4' 6\\\", 5' SL\" --scene 1.1 --take --reason \"sight lines\"\n" +
			"  groundrow moved demo.groundrow \"Kitchen table\" --at \"C=10', 12' 6\\\"\" --at \"D=9', 13'\" --tapes left --json\n" +
			"  → { \"piece\": \"Kitchen table\", \"finding\": \"moved\", \"sentence\": \"…\", \"over_m\": 0.6096, \"up_m\": 0.3048, \"turn_deg\": 12, … }",
		Args: takes("FILE", "PIECE"),
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error { return s.measureBack(c, p, args[0], o) }),
	}
	c.Flags().StringArrayVar(&o.at, "at", nil, "a mark and where it was found: LABEL=UP, OVER or LABEL=TAPE, TAPE")
	c.Flags().StringVar(&o.side, "tapes", "", "the marks were found by two tapes, \"left\" or \"right\" of the line from pivot 1 to pivot 2")
	c.Flags().StringVar(&o.reason, "reason", "", "why it was moved")
	c.Flags().BoolVar(&o.take, "take", false, "put the piece on the plan where it was found")
	c.Flags().BoolVar(&o.note, "note", false, "leave the plan and tell of it in the transfer")
	s.asksFloor(c)
	s.asksScene(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

func (s *session) measureBack(c *cobra.Command, p *production, piece string, o back) error {
	f, scene, err := s.chosen(p.P)
	if err != nil {
		return err
	}
	e, err := elementNamed(p.P, piece)
	if err != nil {
		return err
	}
	w := p.work(f.ID)
	found, err := o.points(p.P, w)
	if err != nil {
		return err
	}
	b, err := prep.MeasureBack(p.P, w, e.ID, scene, found)
	if err != nil {
		return err
	}
	out := measuredOf(p.P, e, b)
	if o.take || o.note {
		if err := s.keepMove(c, p, b, o); err != nil {
			return err
		}
		out.Kept, out.Taken, out.Next = true, o.take, keptWords(o.take)
	}
	if s.json {
		return s.writeJSON(out)
	}
	_, err = fmt.Fprintf(s.out, "%s\n%s\n", out.Sentence, out.Next)
	return err
}

// keepMove records what was found, and with --take puts the piece there.
func (s *session) keepMove(c *cobra.Command, p *production, b prep.Back, o back) error {
	switch {
	case !b.Takeable():
		return errors.New("nothing has been kept: " + b.Sentence(p.P))
	case strings.TrimSpace(o.reason) == "":
		return errors.New("say why it was moved with --reason: the next team was not there")
	}
	m := b.Move
	var labels []string
	for _, f := range b.Points {
		labels = append(labels, f.Label)
	}
	m.ID, m.Points, m.Reason, m.Taken = uuid.NewString(), strings.Join(labels, ", "), o.reason, o.take
	m.By, m.On = s.worker(), s.now()
	label := "Note that a piece was moved"
	if o.take {
		label = "Move a piece to where it was measured"
	}
	return p.Edit(c.Context(), p.Snapshot, label, func(to *prep.Production) error { return to.KeepMove(m) })
}

// keptWords say where a move is kept.
func keptWords(taken bool) string {
	if taken {
		return "Kept: the plan has it in the new place."
	}
	return "Kept: the transfer tells of it, and the plan has it in the old place."
}

// points reads the marks that were measured.
func (o back) points(p *prep.Production, w *prep.FloorWork) ([]prep.BackPoint, error) {
	side, ok := map[string]survey.Side{"": "", "left": survey.Left, "right": survey.Right}[o.side]
	if !ok {
		return nil, fmt.Errorf("--tapes is \"left\" or \"right\", not %q", o.side)
	}
	var out []prep.BackPoint
	for _, text := range o.at {
		label, rest, ok := strings.Cut(text, "=")
		first, second, both := strings.Cut(rest, ",")
		if !ok || !both {
			return nil, fmt.Errorf("%q is not LABEL=UP, OVER", text)
		}
		at, err := w.ReadBack(p, first, second, side)
		if err != nil {
			return nil, fmt.Errorf("mark %s: %w", label, err)
		}
		out = append(out, prep.BackPoint{Label: strings.ToUpper(strings.TrimSpace(label)), At: at})
	}
	return out, nil
}

func elementNamed(p *prep.Production, name string) (*plan.Element, error) {
	names := make([]string, len(p.Plan.Elements))
	for i, e := range p.Plan.Elements {
		names[i] = e.Name
	}
	i, err := named("piece", name, names)
	if err != nil {
		return nil, err
	}
	return &p.Plan.Elements[i], nil
}

func measuredOf(p *prep.Production, e *plan.Element, b prep.Back) measured {
	out := measured{
		Piece: e.Name, Finding: string(b.Finding), Sentence: b.Sentence(p), Next: b.Next(),
		Over: metres(b.Move.Over), Up: metres(b.Move.Up), Turn: b.Move.Turn, Points: []foundMark{},
	}
	for _, f := range b.Points {
		out.Points = append(out.Points, foundMark{f.Label, metres(f.At.Y), metres(f.At.X), metres(f.Miss)})
	}
	return out
}
