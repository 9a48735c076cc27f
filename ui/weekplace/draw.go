package weekplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/poster"
)

// Names of colours, short.
const (
	quiet  = theme.ColorNamePlaceHolder
	accent = theme.ColorNamePrimary
	rule   = theme.ColorNameSeparator
	sheet  = theme.ColorNameInputBackground
)

// sketch is one drawing of the page under way.
type sketch struct {
	*poster.Pen
	frames
	page *page
	to   func(target)
}

// draw fills the poster: the countdown and the dangers, the days, and the parts of the job beside today.
func (p *place) draw(pen *poster.Pen) {
	s := sketch{Pen: pen, frames: measured(&p.page, pen.Width()), page: &p.page, to: p.follow}
	s.spread(&p.page, pen.Height())
	y := s.pad
	s.countdown(s.pad, y)
	s.dangers(s.pad+s.left, y)
	y += s.top + s.pad
	for i, w := range weeks(p.page.days) {
		s.week(y, s.days[i], w)
		y += s.days[i] + 0.5*s.pad
	}
	y += 0.5 * s.pad
	s.Line(s.pad, y-0.5*s.pad, s.Width()-s.pad, y-0.5*s.pad, 1, rule)
	split := s.Width() - s.pad - s.side
	s.parts(s.pad, y, split-2*s.pad)
	s.Line(split-s.pad, y, split-s.pad, s.Height()-s.pad, 1, rule)
	s.today(split, y)
}

// countdown is the days left in large figures.
func (s *sketch) countdown(x, y float32) {
	s.Text(x, y, s.left-s.pad, s.page.title, s.style(1.05).InBold().In(quiet))
	big := s.style(4.4).InBold().In(accent)
	if !s.page.dated {
		big.Colour = theme.ColorNameWarning
	}
	wide := s.Text(x, y+1.5*s.unit, s.left, s.page.figure, big)
	x += wide + 0.9*s.unit
	room := s.left - wide - 2*s.unit
	y += 2.5 * s.unit
	head := s.style(1.45).InBold()
	y += s.Para(x, y, room, 2, s.page.headline, head)
	if s.page.when != "" {
		y += s.Para(x, y, room, 1, s.page.when, s.style(1.05))
	}
	s.link(x, y+0.15*s.unit, "Set the dates", target{place: desk.Week})
}

// link writes accented words with a chevron that lead somewhere.
func (s *sketch) link(x, y float32, words string, goes target) {
	st := s.style(1).In(accent)
	wide := s.Text(x, y, s.Width(), words, st)
	s.Shape(poster.Chevron, x+wide+0.7*s.unit, y+st.Line()/2, 0.75*s.unit, accent)
	s.Zone(x-2, y-1, wide+1.3*s.unit+2, st.Line()+2, words, func() { s.to(goes) })
}

// lineLink writes the words of a link against the right edge of a line that is a zone as a whole.
func (s *sketch) lineLink(right, middle float32, words string) {
	st := s.style(1).In(accent).Right()
	s.Text(right-14*s.unit, middle-st.Line()/2, 12.8*s.unit, words, st)
	s.Shape(poster.Chevron, right-0.6*s.unit, middle, 0.75*s.unit, accent)
}

// dangers are at most three lines, or the good news that there is none.
func (s *sketch) dangers(x, y float32) {
	width := s.Width() - s.pad - x
	title := "What endangers the first rehearsal"
	if len(s.page.dangers) == 0 {
		title = "Nothing endangers the first rehearsal"
		s.Shape(poster.Tick, x+0.5*s.unit, y+0.8*s.unit, 0.9*s.unit, theme.ColorNameSuccess)
		s.Text(x+1.6*s.unit, y, width, title, s.style(1.05).InBold())
		return
	}
	s.Text(x, y, width, title, s.style(1.05).InBold().In(quiet))
	y += 1.7 * s.unit
	h := 2.15 * s.unit
	for _, d := range s.page.dangers {
		s.Ground(x, y, width, h-3, sheet)
		s.Ground(x, y, 3, h-3, theme.ColorNameWarning)
		mid := y + (h-3)/2
		s.Shape(poster.Triangle, x+1.2*s.unit, mid, 0.95*s.unit, theme.ColorNameWarning)
		st := s.style(1.05)
		room := width - 2.4*s.unit - 0.8*s.unit - s.style(1).Measure(d.link) - 1.6*s.unit
		if st.Measure(d.text) > room {
			st = s.style(0.92)
		}
		lines := poster.Wrapped(d.text, room, st, 2)
		s.Para(x+2.2*s.unit, mid-float32(len(lines))*st.Line()/2, room, 2, d.text, st)
		s.lineLink(x+width-0.4*s.unit, mid, d.link)
		s.Zone(x, y, width, h-3, d.text+" "+d.link, func() { s.to(d.goes) })
		y += h
	}
}

// signs give every state of a part its shape and colour, the same as on the rail.
var signs = map[prep.State]struct {
	sign poster.Sign
	ink  fyne.ThemeColorName
}{
	prep.Nothing:  {poster.Ring, theme.ColorNameForeground},
	prep.UnderWay: {poster.Disc, theme.ColorNameDisabled},
	prep.Ready:    {poster.Disc, theme.ColorNameSuccess},
	prep.NeedsYou: {poster.Square, theme.ColorNameWarning},
}

// parts are the lines of the job: shape, name, state, figure, sentence, and where it leads.
func (s *sketch) parts(x, y, width float32) {
	u := s.unit
	for i, part := range s.page.parts {
		mid := y + s.part/2
		if i > 0 {
			s.Line(x, y, x+width, y, 1, rule)
		}
		s.Shape(signs[part.state].sign, x+0.7*u, mid, 0.85*u, signs[part.state].ink)
		s.middle(x+1.7*u, mid, 7*u, string(part.place), s.style(1.12).InBold())
		s.middle(x+9*u, mid, 6.2*u, string(part.state), s.style(1))
		s.middle(x+14.8*u, mid, 8.4*u, part.figure, s.style(1.12).InBold().Right())
		link := s.style(1).Measure(part.link) + 2.2*u
		at := x + 24.4*u
		room := width - 24.4*u - link
		st := s.style(1)
		lines := poster.Wrapped(part.sentence, room, st, 2)
		s.Para(at, mid-float32(len(lines))*st.Line()/2, room, 2, part.sentence, st)
		s.lineLink(x+width, mid, part.link)
		s.Zone(x, y+1, width, s.part-2, part.sentence, func() { s.to(part.goes) })
		y += s.part
	}
}

// middle writes one line about a height.
func (s *sketch) middle(x, mid, width float32, words string, st poster.Style) {
	s.Text(x, mid-st.Line()/2, width, words, st)
}
