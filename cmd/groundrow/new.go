package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/length"
)

// newCommand starts a production.
func newCommand(s *session) *cobra.Command {
	var title, unit, first string
	c := &cobra.Command{
		Use:   "new FILE",
		Short: "Start a production",
		Long: "Start a production file: an empty plan, a rehearsal room to be measured, the stage to hand on to, " +
			"and the usual tapes and kit to choose from. A file that is already there is left alone.",
		Example: "  groundrow new harbour.groundrow --title \"The Harbour Lights\" --unit ft --first 2031-03-10",
		Args:    takes("FILE"),
		RunE: func(c *cobra.Command, args []string) error {
			u, err := unitNamed(unit)
			if err != nil {
				return err
			}
			day, err := dayTyped(first)
			if err != nil {
				return err
			}
			path := withExtension(args[0])
			if title == "" {
				title = strings.TrimSuffix(filepath.Base(path), extension)
			}
			return s.create(c, path, prep.New(title, u, day, uuid.NewString))
		},
	}
	c.Flags().StringVar(&title, "title", "", "the name of the show (default: that of the file)")
	c.Flags().StringVar(&unit, "unit", string(length.FeetInches), "lengths in ft, m, cm or mm")
	c.Flags().StringVar(&first, "first", "", "the day of the first rehearsal, as 2031-03-10")
	s.asksWho(c)
	return c
}

// create writes a new production file and says where.
func (s *session) create(c *cobra.Command, path string, p *prep.Production) error {
	f, err := store.Create(c.Context(), path, s.worker(), p)
	if err != nil {
		return err
	}
	fmt.Fprintln(s.out, f.Path())
	return f.Close()
}

func withExtension(path string) string {
	if filepath.Ext(path) == "" {
		return path + extension
	}
	return path
}

func unitNamed(text string) (length.Unit, error) {
	var names []string
	for _, u := range length.Units {
		if strings.EqualFold(text, string(u)) {
			return u, nil
		}
		names = append(names, string(u))
	}
	return "", fmt.Errorf("%q is no unit of length; there are: %s", text, strings.Join(names, ", "))
}

// dayTyped reads a day; nothing typed is no day.
func dayTyped(text string) (time.Time, error) {
	if text == "" {
		return time.Time{}, nil
	}
	day, err := time.ParseInLocation(time.DateOnly, text, time.Local)
	if err != nil {
		return time.Time{}, errors.New(text + " is no day; write it as year, month and day: 2031-03-10")
	}
	return day, nil
}
