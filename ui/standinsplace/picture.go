package standinsplace

import (
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/theme"
)

// pictureOf draws the chosen floor and scene with what stands for what: only the elements that need a stand-in are
// drawn strongly and, as far as there is room, named.
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
		if (l.ID != "" && !needed) || l.Ink == theme.Datum {
			continue
		}
		if needed {
			l.Ink, l.Priority = theme.Label, 2
			if v.Scene != "" { // over all scenes there is room for few names
				l.Text, l.Room = words, 0
			}
		}
		labels = append(labels, l)
	}
	pic.Labels, pic.Dots = labels, nil // the dance line has no say here
	if b, ok := around(pic.Shapes, needs); ok {
		pic.Bounds = b
	}
	return pic
}

// breathing is the room left around what is shown, in metres.
const breathing = 1.5

// around is the part of the floor that holds everything that needs a stand-in.
func around(shapes []floorcanvas.Shape, needs map[string]string) (b plane.Box, ok bool) {
	for _, s := range shapes {
		if _, needed := needs[s.ID]; !needed {
			continue
		}
		for _, e := range s.Edges {
			with := e.Bounds()
			if ok {
				with = with.Union(b)
			}
			b, ok = with, true
		}
	}
	b.Min, b.Max = b.Min.Sub(plane.Point{X: breathing, Y: breathing}), b.Max.Add(plane.Point{X: breathing, Y: breathing})
	return b, ok
}

// selectedOn names what is marked on the floor: the selected element, or of a selected object all that it stands in for.
func selectedOn(v *desk.View, element plan.ElementID) []string {
	object, ok := v.Selected.Of(desk.Object)
	if !ok {
		if element == "" {
			return nil
		}
		return []string{floorpicture.ID(desk.Element, string(element))}
	}
	var out []string
	for _, n := range prep.StandInNeeds(v.P, v.Scene) {
		if n.Object != nil && n.Object.ID == object {
			out = append(out, floorpicture.ID(desk.Element, string(n.Element)))
		}
	}
	return out
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
