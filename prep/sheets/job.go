package sheets

import (
	"time"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

// Job is what is to be put on paper, and on which.
type Job struct {
	P       *prep.Production
	Works   map[floor.ID]*prep.FloorWork // what has been computed already; what is missing is computed
	Floor   floor.ID
	To      floor.ID     // for the transfer packet; empty: the first stage, else the first other floor
	Scene   plan.SceneID // empty: all scenes
	Size    PageSize     // zero: what the production is set to
	Scale   length.Scale // for drawings, 48 for 1:48; zero: the largest usual one that fits a page
	Printed time.Time    // stands on the sheet; the package reads no clock
	By      string       // who prints it
}

// production never returns nil, so that a sheet of nothing says so.
func (j Job) production() *prep.Production {
	if j.P == nil {
		return &prep.Production{}
	}
	return j.P
}

// floor returns the floor of the job; nil when there is none.
func (j Job) floor() *floor.Floor { return j.production().Floor(j.Floor) }

// work returns what follows from the floor and scene of the job; it is never nil.
func (j Job) work() *prep.FloorWork {
	if w := j.Works[j.Floor]; w != nil && w.Scene == j.Scene {
		return w
	}
	if w := j.workOf(j.Floor); w != nil {
		return w.In(j.Scene)
	}
	return &prep.FloorWork{Scene: j.Scene}
}

// workOf returns what follows from any floor over all scenes; nil when there is
// no such floor.
func (j Job) workOf(id floor.ID) *prep.FloorWork {
	if w := j.Works[id]; w != nil && w.Scene == "" {
		return w
	}
	return prep.Work(j.production(), id, "")
}

// size returns the paper of the job, the production's when it has none, and A4
// when that is not known either.
func (j Job) size() PageSize {
	if j.Size.Width > 0 && j.Size.Height > 0 {
		return j.Size
	}
	if s, ok := Paper(j.production().Settings.Paper); ok {
		return s
	}
	return A4
}
