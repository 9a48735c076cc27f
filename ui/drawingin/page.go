// Package drawingin is the page on which a drawing is brought in from a file: the
// drawing at left, what will come of it at right, and four questions on top: which
// page, which lines, what scale, and where the datum is.
//
// Nothing in the production changes before "Bring it in", and then by one named
// change that keeps the file as it came.
package drawingin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// Page is the page. It belongs to the place Plan, which shows and hides it.
type Page struct {
	desk  *desk.Desk
	leave func()

	file      opened
	at        int // the sheet that is shown
	d         *drawn
	scales    []scaleProposal
	datums    []datumProposal
	dim       *dimension
	baseline  plan.Baseline
	coming    coming
	changes   changes // of the plan that there is
	revising  bool    // the drawing is a revision of that plan
	means     meaning // what the revision means on the floors
	calling   func()  // calls off what is being worked out
	comparing func()  // and what is being compared

	title     *widget.Label
	bringIn   *fields.Button
	said      *fields.Banner
	questions *questions
	board     *board
	pages     *pagesPanel
	lines     *linesPanel
	scale     *scalePanel
	datum     *datumPanel
	come      *comingPanel
	asked     *fyne.Container // the panel of the question that is open
	start     *startPanel
	scans     *scanPage
	picker    *pagePicker
	work      fyne.CanvasObject
	content   *fyne.Container
}

// scaleProposal and datumProposal are answers to choose from.
type scaleProposal struct {
	name string
	scaleAnswer
}

type datumProposal struct {
	name string
	datumAnswer
	is plan.Baseline
}

// New builds the page; leave is told when a person goes back to the plan.
func New(d *desk.Desk, leave func()) *Page {
	p := &Page{desk: d, leave: leave, calling: func() {}, comparing: func() {}, title: heading(""), said: fields.NewBanner(fields.Note, "", "", nil)}
	p.questions = newQuestions(p.ask)
	p.board = newBoard(d)
	p.board.touched, p.board.looked = p.toggle, p.redraw
	p.pages, p.lines, p.scale, p.datum = newPagesPanel(p), newLinesPanel(p), newScalePanel(p), newDatumPanel(p)
	p.come = newComingPanel(p)
	p.start, p.scans = newStartPanel(p), newScanPage(p)
	p.picker = newPagePicker(p)
	p.asked = container.NewStack(p.lines.content)
	p.bringIn = fields.NewButton("Bring it in", p.bring)
	p.bringIn.Importance = widget.HighImportance

	top := container.NewBorder(nil, nil, nil, container.NewHBox(
		fields.NewButton("Another drawing…", p.Choose), fields.NewButton("Back to the plan", p.leave), p.bringIn), p.title)
	right := container.NewVSplit(p.asked, p.come.content)
	right.Offset = 0.45
	split := container.NewHSplit(p.board.content, right)
	split.Offset = 0.5
	p.work = container.NewBorder(container.NewVBox(top, p.questions.content, p.said), nil, nil, nil, split)
	p.content = container.NewStack(p.start.content)
	return p
}

// Content is what the page shows.
func (p *Page) Content() fyne.CanvasObject { return p.content }

// Show sets the page from the view.
func (p *Page) Show(v *desk.View) {
	if v == nil || !p.content.Visible() {
		return
	}
	p.start.show(v)
	p.scans.show(v)
	p.showAll()
}

// Zoom enlarges the drawing.
func (p *Page) Zoom(by float64) { p.board.canvas.Zoom(by) }

// Fit shows the whole drawing.
func (p *Page) Fit() { p.board.canvas.Fit() }

// turnTo shows one of the page's faces.
func (p *Page) turnTo(face fyne.CanvasObject) {
	p.content.Objects = []fyne.CanvasObject{face}
	p.content.Refresh()
}

// ask opens a question.
func (p *Page) ask(q question) {
	p.board.stop()
	panels := [4]fyne.CanvasObject{p.pages.content, p.lines.content, p.scale.content, p.datum.content}
	p.asked.Objects = []fyne.CanvasObject{panels[q]}
	p.asked.Refresh()
	p.questions.open = q
	p.showAll()
}

// fail tells what went wrong with an answer, if anything.
func (p *Page) fail(err error) {
	if err != nil {
		p.desk.Fail(err)
	}
}

// showAll sets everything from the drawing and its answers.
func (p *Page) showAll() {
	if p.d == nil {
		return
	}
	if p.dim != nil {
		p.d.measured(p.dim, p.desk.View().Style())
	}
	p.questions.show(p.questions.open, p.d.answers(p.at, len(p.file.Pages)))
	switch p.questions.open {
	case whichPage:
		p.pages.show()
	case whichLines:
		p.lines.show()
	case whatScale:
		p.scale.show()
	case whereDatum:
		p.datum.show()
	}
	p.redraw()
	p.showComing()
}

// redraw sets the picture.
func (p *Page) redraw() {
	if p.d == nil {
		return
	}
	style := p.desk.View().Style()
	var dim *dimension
	if p.questions.open == whatScale {
		dim = p.dim
	}
	pic := p.d.picture(look{
		style: style, baseline: string(p.baseline), ownInk: p.board.ownInk.Value(), words: p.board.words.Value(), dim: dim,
	})
	if p.revising && p.come.tabs.SelectedIndex() == 1 {
		p.changes.addTo(&pic, p.d.axes(), p.come.changes.marked())
	}
	p.board.canvas.Set(pic)
}

// showComing sets what comes in, and whether it can.
func (p *Page) showComing() {
	p.come.show(p.desk.View())
	missing := p.d.missing()
	if missing == "" {
		missing = p.coming.problem()
	}
	say(p.said, p.work, said{words: missing})
	words, some := "Bring it in", len(p.coming.elements())
	if p.revising {
		some = len(p.changes.accepted())
		words = "Take over " + prep.Counted(some, "change")
	}
	if p.bringIn.Text != words {
		p.bringIn.SetText(words)
	}
	setEnabled(p.bringIn, missing == "" && some > 0)
}

func setEnabled(b *fields.Button, on bool) {
	switch {
	case on == !b.Disabled():
	case on:
		b.Enable()
	default:
		b.Disable()
	}
}
