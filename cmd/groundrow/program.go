package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"groundrow/store"
)

// Exit statuses.
const (
	good     = 0
	problems = 1 // the work was done, and something is wrong with what it looked at
	failed   = 2 // the work could not be done
)

// errProblems ends a command that did its work and has already told what is wrong
// with what it looked at.
var errProblems = errors.New("there are problems")

// extension is how production files end.
const extension = store.Extension

// run does what the arguments ask for and returns the exit status.
func (s *session) run(ctx context.Context, args []string) int {
	root := program(s)
	root.SetArgs(args)
	root.SetOut(s.out)
	root.SetErr(s.messages)
	err := root.ExecuteContext(ctx)
	switch {
	case err == nil:
		return good
	case errors.Is(err, errProblems):
		return problems
	}
	fmt.Fprintln(s.messages, "groundrow: "+err.Error())
	return failed
}

// Groups of the list of commands.
const (
	groupFile   = "file"
	groupPlan   = "plan"
	groupResult = "result"
	groupOut    = "out"
)

// program is the whole command line.
func program(s *session) *cobra.Command {
	cobra.MousetrapHelpText = "" // started by a double click, the program opens its window
	cobra.EnableCommandSorting = false
	root := &cobra.Command{
		Use:   "groundrow [FILE]",
		Short: "Full-size tape from a ground plan",
		Long: "Without a command, groundrow opens its window, with the production file when one is named. " +
			"Each command does one piece of the work without a window: results on the standard output, messages on the standard error, " +
			"exit status 0 when all is well, 1 when problems were found, 2 when the work could not be done.",
		Example:       "  groundrow demo demo.groundrow\n  groundrow demo.groundrow\n  groundrow check demo.groundrow",
		Args:          cobra.ArbitraryArgs,
		RunE:          func(c *cobra.Command, args []string) error { return openNamed(c, args) },
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SuggestionsMinimumDistance = 2
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error {
		return fmt.Errorf("%w; %s --help lists the options", err, c.CommandPath())
	})
	root.AddGroup(
		&cobra.Group{ID: groupFile, Title: "Production files:"},
		&cobra.Group{ID: groupPlan, Title: "Plan and floors:"},
		&cobra.Group{ID: groupResult, Title: "What follows from them:"},
		&cobra.Group{ID: groupOut, Title: "Paper, files and pictures:"},
	)
	add := func(group string, commands ...*cobra.Command) {
		for _, c := range commands {
			c.GroupID = group
			root.AddCommand(c)
		}
	}
	add(groupFile, newCommand(s), demoCommand(s), historyCommand(s), undoCommand(s), redoCommand(s), salvageCommand(s))
	add(groupPlan, importCommand(s), placeCommand(s), keepCommand(s), takeCommand(s), questionsCommand(s), scenesCommand(s), readCommand(s))
	add(groupResult, weekCommand(s), checkCommand(s), marksCommand(s), readingsCommand(s), tapeCommand(s), buyCommand(s), crewCommand(s),
		standInsCommand(s), compareCommand(s), transferCommand(s))
	add(groupPlan, tickCommand(s), movedCommand(s))
	add(groupResult, retapeCommand(s), waysCommand(s))
	add(groupOut, printCommand(s), exportCommand(s), picturesCommand(s), registerCommand(s))
	return root
}

// openNamed opens the window. What is neither a file nor called like one was
// meant to be a command.
func openNamed(c *cobra.Command, args []string) error {
	switch len(args) {
	case 0:
		return openWindow("")
	case 1:
		path := args[0]
		_, err := os.Stat(path)
		switch {
		case err == nil:
			return openWindow(path)
		case strings.EqualFold(filepath.Ext(path), extension):
			return fmt.Errorf("there is no file %s here; groundrow new %s would start one", path, path)
		}
	}
	hint := "groundrow --help lists the commands"
	if like := c.SuggestionsFor(args[0]); len(like) > 0 {
		hint = "did you mean " + strings.Join(like, " or ") + "?"
	}
	return fmt.Errorf("there is no command and no file called %q; %s", args[0], hint)
}
