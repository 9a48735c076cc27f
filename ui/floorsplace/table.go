package floorsplace

import (
	"fmt"
	"slices"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// buildTable makes the table of what the floor does with every element.
func (p *place) buildTable() {
	g := grid.New(treatmentColumns())
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.Element, IDs: ids}) }
	g.OnEdit = func(id string, column int, text string) error {
		return p.editTreatment([]string{id}, column, text)
	}
	g.SetEmpty("Nothing is drawn on the plan yet.", "Go to the plan", func() { p.desk.Go(desk.Plan, desk.Selection{}) })
	g.SetTools(
		fields.NewButton("Lay as proposed", func() { p.takeProposals(g.Selected()) }),
		fields.NewButton("Cut short what sticks out", p.cutOverhangs),
	)
	p.table = g
}

func (p *place) editTreatment(ids []string, column int, text string) error {
	label := map[int]string{colHow: "Decide how it is laid: " + text, colReason: "Give the reason", colDecided: "Say who decided"}[column]
	return p.desk.TryEdit(label, func(pr *prep.Production) error {
		f := pr.Floor(p.view.Floor)
		if f == nil {
			return errGone("the floor")
		}
		return treat(f, &pr.Plan, ids, func(t *floor.Treatment) {
			switch column {
			case colHow:
				t.How = floor.How(text)
			case colReason:
				t.Reason = text
			case colDecided:
				decide(t, text, time.Now())
			}
		})
	})
}

// treatAll gives one treatment to the elements that wants picks.
func (p *place) treatAll(label string, how floor.How, reason string, wants func(*plan.Element) bool) {
	changed := 0
	if p.desk.Edit(label, func(pr *prep.Production) error {
		f := pr.Floor(p.view.Floor)
		if f == nil {
			return errGone("the floor")
		}
		changed = 0
		for i := range pr.Plan.Elements {
			e := &pr.Plan.Elements[i]
			if f.Decide(e).How != floor.AsDrawn || !wants(e) {
				continue
			}
			changed++
			if err := treat(f, &pr.Plan, []string{string(e.ID)}, func(t *floor.Treatment) { t.How, t.Reason = how, reason }); err != nil {
				return err
			}
		}
		return nil
	}) {
		p.desk.Told(fmt.Sprintf("%s: %s", label, prep.Counted(changed, "element")))
	}
}

// takeProposals lays the elements as proposed, all of them when none is named. They
// wait for a decision.
func (p *place) takeProposals(ids []string) {
	if p.under.proposed.working {
		p.desk.Told("What to propose is still being worked out: try again in a moment.")
		return
	}
	wanted := p.under.proposed.list
	if len(ids) > 0 {
		wanted = nil
		for _, t := range p.under.proposed.list {
			if slices.Contains(ids, string(t.Element)) {
				wanted = append(wanted, t)
			}
		}
	}
	if len(wanted) == 0 {
		p.desk.Told("Nothing is proposed for that: it is best laid as it is, or somebody has decided.")
		return
	}
	id, changed := p.view.Floor, 0
	if p.desk.Edit("Lay as proposed", func(pr *prep.Production) error {
		changed = prep.TakeProposals(pr, id, wanted)
		return nil
	}) {
		p.desk.Told("Laid as proposed: " + prep.Counted(changed, "element") + ", to be decided")
	}
}

func (p *place) cutOverhangs() {
	out := map[plan.ElementID]bool{}
	for _, o := range p.view.Work(p.view.Floor).Overhangs {
		out[o.Element] = true
	}
	p.treatAll("Cut short what sticks out", floor.CutShort, "part of it lies outside the floor",
		func(e *plan.Element) bool { return out[e.ID] })
}
