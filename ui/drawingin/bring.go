package drawingin

import (
	"time"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
)

// bring makes the one change of the page: the elements that are ticked come onto
// the plan, and the file is kept as it came.
func (p *Page) bring() {
	if p.revising {
		p.bringRevision()
		return
	}
	var ids []plan.ElementID
	if !p.edit("Bring in "+p.file.Name, func(pr *prep.Production) (err error) {
		settle(pr, p.d, p.baseline, len(pr.Plan.Elements) == 0)
		ids, err = p.coming.bring(pr)
		return err
	}) {
		return
	}
	p.desk.Told(prep.Counted(len(ids), "element") + " brought in from " + p.file.Name + ". Undo takes them away again.")
	p.done()
	p.desk.Select(desk.Selection{})
}

// bringRevision takes the accepted changes over into the plan.
func (p *Page) bringRevision() {
	n := len(p.changes.accepted())
	if !p.edit("Revise the plan from "+p.file.Name, func(pr *prep.Production) error {
		settle(pr, p.d, p.baseline, false)
		return p.changes.apply(pr)
	}) {
		return
	}
	p.desk.Told(prep.Counted(n, "change") + " taken over from " + p.file.Name + ". Undo takes them back.")
	p.done()
	p.desk.Select(desk.Selection{})
}

// edit makes a change that keeps the file, unless it is kept already.
func (p *Page) edit(label string, change func(*prep.Production) error) bool {
	if p.file.kept != "" {
		return p.desk.Edit(label, change)
	}
	v := p.desk.View()
	return p.desk.BringIn(store.Brought{
		Label: label, Bytes: p.file.Content,
		Drawing: prep.Drawing{ID: uuid.NewString(), Name: p.file.Name, Format: string(p.file.Format), On: time.Now(), By: v.Who},
	}, change)
}

// settle notes on the plan what the drawing has taught of it. A plan that had
// elements keeps its scale: others may be reading lengths off paper by it.
func settle(pr *prep.Production, d *drawn, baseline plan.Baseline, first bool) {
	if s, ok := d.ratio(); ok && onPaper(d.sheet) && s.Valid() && first {
		pr.Plan.Scale = float64(s)
	}
	if baseline != "" {
		pr.Plan.Baseline = baseline
	}
}

// done forgets the drawing and goes back to the plan.
func (p *Page) done() {
	p.forget()
	p.turnTo(p.start.content)
	p.leave()
}
