package planplace

import (
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
)

// under is the scan that lies under the plan to be traced, as long as the file is
// open.
type under struct {
	scan  *floorcanvas.Backdrop
	path  string // of the production that it was laid in
	shown *fields.Tick
}

func newUnder(changed func()) under {
	u := under{shown: fields.NewTick("Scan")}
	u.shown.OnCommit = func(bool) error {
		changed()
		return nil
	}
	u.shown.Hide()
	return u
}

// backdrop is what is to be seen under the plan.
func (u *under) backdrop(v *desk.View) *floorcanvas.Backdrop {
	has := u.scan != nil && u.path == v.Path
	setVisible(u.shown, has)
	if !has || !u.shown.Value() {
		return nil
	}
	return u.scan
}

// layUnder lays a scan under the plan and shows all of both.
func (b *board) layUnder(scan *floorcanvas.Backdrop, _ string) {
	v := b.desk.View()
	b.under.scan, b.under.path = scan, v.Path
	b.under.shown.Set(true)
	b.show(v)
	b.canvas.Fit()
}
