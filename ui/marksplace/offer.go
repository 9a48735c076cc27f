package marksplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/prep"
	"groundrow/tapeout/survey"
	"groundrow/ui/fields"
)

// offerPanel is where a person ticks in which places pivots may be set.
type offerPanel struct {
	content fyne.CanvasObject
	offer   *prep.PivotOffer
}

func newOfferPanel() offerPanel {
	offer := prep.AnyPivot
	t := offerPanel{offer: &offer}
	row := container.NewHBox()
	tick := func(words string, on *bool) {
		f := fields.NewTick(words)
		f.Set(*on)
		f.OnCommit = func(v bool) error { *on = v; return nil }
		row.Add(f)
	}
	tick("pivots", &offer.Pivots)
	tick("corners", &offer.Corners)
	tick("walls", &offer.Walls)
	tick("columns", &offer.Columns)
	tick("centre line", &offer.CentreLine)
	tick("baseline", &offer.Baseline)
	tick("furniture stands", &offer.Furnished)
	t.content = container.NewHScroll(row)
	return t
}

func (t offerPanel) places() prep.PivotOffer { return *t.offer }

// unserved is the work with only the marks that the pivots do not place by two tapes
// as well as is allowed.
func unserved(p *prep.Production, w *prep.FloorWork) *prep.FloorWork {
	out := *w
	out.Marks = nil
	for _, m := range w.Marks {
		if way := m.Way(survey.TwoTapes); !way.Usable || way.Ellipse.Major > p.Errors().Allowed {
			out.Marks = append(out.Marks, m)
		}
	}
	return &out
}
