package prep

import (
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
)

// The Remove methods delete a row and everything that means nothing without it,
// and clear what else refers to it, so that no reference is left without its
// row. An identifier that is not there changes nothing.

// RemoveElement deletes an element with its treatments, carries, stand-ins,
// notes and moves. What rode it rides nothing.
func (p *Production) RemoveElement(id plan.ElementID) {
	e := p.Plan.Element(id)
	if e == nil {
		return
	}
	p.forget(string(id))
	for _, path := range e.Paths {
		p.forget(string(path.ID))
	}
	drop(&p.Plan.Elements, func(e plan.Element) bool { return e.ID == id })
	drop(&p.Plan.Carries, func(c plan.Carry) bool { return c.Carrier == id })
	for i := range p.Plan.Elements {
		clearIf(&p.Plan.Elements[i].Rides, id)
	}
	for i := range p.Floors {
		drop(&p.Floors[i].Treatments, func(t floor.Treatment) bool { return t.Element == id })
	}
	p.dropStandIns(func(s StandIn) bool { return s.Element == id })
	p.dropNotes(func(n Note) bool { return n.Element == id })
	drop(&p.Moves, func(m Move) bool { return m.Element == id })
	for i := range p.Answers {
		clearIf(&p.Answers[i].Element, id) // what was answered stays on record
	}
}

// RemoveFloor deletes a floor with its dance lines, printed labels, progress,
// check measures read, moves measured, answers and printings. Tasks counted on it keep no floor.
func (p *Production) RemoveFloor(id floor.ID) {
	f := p.Floor(id)
	if f == nil {
		return
	}
	p.forget(string(id))
	for _, o := range f.Obstacles {
		p.forget(o.ID)
	}
	for _, k := range f.KeepClears {
		p.forget(k.ID)
	}
	for _, t := range f.Features {
		p.forget(t.ID)
	}
	for _, w := range f.Ways {
		p.forget(w.ID)
	}
	for _, v := range f.Pivots {
		p.forget(v.ID)
	}
	for _, s := range f.Steps {
		p.forget(s.ID)
	}
	for _, w := range f.Measured.Walls {
		p.forget(w.ID)
	}
	for _, d := range f.Measured.Diagonals {
		p.forget(d.ID)
	}
	drop(&p.Floors, func(f floor.Floor) bool { return f.ID == id })
	drop(&p.Answers, func(a Answer) bool { return a.Floor == id })
	for _, d := range p.DanceLines {
		if d.Floor == id {
			p.forget(d.ID)
		}
	}
	drop(&p.DanceLines, func(d marks.DanceLine) bool { return d.Floor == id })
	drop(&p.Issued, func(is marks.Issued) bool { return is.Floor == id })
	drop(&p.Progress, func(g marks.Progress) bool { return g.Floor == id })
	drop(&p.MethodChoices, func(c MethodChoice) bool { return c.Floor == id })
	drop(&p.Readings, func(r Reading) bool { return r.Floor == id })
	drop(&p.Moves, func(m Move) bool { return m.Floor == id })
	drop(&p.Printings, func(r Printing) bool { return r.Floor == id })
	for i := range p.Tasks {
		clearIf(&p.Tasks[i].Floor, id)
	}
}

// RemoveScene deletes a scene with the positions, stand-ins and moves that belong to it
// alone. An element that stood in that scene only would appear in every scene
// without it, so it is deleted too when it has no other.
func (p *Production) RemoveScene(id plan.SceneID) {
	if p.Plan.Scene(id) == nil {
		return
	}
	p.forget(string(id))
	drop(&p.Plan.Scenes, func(s plan.Scene) bool { return s.ID == id })
	drop(&p.Plan.Carries, func(c plan.Carry) bool { return c.Scene == id })
	p.dropStandIns(func(s StandIn) bool { return s.Scene == id })
	drop(&p.Moves, func(m Move) bool { return m.Scene == id })
	var orphans []plan.ElementID
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		had := len(e.Stands) > 0
		drop(&e.Stands, func(s plan.Stand) bool { return s.Scene == id })
		if had && len(e.Stands) == 0 {
			orphans = append(orphans, e.ID)
		}
	}
	for _, e := range orphans {
		p.RemoveElement(e)
	}
}

// RemoveLevel deletes a level; what was on it is on the stage floor.
func (p *Production) RemoveLevel(id plan.LevelID) {
	if p.Plan.Level(id) == nil {
		return
	}
	p.forget(string(id))
	drop(&p.Plan.Levels, func(l plan.Level) bool { return l.ID == id })
	for i := range p.Plan.Elements {
		clearIf(&p.Plan.Elements[i].Level, id)
	}
}

// RemoveStock deletes a stock with its orders; what was laid in it is undecided.
func (p *Production) RemoveStock(id plan.StockID) {
	if p.Stock(id) == nil {
		return
	}
	p.forget(string(id))
	drop(&p.Stocks, func(s stock) bool { return s.ID == id })
	for i := range p.Plan.Elements {
		clearIf(&p.Plan.Elements[i].Stock, id)
	}
	p.dropOrders(string(id))
}

// RemoveItem deletes an item of the kit with its orders.
func (p *Production) RemoveItem(id string) {
	p.forget(id)
	drop(&p.Items, func(it item) bool { return it.ID == id })
	p.dropOrders(id)
}

// RemovePerson deletes a person from the team and from the tasks that ask for
// them. What they decided stays on record under their name.
func (p *Production) RemovePerson(id string) {
	p.forget(id)
	drop(&p.People, func(x Person) bool { return x.ID == id })
	for i := range p.Tasks {
		drop(&p.Tasks[i].People, func(x string) bool { return x == id })
	}
}

// RemoveTask deletes a task. What came after it comes after what it came after,
// so that the order of work stays.
func (p *Production) RemoveTask(id string) {
	at := slices.IndexFunc(p.Tasks, func(t Task) bool { return t.ID == id })
	if at < 0 {
		return
	}
	before := p.Tasks[at].After
	p.forget(id)
	drop(&p.Tasks, func(t Task) bool { return t.ID == id })
	for i := range p.Tasks {
		t := &p.Tasks[i]
		if !slices.Contains(t.After, id) {
			continue
		}
		drop(&t.After, func(x string) bool { return x == id })
		for _, b := range before {
			if b != id && b != t.ID && !slices.Contains(t.After, b) {
				t.After = append(t.After, b)
			}
		}
	}
}

// RemoveObject deletes an object; what it stood in for is wanted again.
func (p *Production) RemoveObject(id string) {
	p.forget(id)
	drop(&p.Objects, func(o Object) bool { return o.ID == id })
	for i := range p.StandIns {
		if s := &p.StandIns[i]; s.Object == id && id != "" {
			s.Object, s.State = "", Wanted
		}
	}
}

// RemoveNote deletes a note for the next floor.
func (p *Production) RemoveNote(id string) {
	p.dropNotes(func(n Note) bool { return n.ID == id })
}

// RemoveDanceLine deletes a dance line.
func (p *Production) RemoveDanceLine(id string) {
	p.forget(id)
	drop(&p.DanceLines, func(d marks.DanceLine) bool { return d.ID == id })
}

// RemovePivot deletes a pivot of a floor.
func (p *Production) RemovePivot(on floor.ID, id string) {
	if f := p.Floor(on); f != nil {
		p.forget(id)
		drop(&f.Pivots, func(v floor.Pivot) bool { return v.ID == id })
	}
}
