package main

import (
	"github.com/spf13/cobra"

	"groundrow/assets/demo"
)

// demoCommand writes the demo.
func demoCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "demo FILE",
		Short: "Write the demo production",
		Long: "Write the demo production: an invented musical at an invented playhouse, in the middle of its prep week. " +
			"A file that is already there is left alone.",
		Example: "  groundrow demo demo.groundrow",
		Args:    takes("FILE"),
		RunE: func(c *cobra.Command, args []string) error {
			return s.create(c, withExtension(args[0]), demo.Production(s.now()))
		},
	}
	s.asksWho(c)
	return c
}
