package standinsplace

import (
	"strconv"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/theme"
)

// pictureOf draws the chosen floor and scene with what stands for what: only the elements that need a stand-in are
// named and drawn strongly.
func pictureOf(v *desk.View, w *prep.FloorWork) floorcanvas.Picture {
	pic := floorpicture.OfFloor(v.P, w, v.Scene, floorpicture.Options{FloorAxes: true, Spikes: true, Names: true})
	needs := map[string]string{}
	for _, n := range prep.StandInNeeds(v.P, v.Scene) {
		needs[floorpicture.ID(desk.Element, string(n.Element))] = nameOn(n)
	}
	for i := range pic.Shapes {
		s := &pic.Shapes[i]
		if _, needed := needs[s.ID]; needed {
			s.Ink, s.Colour, s.Width = theme.Line, nil, 2
			continue
		}
		s.Ink, s.Colour, s.Width = theme.FaintLine, nil, 1
	}
	var labels []floorcanvas.Label
	for _, l := range pic.Labels {
		words, needed := needs[l.ID]
		if l.ID != "" && !needed {
			continue
		}
		if needed {
			l.Text, l.Ink, l.Room, l.Priority = words, theme.Label, 0, 2
		}
		labels = append(labels, l)
	}
	pic.Labels = labels
	return pic
}

// nameOn is what is written on an element: its name and what stands for it.
func nameOn(n prep.StandInNeed) string {
	switch {
	case n.State == prep.Swapped:
		return n.Name + " (the real one)"
	case n.Object == nil:
		return n.Name + ": nothing yet"
	case n.Number > 1:
		return n.Name + ": " + strconv.Itoa(n.Number) + " × " + n.Object.Name
	default:
		return n.Name + ": " + n.Object.Name
	}
}
