package drawingin

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/drawingfile"
	"groundrow/ui/fields"
)

// pagePicker asks which page of a file the plan is on: the pages in small, drawn
// while a person looks.
type pagePicker struct {
	page    *Page
	title   *widget.Label
	grid    *widget.GridWrap
	small   thumbs
	content fyne.CanvasObject
}

var thumbSize = fyne.NewSize(236, 168)

func newPagePicker(p *Page) *pagePicker {
	s := &pagePicker{page: p, title: heading(""), small: thumbs{desk: p.desk}}
	s.grid = widget.NewGridWrap(func() int { return len(s.pages()) }, newThumb, s.update)
	s.grid.OnSelected = func(n widget.GridWrapItemID) {
		s.grid.UnselectAll() // so that it can be picked again
		s.pick(n)
	}
	s.small.drawn = func(n int) { s.grid.RefreshItem(n) }
	top := container.NewBorder(nil, nil, nil, container.NewHBox(
		fields.NewButton("Another drawing…", p.Choose), fields.NewButton("Back to the plan", p.leave)), s.title)
	how := wrapped("Pick the page that the ground plan is on. A page that is a scan can be traced.")
	s.content = container.NewBorder(container.NewVBox(top, how), nil, nil, nil, s.grid)
	return s
}

func (s *pagePicker) pages() []drawingfile.Page {
	if s.page.file.File == nil {
		return nil
	}
	return s.page.file.Pages
}

// begin shows the pages of the file, that which is likeliest in sight.
func (s *pagePicker) begin() {
	file := s.page.file
	s.title.SetText(fmt.Sprintf("%s has %d pages", clipped(file.Name), len(file.Pages)))
	s.small.of(file.File)
	s.page.turnTo(s.content)
	s.grid.Refresh()
	s.grid.ScrollTo(file.First())
	s.page.desk.Window().Canvas().Focus(s.grid)
}

func (s *pagePicker) pick(n int) {
	if n < 0 || n >= len(s.pages()) {
		return
	}
	if p := s.pages()[n]; p.Blank() {
		s.page.desk.Told(fmt.Sprintf("There is no plan on page %d: %s.", n+1, p.What()))
		return
	}
	s.page.openPage(n, false)
}

// rest leaves the drawing of small pages until wake, for what is wanted at once.
func (s *pagePicker) rest() { s.small.rest() }

func (s *pagePicker) wake() {
	s.small.of(s.page.file.File)
	s.grid.Refresh()
}

// newThumb is room for one page.
func newThumb() fyne.CanvasObject {
	img := canvas.NewImageFromImage(nil)
	img.FillMode = canvas.ImageFillContain
	img.SetMinSize(thumbSize)
	sign := widget.NewIcon(theme.DocumentIcon())
	words := widget.NewLabelWithStyle("", fyne.TextAlignCenter, fyne.TextStyle{})
	words.Truncation = fyne.TextTruncateEllipsis
	return container.NewBorder(nil, words, nil, nil, container.NewStack(container.NewCenter(sign), img))
}

func (s *pagePicker) update(n widget.GridWrapItemID, o fyne.CanvasObject) {
	if n >= len(s.pages()) {
		return
	}
	parts := o.(*fyne.Container).Objects
	stack := parts[0].(*fyne.Container).Objects
	parts[1].(*widget.Label).SetText(captionOf(n, s.pages()[n]))
	img := stack[1].(*canvas.Image)
	img.Image = s.small.picture(n)
	setVisible(stack[0], img.Image == nil)
	img.Refresh()
}

// captionOf says which page it is and what is on it.
func captionOf(n int, p drawingfile.Page) string {
	words := fmt.Sprintf("Page %d", n+1)
	if p.Label != "" && p.Label != fmt.Sprint(n+1) {
		words += " (" + clipped(p.Label) + ")"
	}
	return words + ": " + p.What()
}
