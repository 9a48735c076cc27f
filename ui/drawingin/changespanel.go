package drawingin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// changesPanel shows the drawing as a revision of the plan: what it moves,
// reshapes, adds and leaves out.
type changesPanel struct {
	page    *Page
	as      *fields.Tick
	count   *widget.Label
	grid    *grid.Grid
	content fyne.CanvasObject
}

func newChangesPanel(p *Page) *changesPanel {
	c := &changesPanel{page: p, as: fields.NewTick("It is a revision of the plan"), count: wrapped("")}
	c.as.OnCommit = func(on bool) error {
		p.revising = on
		p.showAll()
		return nil
	}
	c.grid = grid.New([]grid.Column{
		{Title: "Take over", Tick: true}, {Title: "Element", Width: 120, Grow: true, ReadOnly: true}, {Title: "", Width: 74, ReadOnly: true},
		{Title: "What became of it", Width: 240, Grow: true, ReadOnly: true},
	})
	c.grid.ShowTools(false)
	c.grid.SetEmpty("The drawing changes nothing on the plan.", "", nil)
	c.grid.OnEdit = c.ticked
	c.grid.OnSelect = func([]string) { p.redraw() }
	every := fields.NewToolbar(
		fields.Tool{Text: "All", Do: func() { c.sayAll(true) }}, fields.Tool{Text: "None", Do: func() { c.sayAll(false) }})
	c.content = container.NewBorder(container.NewVBox(container.NewBorder(nil, nil, nil, every, c.as), c.count), nil, nil, nil, c.grid)
	return c
}

func (c *changesPanel) ticked(row string, _ int, text string) error {
	for _, id := range together(row, c.grid.Selected()) {
		for _, i := range c.page.changes.listed() {
			if changeKey(&c.page.changes.all[i]) == id {
				c.page.changes.say(i, text == grid.On)
			}
		}
	}
	c.page.decided()
	return nil
}

func (c *changesPanel) sayAll(on bool) {
	for _, i := range c.page.changes.listed() {
		c.page.changes.say(i, on)
	}
	c.page.decided()
}

// marked are the keys of the rows that are selected.
func (c *changesPanel) marked() map[string]bool {
	out := map[string]bool{}
	for _, id := range c.grid.Selected() {
		out[id] = true
	}
	return out
}

func (c *changesPanel) show(v *desk.View) {
	p := c.page
	c.as.Set(p.revising)
	some := len(v.P.Plan.Elements) > 0
	setVisible(c.as, some)
	if !some {
		c.count.SetText("The plan is empty, so everything is new.")
		c.grid.SetRows(nil)
		return
	}
	words := p.changes.counted()
	if !p.revising {
		words = "What comes in is added to the plan, and nothing on it changes."
	}
	c.count.SetText(words)
	var rows []grid.Row
	if p.revising {
		style := v.Style()
		for _, i := range p.changes.listed() {
			rows = append(rows, grid.Row{ID: changeKey(&p.changes.all[i]), Dim: !p.changes.taken(i), Cells: p.changes.rowOf(i, style)})
		}
	}
	c.grid.SetRows(rows)
}
