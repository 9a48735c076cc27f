package main

import (
	"math"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/plane"
)

// passageway is a way across a floor in JSON. Metres, floor axes.
type passageway struct {
	Floor    string       `json:"floor"`
	Way      string       `json:"way"`
	Kind     string       `json:"kind"`
	Scene    string       `json:"scene,omitempty"` // the one in which it is narrowest
	From     string       `json:"from"`
	To       string       `json:"to"`
	Width    *float64     `json:"width_m"` // null: nothing limits it
	Required float64      `json:"required_m"`
	Short    bool         `json:"too_narrow"`
	Limit    string       `json:"limit,omitempty"`
	Where    string       `json:"where,omitempty"`
	Gap      [][2]float64 `json:"gap_m,omitempty"`
	Path     [][2]float64 `json:"path_m,omitempty"`
}

// waysCommand tells how wide the ways across the floors are.
func waysCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "ways FILE",
		Short: "Tell how wide a person gets along each way across the floors, and where it is narrowest",
		Long: "Tell of every way across every floor how wide a person gets through, where it is narrowest and in which scene, and whether that is what was required. " +
			"With --scene as it is in that scene. Published minimum widths are for comparison only; local codes, the owner and the fire authority decide.",
		Example: "  groundrow ways demo.groundrow\n  groundrow ways demo.groundrow --json\n" +
			"  → [ { \"floor\": \"Tannery Hall\", \"way\": \"Out to the yard\", \"width_m\": 0.58, \"required_m\": 0.9144, \"too_narrow\": true, \"where\": \"between Main stair and the wall of the room\", \"gap_m\": [[…], […]], \"path_m\": […] }, … ]",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			scene, err := s.chosenScene(p.P)
			if err != nil {
				return err
			}
			list := []passageway{}
			t := newTable("Floor", "Way", ">Free", ">Required", "Where it is narrowest")
			for i := range p.P.Floors {
				f := &p.P.Floors[i]
				for _, w := range p.work(f.ID).In(scene).Ways {
					list = append(list, passageOf(p.P, f.Name, w, s.json))
					t.row(f.Name, w.Way.Name, w.Breadth(p.P), requiredOf(p.P, w), w.Narrowest(p.P))
				}
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

func requiredOf(p *prep.Production, w *prep.WayWork) string {
	if w.Way.Width <= 0 {
		return ""
	}
	words := p.Style().Format(w.Way.Width)
	if w.Short() {
		words += "  TOO NARROW"
	}
	return words
}

// passageOf puts a way into JSON, with its path where that is wanted.
func passageOf(p *prep.Production, on string, w *prep.WayWork, path bool) passageway {
	o := passageway{
		Floor: on, Way: w.Way.Name, Kind: string(w.Way.Kind), From: w.From.Name, To: w.To.Name,
		Required: w.Way.Width, Short: w.Short(), Limit: string(w.Found.Limit), Where: w.Narrowest(p),
	}
	if w.Scene != "" {
		o.Scene = p.Plan.SceneName(w.Scene)
	}
	if width := w.Found.Width; !math.IsInf(width, 1) {
		o.Width = &width
	}
	pair := func(q plane.Point) [2]float64 { return [2]float64{q.X, q.Y} }
	if w.Found.Limit != "" {
		o.Gap = [][2]float64{pair(w.Found.At[0]), pair(w.Found.At[1])}
	}
	if path {
		for _, q := range w.Path() {
			o.Path = append(o.Path, pair(q))
		}
	}
	return o
}
