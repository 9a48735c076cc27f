package transferplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
)

// side is one of the two floors.
type side struct {
	content fyne.CanvasObject
	title   string
	head    *widget.Label
	canvas  *floorcanvas.Canvas
	floor   floor.ID
}

func newSide(p *place, title string) *side {
	s := &side{title: title, head: wrapped(""), canvas: floorcanvas.New()}
	c := s.canvas
	c.OnSelect = func(ids []string, _ bool) { p.chooseOn(s, ids) }
	c.OnHover = func(at plane.Point, _ string) { p.desk.Pointed(at, true) }
	c.OnLeave = func() { p.desk.Pointed(plane.Point{}, false) }
	s.content = container.NewBorder(s.head, nil, nil, nil, c)
	return s
}

// chooseOn selects what was clicked on one of the floors. Labels belong to a
// floor of their own, so a mark of the next floor selects its element.
func (p *place) chooseOn(s *side, ids []string) {
	chosen := floorpicture.Selection(ids)
	if label, ok := chosen.Of(desk.Mark); ok {
		for _, m := range p.view.Work(s.floor).Marks {
			if m.Label == label && len(m.Elements) > 0 {
				chosen = desk.Select(desk.Element, string(m.Elements[0]))
			}
		}
	}
	p.desk.Select(chosen)
}

// showSides draws both floors, each in its own datum axes, with the same elements
// selected.
func (p *place) showSides(v *desk.View, from, to *prep.FloorWork) {
	ids := floorpicture.IDs(v.Selected)
	if e := elementOf(v); e != "" && v.Selected.Kind != desk.Element {
		ids = []string{floorpicture.ID(desk.Element, string(e))}
	}
	for _, x := range []struct {
		s *side
		w *prep.FloorWork
	}{{p.here, from}, {p.there, to}} {
		x.s.head.SetText(x.s.title + " – " + datumWords(v, x.w.Floor))
		x.s.canvas.Set(floorpicture.OfFloor(v.P, x.w, v.Scene, floorpicture.Options{
			Spikes: true, Faint: true, Labels: p.labels.Value(),
		}))
		if x.s.floor != x.w.Floor.ID {
			x.s.floor = x.w.Floor.ID
			x.s.canvas.Fit()
		}
		x.s.canvas.SetSelected(ids)
	}
}
