package main

import (
	"math"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// mark is one mark in JSON.
type mark struct {
	Label   string   `json:"label"`
	Kind    string   `json:"kind"`
	What    string   `json:"what"`
	Up      metres   `json:"up_m"`
	Over    metres   `json:"over_m"`
	Tapes   *tapes   `json:"two_tape"`
	Method  string   `json:"method"`
	Advised string   `json:"method_recommended"`
	Chosen  bool     `json:"method_chosen"`
	Within  metres   `json:"within_m"`
	Good    bool     `json:"good_enough"`
	Ways    []way    `json:"methods"`
	Scenes  []string `json:"scenes"`
	Frozen  bool     `json:"label_printed"`
	Placed  string   `json:"placed_by,omitempty"`
	Checked string   `json:"checked_by,omitempty"`
	Worn    string   `json:"worn_by,omitempty"`
	Lifted  string   `json:"lifted_by,omitempty"`
}

// tapes are the two-tape measurements of a mark in JSON.
type tapes struct {
	A    metres `json:"a_m"`
	B    metres `json:"b_m"`
	Side string `json:"side"`
	Weak bool   `json:"weak"`
	Far  bool   `json:"beyond_longest_tape"`
	// The pivots by their order of use.
	Pivots  [2]int `json:"pivots"`
	Blocked bool   `json:"blocked"`
}

// way is what one method makes of a mark in JSON: its 95 % ellipse, or why it is no way.
type way struct {
	Method    string  `json:"method"`
	Usable    bool    `json:"usable"`
	Why       string  `json:"why_not,omitempty"`
	Major     metres  `json:"half_axis_m"`
	Minor     metres  `json:"other_half_axis_m"`
	Direction float64 `json:"direction_deg"`
	Words     string  `json:"words,omitempty"`
}

func waysOf(p *prep.Production, m prep.MeasuredMark) []way {
	var out []way
	for _, w := range m.Ways {
		o := way{Method: string(w.Method), Usable: w.Usable, Why: w.Why, Major: metres(w.Ellipse.Major), Minor: metres(w.Ellipse.Minor),
			Direction: math.Round(w.Ellipse.Direction*1800/math.Pi) / 10}
		if w.Ellipse.Major > 0 {
			o.Words = p.ErrorInWords(w.Ellipse)
		}
		out = append(out, o)
	}
	return out
}

// marksCommand lists the marks of a floor.
func marksCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "marks FILE",
		Short: "List the marks of a floor with both measurements",
		Long: "List the marks that a floor needs, downstage to upstage and stage right to stage left, each with up and over from the datum " +
			"and with what two tapes from the floor's pivots read, how far it comes to lie from its place 95 times in a hundred by each method, and which method is recommended or chosen. " +
			"Over is positive to stage left, and the side of two tapes is that of the line from the first pivot to the second.",
		Example: "  groundrow marks demo.groundrow --floor \"Tannery Hall\" --scene 1.2\n  groundrow marks demo.groundrow --json\n" +
			"  → [ { \"label\": \"A\", \"kind\": \"corner\", \"what\": \"…\", \"up_m\": 0.6096, \"over_m\": -3.81, \"two_tape\": { \"a_m\": …, \"b_m\": …, \"side\": \"left\", … }, … ]",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			f, scene, err := s.chosen(p.P)
			if err != nil {
				return err
			}
			found := p.work(f.ID).In(scene).Marks
			if s.json {
				return s.writeJSON(marksOf(p.P, found))
			}
			return marksTable(p.P, found).write(s.out)
		}),
	}
	s.asksFloor(c)
	s.asksScene(c)
	s.asksJSON(c)
	return c
}

// chosen returns the floor and the scene of the options.
func (s *session) chosen(p *prep.Production) (*floor.Floor, plan.SceneID, error) {
	f, err := s.chosenFloor(p)
	if err != nil {
		return nil, "", err
	}
	scene, err := s.chosenScene(p)
	return f, scene, err
}

func marksOf(p *prep.Production, found []prep.MeasuredMark) []mark {
	out := []mark{}
	for _, m := range found {
		o := mark{
			Label: m.Label, Kind: string(m.Kind), What: m.What, Up: metres(m.Up()), Over: metres(m.Over()),
			Scenes: sceneNames(p, m.Scenes), Frozen: m.Frozen,
			Method: string(m.Method), Advised: string(m.Advised), Chosen: m.Chosen, Within: metres(m.Error), Good: m.Good, Ways: waysOf(p, m),
			Placed: m.Progress.Placed.By, Checked: m.Progress.Checked.By, Worn: m.Progress.Worn.By, Lifted: m.Progress.Lifted.By,
		}
		if m.HasTapes {
			o.Tapes = &tapes{metres(m.Tapes.A), metres(m.Tapes.B), string(m.Tapes.Side), m.Weak, m.Far, [2]int{m.Pair.A + 1, m.Pair.B + 1}, m.Blocked}
		}
		out = append(out, o)
	}
	return out
}

// sceneNames names scenes; all of them when there are none to name.
func sceneNames(p *prep.Production, ids []plan.SceneID) []string {
	if len(ids) == 0 {
		return []string{p.Plan.SceneName("")}
	}
	var out []string
	for _, id := range ids {
		out = append(out, p.Plan.SceneName(id))
	}
	return out
}

// methodOf is how a mark is placed: chosen, or else recommended.
func methodOf(m prep.MeasuredMark) string {
	if m.OutOfReach() {
		return "none reaches it"
	}
	return string(m.Method)
}

// withinOf is within what a mark comes to lie; nothing of one that is not placed.
func withinOf(p *prep.Production, m prep.MeasuredMark) string {
	if m.OutOfReach() {
		return "–"
	}
	return p.Fine(m.Error)
}

func marksTable(p *prep.Production, found []prep.MeasuredMark) *table {
	t := newTable("Mark", ">Up", ">Over", ">Tape A", ">Tape B", "Side", ">Within", "Method", "Kind", "What")
	style := p.Style()
	for _, m := range found {
		a, b := m.TapeFigures(style.Format)
		side := ""
		if m.HasTapes {
			side = string(m.Tapes.Side)
			if m.Weak {
				side += " (weak)"
			}
		}
		t.row(m.Label, style.FormatUp(m.Up()), style.FormatOver(m.Over()), a, b, side, withinOf(p, m), methodOf(m), string(m.Kind), m.What)
	}
	return t
}
