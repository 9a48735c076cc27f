package prep

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// QuantitiesOf returns what the floors that tasks name ask of the crew. Marks
// are counted less those that are placed already; work returns what was computed
// for a floor, nil for none. There is a check measure for every two marks that
// nobody has checked, as survey.CheckList has them.
func QuantitiesOf(p *Production, work func(floor.ID) *FloorWork) TaskQuantities {
	q := TaskQuantities{}
	for _, t := range p.Tasks {
		if _, done := q[t.Floor]; done || t.Floor == "" {
			continue
		}
		if w := work(t.Floor); w != nil {
			q[t.Floor] = w.quantity()
		}
	}
	return q
}

// checksPerMark is how many check measures are taken for each mark.
const checksPerMark = 0.5

func (w *FloorWork) quantity() Quantity {
	var q Quantity
	unchecked := 0
	for _, m := range w.Marks {
		if m.Progress.Placed.Open() {
			q.Marks++
		}
		if m.Progress.Checked.Open() {
			unchecked++
		}
		if m.Kind == marks.Corner {
			q.Patches++
		}
	}
	q.Checks = int(math.Ceil(float64(unchecked) * checksPerMark))
	for _, r := range w.Tape {
		q.Tape += r.Lines + r.Overlaps + r.Spikes + r.Figures
	}
	return q
}
