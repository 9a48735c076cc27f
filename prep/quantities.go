package prep

import (
	"math"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
)

// QuantitiesOf returns what the floors that tasks name ask of the crew. Marks
// are counted less those that are placed already; work returns what was computed
// for a floor, nil for none. Check measures are reckoned by the marks that nobody
// has checked. Tape that the shelf does not hold for a floor is waited for when it
// is on order and its day is known.
func QuantitiesOf(p *Production, work func(floor.ID) *FloorWork) TaskQuantities {
	q := TaskQuantities{}
	for _, t := range p.Tasks {
		if _, done := q[t.Floor]; done || t.Floor == "" {
			continue
		}
		if w := work(t.Floor); w != nil {
			of := w.quantity()
			of.Awaits = awaits(p, w)
			q[t.Floor] = of
		}
	}
	return q
}

// checksPerMark is how many check measures are reckoned for each mark: what
// survey.CheckList asks for on the demo's floors, 1.2 on the large ones.
const checksPerMark = 1.2

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

// awaits returns the orders without which a floor's tape or patches cannot all be
// laid: those of stocks of which it alone takes more than the shelf holds.
func awaits(p *Production, w *FloorWork) []Delivery {
	var out []Delivery
	for _, r := range w.Tape {
		s := p.Stock(r.Stock)
		if s == nil || r.Total <= s.Shelf*s.Roll {
			continue
		}
		for _, o := range p.Orders {
			if o.For != string(s.ID) || o.State != supplies.Ordered || o.Expected.IsZero() {
				continue
			}
			if r.Lines+r.Spikes+r.Figures > 0 {
				out = append(out, Delivery{o.For, ByTape, o.Expected})
			}
			if r.Patches > 0 {
				out = append(out, Delivery{o.For, ByPatches, o.Expected})
			}
		}
	}
	return out
}
