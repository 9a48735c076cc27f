package drawingin

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// pagesPanel asks which page of the file the plan is on, and says what the file
// is.
type pagesPanel struct {
	page    *Page
	grid    *grid.Grid
	facts   *widget.Label
	content fyne.CanvasObject
}

func newPagesPanel(p *Page) *pagesPanel {
	s := &pagesPanel{page: p, facts: wrapped("")}
	s.grid = grid.New([]grid.Column{
		{Title: "Page", Width: 56, ReadOnly: true, Right: true}, {Title: "What it is", Width: 220, Grow: true, ReadOnly: true},
		{Title: "Size", Width: 130, ReadOnly: true},
	})
	s.grid.ShowTools(false)
	s.grid.OnSelect = s.chosen
	open := fields.NewButton("Open the page", func() { s.open(s.grid.Selected()) })
	s.grid.OnActivate = func(row string) { s.open([]string{row}) }
	s.content = container.NewBorder(nil, container.NewVBox(container.NewHBox(open), container.NewVScroll(s.facts)), nil, nil, s.grid)
	return s
}

func (s *pagesPanel) chosen(rows []string) { s.open(rows) }

func (s *pagesPanel) open(rows []string) {
	if len(rows) != 1 {
		return
	}
	if n, err := strconv.Atoi(strings.TrimPrefix(rows[0], "page ")); err == nil && n != s.page.at {
		s.page.openSheet(n)
	}
}

func (s *pagesPanel) show() {
	p := s.page
	rows := make([]grid.Row, len(p.file.Pages))
	for i, sheet := range p.file.Pages {
		rows[i] = grid.Row{ID: "page " + strconv.Itoa(i), Bold: i == p.at, Cells: []string{strconv.Itoa(i + 1), sheet.Title, sheet.Size}}
	}
	s.grid.SetRows(rows)
	d := p.d
	facts := []string{strings.TrimSpace(d.sheet.Format+" "+d.sheet.Version) + ". " + d.sheet.UnitWhy}
	if aside := d.unread(); aside != "" {
		facts = append(facts, "Not in the picture:", aside)
	}
	s.facts.SetText(strings.Join(facts, "\n"))
}
