package drawingin

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// Columns of what comes in.
const (
	inColumn = iota
	nameColumn
	kindColumn
	levelColumn
	scenesColumn
	tapeColumn
	useColumn
	linesColumn
)

// comingPanel is what will come in, element by element.
type comingPanel struct {
	page    *Page
	count   *widget.Label
	grid    *grid.Grid
	levels  options[plan.LevelID]
	tapes   options[plan.StockID]
	changes *changesPanel
	floors  *floorsPanel
	tabs    *container.AppTabs
	content fyne.CanvasObject
}

var (
	kindChoices = asOffered(plan.Kinds)
	useChoices  = asOffered(plan.Uses)
	roleChoices = asOffered(plan.Roles)
)

func newComingPanel(p *Page) *comingPanel {
	c := &comingPanel{page: p, count: heading("")}
	c.grid = grid.New([]grid.Column{
		{Title: "In", Tick: true}, {Title: "Name", Width: 90, Grow: true}, {Title: "Kind", Width: 82, Choices: kindChoices.names},
		{Title: "Level", Width: 78}, {Title: "Scenes", Width: 58, Hint: "all, or names, with commas"}, {Title: "Tape", Width: 88},
		{Title: "Use", Width: 72, Choices: useChoices.names}, {Title: "Lines show", Width: 80, Choices: roleChoices.names},
	})
	c.grid.ShowTools(false)
	c.grid.SetEmpty("The elements come here once lines, scale and datum are known.", "", nil)
	c.grid.OnEdit = c.edited
	c.grid.OnSelect = c.picked
	c.grid.OnDelete = func(rows []string) { c.decide(rows, "leave", func(d *decision) { d.leave = true }) }
	every := fields.NewToolbar(
		fields.Tool{Text: "All in", Do: func() { c.decide(c.grid.Shown(), "leave", func(d *decision) { d.leave = false }) }},
		fields.Tool{Text: "None", Do: func() { c.decide(c.grid.Shown(), "leave", func(d *decision) { d.leave = true }) }},
	)
	elements := container.NewBorder(container.NewBorder(nil, nil, nil, every, c.count),
		wrapped("Select several rows to change all of them in one go."), nil, nil, c.grid)
	c.changes, c.floors = newChangesPanel(p), newFloorsPanel(p)
	c.tabs = container.NewAppTabs(
		container.NewTabItem("What comes in", elements), container.NewTabItem("What it changes", c.changes.content),
		container.NewTabItem("On the floors", c.floors.content))
	c.tabs.OnSelected = func(*container.TabItem) { p.redraw() }
	c.content = c.tabs
	return c
}

// turnTo shows what a revision changes, or else what comes in.
func (c *comingPanel) turnTo(revising bool) {
	c.tabs.SelectIndex(0)
	if revising {
		c.tabs.SelectIndex(1)
	}
}

func (c *comingPanel) decide(rows []string, what string, say func(*decision)) {
	ids := make([]plan.ElementID, len(rows))
	for i, row := range rows {
		ids[i] = plan.ElementID(row)
	}
	c.page.coming.decide(ids, what, say)
	c.page.decided()
}

// edited changes a cell, and those under it in all selected rows when its row is
// one of them. A name is for one element only.
func (c *comingPanel) edited(row string, column int, text string) error {
	rows := together(row, c.grid.Selected())
	switch column {
	case inColumn:
		c.decide(rows, "leave", func(d *decision) { d.leave = text != grid.On })
	case nameColumn:
		name := strings.TrimSpace(text)
		if name == "" {
			return errors.New("an element needs a name")
		}
		c.decide([]string{row}, "name", func(d *decision) { d.name = name })
	case kindColumn:
		kind, _ := kindChoices.value(text)
		c.decide(rows, "kind", func(d *decision) { d.kind = kind })
	case levelColumn:
		level, _ := c.levels.value(text)
		c.decide(rows, "level", func(d *decision) { d.level = level })
	case scenesColumn:
		in, err := c.page.desk.View().P.Plan.ScenesNamed(text)
		if err != nil {
			return err
		}
		c.decide(rows, "scenes", func(d *decision) { d.in = in })
	case tapeColumn:
		stock, _ := c.tapes.value(text)
		c.decide(rows, "stock", func(d *decision) { d.stock = stock })
	case useColumn:
		use, _ := useChoices.value(text)
		c.decide(rows, "use", func(d *decision) { d.use = use })
	case linesColumn:
		role, ok := roleChoices.value(text)
		if !ok {
			return errors.New("choose what its lines show")
		}
		c.decide(rows, "role", func(d *decision) { d.role = role })
	}
	return nil
}

// picked marks the lines of the selected elements in the drawing.
func (c *comingPanel) picked(rows []string) {
	var ids []string
	for i := range c.page.coming.list {
		e := &c.page.coming.list[i]
		if !slices.Contains(rows, string(e.ID)) {
			continue
		}
		for _, item := range e.items {
			ids = append(ids, itemID(item))
		}
	}
	c.page.board.canvas.SetSelected(ids)
	c.page.board.canvas.Reveal(ids...)
}

func (c *comingPanel) show(v *desk.View) {
	c.levels, c.tapes = levelOptions(v.P.Plan.Levels, c.page.coming.list), tapeOptions(v)
	c.grid.SetChoices(levelColumn, c.levels.names)
	c.grid.SetChoices(tapeColumn, c.tapes.names)
	rows := make([]grid.Row, len(c.page.coming.list))
	for i := range c.page.coming.list {
		e := &c.page.coming.list[i]
		rows[i] = grid.Row{ID: string(e.ID), Dim: e.leave, Cells: []string{
			tick(!e.leave), e.Name, kindChoices.name(e.Kind), c.levels.name(e.Level), v.P.Plan.NamesOf(e.Scenes()), c.tapes.name(e.Stock),
			useChoices.name(e.Use), rolesOf(&e.Element),
		}}
		if strings.TrimSpace(e.Name) == "" && !e.leave {
			rows[i].CellProblems = map[int]string{nameColumn: "It has no name yet"}
		}
	}
	c.grid.SetRows(rows)
	c.count.SetText(c.page.coming.counted(v.P))
	c.changes.show(v)
	c.floors.show(v)
}

// stageFloor is the level of an element that is on none.
const stageFloor = "Stage floor"

// undecided is how a tape is called that nobody has chosen.
const undecided = "Not decided"

func levelOptions(levels []plan.Level, list []candidate) options[plan.LevelID] {
	var o options[plan.LevelID]
	o.add(stageFloor, "")
	for _, l := range levels {
		o.add(l.Name, l.ID)
	}
	for i := range list {
		if name, isNew := prep.LevelToMake(list[i].Level); isNew && o.name(list[i].Level) == "" {
			o.add(name+" (new)", list[i].Level)
		}
	}
	return o
}

func tapeOptions(v *desk.View) options[plan.StockID] {
	var o options[plan.StockID]
	o.add(undecided, "")
	for _, s := range v.P.Stocks {
		o.add(s.Name, s.ID)
	}
	return o
}
