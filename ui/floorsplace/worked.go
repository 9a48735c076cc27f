package floorsplace

import (
	"context"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/desk"
)

// worked is the room as it was measured: its shape at once, and what the measurements
// say of each other worked out off the UI goroutine, which takes seconds where a large
// room is doubtful. One judgement is worked out at a time; what was changed meanwhile
// is judged after it.
type worked struct {
	quietly func(work func(context.Context), done func()) (callOff func())
	come    func() // is told when the judgement is there

	from    *prep.Production // and floor: what was last looked at
	floor   floor.ID
	working bool
	known   bool          // room is judged, and not its shape alone
	room    prep.Measured // empty when nothing was measured
}

func newWorked(d *desk.Desk, come func()) *worked {
	return &worked{quietly: d.Quietly, come: come}
}

// look has the room brought up to date with the snapshot and the floor.
func (x *worked) look(p *prep.Production, f *floor.Floor) {
	if x.from == p && x.floor == f.ID {
		return
	}
	m, measured := p.MeasuredShape(f)
	x.from, x.floor, x.room = p, f.ID, m
	x.known = !measured || m.Why != ""
	if !x.known && !x.working {
		x.judge(p, f)
	}
}

func (x *worked) judge(p *prep.Production, f *floor.Floor) {
	x.working = true
	var m prep.Measured
	x.quietly(
		func(context.Context) { m, _ = p.MeasuredRoom(f) },
		func() { x.judged(p, f, m) },
	)
}

// judged takes a judgement, or has what is looked at by now judged in its place.
func (x *worked) judged(p *prep.Production, f *floor.Floor, m prep.Measured) {
	x.working = false
	if x.from == p && x.floor == f.ID {
		x.room, x.known = m, true
		x.come()
		return
	}
	if now := x.from.Floor(x.floor); now != nil && !x.known {
		x.judge(x.from, now)
	}
}
