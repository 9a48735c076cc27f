package paperplace

import (
	"context"
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep/sheets"
	"groundrow/ui/fields"
)

// side shows the chosen sheet page by page, with what it holds and what can be
// done with it.
type side struct {
	place *place

	name    *widget.Label
	holds   *widget.Label
	size    *widget.Label
	printed *fields.Banner
	told    *widget.Label // where files were written
	picture *canvas.Image
	leaf    *widget.Label
	back    *fields.Button
	on      *fields.Button
	csv     *fields.Button
	send    *fields.Button
	content *fyne.Container
	inner   *fyne.Container
	words   *fyne.Container

	page    int
	key     string // of what is shown
	callOff func()
}

func newSide(p *place) *side {
	s := &side{place: p, callOff: func() {}}
	s.name = widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	s.holds, s.size, s.told, s.leaf = widget.NewLabel(""), widget.NewLabel(""), widget.NewLabel(""), widget.NewLabel("")
	s.holds.Wrapping, s.told.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	s.told.Hide()
	s.printed = fields.NewBanner(fields.Note, "", "", nil)
	s.picture = canvas.NewImageFromImage(nil)
	s.picture.FillMode = canvas.ImageFillContain
	s.back = fields.NewButton("Page before", func() { s.turn(-1) })
	s.on = fields.NewButton("Next page", func() { s.turn(1) })
	s.csv = fields.NewButton("Save as CSV…", func() { p.askSave(".csv") })
	s.send = fields.NewButton("Send to the printer", func() { p.print(p.one(), toPrinter) })
	open := fields.NewButton("Print", func() { p.print(p.one(), toViewer) })
	open.Importance = widget.HighImportance
	pdf := fields.NewButton("Save as PDF…", func() { p.askSave(".pdf") })
	if p.printer == nil {
		s.send.Hide()
	}
	leaves := container.NewHBox(layout.NewSpacer(), s.back, s.leaf, s.on, layout.NewSpacer())
	s.words = container.NewVBox(s.name, s.holds, s.size, s.printed, container.NewHBox(open, s.send, pdf, s.csv), s.told, leaves)
	s.inner = container.NewBorder(s.words, nil, nil, nil, s.picture)
	s.content = container.NewPadded(s.inner)
	return s
}

// show sets the side from a card.
func (s *side) show(c *card, size sheets.PageSize) {
	before := s.words.MinSize().Height
	s.name.SetText(c.sheet.Name)
	s.holds.SetText(c.sheet.Holds)
	if c.sheet.Table {
		s.csv.Show()
	} else {
		s.csv.Hide()
	}
	switch {
	case c.err != nil:
		s.size.SetText("")
		s.printed.Set(fields.Danger, "This sheet cannot be set: "+c.err.Error(), "", nil)
	case c.doc == nil:
		s.size.SetText("Being set…")
		s.printed.Set(fields.Note, "", "", nil)
	default:
		w, h := c.doc.Size()
		s.size.SetText(sizeWords(c.doc.Pages(), size, w, h) + ".")
		s.printed.Set(bannerOf[c.record.standing], c.record.words(), "", nil)
	}
	if s.words.MinSize().Height != before {
		s.inner.Refresh()
	}
	if key := string(c.sheet.Kind) + c.key; key != s.key {
		s.key = key
		s.page = 0
		s.turn(0)
	}
}

var bannerOf = map[standing]fields.Kind{notPrinted: fields.Note, stillRight: fields.Good, outOfDate: fields.Warning}

// turn looks at another page.
func (s *side) turn(by int) {
	c := s.place.card()
	if c == nil || c.doc == nil {
		s.setPicture(nil)
		s.leaf.SetText("")
		s.enable(0)
		return
	}
	s.page = max(0, min(s.page+by, c.doc.Pages()-1))
	s.leaf.SetText(fmt.Sprintf("page %d of %d", s.page+1, c.doc.Pages()))
	s.enable(c.doc.Pages())
	s.callOff()
	doc, page, width := c.doc, s.page, s.room(c)
	var img image.Image
	s.callOff = s.place.quietly(
		func(context.Context) { img = framed(doc.Render(page, width-2), 0, 0) },
		func() { s.setPicture(img) },
	)
}

// room is how many pixels wide the page is shown.
func (s *side) room(c *card) int {
	size := s.picture.Size()
	w, h := c.doc.Size()
	fits := min(float64(size.Width), float64(size.Height)*w/h)
	if fits < 200 {
		fits = 460 // it has not been laid out yet
	}
	return int(fits * s.place.density())
}

func (s *side) setPicture(img image.Image) {
	s.picture.Image = img
	s.picture.Refresh()
}

func (s *side) enable(pages int) {
	set := func(b *fields.Button, on bool) {
		if on == b.Disabled() {
			if on {
				b.Enable()
			} else {
				b.Disable()
			}
		}
	}
	set(s.back, s.page > 0)
	set(s.on, s.page+1 < pages)
}

// tell says where something was written.
func (s *side) tell(text string) {
	s.told.SetText(text)
	s.told.Show()
	s.inner.Refresh()
}
