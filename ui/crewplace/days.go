package crewplace

import (
	"context"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/poster"
)

// daysTab is the board with what limits the end under it and the chosen task beside it.
type daysTab struct {
	place *place
	view  *desk.View
	plan  prep.CrewPlan

	day   time.Time // the day shown; zero until one is chosen
	whole bool      // all days at once
	task  string    // the task last brought into view

	board     board
	limits    limits
	shortened *prep.Production // that was asked about last

	days          []time.Time
	back, forward *fields.Button
	save          *fields.Button
	title         *widget.Label
	all           *widget.Check
	end           *fields.Banner
	said          *widget.Label
	poster        *poster.Poster
	under         *poster.Poster
	form          *taskForm
	content       fyne.CanvasObject
	setting       bool
}

// legend explains the board while the pointer is on no bar.
const legend = "Shaded: room closed, or a break. Triangle: see to it."

func newDaysTab(p *place) *daysTab {
	t := &daysTab{place: p, title: widget.NewLabel(""), said: widget.NewLabel(legend), form: newTaskForm(p)}
	t.title.TextStyle.Bold = true
	t.said.Truncation = fyne.TextTruncateEllipsis
	t.back = fields.NewButton("Day before", func() { t.step(-1) })
	t.forward = fields.NewButton("Next day", func() { t.step(1) })
	t.all = widget.NewCheck("all days", t.showAll)
	t.end = fields.NewBanner(fields.Good, "", "", nil)
	t.poster = poster.New(func(pen *poster.Pen) {
		s := boardSketch{Pen: pen, b: t.board, selected: t.selected(), pick: p.pickTask}
		s.steps = []step{{"Add a person", p.addPerson}, {"List the usual tasks for this floor", p.addUsualTasks}, {"Add a task", p.addTask}}
		s.draw()
	})
	t.poster.Need = func(float32) float32 { return boardNeed(len(t.board.lanes)) }
	t.poster.OnHover = func(hint string) {
		if hint == "" {
			hint = legend
		}
		t.said.SetText(hint)
	}
	t.under = poster.New(func(pen *poster.Pen) {
		s := limitsSketch{Pen: pen, l: t.limits, pick: p.pickTask}
		s.draw()
	})
	t.save = fields.NewButton("Save calls for a calendar…", p.askCalendar)
	row := container.NewBorder(nil, nil,
		container.NewHBox(t.back, t.forward, t.title, t.all), t.save, t.said)
	rates := widget.NewLabel(whereRates)
	rates.Truncation = fyne.TextTruncateEllipsis
	lower := container.NewBorder(t.end, rates, nil, nil, t.under)
	split := container.NewVSplit(container.NewVScroll(t.poster), lower)
	split.SetOffset(0.6)
	left := container.NewBorder(row, nil, nil, nil, split)
	whole := container.NewHSplit(left, container.NewVScroll(t.form.whole))
	whole.SetOffset(0.75)
	t.content = whole
	return t
}

func (t *daysTab) selected() string {
	if t.view == nil {
		return ""
	}
	id, _ := t.view.Selected.Of(desk.Task)
	return id
}

// show sets the tab from the view and the plan that follows from it.
func (t *daysTab) show(v *desk.View, plan prep.CrewPlan) {
	t.view, t.plan = v, plan
	t.days = daysOf(plan)
	t.findDay()
	t.showBoard()
	t.limits = limitsOf(v.P, plan, nil)
	t.end.Set(t.limits.kind, t.limits.end, "", nil)
	t.shorten()
	t.form.show(v, plan)
}

// showBoard draws the chosen day, or all of them.
func (t *daysTab) showBoard() {
	shown := []time.Time{t.day}
	if t.whole {
		shown = t.days[:min(len(t.days), mostDays)]
	}
	t.board = board{}
	if len(t.days) > 0 {
		t.board = boardOf(t.view.P, t.plan, shown, t.place.now())
	}
	i := t.index()
	t.title.SetText("")
	if len(t.days) > 0 && !t.whole {
		t.title.SetText("Day " + itoa(i+1) + " of " + itoa(len(t.days)))
	}
	t.back.SetEnabled(!t.whole && i > 0)
	t.forward.SetEnabled(!t.whole && i >= 0 && i < len(t.days)-1)
	t.setting = true
	t.all.SetChecked(t.whole)
	t.setting = false
	t.poster.Refresh()
}

func (t *daysTab) index() int {
	return slices.IndexFunc(t.days, func(d time.Time) bool { return sameDay(d, t.day) })
}

// findDay keeps the day shown among those of the plan: the day of a task just selected, else the one shown before,
// else today, else the first.
func (t *daysTab) findDay() {
	if id := t.selected(); id != t.task {
		t.task = id
		for _, a := range t.plan.Tasks {
			if a.Task == id {
				t.day = midnight(a.Start)
			}
		}
	}
	if len(t.days) == 0 || t.index() >= 0 {
		return
	}
	t.day = midnight(t.place.now())
	if t.index() < 0 {
		t.day = t.days[0]
	}
}

func (t *daysTab) step(by int) {
	if i := t.index() + by; i >= 0 && i < len(t.days) {
		t.day = t.days[i]
		t.showBoard()
	}
}

func (t *daysTab) showAll(on bool) {
	if !t.setting && t.view != nil {
		t.whole = on
		t.showBoard()
	}
}

// manyTasks is from how many tasks on planning them over and over is left to the background.
const manyTasks = 40

// shorten works out what would end work earlier. An answer for a snapshot that is no longer shown is dropped.
func (t *daysTab) shorten() {
	v := t.view
	q, from := prep.QuantitiesOf(v.P, v.Work), t.place.now()
	if len(v.P.Tasks) <= manyTasks {
		t.setShorter(v.P, prep.Shorten(v.P, q, from))
		return
	}
	t.under.Refresh()
	production := v.P
	if t.shortened == production {
		return
	}
	t.shortened = production
	var found []prep.Shorter
	t.place.run("Looking for what would shorten the work", func(context.Context) error {
		found = prep.Shorten(production, q, from)
		return nil
	}, func(err error) {
		if err == nil && t.view.P == production {
			t.setShorter(production, found)
		}
	})
}

func (t *daysTab) setShorter(p *prep.Production, found []prep.Shorter) {
	t.limits = limitsOf(p, t.plan, found)
	t.under.Refresh()
}
