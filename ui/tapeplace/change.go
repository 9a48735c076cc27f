package tapeplace

import (
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/suppliesplace/reckoning"
)

// pick selects the stock of a row.
func (p *place) pick(row string) { p.desk.Select(desk.Select(desk.Stock, string(stockOf(row)))) }

// editCell takes a cell of the table: the name or the count on the shelf.
func (p *place) editCell(row string, column int, text string) error {
	id := stockOf(row)
	if id == "" {
		return errGone
	}
	if column == colName {
		return p.desk.TryEdit("Rename the tape", onStock(id, func(s *supplies.Stock) error { return named(s, text) }))
	}
	n, err := parseRolls(text)
	if err != nil {
		return err
	}
	return p.desk.TryEdit("Count the tape on the shelf", onStock(id, func(s *supplies.Stock) error { s.Shelf = n; return nil }))
}

// Zoom and Fit serve the View menu.
func (p *place) Zoom(by float64) { p.canvas.Zoom(by) }

// Fit shows the whole floor.
func (p *place) Fit() { p.canvas.Fit() }

// Find looks for a tape in the table.
func (p *place) Find() { p.table.FocusFilter() }

// Add makes another tape and opens its description.
func (p *place) Add() { p.append("Add a tape", newStock()) }

// Duplicate makes another tape like the selected one.
func (p *place) Duplicate() {
	if s := p.selected(); s != nil {
		p.append("Duplicate a tape", copyOf(*s))
	}
}

func (p *place) append(label string, s supplies.Stock) {
	if !p.desk.Edit(label, func(pr *prep.Production) error {
		pr.Stocks = append(pr.Stocks, s)
		return nil
	}) {
		return
	}
	p.desk.Select(desk.Select(desk.Stock, string(s.ID)))
	p.tabs.SelectIndex(tabForm)
	p.form.form.FocusFirst()
}

// selected returns the tape that is selected; nil when none is.
func (p *place) selected() *supplies.Stock {
	id, ok := p.view.Selected.Of(desk.Stock)
	if !ok {
		return nil
	}
	return p.view.P.Stock(plan.StockID(id))
}

// Remove deletes the selected tape.
func (p *place) Remove() {
	if s := p.selected(); s != nil {
		p.remove([]string{string(s.ID)})
	}
}

// remove deletes tapes, and asks first when something is laid in them.
func (p *place) remove(rows []string) {
	var ids []plan.StockID
	used := 0
	for _, row := range rows {
		if s := p.view.P.Stock(stockOf(row)); s != nil {
			ids = append(ids, s.ID)
			used += users(p.view.P, s.ID)
		}
	}
	if len(ids) == 0 {
		return
	}
	label := "Delete " + reckoning.Count(len(ids), "tape")
	do := func() {
		p.desk.Edit(label, func(pr *prep.Production) error {
			for _, id := range ids {
				pr.RemoveStock(id)
			}
			return nil
		})
	}
	if used == 0 {
		do()
		return
	}
	fields.Confirm(p.desk.Window(), label+"?", "Named by "+reckoning.Count(used, "element")+
		" of the plan, which will have no tape chosen. Orders for it go too.", "Delete", do)
}

// users counts the elements that name a stock.
func users(p *prep.Production, id plan.StockID) int {
	n := 0
	for i := range p.Plan.Elements {
		if p.Plan.Elements[i].Stock == id {
			n++
		}
	}
	return n
}

// addUsual puts in the usual tapes.
func (p *place) addUsual() {
	p.desk.Edit("Put in the usual tapes", func(pr *prep.Production) error {
		pr.Stocks = append(pr.Stocks, supplies.StandardStocks(length.Unit(pr.Settings.Unit), uuid.NewString)...)
		return nil
	})
}
