// Package paperplace is the place from which the production goes on paper: every
// sheet as a picture of its pages, with how what has been printed stands.
package paperplace

import (
	"context"
	"net/url"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep/sheets"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// place is the place Paper.
type place struct {
	desk    *desk.Desk
	now     func() time.Time
	quietly func(work func(context.Context), done func()) (callOff func())
	run     func(doing string, work func(context.Context) error, done func(error))
	open    func(path string) error
	printer func(ctx context.Context, files []string, size sheets.PageSize) error // nil: none

	view    *desk.View
	choice  choice
	cards   []*card
	chosen  int
	callOff func()

	content *fyne.Container
	whole   fyne.CanvasObject
	empty   fyne.CanvasObject
	size    *fields.Choice
	scale   *fields.Choice
	said    *widget.Label
	again   *fields.Button
	gallery *gallery
	side    *side
}

var _ desk.Place = (*place)(nil)

// New builds the place.
func New(d *desk.Desk) desk.Place {
	p := &place{desk: d, now: time.Now, quietly: d.Quietly, run: d.Run, printer: printer()}
	p.open = func(path string) error {
		return fyne.CurrentApp().OpenURL(&url.URL{Scheme: "file", Path: filepath.ToSlash(path)})
	}
	p.build()
	return p
}

func (p *place) build() {
	p.callOff = func() {}
	for _, s := range sheets.All() {
		p.cards = append(p.cards, &card{sheet: s})
	}
	p.size = fields.NewChoice(sizeNames()...)
	p.size.OnCommit = func(name string) error {
		p.choice.size, _ = sheets.Paper(name)
		p.Show(p.view)
		return nil
	}
	p.scale = fields.NewChoice(anyScale)
	p.scale.Set(anyScale)
	p.scale.OnCommit = func(name string) error {
		p.choice.scale = scaleNamed(name)
		p.Show(p.view)
		return nil
	}
	p.said = widget.NewLabel("")
	p.said.Truncation = fyne.TextTruncateEllipsis
	p.gallery = newGallery(p.choose)
	p.side = newSide(p)
	p.again = fields.NewButton("Print what is out of date", func() { p.print(p.stale(), toViewer) })
	p.again.Disable()
	head := container.NewHBox(
		widget.NewLabel("Paper"), container.NewGridWrap(fyne.NewSize(92, 30), p.size),
		widget.NewLabel("Scale of plans"), container.NewGridWrap(fyne.NewSize(170, 30), p.scale),
		layout.NewSpacer(), p.again,
		fields.NewButton("Print all", func() { p.print(p.all(), toViewer) }))
	split := container.NewHSplit(
		container.NewBorder(container.NewVBox(head, p.said), nil, nil, nil, p.gallery.grid), p.side.content)
	split.SetOffset(0.61)
	p.whole = split
	p.empty = fields.Empty("No floor to print yet",
		"A sheet shows a floor: the rehearsal room with its marks, lists and tape. Describe the room first.",
		"Go to the floors", func() { p.desk.Go(desk.Floors, desk.Selection{}) })
	p.content = container.NewStack(p.whole)
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Paper }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.content }

// Show sets the place from the view. The pages are set one after the other off
// the UI goroutine; what has not changed keeps its picture.
func (p *place) Show(v *desk.View) {
	p.view = v
	page := p.whole
	if len(v.P.Floors) == 0 {
		page = p.empty
	}
	if p.content.Objects[0] != page {
		p.content.Objects = []fyne.CanvasObject{page}
		p.content.Refresh()
	}
	p.callOff()
	if page == p.empty {
		return
	}
	if p.choice.size.Width == 0 {
		p.choice.size = sizeOf(v.P)
	}
	p.size.Set(p.choice.size.Name)
	p.scale.SetOptions(scaleNames(v.P.Unit())...)
	p.said.SetText(summary(p.cards))
	p.gallery.show(p.cards, p.chosen)
	p.side.show(p.card(), p.choice.size)
	p.prepareFrom(0, jobOf(v, p.choice, p.now()))
}

// prepareFrom brings the cards up to date, the chosen one first.
func (p *place) prepareFrom(turn int, job sheets.Job) {
	if turn >= len(p.cards) {
		p.said.SetText(summary(p.cards))
		if len(p.stale()) > 0 {
			p.again.Enable()
		} else {
			p.again.Disable()
		}
		return
	}
	i := (p.chosen + turn) % len(p.cards)
	old, density := *p.cards[i], p.density()
	var made card
	p.callOff = p.quietly(
		func(ctx context.Context) { made = prepare(ctx, old, job, density) },
		func() {
			*p.cards[i] = made
			p.gallery.grid.RefreshItem(i)
			if i == p.chosen {
				p.side.show(p.card(), p.choice.size)
			}
			p.prepareFrom(turn+1, job)
		},
	)
}

// card is the chosen one.
func (p *place) card() *card { return p.cards[p.chosen] }

// choose looks at another sheet.
func (p *place) choose(i int) {
	if i >= 0 && i < len(p.cards) {
		p.chosen = i
		p.side.told.Hide()
		p.side.show(p.card(), p.choice.size)
	}
}

// density is how many device pixels there are to one of the toolkit's.
func (p *place) density() float64 { return float64(p.desk.Window().Canvas().Scale()) }

func (p *place) one() []sheets.Sheet { return []sheets.Sheet{p.card().sheet} }

func (p *place) all() []sheets.Sheet { return sheets.All() }

// stale returns the sheets whose printing does not hold any more.
func (p *place) stale() []sheets.Sheet {
	var out []sheets.Sheet
	for _, c := range p.cards {
		if c.record.standing == outOfDate {
			out = append(out, c.sheet)
		}
	}
	return out
}
