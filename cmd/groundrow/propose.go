package main

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/placement"
)

// proposed is what a search for placements has found, in JSON.
type proposed struct {
	Floor     string     `json:"floor"`
	Present   *proposal  `json:"as_it_is"`
	Proposals []proposal `json:"proposals"`
	Bound     float64    `json:"no_placement_scores_above"`
	Proven    bool       `json:"best_is_within_half_a_percent"`
	Why       string     `json:"why_none,omitempty"`
}

// proposal is one placement with what it keeps and loses, in JSON.
type proposal struct {
	Along  metres   `json:"along_m"`
	Into   metres   `json:"into_m"`
	Turn   degrees  `json:"turn_deg"`
	Score  float64  `json:"score"`
	Lines  float64  `json:"lines_kept"`
	Area   float64  `json:"area_kept"`
	Sight  float64  `json:"sight_kept"`
	Losses []loss   `json:"losses"`
	Broken []string `json:"requirements_not_kept"`
}

type loss struct {
	Element string  `json:"element"`
	Length  metres  `json:"lost_m"`
	Of      metres  `json:"of_m"`
	Area    float64 `json:"lost_m2"`
	Why     string  `json:"why"`
}

// wishing are the requirements that a person typed; empty: as they are.
type wishing struct {
	turns, fronts string
	area, sight   float64
	take          int
	propose       bool
}

func (w *wishing) flags(c *cobra.Command) {
	c.Flags().BoolVar(&w.propose, "propose", false, "search for the best placements and list them with what each keeps and loses")
	c.Flags().IntVar(&w.take, "take", 0, "search, and set the plan as the proposal of this number has it")
	c.Flags().StringVar(&w.turns, "turns", "", "how the plan may be turned: any, square (to a wall), or steps from the boards in degrees, as 15")
	c.Flags().StringVar(&w.fronts, "fronts", "", "the walls that may be the front, by number in the order of the room's corners, as 1,3; any for all of them")
	c.Flags().Float64Var(&w.area, "area", -1, "what all playing area counts, where all lines count 1")
	c.Flags().Float64Var(&w.sight, "sight", -1, "what all that the front table sees counts, where all lines count 1")
}

// searches tells whether placements are asked for.
func (w *wishing) searches() bool { return w.propose || w.take != 0 }

// changes tells whether requirements are to be changed.
func (w *wishing) changes() bool {
	return w.turns != "" || w.fronts != "" || w.area >= 0 || w.sight >= 0
}

// set gives the floor the requirements that were typed.
func (w *wishing) set(f *floor.Floor) error {
	if w.area >= 0 {
		f.Wishes.Area = w.area
	}
	if w.sight >= 0 {
		f.Wishes.Sight = w.sight
	}
	if err := w.setTurns(f); err != nil {
		return err
	}
	return w.setFronts(f)
}

func (w *wishing) setTurns(f *floor.Floor) error {
	switch w.turns {
	case "":
	case "any":
		f.Wishes.Angles = floor.AnyAngle
	case "square":
		f.Wishes.Angles = floor.ToWalls
	default:
		step, err := strconv.ParseFloat(strings.TrimSuffix(w.turns, "°"), 64)
		if err != nil || !(step >= 0.1 && step <= 360) {
			return fmt.Errorf("--turns: %q is none of any, square, or steps in degrees from 0.1 to 360", w.turns)
		}
		f.Wishes.Angles, f.Wishes.Step = floor.InSteps, step
	}
	return nil
}

func (w *wishing) setFronts(f *floor.Floor) error {
	if w.fronts == "" {
		return nil
	}
	var fronts []floor.Front
	if w.fronts != "any" {
		sides := placement.Sides(f.Outline)
		for _, word := range strings.Split(w.fronts, ",") {
			n, err := strconv.Atoi(strings.TrimSpace(word))
			i := slices.IndexFunc(sides, func(s placement.Side) bool { return slices.Contains(s.Walls, n-1) })
			if err != nil || i < 0 {
				return fmt.Errorf("--fronts: %q is no wall of %s; it has walls 1 to %d", word, f.Name, len(f.Outline.Vertices))
			}
			fronts = append(fronts, floor.Front{ID: uuid.NewString(), Toward: sides[i].Toward})
		}
	}
	f.Fronts = fronts
	return nil
}

// proposePlacements searches, tells what was found, and takes one when asked.
func (s *session) proposePlacements(ctx context.Context, p *production, f *floor.Floor, w *wishing) error {
	found, err := prep.ProposePlacements(ctx, p.P, f, nil)
	if err != nil {
		return fmt.Errorf("%s: %w", f.Name, err)
	}
	if err := s.tellProposed(p.P, f, found); err != nil {
		return err
	}
	switch {
	case len(found.Proposals) == 0:
		return fmt.Errorf("%s: %s", f.Name, found.NoneWords(p.P))
	case w.take == 0:
		return nil
	case w.take < 1 || w.take > len(found.Proposals):
		return fmt.Errorf("--take: there is no proposal %d; there are 1 to %d", w.take, len(found.Proposals))
	}
	m := found.Proposals[w.take-1].Placement
	return p.Edit(ctx, p.Now(), "Set the plan in "+f.Name+" as proposed", func(to *prep.Production) error {
		to.Floor(f.ID).Placement = m
		return nil
	})
}

func (s *session) tellProposed(p *prep.Production, f *floor.Floor, found prep.Proposals) error {
	out := proposed{Floor: f.Name, Proposals: []proposal{}, Bound: found.Bound, Proven: found.Proven, Why: found.NoneWords(p)}
	t := newTable(">", ">Score", ">Along", ">Into", ">Turned", "Loses")
	if k, ok := prep.PlacementScore(p, f); ok {
		present := proposalOf(p, k)
		out.Present = &present
		t.row(placementRow(p, "as it is", k)...)
	}
	for i, k := range found.Proposals {
		out.Proposals = append(out.Proposals, proposalOf(p, k))
		t.row(placementRow(p, strconv.Itoa(i+1), k)...)
	}
	if s.json {
		return s.writeJSON(out)
	}
	fmt.Fprintln(s.out, f.Name+": ways to set the plan. "+found.GuaranteeWords())
	return t.write(s.out)
}

func placementRow(p *prep.Production, name string, k placement.Kept) []string {
	style := p.Style()
	m := k.Placement
	loses := prep.LostWords(p, k, 3)
	if broken := prep.BreachWords(p, k); broken != "" {
		loses = "not allowed (" + broken + "); " + loses
	}
	return []string{name, fmt.Sprintf("%.1f %%", 100*k.Score), style.Format(m.Shift.X), style.Format(m.Shift.Y),
		fmt.Sprintf("%.2f°", m.Turn*180/math.Pi), loses}
}

func proposalOf(p *prep.Production, k placement.Kept) proposal {
	m := k.Placement
	out := proposal{Along: metres(m.Shift.X), Into: metres(m.Shift.Y), Turn: degrees(m.Turn * 180 / math.Pi), Score: k.Score,
		Lines: k.Lines.Part(), Area: k.Area.Part(), Sight: k.Sight.Part(), Losses: []loss{}, Broken: prep.BreachList(p, k)}
	for _, l := range k.Losses {
		name := string(l.Element)
		if e := p.Plan.Element(l.Element); e != nil {
			name = e.Name
		}
		out.Losses = append(out.Losses, loss{name, metres(l.Length), metres(l.Of), l.Area, prep.LossWords(p, l)})
	}
	return out
}
