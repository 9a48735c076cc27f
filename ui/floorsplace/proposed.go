package floorsplace

import (
	"context"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
)

// proposed are the proposals for the floor that is looked at, worked out once for each
// snapshot and floor, off the UI goroutine: a free place in the room is sought for every
// piece that needs one.
type proposed struct {
	quietly func(work func(context.Context), done func()) (callOff func())
	callOff func()
	come    func() // is told when they are there

	from    *prep.Production // and floor: what was last asked for
	floor   floor.ID
	working bool
	known   bool // those of the floor are there, though perhaps of the snapshot before
	of      map[plan.ElementID]floor.Treatment
	list    []floor.Treatment
}

func newProposed(d *desk.Desk, come func()) *proposed {
	return &proposed{quietly: d.Quietly, callOff: func() {}, come: come}
}

// look has the proposals brought up to date with the snapshot and the floor.
func (x *proposed) look(v *desk.View, f *floor.Floor) {
	if x.from == v.P && x.floor == f.ID {
		return
	}
	x.callOff()
	if x.floor != f.ID {
		x.known, x.list, x.of = false, nil, nil
	}
	p := v.P
	x.from, x.floor, x.working = p, f.ID, true
	var list []floor.Treatment
	x.callOff = x.quietly(
		func(ctx context.Context) { list, _ = prep.Propose(ctx, p, f) }, // its only error is that it was called off, and then nobody is told
		func() { x.set(list) },
	)
}

func (x *proposed) set(list []floor.Treatment) {
	x.working, x.known, x.list, x.of = false, true, list, map[plan.ElementID]floor.Treatment{}
	for _, t := range list {
		x.of[t.Element] = t
	}
	x.come()
}

// underWay stands where a proposal will be.
const underWay = "being worked out…"

// words say what is proposed for an element that the floor treats so; empty: nothing
// else than what is done with it.
func (x *proposed) words(p *prep.Production, e *plan.Element, t floor.Treatment) string {
	if !x.known {
		if t.Decided.Open() {
			return underWay
		}
		return ""
	}
	if proposal, ok := x.of[e.ID]; ok && proposal.How != t.How {
		return prep.ProposalWords(p, proposal)
	}
	return ""
}
