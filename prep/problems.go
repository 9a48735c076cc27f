package prep

import (
	"time"

	"groundrow/tapeout/floor"
)

// Problems returns everything that a person must look at before the first
// rehearsal, part of the job by part: the plan, the rehearsal floors, supplies,
// crew and stand-ins, as they stand on the day of today. What is missing on the
// stage is in the Transfer. works returns what was computed for a floor over all
// scenes.
func Problems(p *Production, works func(floor.ID) *FloorWork, today time.Time) []Problem {
	return newJob(p, works, today).problems()
}
