// Package tapeplace is the place in which the tape is counted: how much of which,
// how the sum is made, what must be bought, and what could be given up.
package tapeplace

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// place is the place Tape.
type place struct {
	desk    *desk.Desk
	now     func() time.Time
	view    *desk.View
	content *fyne.Container
	whole   fyne.CanvasObject
	empty   fyne.CanvasObject

	which    *fields.Choice
	onlyHere bool
	counting *fyne.Container // the lines on top, the bars and the table
	top      *fyne.Container
	said     *widget.Label
	money    *fields.Banner
	trouble  *fields.Banner
	bars     *barView
	scroll   *container.Scroll
	table    *grid.Grid
	unit     string

	canvas *floorcanvas.Canvas
	shown  *widget.Label
	fitted floor.ID
	tabs   *container.AppTabs
	sum    *grid.Grid
	form   *stockForm
	formed *fyne.Container // the form, or words when no tape is selected
	whatIf *whatIf
	picked string // the row that was selected when the tabs were last chosen
}

var (
	_ desk.Place      = (*place)(nil)
	_ desk.Zoomer     = (*place)(nil)
	_ desk.Finder     = (*place)(nil)
	_ desk.Adder      = (*place)(nil)
	_ desk.Remover    = (*place)(nil)
	_ desk.Duplicator = (*place)(nil)
)

// New builds the place.
func New(d *desk.Desk) desk.Place { return newPlace(d, time.Now) }

func newPlace(d *desk.Desk, now func() time.Time) *place {
	p := &place{desk: d, now: now, said: widget.NewLabel(""), shown: widget.NewLabel("")}
	p.said.Truncation, p.shown.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	p.which = fields.NewChoice(allFloors)
	p.which.OnCommit = func(text string) error {
		p.onlyHere = text != allFloors
		p.Show(p.view)
		return nil
	}
	p.money = fields.NewBanner(fields.Note, "", "", nil)
	p.trouble = fields.NewBanner(fields.Warning, "", "", nil)
	p.bars = newBarView(p.pick)
	p.scroll = container.NewVScroll(p.bars.content)
	p.buildTable()

	left := container.NewVSplit(p.scroll, p.table)
	left.SetOffset(0.42)
	counted := container.NewBorder(nil, nil, container.NewHBox(widget.NewLabel("Counted for"), container.NewGridWrap(whichSize, p.which)), nil, p.said)
	p.top = container.NewVBox(counted, p.trouble, p.money)
	p.counting = container.NewBorder(p.top, nil, nil, nil, left)
	all := container.NewHSplit(p.counting, p.buildSide())
	all.SetOffset(0.64)
	p.whole = all
	p.empty = fields.Empty("No tape yet",
		"A tape is a material in a width and a colour: what it is laid for, what a roll costs, how much is on the shelf. Start with the usual ones and change what is different.",
		"Put in the usual tapes", p.addUsual)
	p.content = container.NewStack(p.whole)
	return p
}

// whichSize is the room for the name of a floor.
var whichSize = fyne.NewSize(250, 28)

// allFloors counts every floor together.
const allFloors = "All floors together"

func (p *place) buildTable() {
	g := grid.New(runColumns("ft"))
	g.OnSelect = func(ids []string) {
		if len(ids) > 0 {
			p.pick(ids[0])
		}
	}
	g.OnEdit = p.editCell
	g.OnAdd = p.Add
	g.OnDelete = func(ids []string) { p.remove(ids) }
	g.SetToolWords("Add a tape", "Delete")
	p.table = g
}

func (p *place) buildSide() fyne.CanvasObject {
	p.canvas = floorcanvas.New()
	p.canvas.OnSelect = func(ids []string, _ bool) {
		if id, ok := stockAt(p.view, ids); ok {
			p.pick(rowOf(id))
			return
		}
		p.desk.Select(desk.Selection{})
	}
	p.canvas.OnHover = func(at plane.Point, _ string) { p.desk.Pointed(at, true) }
	p.canvas.OnLeave = func() { p.desk.Pointed(plane.Point{}, false) }

	p.sum = grid.New(sumColumns())
	p.sum.ShowTools(false)
	p.sum.SetEmpty("Choose a tape to see how its sum is made.", "", nil)
	p.form = newStockForm(p.desk)
	none := widget.NewLabel("Choose a tape to describe it: its name, colour, roll, price and what it is laid for.")
	none.Wrapping = fyne.TextWrapWord
	p.formed = container.NewStack(none, container.NewVScroll(p.form.form))
	p.whatIf = newWhatIf(p.desk)
	p.tabs = container.NewAppTabs(
		container.NewTabItem("The sum", p.sum),
		container.NewTabItem("This tape", p.formed),
		container.NewTabItem("What if", p.whatIf.content),
	)
	p.tabs.SelectIndex(tabWhatIf)
	p.tabs.OnSelected = func(*container.TabItem) { p.whatIf.look(p.tabs.SelectedIndex() == tabWhatIf, p.view) }
	split := container.NewVSplit(container.NewBorder(p.shown, nil, nil, nil, p.canvas), p.tabs)
	split.SetOffset(0.5)
	return split
}

const (
	tabSum = iota
	tabForm
	tabWhatIf
)

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Tape }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.content }

// Show sets the place from the view.
func (p *place) Show(v *desk.View) {
	p.view = v
	page := p.whole
	if len(v.P.Stocks) == 0 {
		page = p.empty
	}
	if p.content.Objects[0] != page {
		p.content.Objects = []fyne.CanvasObject{page}
		p.content.Refresh()
	}
	if page == p.empty {
		return
	}
	p.showWhich(v)
	runs := runsOf(v, p.onlyHere)
	p.showTop(v, runs)
	if u := reckoning.Unit(v.P); u != p.unit {
		p.unit = u
		p.table.SetColumns(runColumns(u))
	}
	p.table.SetRows(runRows(v.P, runs, p.now()))
	p.said.SetText(together(v.P, runs))
	row, chosen := selectedRow(v)
	if chosen {
		p.table.Select(row)
	} else {
		p.table.Select()
	}
	p.bars.show(chartOf(v.P, runs), row)
	p.showCanvas(v, chosen, stockOf(row))
	p.showSide(v, runs, row, chosen)
}
