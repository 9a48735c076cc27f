package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"groundrow/prep"
)

// problem is one problem in JSON.
type problem struct {
	Rule     string `json:"rule"`
	Where    string `json:"where"`
	Place    string `json:"place"`
	ID       string `json:"id"`
	Sentence string `json:"sentence"`
}

func problemsOf(list []prep.Problem) []problem {
	out := []problem{}
	for _, p := range list {
		out = append(out, problem{p.Rule, p.Where, p.Place, p.ID, p.Sentence()})
	}
	return out
}

// checkCommand lists what is wrong.
func checkCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "check FILE",
		Short: "List the problems; exit status 1 when there are any",
		Long: "List everything that a person must look at before the first rehearsal, each with the place of the window where it can be cured. " +
			"The exit status is 1 when there is anything.",
		Example: "  groundrow check demo.groundrow\n  groundrow check demo.groundrow --json\n  → [ { \"rule\": \"tape enough\", \"where\": \"Red, 1 in cloth\", \"place\": \"Supplies\", \"id\": \"…\", \"sentence\": \"…\" }, … ]",
		Args:    takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			found := prep.Problems(p.P, p.work, s.now())
			if err := s.tellProblems(found); err != nil {
				return err
			}
			if len(found) > 0 {
				return errProblems
			}
			return nil
		}),
	}
	s.asksJSON(c)
	return c
}

func (s *session) tellProblems(found []prep.Problem) error {
	if s.json {
		return s.writeJSON(problemsOf(found))
	}
	for _, p := range found {
		if _, err := fmt.Fprintf(s.out, "%-10s %s\n", p.Place, p.Sentence()); err != nil {
			return err
		}
	}
	return nil
}
