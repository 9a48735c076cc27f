package planplace

import (
	"errors"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// shiftRow moves the row at one place of a list by some places, held at its ends,
// on a list of its own.
func shiftRow[T any](rows []T, at, by int) []T {
	to := min(max(at+by, 0), len(rows)-1)
	if at < 0 || at >= len(rows) || to == at {
		return rows
	}
	out := slices.Delete(slices.Clone(rows), at, at+1)
	return slices.Insert(out, to, rows[at])
}

func sceneAt(p *prep.Production, id plan.SceneID) int {
	return slices.IndexFunc(p.Plan.Scenes, func(s plan.Scene) bool { return s.ID == id })
}

func levelAt(p *prep.Production, id plan.LevelID) int {
	return slices.IndexFunc(p.Plan.Levels, func(l plan.Level) bool { return l.ID == id })
}

func renameScene(p *prep.Production, id plan.SceneID, name string) error {
	s := p.Plan.Scene(id)
	switch {
	case s == nil:
		return errors.New("the scene is no longer there: somebody has deleted it")
	case name == "":
		return errors.New("a scene needs a name, such as “1.2 The kitchen”")
	}
	s.Name = name
	return nil
}

func renameLevel(p *prep.Production, id plan.LevelID, name string) error {
	l := p.Plan.Level(id)
	switch {
	case l == nil:
		return errors.New("the level is no longer there: somebody has deleted it")
	case name == "":
		return errors.New("a level needs a name, such as “Upper storey”")
	}
	l.Name = name
	return nil
}

// onlyIn counts the elements that stand in one scene and no other: they go with
// it.
func onlyIn(p *prep.Production, scene plan.SceneID) int {
	n := 0
	for _, e := range p.Plan.Elements {
		if len(e.Stands) == 1 && e.Stands[0].Scene == scene {
			n++
		}
	}
	return n
}
