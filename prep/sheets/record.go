package sheets

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// Record keeps on record that the sheet went on paper, with what it showed, and
// freezes the labels that it carries: what a tab says must stay true.
func Record(p *prep.Production, kind Kind, job Job) {
	s, ok := Find(kind)
	if !ok {
		return
	}
	r := prep.Printing{Sheet: string(kind), On: job.Printed, State: State(kind, job)}
	if s.PerFloor {
		r.Floor = job.Floor
	}
	p.KeepPrinting(r)
	if id := labelled(kind, job); id != "" {
		p.FreezeLabels(id, job.Printed)
	}
}

// Freezes returns the floor whose labels stay where they are once the sheet has
// been printed; ok is false when it carries none.
func Freezes(kind Kind, job Job) (id floor.ID, ok bool) {
	id = labelled(kind, job)
	return id, id != ""
}

// labelled returns the floor whose labels the sheet carries; empty when it
// carries none.
func labelled(kind Kind, job Job) floor.ID {
	switch kind {
	case FloorPlan, UpOver, TwoTapes, Joining, Checks, Retape, Tabs:
		return job.Floor
	case Transfer:
		if to := job.next(); to != nil {
			return to.ID
		}
	}
	return ""
}
