package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// downWhen is what of a floor is down in which scenes, in JSON.
type downWhen struct {
	Floor    string      `json:"floor"`
	Elements []sceneUse  `json:"elements"`
	Scenes   []sceneTape `json:"scenes"`
	Rests    []rest      `json:"stops"`
	Spare    []spare     `json:"spare"`
	Together spare       `json:"spare_together"`
}

type sceneUse struct {
	Element   string   `json:"element"`
	Always    bool     `json:"all_the_time"`
	Scenes    []string `json:"scenes"`
	Positions int      `json:"positions"`
	Lines     metres   `json:"lines_m"`
}

type sceneTape struct {
	Scene  string `json:"scene"`
	Lines  metres `json:"lines_m"`
	Only   metres `json:"only_some_scenes_m"`
	Spikes int    `json:"spikes"`
}

type rest struct {
	Element string   `json:"element"`
	Stands  string   `json:"stands"`
	Scenes  []string `json:"scenes"`
	Mark    string   `json:"mark"`
	Up      metres   `json:"up_m"`
	Over    metres   `json:"over_m"`
}

type spare struct {
	Element string `json:"element,omitempty"`
	Why     string `json:"why,omitempty"`
	Saves   metres `json:"saves_m"`
	Cents   int    `json:"saves_cents"`
}

// scenesCommand tells what of a floor is down when.
func scenesCommand(s *session) *cobra.Command {
	var spareToo bool
	c := &cobra.Command{
		Use:   "scenes FILE",
		Short: "Tell what of a floor is down all the time and what only in some scenes",
		Long: "Tell for every element of a floor in which scenes it is down, how much lies there scene by scene, where what turns or runs comes to rest, and which tape no actor needs, with the tape and the money that leaving it out would save. " +
			"With --spare all of that is left out, to be decided; undo takes it back.",
		Example: "  groundrow scenes demo.groundrow --floor \"Tannery Hall\"\n  groundrow scenes demo.groundrow --json\n" +
			"  → { \"floor\": \"Tannery Hall\", \"elements\": [ { \"element\": \"Hearth\", \"all_the_time\": true, \"scenes\": […], \"positions\": 1, \"lines_m\": 3.6 } ], \"scenes\": […], \"stops\": […], \"spare\": […], … }",
		Args: takes("FILE"),
		RunE: s.reads(func(c *cobra.Command, p *production, _ []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			if spareToo {
				if err := leaveOutSpares(c, p, f); err != nil {
					return err
				}
				p = p.again()
			}
			out := downWhenOf(p, f.ID)
			if s.json {
				return s.writeJSON(out)
			}
			return s.tellScenes(p.P, out)
		}),
	}
	c.Flags().BoolVar(&spareToo, "spare", false, "leave out what no actor needs, to be decided")
	s.asksFloor(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

func leaveOutSpares(c *cobra.Command, p *production, f *floor.Floor) error {
	each, _ := prep.Spares(p.P, f.ID, p.work)
	if len(each) == 0 {
		return errors.New("actors need all that is laid on " + f.Name)
	}
	return p.Edit(c.Context(), p.Snapshot, "Leave out what no actor needs on "+f.Name, func(to *prep.Production) error {
		prep.TakeSpares(to, f.ID, each)
		return nil
	})
}

func downWhenOf(p *production, id floor.ID) downWhen {
	w := p.work(id)
	out := downWhen{Floor: w.Floor.Name, Elements: []sceneUse{}, Scenes: []sceneTape{}, Spare: []spare{}}
	for _, u := range prep.SceneUses(p.P, w) {
		out.Elements = append(out.Elements, sceneUse{
			Element: p.P.Plan.Element(u.Element).Name, Always: u.Always, Scenes: namesOf(p.P, u.Scenes), Positions: u.Positions, Lines: metres(u.Laid),
		})
	}
	for _, t := range prep.SceneTapes(p.P, w) {
		out.Scenes = append(out.Scenes, sceneTape{p.P.Plan.SceneName(t.Scene), metres(t.Laid), metres(t.Only), t.Spikes})
	}
	out.Rests = restsOf(prep.Rests(p.P, w))
	each, all := prep.Spares(p.P, id, p.work)
	for _, x := range each {
		out.Spare = append(out.Spare, spare{x.Name, x.Reason, metres(x.Metres), x.Cents})
	}
	out.Together = spare{Saves: metres(all.Metres), Cents: all.Cents}
	return out
}

func restsOf(rests []prep.Rest) []rest {
	out := []rest{}
	for _, r := range rests {
		out = append(out, rest{r.Name, r.Where, none(r.Scenes), r.Mark, metres(r.At.Y), metres(r.At.X)})
	}
	return out
}

func namesOf(p *prep.Production, ids []plan.SceneID) []string {
	out := []string{}
	for _, id := range ids {
		out = append(out, p.Plan.SceneName(id))
	}
	return out
}

func (s *session) tellScenes(p *prep.Production, out downWhen) error {
	style := p.Style()
	uses := newTable("Element", "Down", ">Lines")
	for _, u := range out.Elements {
		down := "all the time"
		if !u.Always {
			down = prep.Listed(u.Scenes)
		}
		if u.Positions > 1 {
			down += ", in " + prep.Counted(u.Positions, "place")
		}
		uses.row(u.Element, down, style.Format(float64(u.Lines)))
	}
	scenes := newTable("Scene", ">Lines in use", ">Only in some scenes", ">Spikes and stops")
	for _, t := range out.Scenes {
		scenes.row(t.Scene, style.Format(float64(t.Lines)), style.Format(float64(t.Only)), fmt.Sprint(t.Spikes))
	}
	moves := newTable("What moves", "Stands", "Scenes", "Mark", ">Up", ">Over")
	for _, m := range out.Rests {
		moves.row(m.Element, m.Stands, prep.Listed(m.Scenes), m.Mark, style.FormatUp(float64(m.Up)), style.FormatOver(float64(m.Over)))
	}
	spares := newTable("No actor needs", "Why", ">Tape saved", ">Money saved")
	for _, x := range out.Spare {
		spares.row(x.Element, x.Why, style.Format(float64(x.Saves)), p.Money(x.Cents))
	}
	for i, t := range []*table{uses, scenes, moves, spares} {
		if i > 0 {
			fmt.Fprintln(s.out)
		}
		if err := t.write(s.out); err != nil {
			return err
		}
	}
	return nil
}
