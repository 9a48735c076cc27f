package tapeplace

import (
	"slices"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/theme"
)

// laidIn returns the stock that a line is laid in; empty when it names none that
// the production has.
func laidIn(p *prep.Production, l floor.Line) plan.StockID {
	if p.Stock(l.Stock) == nil {
		return ""
	}
	return l.Stock
}

// serves returns the duties that a stock has besides its lines. What no stock
// does is left to the one that has not been chosen.
func serves(p *prep.Production, id plan.StockID) []supplies.Duty {
	var out []supplies.Duty
	for _, d := range supplies.Duties {
		i := slices.IndexFunc(p.Stocks, func(s supplies.Stock) bool { return s.Duty == d })
		switch {
		case d == supplies.Lines:
		case i < 0 && id == "", i >= 0 && p.Stocks[i].ID == id:
			out = append(out, d)
		}
	}
	return out
}

// pictureOf draws what a stock lays on a floor over all scenes, and everything
// else faintly.
func pictureOf(p *prep.Production, whole *prep.FloorWork, id plan.StockID) floorcanvas.Picture {
	duties := serves(p, id)
	w := *whole
	w.Overhangs = nil
	w.Lines = nil
	var rest []plane.Edge
	for _, l := range whole.Lines {
		if laidIn(p, l) == id {
			w.Lines = append(w.Lines, l)
		} else {
			rest = append(rest, l.Edge)
		}
	}
	if !slices.Contains(duties, supplies.Figures) {
		w.Dance = nil
	}
	pic := floorpicture.OfFloor(p, &w, "", floorpicture.Options{})
	pic.Shapes = append(pic.Shapes, floorcanvas.Shape{Edges: rest, Ink: theme.FaintLine, Width: 1})
	for _, m := range whole.Marks {
		if sign, ok := signOf(m.Kind, duties); ok {
			pic.Dots = append(pic.Dots, floorcanvas.Dot{At: m.At, Sign: sign, Ink: theme.Line})
		}
	}
	return pic
}

// signOf tells how a mark is shown to which one of the duties puts tape.
func signOf(k marks.Kind, duties []supplies.Duty) (floorcanvas.Sign, bool) {
	switch {
	case k == marks.Corner && slices.Contains(duties, supplies.Patches):
		return floorcanvas.Square, true
	case k == marks.Spike && slices.Contains(duties, supplies.Spikes):
		return floorcanvas.Triangle, true
	case slices.Contains(duties, supplies.Tabs):
		return floorcanvas.Cross, true
	}
	return 0, false
}

// undecidedElements returns the elements that are laid on any floor without a
// tape having been chosen, in the order of the plan.
func undecidedElements(v *desk.View) []string {
	found := map[plan.ElementID]bool{}
	for i := range v.P.Floors {
		for _, l := range v.Work(v.P.Floors[i].ID).Lines {
			if laidIn(v.P, l) == "" {
				found[l.Element] = true
			}
		}
	}
	var out []string
	for i := range v.P.Plan.Elements {
		if id := v.P.Plan.Elements[i].ID; found[id] {
			out = append(out, string(id))
		}
	}
	return out
}

// stockAt returns the stock in which what a person clicked on the canvas is laid.
func stockAt(v *desk.View, ids []string) (id plan.StockID, ok bool) {
	s := floorpicture.Selection(ids)
	element, ok := s.Of(desk.Element)
	w := v.Work(v.Floor)
	if !ok || w == nil {
		return "", false
	}
	for _, l := range w.Lines {
		if string(l.Element) == element {
			return laidIn(v.P, l), true
		}
	}
	return "", false
}
