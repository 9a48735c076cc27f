package marksplace

import (
	"fyne.io/fyne/v2"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
)

// buildCanvas makes the canvas. Its picture is in datum axes.
func (p *place) buildCanvas() {
	c := floorcanvas.New()
	c.OnSelect = func(ids []string, _ bool) {
		if !p.setting {
			p.desk.Select(floorpicture.Selection(ids))
		}
	}
	c.OnHover = func(at plane.Point, _ string) { p.desk.Pointed(at, true) }
	c.OnLeave = func() { p.desk.Pointed(plane.Point{}, false) }
	c.OnTap = func(_ plane.Point, s floorcanvas.Snap) {
		if p.setting {
			p.setting = false
			p.pivots.addAt(s.Point)
		}
	}
	c.OnDragHandle = p.dragged
	c.OnNudge = func(ids []string, by plane.Point) {
		if kind, id, ok := floorpicture.Parse(ids[0]); ok && kind == desk.Pivot {
			p.edit("Move a pivot", func(f *floor.Floor) error { return shiftPivot(f, id, by) })
		}
	}
	c.OnKey = func(key *fyne.KeyEvent) bool {
		if key.Name != fyne.KeyEscape || !p.setting {
			return false
		}
		p.setting = false
		p.Show(p.view)
		return true
	}
	p.canvas = c
}

// dragged follows a pivot. While it is under way the columns and the strip on top
// show what the marks would be measured by from there.
func (p *place) dragged(id string, at plane.Point, done bool) {
	kind, of, ok := floorpicture.Parse(id)
	if !ok || kind != desk.Pivot || p.view == nil {
		return
	}
	if done {
		p.edit("Move a pivot", func(f *floor.Floor) error { return movePivot(f, of, at) })
		p.Show(p.view) // a drag that was called off leaves no trace
		return
	}
	w := p.view.Here()
	f := *w.Floor
	f.Pivots = append([]floor.Pivot(nil), f.Pivots...)
	if movePivot(&f, of, at) != nil {
		return
	}
	tried := w.WithPivots(p.view.P, f.Pivots)
	p.showQuality(p.view, tried)
	p.showTab(p.view, tried)
}

// showQuality sets the strip on top: how good the floor will be.
func (p *place) showQuality(v *desk.View, w *prep.FloorWork) {
	good, text := quality(v.P, w, prep.AccuracyOf(v.P, w))
	kind := fields.Good
	if !good {
		kind = fields.Warning
	}
	p.quality.Set(kind, text, "", nil)
	hint := "Drag a pivot to see the columns change. Click a mark to find it in the table."
	if p.setting {
		hint = "Click the place from which a tape is pulled; Esc gives up."
	}
	p.said.SetText(hint)
}
