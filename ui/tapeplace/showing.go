package tapeplace

import (
	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// selectedRow returns the row of the stock that is selected.
func selectedRow(v *desk.View) (row string, ok bool) {
	id, ok := v.Selected.Of(desk.Stock)
	if !ok || id != "" && v.P.Stock(plan.StockID(id)) == nil {
		return "", false
	}
	return rowOf(plan.StockID(id)), true
}

func (p *place) showWhich(v *desk.View) {
	f := v.P.Floor(v.Floor)
	if f == nil {
		p.onlyHere = false
		p.which.SetOptions(allFloors)
		p.which.Set(allFloors)
		return
	}
	here := "Only " + f.Name
	p.which.SetOptions(allFloors, here)
	if p.onlyHere {
		p.which.Set(here)
	} else {
		p.which.Set(allFloors)
	}
}

var moneyKind = map[reckoning.Standing]fields.Kind{
	reckoning.NoBudget: fields.Note, reckoning.Within: fields.Good, reckoning.Over: fields.Danger,
}

// showTop sets the lines on the money and on what has no tape yet.
func (p *place) showTop(v *desk.View, runs []supplies.Run) {
	before := p.top.MinSize().Height
	standing, words := reckoning.Budget(v.P, prep.BudgetOf(v.P, v.Work))
	p.money.Set(moneyKind[standing], words, "", nil)
	elements := undecidedElements(v)
	action, do := "Show them on the plan", func() { p.desk.Go(desk.Plan, desk.Select(desk.Element, elements...)) }
	if len(elements) == 0 {
		action, do = "", nil
	}
	p.trouble.Set(fields.Warning, undecidedWords(v.P, runs, len(elements)), action, do)
	if p.top.MinSize().Height != before {
		p.counting.Refresh()
	}
}

func (p *place) showCanvas(v *desk.View, chosen bool, id plan.StockID) {
	w := v.Work(v.Floor)
	if w == nil {
		p.canvas.Set(floorcanvas.Picture{})
		p.shown.SetText("No floor yet: the lines follow from one.")
		return
	}
	if chosen {
		p.canvas.Set(pictureOf(v.P, w, id))
	} else {
		p.canvas.Set(floorpicture.OfFloor(v.P, w, "", floorpicture.Options{}))
	}
	p.shown.SetText(sheetWords(v.P, w.Floor.Name, chosen, id))
	if p.fitted != v.Floor {
		p.fitted = v.Floor
		p.canvas.Fit()
	}
}

// showSide sets the tabs; another selection brings the tab forward that says most
// about it.
func (p *place) showSide(v *desk.View, runs []supplies.Run, row string, chosen bool) {
	var rows []grid.Row
	if r, ok := runOf(runs, stockOf(row)); ok && chosen {
		rows = sumRows(v.P, r)
	}
	p.sum.SetRows(rows)
	s := v.P.Stock(stockOf(row))
	if !chosen {
		s = nil
	}
	none, form := p.formed.Objects[0], p.formed.Objects[1]
	if s != nil {
		p.form.show(v.P, s)
		none.Hide()
		form.Show()
	} else {
		form.Hide()
		none.Show()
	}
	if row != p.picked {
		p.picked = row
		switch at := p.tabs.SelectedIndex(); {
		case !chosen:
			p.tabs.SelectIndex(tabWhatIf)
		case at == tabWhatIf, at == tabForm && s == nil:
			p.tabs.SelectIndex(tabSum)
		}
	}
	p.whatIf.look(p.tabs.SelectedIndex() == tabWhatIf, v)
}
