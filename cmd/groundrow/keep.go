package main

import (
	"fmt"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/floor"
)

// keptFloor is a floor of a file, in JSON.
type keptFloor struct {
	Name  string  `json:"floor"`
	Kind  string  `json:"kind"`
	Area  float64 `json:"area_m2"`
	Walls int     `json:"walls"`
}

func keptFloorOf(f *floor.Floor) keptFloor {
	return keptFloor{f.Name, string(f.Kind), f.Outline.Area(), len(f.Outline.Edges())}
}

// keepCommand writes a floor to a file of its own.
func keepCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "keep FILE TO",
		Short: "Keep a floor for next time, in a file of its own",
		Long: "Write a room, a stage or a floor cloth to a production file of its own, with its walls and what was measured, what stands in it, " +
			"what must stay clear, its owner's rule and its pivots. Where the plan lies in it and what was decided about the set stay behind. " +
			"A file that is already there is left alone.",
		Example: "  groundrow keep demo.groundrow tannery.groundrow --floor \"Tannery Hall\"",
		Args:    takes("FILE", "TO"),
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			kept, _ := p.P.KeepFloor(f.ID, uuid.NewString)
			return s.create(c, withExtension(args[0]), kept)
		}),
	}
	s.asksFloor(c)
	s.asksWho(c)
	return c
}

// takeCommand brings floors of another production file in, or lists them.
func takeCommand(s *session) *cobra.Command {
	var names []string
	c := &cobra.Command{
		Use:   "take FILE FROM",
		Short: "Take a floor from another production file, or list those that it has",
		Long: "List the floors of another production file, which is only read; with --floor, once for each, bring them into this one " +
			"with everything that belongs to the room itself. A name that is taken already gets a number.",
		Example: "  groundrow take harbour.groundrow tannery.groundrow\n  groundrow take harbour.groundrow tannery.groundrow --floor \"Tannery Hall\"\n" +
			"  groundrow take harbour.groundrow tannery.groundrow --json\n  → [ { \"floor\": \"Tannery Hall\", \"kind\": \"rehearsal room\", \"area_m2\": 165.4, \"walls\": 4 } ]",
		Args: takes("FILE", "FROM"),
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error {
			from, err := store.Look(c.Context(), args[0])
			if err != nil {
				return err
			}
			if len(names) == 0 {
				return s.listFloors(from.Floors)
			}
			return s.takeFloors(c, p, from, names)
		}),
	}
	c.Flags().StringArrayVar(&names, "floor", nil, "a floor of the other file, by name")
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

func (s *session) listFloors(floors []floor.Floor) error {
	rows := make([]keptFloor, 0, len(floors))
	t := newTable("Floor", "Kind", ">Walls", ">Area, m²")
	for i := range floors {
		k := keptFloorOf(&floors[i])
		rows = append(rows, k)
		t.row(k.Name, k.Kind, fmt.Sprint(k.Walls), fmt.Sprintf("%.1f", k.Area))
	}
	if s.json {
		return s.writeJSON(rows)
	}
	if len(rows) == 0 {
		fmt.Fprintln(s.messages, "There is no floor in that file.")
	}
	return t.write(s.out)
}

func (s *session) takeFloors(c *cobra.Command, p *production, from *prep.Production, names []string) error {
	var ids []floor.ID
	for _, name := range names {
		f, err := floorNamed(from, name)
		if err != nil {
			return err
		}
		ids = append(ids, f.ID)
	}
	var taken []floor.ID
	err := p.Edit(c.Context(), p.Snapshot, "Take "+prep.Counted(len(ids), "floor")+" from another file", func(to *prep.Production) error {
		taken = nil
		for _, id := range ids {
			if id, ok := to.TakeFloor(from, id, uuid.NewString); ok {
				taken = append(taken, id)
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	now := p.Now().P
	var list []floor.Floor
	for _, id := range taken {
		if f := now.Floor(id); f != nil {
			list = append(list, *f)
		}
	}
	return s.listFloors(list)
}
