package main

import (
	"fmt"
	"math"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
)

// placing is how the plan lies on a floor, in JSON.
type placing struct {
	Floor   string    `json:"floor"`
	Along   metres    `json:"along_m"`
	Into    metres    `json:"into_m"`
	Turn    degrees   `json:"turn_deg"`
	Outside []outside `json:"outside"`
}

type outside struct {
	Element string `json:"element"`
	Length  metres `json:"outside_m"`
	Of      metres `json:"of_m"`
}

// placed are the figures that a person typed; empty: as it is.
type placed struct{ along, into, turn string }

// placeCommand tells or sets how the plan lies on a floor.
func placeCommand(s *session) *cobra.Command {
	var typed placed
	var wishes wishing
	c := &cobra.Command{
		Use:   "place FILE",
		Short: "Tell, propose or set how the plan lies on a floor",
		Long: "Tell where the plan's datum, the place where its centre line meets its baseline, lies along and into the room as it was measured, " +
			"how far the plan is turned there, and what of the set lies outside. With figures, set it; what is not given stays as it is.\n\n" +
			"With --propose, search for the best ways to set it: what must be whole is whole, what must stay clear stays clear, the turn is one that the floor allows. " +
			"The score is the share of the lines that is kept, each element by its worth, and of playing area and sight as far as the floor wishes. --take N sets the plan as proposal N has it.",
		Example: "  groundrow place demo.groundrow --floor \"Tannery Hall\"\n  groundrow place demo.groundrow --floor \"Tannery Hall\" --along \"19' 9\\\"\" --into \"9'\" --turn 2.5\n" +
			"  groundrow place demo.groundrow --propose --fronts 1 --turns square\n  groundrow place demo.groundrow --take 1\n  groundrow place demo.groundrow --json\n  → { \"floor\": \"Tannery Hall\", \"along_m\": 6.0198, \"into_m\": 2.7432, \"turn_deg\": 0, \"outside\": [ { \"element\": \"Boat track\", \"outside_m\": 1.2, \"of_m\": 9.8 } ] }",
		Args: takes("FILE"),
		RunE: s.reads(func(c *cobra.Command, p *production, _ []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			if typed != (placed{}) {
				if err := typed.set(c, p, f); err != nil {
					return err
				}
				p = &production{File: p.File, Snapshot: p.Now(), works: map[floor.ID]*prep.FloorWork{}}
			}
			if wishes.changes() {
				if err := p.Edit(c.Context(), p.Snapshot, "Say how the plan may be set in "+f.Name, func(to *prep.Production) error {
					return wishes.set(to.Floor(f.ID))
				}); err != nil {
					return err
				}
				p = &production{File: p.File, Snapshot: p.Now(), works: map[floor.ID]*prep.FloorWork{}}
			}
			if wishes.searches() {
				return s.proposePlacements(c.Context(), p, p.P.Floor(f.ID), &wishes)
			}
			return s.tellPlacing(p, p.P.Floor(f.ID))
		}),
	}
	c.Flags().StringVar(&typed.along, "along", "", "how far along the room the datum lies")
	c.Flags().StringVar(&typed.into, "into", "", "how far into the room the datum lies")
	c.Flags().StringVar(&typed.turn, "turn", "", "degrees by which the plan is turned, counter-clockwise")
	wishes.flags(c)
	s.asksFloor(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

func (typed placed) set(c *cobra.Command, p *production, f *floor.Floor) error {
	m := f.Placement
	lengths := []struct {
		column, text string // as the window names them
		at           *float64
	}{{"along", typed.along, &m.Shift.X}, {"into", typed.into, &m.Shift.Y}}
	for _, l := range lengths {
		if l.text == "" {
			continue
		}
		v, err := length.Parse(l.text, p.P.Unit())
		if err != nil {
			return fmt.Errorf("--%s: %w", l.column, err)
		}
		*l.at = v
	}
	if typed.turn != "" {
		deg, err := degreesTyped(typed.turn)
		if err != nil {
			return err
		}
		m.Turn = deg * math.Pi / 180
	}
	return p.Edit(c.Context(), p.Snapshot, "Set the plan in "+f.Name, func(to *prep.Production) error {
		to.Floor(f.ID).Placement = m
		for _, l := range lengths {
			if l.text != "" {
				to.KeepTyped(string(f.ID), l.column, l.text)
			}
		}
		return nil
	})
}

func degreesTyped(text string) (float64, error) {
	var deg float64
	if _, err := fmt.Sscanf(text+"\n", "%g\n", &deg); err != nil || math.IsNaN(deg) || math.Abs(deg) > 360 {
		return 0, fmt.Errorf("--turn: %q is no angle; write degrees from -360 to 360, as 2.5", text)
	}
	return deg, nil
}

func (s *session) tellPlacing(p *production, f *floor.Floor) error {
	m := f.Placement
	out := placing{Floor: f.Name, Along: metres(m.Shift.X), Into: metres(m.Shift.Y), Turn: degrees(m.Turn * 180 / math.Pi), Outside: []outside{}}
	style := p.P.Style()
	t := newTable("Outside", ">Length", ">Of")
	for _, o := range p.work(f.ID).Overhangs {
		name := string(o.Element)
		if e := p.P.Plan.Element(o.Element); e != nil {
			name = e.Name
		}
		out.Outside = append(out.Outside, outside{name, metres(o.Length), metres(o.Of)})
		t.row(name, style.Format(o.Length), style.Format(o.Of))
	}
	if s.json {
		return s.writeJSON(out)
	}
	fmt.Fprintf(s.out, "%s: datum %s along and %s into the room; plan turned by %.4g°\n", f.Name,
		p.P.ShowLength(string(f.ID), "along", m.Shift.X), p.P.ShowLength(string(f.ID), "into", m.Shift.Y), float64(out.Turn))
	return t.write(s.out)
}
