package drawingin

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/drawingfile"
	"groundrow/ui/fields"
)

// pagesPanel says what the file and the page in hand are, and leads to the others.
type pagesPanel struct {
	page    *Page
	title   *widget.Label
	facts   *widget.Label
	other   *fields.Button
	trace   *fields.Button
	content fyne.CanvasObject
}

func newPagesPanel(p *Page) *pagesPanel {
	s := &pagesPanel{page: p, title: heading(""), facts: wrapped("")}
	s.other = fields.NewButton("Another page…", p.pickPage)
	s.trace = fields.NewButton("Trace this page as a picture…", func() { p.openPage(p.at, true) })
	s.content = container.NewBorder(s.title, container.NewHBox(s.other, s.trace), nil, nil, container.NewVScroll(s.facts))
	return s
}

func (s *pagesPanel) show() {
	p := s.page
	d := p.d
	title := drawingfile.Title(d.sheet)
	if title == "" {
		title = "A page without words"
	}
	s.title.SetText(title)
	setVisible(s.other, len(p.file.Pages) > 1)
	setVisible(s.trace, onPaper(d.sheet))
	facts := []string{strings.TrimSpace(d.sheet.Format+" "+d.sheet.Version) + ". " + d.sheet.UnitWhy}
	if aside := d.unread(); aside != "" {
		facts = append(facts, "Not in the picture:", aside)
	}
	s.facts.SetText(strings.Join(facts, "\n"))
}

// pickPage goes to the pages of the file.
func (p *Page) pickPage() { p.picker.begin() }
