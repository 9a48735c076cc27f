package suppliesplace

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/suppliesplace/reckoning"
)

// stockSide says how one tape stands, and leads to where it is described and its
// sum is made.
type stockSide struct {
	name    *widget.Label
	words   *widget.Label
	content fyne.CanvasObject
	id      string
}

func newStockSide(p *place) *stockSide {
	s := &stockSide{name: widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true}), words: widget.NewLabel("")}
	s.words.Wrapping = fyne.TextWrapWord
	open := fields.NewButton("Open it under Tape", func() { p.desk.Go(desk.Tape, desk.Select(desk.Stock, s.id)) })
	order := fields.NewButton("Plan an order for it", func() { p.addOrder(s.id) })
	s.content = container.NewVBox(s.name, s.words, open, order)
	return s
}

func (s *stockSide) show(p *prep.Production, of *supplies.Stock, n need) {
	s.id = string(of.ID)
	s.name.SetText(of.Name)
	s.words.SetText(stockWords(p, of, n))
}

// stockWords says how a tape stands.
func stockWords(p *prep.Production, of *supplies.Stock, n need) string {
	said := fmt.Sprintf("Needed: %s rolls of %s. On the shelf: %s.", reckoning.Rolls(n.need), reckoning.Tape(p, of.Roll), reckoning.Rolls(of.Shelf))
	if n.coming > 0 {
		said += fmt.Sprintf(" Coming: %d.", n.coming)
	}
	if n.planned > 0 {
		said += fmt.Sprintf(" Planned: %d.", n.planned)
	}
	if n.short() {
		said += fmt.Sprintf(" Short by %s, %s.", reckoning.Count(n.buy, "roll"), p.Money(n.cents))
	} else {
		said += " That is enough."
	}
	return said + " How the sum is made, its lines, width, roll and colour are under Tape."
}
