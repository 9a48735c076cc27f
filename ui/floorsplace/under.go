package floorsplace

import (
	"fyne.io/fyne/v2/container"

	"groundrow/prep"
	"groundrow/ui/desk"
)

// The tabs under the canvas, in their order.
const (
	tabTreatments = iota
	tabQuestions
	tabScenes
	tabSpare
)

// under is what stands under the canvas: what the floor does with every element, what
// must be asked about that, what is down in which scene, and what nobody needs.
type under struct {
	p         *place
	tabs      *container.AppTabs
	questions *questionsTab
	scenes    *scenesTab
	spare     *spareTab

	proposed *proposed
}

func newUnder(p *place) *under {
	u := &under{p: p, questions: newQuestionsTab(p), scenes: newScenesTab(p), spare: newSpareTab(p)}
	u.proposed = newProposed(p.desk, p.proposalsCame)
	u.tabs = container.NewAppTabs(
		container.NewTabItem("What is done with it", p.table),
		container.NewTabItem("Questions", u.questions.content),
		container.NewTabItem("Scenes", u.scenes.content),
		container.NewTabItem("Tape that nobody needs", u.spare.content),
	)
	u.tabs.OnSelected = func(*container.TabItem) {
		if p.view != nil {
			p.Show(p.view)
		}
	}
	return u
}

// show brings the tab that is open up to date.
func (u *under) show(v *desk.View, w *prep.FloorWork) {
	switch u.tabs.SelectedIndex() {
	case tabTreatments:
		u.proposed.look(v, w.Floor)
		u.p.showTreatments(v, w)
	case tabQuestions:
		u.proposed.look(v, w.Floor)
		u.questions.show(v, w)
	case tabScenes:
		u.scenes.show(v, w)
	case tabSpare:
		u.spare.look(v, w)
	}
}

// summary says what is seen on the canvas.
func (u *under) summary(v *desk.View, w *prep.FloorWork) string {
	if u.tabs.SelectedIndex() != tabScenes {
		return summary(v, w)
	}
	return v.P.Plan.SceneName(v.Scene) + ": what lies on a band is down only in some scenes, the rest all the time; thin grey lines belong to other scenes."
}

// find looks in the list that is open.
func (u *under) find() {
	switch u.tabs.SelectedIndex() {
	case tabQuestions:
		u.questions.list.FocusFilter()
	case tabScenes:
		u.scenes.uses.FocusFilter()
	case tabSpare:
		u.spare.list.FocusFilter()
	default:
		u.p.table.FocusFilter()
	}
}

// proposalsCame shows the proposals where they are looked at.
func (p *place) proposalsCame() {
	if w := p.view.Work(p.view.Floor); w != nil {
		p.under.show(p.view, w)
		p.showSide(p.view, w)
	}
}

// showTreatments sets the table of what the floor does with every element.
func (p *place) showTreatments(v *desk.View, w *prep.FloorWork) {
	p.table.SetRows(treatmentRows(v, w, p.under.proposed))
	if v.Selected.Kind == desk.Element {
		p.table.Select(v.Selected.IDs...)
	}
}
