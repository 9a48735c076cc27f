// Package weekplace is the picture that is pinned to the wall: how long there is left, what every part of the job has
// come to, what endangers the first rehearsal, and who does what today.
package weekplace

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/ui/desk"
	"groundrow/ui/poster"
)

// place is the place Week.
type place struct {
	desk   *desk.Desk
	now    func() time.Time
	page   page
	poster *poster.Poster
	scroll *container.Scroll
}

var _ desk.Place = (*place)(nil)

// New builds the place.
func New(d *desk.Desk) desk.Place { return newPlace(d, time.Now) }

func newPlace(d *desk.Desk, now func() time.Time) *place {
	p := &place{desk: d, now: now}
	p.poster = poster.New(p.draw)
	p.poster.Need = func(width float32) float32 { return measured(&p.page, width).height }
	p.scroll = container.NewVScroll(p.poster)
	return p
}

// Name is the place's name on the rail.
func (p *place) Name() desk.Name { return desk.Week }

// Content is everything that the place shows.
func (p *place) Content() fyne.CanvasObject { return p.scroll }

// Show sets the place from the view.
func (p *place) Show(v *desk.View) {
	p.page = pageOf(v, p.now())
	p.poster.Refresh()
	p.scroll.Refresh()
}

// follow goes where a line leads. The dates are set here.
func (p *place) follow(t target) {
	if t.place == desk.Week {
		p.askDates()
		return
	}
	if v := p.desk.View(); v != nil && len(t.what.IDs) > 0 {
		if on, _, ok := desk.InRoom(v.P, t.what.IDs[0]); ok {
			p.desk.ChooseFloor(on)
		}
	}
	p.desk.Go(t.place, t.what)
}
