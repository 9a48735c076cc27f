package prep

import (
	"fmt"
	"math"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

func earlier(a, b time.Time) time.Time {
	if a.IsZero() || !b.IsZero() && b.Before(a) {
		return b
	}
	return a
}

func (j *job) crewPart() Part {
	part := Part{Place: PlaceCrew, State: UnderWay}
	done := 0
	for _, t := range j.p.Tasks {
		if t.Done {
			done++
		}
	}
	switch {
	case len(j.p.Tasks) == 0:
		part.State = Nothing
		part.Sentence = "No tasks yet: say what must be done and by how many."
		return part
	case done == len(j.p.Tasks):
		part.State = Ready
		part.Figure = Counted(done, "task")
		part.Sentence = "Every task is done."
		return part
	}
	part.Figure = fmt.Sprintf("%d of %d done", done, len(j.p.Tasks))
	part.Sentence = fmt.Sprintf("%d of %s done", done, Counted(len(j.p.Tasks), "task"))
	if !j.crew.End.IsZero() {
		part.Sentence += "; the rest ends " + moment(j.crew.End)
	}
	if problems := j.crew.Problems(j.p); len(problems) > 0 {
		part.State = NeedsYou
	}
	if !j.crew.Rehearsal.IsZero() && len(j.crew.Tasks) > 0 {
		spare := hours(j.crew.Spare)
		if j.crew.Spare < 0 {
			part.State = NeedsYou
			part.Sentence += fmt.Sprintf(", %s of work too late for the first rehearsal", spare)
		} else {
			part.Sentence += fmt.Sprintf(", %s of work to spare", spare)
		}
	}
	part.Sentence += "."
	return part
}

// hours writes a length of working time without its sign: "2 h 30".
func hours(d time.Duration) string {
	minutes := int(math.Abs(d.Minutes()))
	if minutes%60 == 0 {
		return fmt.Sprintf("%d h", minutes/60)
	}
	return fmt.Sprintf("%d h %02d", minutes/60, minutes%60)
}

func (j *job) standInsPart() Part {
	part := Part{Place: PlaceStandIns, State: Ready}
	needed, found, here := j.standInCounts()
	if needed == 0 {
		part.State = Nothing
		part.Sentence = "Nothing needs a stand-in yet."
		return part
	}
	part.Figure = fmt.Sprintf("%d of %d", here, needed)
	part.Sentence = fmt.Sprintf("%s to stand in for: %d with an object, %d in the room", Counted(needed, "piece"), found, here)
	short := 0
	for _, l := range PullList(j.p) {
		if l.Missing > 0 {
			short++
		}
	}
	switch {
	case short > 0:
		part.State = NeedsYou
		part.Sentence += fmt.Sprintf("; too few of %s", Counted(short, "object"))
	case found < needed:
		part.State = NeedsYou
	case here < needed:
		part.State = UnderWay
	}
	part.Sentence += "."
	return part
}

// standInCounts counts elements over all scenes: those that need a stand-in,
// those for which an object is found in every scene, and those whose object, or
// the real thing, is in the room.
func (j *job) standInCounts() (needed, found, here int) {
	type reach struct{ found, here bool }
	at := map[plan.ElementID]reach{}
	scenes := j.p.Plan.Scenes
	if len(scenes) == 0 {
		scenes = []plan.Scene{{}}
	}
	for _, s := range scenes {
		for _, n := range StandInNeeds(j.p, s.ID) {
			r, known := at[n.Element]
			if !known {
				r = reach{true, true}
			}
			r.found = r.found && n.Met()
			r.here = r.here && n.Met() && (n.State == InRoom || n.State == Swapped)
			at[n.Element] = r
		}
	}
	for _, r := range at {
		needed++
		if r.found {
			found++
		}
		if r.here {
			here++
		}
	}
	return needed, found, here
}

func (j *job) transferPart() Part {
	part := Part{Place: PlaceTransfer, State: UnderWay}
	var here, there *FloorWork
	for _, w := range j.floors {
		switch {
		case w.Floor.Kind == floor.Stage && there == nil:
			there = w
		case w.Floor.Kind != floor.Stage && here == nil:
			here = w
		}
	}
	if here == nil || there == nil {
		part.State = Nothing
		part.Sentence = "No room and stage to compare yet: add the theatre's stage as a floor."
		return part
	}
	missing := len(transfer(j.p, here.Floor, there).Problems)
	part.Figure = Counted(missing, "gap")
	if missing == 0 {
		part.State = Ready
		part.Sentence = fmt.Sprintf("%s could be handed on to %s today.", here.Floor.Name, there.Floor.Name)
		return part
	}
	part.Sentence = fmt.Sprintf("Handed on to %s today, it would miss %s.", there.Floor.Name, Counted(missing, "thing"))
	return part
}

func (j *job) paperPart() Part {
	part := Part{Place: PlacePaper, State: UnderWay}
	n := len(j.p.Printings)
	if n == 0 {
		part.State = Nothing
		part.Sentence = "Nothing is printed yet."
		return part
	}
	last := j.p.Printings[0].On
	for _, r := range j.p.Printings {
		if r.On.After(last) {
			last = r.On
		}
	}
	part.Figure = Counted(n, "sheet")
	part.Sentence = fmt.Sprintf("%s printed, the last on %s.", part.Figure, day(last))
	return part
}
