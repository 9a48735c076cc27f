package prep

import "time"

// Shifts returns the stretches of work of one day: the hours of the room without the breaks.
func (r Rates) Shifts(day time.Time) []Segment {
	var out []Segment
	for _, p := range shifts(r, dayOf(day, 0)) {
		out = append(out, Segment{Start: p.start, End: p.end})
	}
	return out
}
