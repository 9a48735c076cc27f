package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// session is one run of the program: where it writes, what time it is, and the
// options that several commands share.
type session struct {
	out      io.Writer // results
	messages io.Writer
	now      func() time.Time

	json  bool
	who   string
	floor string
	scene string
}

// production is an open file with what has been computed from it.
type production struct {
	*store.File
	store.Snapshot
	works map[floor.ID]*prep.FloorWork
}

// reads gives a command the production file that its first argument names.
func (s *session) reads(do func(*cobra.Command, *production, []string) error) func(*cobra.Command, []string) error {
	return func(c *cobra.Command, args []string) (err error) {
		p, err := s.open(c.Context(), args[0])
		if err != nil {
			return err
		}
		defer func() { err = errors.Join(err, p.Close()) }()
		return do(c, p, args[1:])
	}
}

func (s *session) open(ctx context.Context, path string) (*production, error) {
	f, err := store.Open(ctx, path, s.worker())
	if err != nil {
		return nil, err
	}
	return &production{File: f, Snapshot: f.Now(), works: map[floor.ID]*prep.FloorWork{}}, nil
}

// work returns what follows for a floor over all scenes, computed once.
func (p *production) work(id floor.ID) *prep.FloorWork {
	w, ok := p.works[id]
	if !ok {
		w = prep.Work(p.P, id, "")
		p.works[id] = w
	}
	return w
}

// asksWho adds the option for the name under which a change goes into the history.
func (s *session) asksWho(c *cobra.Command) {
	c.Flags().StringVar(&s.who, "who", "", "who is working, as the history names them (default: as the window was told)")
}

// asksJSON adds the option for results that other programs read.
func (s *session) asksJSON(c *cobra.Command) {
	c.Flags().BoolVar(&s.json, "json", false, "write JSON: lengths in metres, units in the names")
}

func (s *session) asksFloor(c *cobra.Command) {
	c.Flags().StringVar(&s.floor, "floor", "", "the floor, by name (default: the first)")
}

func (s *session) asksScene(c *cobra.Command) {
	c.Flags().StringVar(&s.scene, "scene", "", "the scene, by name (default: all scenes)")
}

// chosenFloor returns the floor that --floor names, or the first one.
func (s *session) chosenFloor(p *prep.Production) (*floor.Floor, error) {
	if len(p.Floors) == 0 {
		return nil, errors.New("the production has no floor yet; add one in the window")
	}
	if s.floor == "" {
		return &p.Floors[0], nil
	}
	return floorNamed(p, s.floor)
}

func floorNamed(p *prep.Production, name string) (*floor.Floor, error) {
	names := make([]string, len(p.Floors))
	for i, f := range p.Floors {
		names[i] = f.Name
	}
	i, err := named("floor", name, names)
	if err != nil {
		return nil, err
	}
	return &p.Floors[i], nil
}

// chosenScene returns the scene that --scene names; empty for all of them.
func (s *session) chosenScene(p *prep.Production) (plan.SceneID, error) {
	if s.scene == "" {
		return "", nil
	}
	names := make([]string, len(p.Plan.Scenes))
	for i, scene := range p.Plan.Scenes {
		names[i] = scene.Name
	}
	i, err := named("scene", s.scene, names)
	if err != nil {
		return "", err
	}
	return p.Plan.Scenes[i].ID, nil
}

// named finds the one that a person means: its whole name, whatever the capitals,
// or a beginning that only one has.
func named(what, name string, names []string) (int, error) {
	var like []int
	for i, n := range names {
		if strings.EqualFold(n, name) {
			return i, nil
		}
		if strings.HasPrefix(strings.ToLower(n), strings.ToLower(name)) {
			like = append(like, i)
		}
	}
	switch {
	case len(like) == 1:
		return like[0], nil
	case len(names) == 0:
		return 0, fmt.Errorf("there is no %s called %q: the production has none", what, name)
	}
	return 0, fmt.Errorf("there is no %s called %q; there are: %s", what, name, strings.Join(names, "; "))
}

// takes makes an argument check that names what is missing.
func takes(words ...string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) < len(words):
			return fmt.Errorf("%s needs %s; %s --help shows how", c.CommandPath(), strings.Join(words[len(args):], " and "), c.CommandPath())
		case len(args) > len(words):
			return fmt.Errorf("%s takes no %q; %s --help shows how", c.CommandPath(), args[len(words)], c.CommandPath())
		}
		return nil
	}
}
