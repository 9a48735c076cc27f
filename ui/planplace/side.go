package planplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
)

// sidePanel is what is selected: the plan itself, one element, or several.
type sidePanel struct {
	desk    *desk.Desk
	plan    *planPanel
	element *elementPanel
	several *severalPanel
	content fyne.CanvasObject
}

func newSidePanel(d *desk.Desk, does actions) *sidePanel {
	s := &sidePanel{desk: d, plan: newPlanPanel(d), element: newElementPanel(d, does), several: newSeveralPanel(d)}
	s.content = container.NewStack(s.plan.content, s.element.content, s.several.content)
	return s
}

func (s *sidePanel) show(v *desk.View) {
	if v == nil {
		return
	}
	ids := selected(v)
	for i, panel := range []fyne.CanvasObject{s.plan.content, s.element.content, s.several.content} {
		setVisible(panel, min(len(ids), 2) == i)
	}
	switch len(ids) {
	case 0:
		s.plan.show(v)
	case 1:
		s.element.show(v, v.P.Plan.Element(ids[0]))
	default:
		s.several.show(v, ids)
	}
}

// focusName gives the name of the one selected element the keyboard.
func (s *sidePanel) focusName() {
	if len(selected(s.desk.View())) == 1 {
		s.element.focusName()
	}
}

// heading is the title over a side panel.
func heading() *widget.Label {
	l := widget.NewLabel("")
	l.TextStyle.Bold = true
	l.Truncation = fyne.TextTruncateEllipsis
	return l
}

// wrapped are words that may take several lines.
func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// kindChoices and the like are what is offered, as a person reads it.
var (
	kindChoices = asOffered(plan.Kinds)
	useChoices  = asOffered(plan.Uses)
	roleChoices = asExplained(plan.Roles, map[plan.Role]string{
		plan.Outline: "its edge",
		plan.Inner:   "treads, folds, joints",
		plan.Swing:   "where a door leaf travels, dashed",
		plan.Hidden:  "overhead or beneath, dashed",
		plan.Way:     "the line along which a track carries",
	})
	baselineChoices = asOffered(plan.Baselines)
	rulerChoices    = asOffered(rulers)
)
