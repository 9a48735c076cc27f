package standinsplace

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

func (p *place) newPairs() *grid.Grid {
	columns := pairColumns()
	columns[colObject].Choices = []string{nothing}
	g := grid.New(columns)
	g.SetToolWords("Add an element…", "Delete stand-ins")
	g.SetEmpty("Nothing in this scene needs a stand-in: no furniture, no doors, and nothing that a floor represents by an object only. "+
		"Add any other element that something should stand in for.", "Add an element…", p.askElement)
	g.OnEdit = p.editPair
	g.OnAdd = p.askElement
	g.OnDelete = p.forget
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Select(desk.Element, ids...)) }
	return g
}

func (p *place) newOffers() *grid.Grid {
	g := grid.New(offerColumns())
	g.SetEmpty("Nothing is in the rehearsal stock yet. List what the shop, the venue or the store can lend.", "Add the first object", p.addObject)
	g.OnActivate = p.useObject
	return g
}

func (p *place) newStock() *grid.Grid {
	g := grid.New(stockColumns())
	g.SetToolWords("Add an object", "Delete objects")
	g.SetEmpty("Nothing is in the rehearsal stock yet. List what the shop, the venue or the store can lend: tables, chairs, blocks, racks, music stands.",
		"Add the first object", p.addObject)
	g.OnEdit = func(id string, column int, text string) error {
		label, change := stockEdit(p.view.P, id, column, text)
		return p.desk.TryEdit(label, change)
	}
	g.OnAdd = p.addObject
	g.OnDelete = p.deleteObjects
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Select(desk.Object, ids...)) }
	return g
}

func (p *place) newPull() *grid.Grid {
	g := grid.New(pullColumns())
	g.SetEmpty("Nothing is to be collected yet: choose what stands for what first.", "", nil)
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Select(desk.Object, ids...)) }
	return g
}

func (p *place) editPair(id string, column int, text string) error {
	label, change := pairEdit(p.view.P, pair{plan.ElementID(id), p.view.Scene}, column, text)
	return p.desk.TryEdit(label, change)
}

// useObject lets an object stand in for the element last selected.
func (p *place) useObject(object string) {
	o, e := p.view.P.Object(object), p.view.P.Plan.Element(p.element)
	if o == nil || e == nil {
		p.offers.Say("Select the element first, then what stands for it.")
		return
	}
	p.desk.Edit("Let "+o.Name+" stand in for "+e.Name, use(pair{e.ID, p.view.Scene}, object))
}

// propose fills what is open with what is left over of the stock, as one change.
func (p *place) propose() {
	v := p.view
	n := len(prep.ProposeStandIns(v.P, v.Scene))
	if n == 0 {
		p.pairs.Say("There is nothing to propose: everything has its object, or the stock has none left.")
		return
	}
	if p.desk.Edit("Propose stand-ins for "+where(v), propose(v.Scene)) {
		p.pairs.Say(fmt.Sprintf("%d proposed, all of them wanted. Undo takes them back.", n))
	}
}

// askElement asks which other element something should stand in for.
func (p *place) askElement() {
	names, ids := others(p.view.P, p.view.Scene)
	if len(names) == 0 {
		fields.Tell(p.desk.Window(), "Every element is listed", "All elements of "+where(p.view)+" are in the table already.")
		return
	}
	element := fields.NewChoice(names...)
	form := fields.NewForm()
	form.Add("element", "Element", element)
	scene := p.view.Scene
	fields.Ask(p.desk.Window(), "Something should stand in for", form, "Add it", func() error {
		for i, name := range names {
			if name != element.Value() {
				continue
			}
			err := p.desk.TryEdit("Ask for a stand-in for "+name, onPair(pair{ids[i], scene},
				func(*prep.Production, *prep.StandIn) error { return nil }))
			if err == nil {
				p.desk.Select(desk.Select(desk.Element, string(ids[i])))
			}
			return err
		}
		return fmt.Errorf("choose an element")
	})
}

// forget deletes what stands for the elements.
func (p *place) forget(ids []string) {
	label := fmt.Sprintf("Delete the stand-ins for %d elements", len(ids))
	var elements []plan.ElementID
	for _, id := range ids {
		e := p.view.P.Plan.Element(plan.ElementID(id))
		if e == nil {
			return
		}
		elements = append(elements, e.ID)
		if len(ids) == 1 {
			label = "Delete the stand-in for " + e.Name
		}
	}
	p.desk.Edit(label, forget(elements, p.view.Scene))
}

// addObject adds an object to the stock and opens its name.
func (p *place) addObject() {
	o := newObject(p.view.P)
	if !p.desk.Edit("Add an object", func(pr *prep.Production) error {
		pr.Objects = append(pr.Objects, o)
		return nil
	}) {
		return
	}
	p.tabs.SelectIndex(tabStock)
	p.desk.Select(desk.Select(desk.Object, o.ID))
	p.stock.Edit(o.ID, colName)
}

// deleteObjects deletes objects from the stock; those that stand in for something are asked about first.
func (p *place) deleteObjects(ids []string) {
	label, used := fmt.Sprintf("Delete %d objects", len(ids)), 0
	for _, id := range ids {
		o := p.view.P.Object(id)
		if o == nil {
			return
		}
		if len(ids) == 1 {
			label = "Delete " + o.Name
		}
		for _, s := range p.view.P.StandIns {
			if s.Object == id {
				used++
			}
		}
	}
	remove := func() {
		p.desk.Edit(label, func(pr *prep.Production) error {
			for _, id := range ids {
				pr.RemoveObject(id)
			}
			return nil
		})
	}
	if used == 0 {
		remove()
		return
	}
	fields.Confirm(p.desk.Window(), label,
		fmt.Sprintf("It stands in for %d elements, which will be wanting again. Undo brings all of it back.", used), "Delete", remove)
}
