package demo

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// placedAlready is how many marks of the studio the crew has placed; half of
// them are checked.
const placedAlready = 12

// begun shows work under way: the studio's labels are printed, and some of its
// marks are down.
func (b *builder) begun() {
	for i, m := range prep.Work(b.p, studioID, "").Marks {
		b.p.Issued = append(b.p.Issued, marks.Issued{Floor: studioID, Label: m.Label, At: m.At, On: b.start})
		if i >= placedAlready {
			continue
		}
		done := marks.Progress{Floor: studioID, Label: m.Label, Placed: floor.Decision{By: tobin, On: b.start}}
		if i < placedAlready/2 {
			done.Checked = floor.Decision{By: wren, On: b.start}
		}
		b.p.Progress = append(b.p.Progress, done)
	}
}
