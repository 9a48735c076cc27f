package planplace

import (
	"errors"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// standIn returns where an element is placed in the scene; nil when it is not
// placed by scene, or no scene is chosen.
func standIn(e *plan.Element, scene plan.SceneID) *plan.Stand {
	if scene == "" {
		return nil
	}
	i := slices.IndexFunc(e.Stands, func(s plan.Stand) bool { return s.Scene == scene })
	if i < 0 {
		return nil
	}
	return &e.Stands[i]
}

// placeByScene lets an element stand in the scenes one by one, at first in all of
// them as drawn; off lets it stand in every scene as drawn again.
func placeByScene(p *prep.Production, e *plan.Element, on bool) error {
	switch {
	case !on:
		e.Stands = nil
	case len(p.Plan.Scenes) == 0:
		return errors.New("there are no scenes yet: add them first, under Scenes of the plan")
	case len(e.Stands) == 0:
		for _, s := range p.Plan.Scenes {
			e.Stands = append(e.Stands, plan.Stand{Scene: s.ID})
		}
	}
	return nil
}

// standHere puts an element into a scene or takes it out. The last scene stays,
// since an element in no scene would count as standing in every one.
func standHere(e *plan.Element, scene plan.SceneID, on bool) error {
	at := slices.IndexFunc(e.Stands, func(s plan.Stand) bool { return s.Scene == scene })
	switch {
	case on && at < 0:
		e.Stands = append(e.Stands, plan.Stand{Scene: scene})
	case !on && at >= 0 && len(e.Stands) == 1:
		return errors.New("an element stands in one scene at least; delete it if it is in none")
	case !on && at >= 0:
		e.Stands = slices.Delete(slices.Clone(e.Stands), at, at+1)
	}
	return nil
}

// travelOf returns how far a carrier has gone in a scene: degrees for a revolve,
// metres for a track.
func travelOf(p *prep.Production, carrier plan.ElementID, scene plan.SceneID) float64 {
	for _, c := range p.Plan.Carries {
		if c.Carrier == carrier && c.Scene == scene {
			return c.Travel
		}
	}
	return 0
}

// travel sets how far a carrier has gone in a scene.
func travel(p *prep.Production, carrier plan.ElementID, scene plan.SceneID, to float64) {
	p.Plan.Carries = slices.DeleteFunc(slices.Clone(p.Plan.Carries), func(c plan.Carry) bool {
		return c.Carrier == carrier && c.Scene == scene
	})
	if to != 0 {
		p.Plan.Carries = append(p.Plan.Carries, plan.Carry{Carrier: carrier, Scene: scene, Travel: to})
	}
}

// wayLength is how far a track can carry, in metres; ok is false without a way.
func wayLength(e *plan.Element) (metres float64, ok bool) {
	for _, path := range e.Paths {
		if path.Role == plan.Way && len(path.Vertices) > 1 {
			return path.Length(), true
		}
	}
	return 0, false
}

// seenAt is the motion from the drawing to what the canvas shows; the zero one
// for an element that is not in the scene.
func seenAt(p *prep.Production, e *plan.Element, scene plan.SceneID) plane.Motion {
	m, _ := p.Plan.Where(e, scene)
	return m
}
