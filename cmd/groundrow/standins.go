package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// sceneNeeds are the stand-ins of one scene in JSON.
type sceneNeeds struct {
	Scene string    `json:"scene"`
	Needs []standIn `json:"needs"`
}

type standIn struct {
	Element string `json:"element"`
	Why     string `json:"why"`
	Object  string `json:"object,omitempty"`
	Number  int    `json:"number"`
	State   string `json:"state"`
	Weight  bool   `json:"must_be_weighted"`
}

// standInsCommand tells what stands for what.
func standInsCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "standins FILE",
		Short: "Tell what stands in for scenery, scene by scene",
		Long: "Tell, scene by scene, what needs a stand-in, what stands for it and how far that has got. " +
			"What must be weighted so that it cannot tip is marked.",
		Example: "  groundrow standins demo.groundrow --scene 1.2\n  groundrow standins demo.groundrow --json\n" +
			"  → [ { \"scene\": \"1.2 The kitchen\", \"needs\": [ { \"element\": \"Front door\", \"why\": \"used by hand\", \"object\": \"music stand\", \"number\": 2, \"state\": \"confirmed\", \"must_be_weighted\": true }, … ] }, … ]",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			scenes, err := s.scenes(p.P)
			if err != nil {
				return err
			}
			list := []sceneNeeds{}
			t := newTable("Scene", "Element", "Object", ">Number", "State", "Weight it")
			for _, scene := range scenes {
				in := sceneNeeds{Scene: p.P.Plan.SceneName(scene), Needs: []standIn{}}
				for _, n := range prep.StandInNeeds(p.P, scene) {
					o := standInOf(n)
					in.Needs = append(in.Needs, o)
					t.row(in.Scene, o.Element, o.Object, strconv.Itoa(o.Number), o.State, yes(o.Weight))
				}
				list = append(list, in)
			}
			if s.json {
				return s.writeJSON(list)
			}
			return t.write(s.out)
		}),
	}
	s.asksScene(c)
	s.asksJSON(c)
	return c
}

// scenes are the one that --scene names, or each of the plan's in turn.
func (s *session) scenes(p *prep.Production) ([]plan.SceneID, error) {
	if s.scene != "" || len(p.Plan.Scenes) == 0 {
		scene, err := s.chosenScene(p)
		return []plan.SceneID{scene}, err
	}
	var out []plan.SceneID
	for _, scene := range p.Plan.Scenes {
		out = append(out, scene.ID)
	}
	return out, nil
}

func standInOf(n prep.StandInNeed) standIn {
	o := standIn{Element: n.Name, Why: string(n.Why), Number: n.Number, State: string(n.State), Weight: n.Safety}
	if n.Object != nil {
		o.Object = n.Object.Name
	}
	return o
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}
