package prep

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Rest is one place at which a revolve or what runs on a track comes to rest on a
// floor.
type Rest struct {
	Element plan.ElementID // the carrier
	Name    string
	Where   string      // "turned to 90° counter-clockwise", "start"
	Scenes  []string    // names of those that use it; none: only the way passes
	At      plane.Point // datum axes: on the rim of a revolve, on the way of a track
	Centre  plane.Point // datum axes; of a revolve
	Turns   bool
	Mark    string // its label; empty: it lies off the floor
}

// Rests returns where everything that turns or runs on the floor comes to rest, in
// plan order and the order of travel; the work is that over all scenes.
func Rests(p *Production, w *FloorWork) []Rest {
	var out []Rest
	for _, s := range w.Floor.Stops(&p.Plan) {
		m := Rest{
			Element: s.Carrier, Name: nameOf(p, s.Carrier), Where: StopWords(p, s.Station),
			At: s.At, Centre: s.Centre, Turns: s.Turns,
		}
		for _, id := range s.Scenes {
			m.Scenes = append(m.Scenes, p.Plan.SceneName(id))
		}
		for _, mark := range w.Marks {
			if mark.Station != nil && mark.At.To(s.At) <= p.Settings.Rules.Weld {
				m.Mark = mark.Label
			}
		}
		out = append(out, m)
	}
	return out
}
