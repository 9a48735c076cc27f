package main

import (
	"fmt"
	"strconv"

	"github.com/spf13/cobra"

	"groundrow/store"
)

// salvageCommand saves what can be read of a damaged file.
func salvageCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "salvage DAMAGED NEW",
		Short: "Save what can be read of a damaged file",
		Long: "Read what can be read of a damaged production file and write it into a new one. The damaged file is not touched, " +
			"and a file that is already there is left alone. The exit status is 1 when something could not be read; the history is never carried over.",
		Example: "  groundrow salvage broken.groundrow saved.groundrow --json\n  → { \"complete\": false, \"tables\": [ { \"table\": \"element\", \"rows\": 62, \"complete\": false }, … ], \"left_out\": [] }",
		Args:    takes("DAMAGED", "NEW"),
		RunE: func(c *cobra.Command, args []string) error {
			report, err := store.Salvage(c.Context(), args[0], args[1], s.worker())
			if err != nil {
				return err
			}
			return s.tellSalvage(report)
		},
	}
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

// rescued is what came out of a damaged file, in JSON.
type rescued struct {
	Complete bool           `json:"complete"`
	Tables   []rescuedTable `json:"tables"`
	Left     []string       `json:"left_out"`
}

type rescuedTable struct {
	Table    string `json:"table"`
	Rows     int    `json:"rows"`
	Complete bool   `json:"complete"`
}

func (s *session) tellSalvage(r store.Report) error {
	out := rescued{r.Complete(), []rescuedTable{}, none(r.Left)}
	t := newTable("Table", ">Rows", "Whole")
	for _, read := range r.Tables {
		out.Tables = append(out.Tables, rescuedTable(read))
		t.row(read.Table, strconv.Itoa(read.Rows), yes(read.Complete))
	}
	write := func() error { return t.write(s.out) }
	if s.json {
		write = func() error { return s.writeJSON(out) }
	}
	if err := write(); err != nil {
		return err
	}
	for _, left := range r.Left {
		fmt.Fprintln(s.messages, left)
	}
	if !r.Complete() {
		return errProblems
	}
	return nil
}
