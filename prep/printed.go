package prep

import (
	"slices"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// KeepPrinting records that a sheet went on paper. Two printings of one sheet in
// the same moment are one.
func (p *Production) KeepPrinting(r Printing) {
	p.Printings = slices.DeleteFunc(p.Printings, func(old Printing) bool {
		return old.Sheet == r.Sheet && old.Floor == r.Floor && old.On.Equal(r.On)
	})
	p.Printings = append(p.Printings, r)
}

// FreezeLabels keeps the labels of a floor's marks where they are for good, since
// they have been printed. Those that are frozen already stay as they are.
func (p *Production) FreezeLabels(id floor.ID, on time.Time) {
	w := Work(p, id, "")
	if w == nil {
		return
	}
	for _, m := range w.Marks {
		if !m.Frozen {
			p.Issued = append(p.Issued, marks.Issued{Floor: id, Label: m.Label, At: m.At, On: on})
		}
	}
}
