package planplace

import (
	"context"
	"fmt"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/drawingin"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
)

// under is the scan that lies under the plan to be traced. It is opened off the UI
// goroutine when it is first wanted, and again when it lies differently.
type under struct {
	desk    *desk.Desk
	scan    *floorcanvas.Backdrop
	lies    string // which scan it is, and how it lies
	callOff func()
	shown   *fields.Tick
	changed func()
}

func newUnder(d *desk.Desk, changed func()) *under {
	u := &under{desk: d, callOff: func() {}, shown: fields.NewTick("Scan"), changed: changed}
	u.shown.Set(true)
	u.shown.OnCommit = func(bool) error {
		changed()
		return nil
	}
	u.shown.Hide()
	return u
}

// backdrop is what is to be seen under the plan.
func (u *under) backdrop(v *desk.View) *floorcanvas.Backdrop {
	drawing, points, has := v.P.UnderPlan()
	setVisible(u.shown, has)
	if lies := fmt.Sprint(v.Path, drawing.ID, points); lies != u.lies {
		u.callOff()
		u.scan, u.lies = nil, lies
		if has {
			u.open(drawing, points)
		}
	}
	if !u.shown.Value() {
		return nil
	}
	return u.scan
}

// open reads the scan and shows it when it is ready.
func (u *under) open(d prep.Drawing, points []prep.KnownPoint) {
	file := u.desk.File()
	var scan *floorcanvas.Backdrop
	var err error
	u.callOff = u.desk.Quietly(func(ctx context.Context) {
		var content []byte
		if content, err = file.Drawing(ctx, d.ID); err == nil {
			scan, err = drawingin.Under(ctx, d, content, points)
		}
	}, func() {
		if err != nil {
			u.desk.Told("The scan under the plan cannot be shown: " + err.Error())
			return
		}
		u.scan = scan
		u.changed()
	})
}
