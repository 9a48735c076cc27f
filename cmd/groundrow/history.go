package main

import (
	"fmt"
	"strconv"
	"time"

	"github.com/spf13/cobra"
)

// change is one entry of the history in JSON.
type change struct {
	ID    string `json:"id"`
	Seq   int64  `json:"number"`
	When  string `json:"when"`
	Who   string `json:"who"`
	Kind  string `json:"kind"`
	Label string `json:"what"`
	Of    string `json:"takes_back,omitempty"`
	Rows  int    `json:"rows"`
}

// historyCommand lists the changes.
func historyCommand(s *session) *cobra.Command {
	limit := 0
	c := &cobra.Command{
		Use:     "history FILE",
		Short:   "List the changes, newest first",
		Long:    "List who changed what and when, newest first. Undone and redone changes are listed as such.",
		Example: "  groundrow history demo.groundrow --last 20\n  groundrow history demo.groundrow --json\n  → [ { \"id\": \"…\", \"number\": 2, \"when\": \"2031-03-04T10:12:00Z\", \"who\": \"…\", \"kind\": \"edit\", \"what\": \"Set the plan in Tannery Hall\", \"rows\": 1 }, … ]",
		Args:    takes("FILE"),
		RunE: s.reads(func(c *cobra.Command, p *production, _ []string) error {
			entries, err := p.Journal(c.Context(), limit)
			if err != nil {
				return err
			}
			list := []change{}
			t := newTable(">No.", "When", "Who", "Kind", "What", ">Rows")
			for _, e := range entries {
				list = append(list, change{e.ID, e.Seq, e.When.Format(time.RFC3339), e.Who, string(e.Kind), e.Label, e.Of, e.Rows})
				t.row(strconv.FormatInt(e.Seq, 10), e.When.Local().Format("2006-01-02 15:04"), e.Who, string(e.Kind), e.Label, strconv.Itoa(e.Rows))
			}
			if s.json {
				return s.writeJSON(list)
			}
			return t.write(s.out)
		}),
	}
	c.Flags().IntVar(&limit, "last", 0, "how many (default: all)")
	s.asksJSON(c)
	return c
}

// undoCommand takes back the latest change of this person.
func undoCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "undo FILE",
		Short: "Take back your latest change",
		Long: "Take back the latest change that you made and that still stands, whether in the window or by a command. " +
			"Changes of others stay; where somebody has changed the same thing since, nothing is undone.",
		Example: "  groundrow undo demo.groundrow",
		Args:    takes("FILE"),
		RunE: s.reads(func(c *cobra.Command, p *production, _ []string) error {
			label, err := p.Undo(c.Context())
			if err != nil {
				return err
			}
			_, err = fmt.Fprintln(s.out, "Undone:", label)
			return err
		}),
	}
	s.asksWho(c)
	return c
}

// redoCommand brings back what this person has undone.
func redoCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:     "redo FILE",
		Short:   "Bring back what you have undone",
		Long:    "Bring back the latest change that you have undone, as long as you have made no other since.",
		Example: "  groundrow redo demo.groundrow",
		Args:    takes("FILE"),
		RunE: s.reads(func(c *cobra.Command, p *production, _ []string) error {
			label, err := p.Redo(c.Context())
			if err != nil {
				return err
			}
			_, err = fmt.Fprintln(s.out, "Redone:", label)
			return err
		}),
	}
	s.asksWho(c)
	return c
}
