package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"groundrow/prep"
)

// week is the week in JSON.
type week struct {
	DaysLeft *int      `json:"days_left"` // null while no first rehearsal is set
	Parts    []part    `json:"parts"`
	Dangers  []problem `json:"dangers"`
}

type part struct {
	Place    string `json:"place"`
	State    string `json:"state"`
	Sentence string `json:"sentence"`
}

// weekCommand tells how the week stands.
func weekCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "week FILE",
		Short: "Tell how the week stands, a sentence for each part of the job",
		Long: "Tell how many days are left, what endangers the first rehearsal, and how far every part of the job has got, " +
			"each with the place of the window where it is done.",
		Example: "  groundrow week demo.groundrow\n  groundrow week demo.groundrow --json\n" +
			"  → { \"days_left\": 6, \"parts\": [ { \"place\": \"Plan\", \"state\": \"ready\", \"sentence\": \"…\" }, … ], \"dangers\": […] }",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			w := prep.WeekOf(p.P, p.work, s.now())
			if s.json {
				return s.writeJSON(weekIn(w))
			}
			return s.tellWeek(w)
		}),
	}
	s.asksJSON(c)
	return c
}

func weekIn(w prep.Week) week {
	out := week{Parts: []part{}, Dangers: problemsOf(w.Dangers)}
	if w.Dated {
		out.DaysLeft = &w.DaysLeft
	}
	for _, p := range w.Parts {
		out.Parts = append(out.Parts, part{p.Place, string(p.State), p.Sentence})
	}
	return out
}

func (s *session) tellWeek(w prep.Week) error {
	if w.Dated {
		fmt.Fprintf(s.out, "Days to the first rehearsal: %d\n", w.DaysLeft)
	}
	for _, d := range w.Dangers {
		fmt.Fprintln(s.out, "!", d.Sentence())
	}
	fmt.Fprintln(s.out)
	t := newTable("Part", "State", "How it stands")
	for _, p := range w.Parts {
		t.row(p.Place, string(p.State), p.Sentence)
	}
	return t.write(s.out)
}
