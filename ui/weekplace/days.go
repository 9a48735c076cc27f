package weekplace

import (
	"fmt"

	"fyne.io/fyne/v2/theme"

	"groundrow/ui/desk"
	"groundrow/ui/poster"
)

// week draws one row of day columns.
func (s *sketch) week(y, height float32, w week) {
	if w.bare != "" {
		s.Text(s.pad, y+0.2*s.unit, s.Width()-2*s.pad, w.bare, s.style(1).In(quiet))
		return
	}
	gap := 0.5 * s.unit
	columns := len(w.days)
	if len(s.days) > 1 {
		columns = 7 // the same days stand below each other
	}
	wide := (s.Width() - 2*s.pad + gap) / float32(max(columns, 5))
	for i, d := range w.days {
		s.day(s.pad+float32(i)*wide, y, wide-gap, height, d)
	}
}

// day draws one column: its head, who is called, and what is due.
func (s *sketch) day(x, y, width, height float32, d dayColumn) {
	u := s.unit
	s.Ground(x, y, width, height, sheet)
	words := s.style(1.08).InBold()
	switch {
	case d.rehearsal != "":
		s.Ground(x, y, width, (dayHead-0.3)*u, accent)
		words.Colour = theme.ColorNameForegroundOnPrimary
	case d.today:
		s.Ground(x, y, width, (dayHead-0.3)*u, theme.ColorNameSelection)
	case d.past:
		words.Colour = quiet
	}
	if d.today {
		s.Frame(x, y, width, height, 2, accent)
	}
	inner := 0.6 * u
	name := d.weekday + " " + d.date
	if d.today {
		if words.Measure(name+"  today") > width-2*inner {
			name = d.weekday
		}
		s.Text(x+inner, y+0.3*u, width-2*inner, "today", words.Right())
	}
	s.Text(x+inner, y+0.3*u, width-2*inner, name, words)
	s.dayBody(x+inner, y+dayHead*u, width-2*inner, y+height-0.3*u, d)
}

// dayBody writes what fits and counts what does not.
func (s *sketch) dayBody(x, y, width, bottom float32, d dayColumn) {
	u := s.unit
	if d.rehearsal != "" {
		s.Text(x, y, width, "First rehearsal", s.style(1.05).InBold())
		s.Text(x, y+dateLine*u, width, d.rehearsal, s.style(1.05))
		y += 2 * dateLine * u
	}
	room := bottom - float32(min(2, len(d.deadlines)))*dateLine*u
	for i, c := range d.calls {
		left := len(d.calls) - i
		if y+callLine*u > room || left > 1 && y+(callLine+dateLine)*u > room {
			s.more(x, y, width, fmt.Sprintf("and %d more called", left), desk.Crew)
			y += dateLine * u
			break
		}
		s.call(x, y, width, c, d.past)
		y += callLine * u
	}
	for i, l := range d.deadlines {
		left := len(d.deadlines) - i
		if y+dateLine*u > bottom || left > 1 && y+2*dateLine*u > bottom {
			s.more(x, y, width, fmt.Sprintf("and %d more", left), l.goes.place)
			return
		}
		most := 1
		if y+float32(left+1)*dateLine*u <= bottom {
			most = 2
		}
		y += s.deadline(x, y, width, most, l)
	}
	if d.bare() {
		s.Text(x, y, width, "nobody called", s.style(0.95).In(quiet))
	}
}

// call is a person's name and times over a bar along the hours of the room.
func (s *sketch) call(x, y, width float32, c callBar, past bool) {
	u, st := s.unit, s.style(0.95)
	bar := accent
	if past {
		st.Colour, bar = quiet, quiet
	}
	times := s.style(0.92)
	times.Colour = st.Colour
	wide := times.Measure(c.times)
	s.Text(x, y, width-wide-0.4*u, c.name, st)
	s.Text(x, y, width, c.times, times.Right())
	at := func(hour float64) float32 {
		part := (hour - s.page.opens) / (s.page.closes - s.page.opens)
		return x + width*float32(max(0, min(1, part)))
	}
	level := y + 1.32*u
	s.Bar(x, level+1, width, 1, rule)
	s.Bar(at(c.start), level, max(2, at(c.end)-at(c.start)), 3, bar)
	s.Zone(x-2, y-1, width+4, 1.6*u, c.name+", "+c.times, func() { s.to(target{place: desk.Crew}) })
}

// more leads to what there is no room for.
func (s *sketch) more(x, y, width float32, words string, place desk.Name) {
	u := s.unit
	s.Text(x+1.3*u, y, width-1.3*u, words, s.style(0.95).In(accent))
	s.Zone(x-2, y-1, width+4, dateLine*u, words, func() { s.to(target{place: place}) })
}

// deadline is a shape and words, over at most so many lines, that lead to what is due; it returns its height.
func (s *sketch) deadline(x, y, width float32, most int, l deadline) float32 {
	u, st := s.unit, s.style(0.95)
	sign, ink := poster.Diamond, theme.ColorNameWarning
	words := l.what
	switch {
	case l.done:
		sign, ink = poster.Tick, theme.ColorNameSuccess
		st.Colour = quiet
	case l.late:
		sign, ink = poster.Triangle, theme.ColorNameError
		words = "Late: " + l.what
	}
	s.Shape(sign, x+0.45*u, y+st.Line()/2, 0.7*u, ink)
	lines := s.Para(x+1.3*u, y, width-1.3*u, most, words, st)
	h := lines + dateLine*u - st.Line()
	s.Zone(x-2, y-1, width+4, h, words, func() { s.to(l.goes) })
	return h
}

// today lists who does what today.
func (s *sketch) today(x, y float32) {
	u := s.unit
	s.Text(x, y, s.side, s.page.today, s.style(1.12).InBold())
	y += 2 * u
	if len(s.page.people) == 0 {
		s.Para(x, y, s.side, 3, "Nobody is in the team yet. Add the people of prep week under Crew.", s.style(1).In(quiet))
		s.link(x, y+3*dateLine*u, "Add people", target{place: desk.Crew})
		return
	}
	for _, who := range s.page.people {
		y += s.person(x, y, who)
	}
}

func (s *sketch) person(x, y float32, who personLine) float32 {
	u := s.unit
	name, times := s.style(1.02).InBold(), s.style(1)
	if !who.called {
		times.Colour = quiet
	}
	wide := times.Measure(who.times)
	s.Text(x, y, s.side-wide-0.6*u, who.name, name)
	s.Text(x, y, s.side, who.times, times.Right())
	h := s.people
	lines := who.tasks
	if len(lines) == 0 {
		lines = []string{who.role}
	}
	for _, task := range lines {
		s.Text(x, y+h-0.15*u, s.side, task, s.style(0.95).In(quiet))
		h += s.people * 0.88
	}
	return h + 0.2*u
}
