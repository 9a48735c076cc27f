package prep

import (
	"groundrow/tapeout/plan"
)

// SceneUse says in which scenes one element is down on a floor.
type SceneUse struct {
	Element   plan.ElementID
	Always    bool           // it is down all the time: in every scene, in one place
	Scenes    []plan.SceneID // those that use it, in the plan's order
	Positions int            // different places in which it lies over the scenes
	Laid      float64        // metres of lines, over all its positions
	Spiked    bool           // it has spikes and no lines
}

// SceneUses returns what the floor lays, in plan order, with the scenes that use it.
// In a plan without scenes all is down all the time.
func SceneUses(p *Production, w *FloorWork) []SceneUse {
	laid := map[plan.ElementID]float64{}
	for _, l := range w.Lines {
		laid[l.Element] += l.Length()
	}
	spiked := map[plan.ElementID]bool{}
	for _, piece := range w.Pieces {
		spiked[piece.Element] = true
	}
	var out []SceneUse
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		if laid[e.ID] == 0 && !spiked[e.ID] {
			continue
		}
		standings := p.Plan.Standings(e)
		u := SceneUse{Element: e.ID, Positions: len(standings), Laid: laid[e.ID], Spiked: spiked[e.ID]}
		u.Always = len(standings) == 1 && len(standings[0].Scenes) == 0
		for _, s := range p.Plan.Scenes {
			if _, in := p.Plan.Where(e, s.ID); in {
				u.Scenes = append(u.Scenes, s.ID)
			}
		}
		out = append(out, u)
	}
	return out
}

// SceneTape is how much lies on the floor in one scene.
type SceneTape struct {
	Scene  plan.SceneID
	Laid   float64 // metres of lines that the scene needs
	Only   float64 // of them, those that are down only in some scenes
	Spikes int
}

// SceneTapes returns what lies on the floor scene by scene, in the plan's order.
func SceneTapes(p *Production, w *FloorWork) []SceneTape {
	var out []SceneTape
	for _, s := range p.Plan.Scenes {
		t := SceneTape{Scene: s.ID}
		in := w.In(s.ID)
		for _, l := range in.Lines {
			t.Laid += l.Length()
			if len(l.Scenes) > 0 {
				t.Only += l.Length()
			}
		}
		for _, m := range in.Marks {
			if m.Form() != "" {
				t.Spikes++
			}
		}
		out = append(out, t)
	}
	return out
}

// UseWords says in which scenes something is down: "all the time", or their names.
func UseWords(p *Production, u SceneUse) string {
	if u.Always {
		return "all the time"
	}
	words := "in every scene"
	if len(u.Scenes) < len(p.Plan.Scenes) {
		var names []string
		for _, s := range u.Scenes {
			names = append(names, p.Plan.SceneName(s))
		}
		words = Listed(names)
	}
	if u.Positions > 1 {
		words += ", in " + Counted(u.Positions, "place")
	}
	return words
}
