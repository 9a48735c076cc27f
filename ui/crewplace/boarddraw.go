package crewplace

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"groundrow/ui/poster"
)

// Sizes of the board, in the toolkit's units.
const (
	nameWide  = 172
	headHigh  = 40
	laneLeast = 40
	laneMost  = 120
)

var (
	small  = poster.Style{Size: 12}
	quiet  = poster.Style{Size: 12, Colour: theme.ColorNamePlaceHolder}
	strong = poster.Style{Size: 13, Bold: true}
)

// boardSketch is one drawing of the board under way.
type boardSketch struct {
	*poster.Pen
	b        board
	selected string
	pick     func(task string)
	steps    []step // of an empty board
	lane     float32
}

func (s *boardSketch) draw() {
	if len(s.b.days) == 0 || len(s.b.lanes) == 0 {
		s.nothing()
		return
	}
	s.lane = min(laneMost, max(laneLeast, (s.Height()-headHigh-2)/float32(len(s.b.lanes))))
	for i := range s.b.days {
		s.day(i)
	}
	y := float32(headHigh)
	for i, l := range s.b.lanes {
		if i > 0 {
			s.Line(0, y, s.Width(), y, 1, theme.ColorNameSeparator)
		}
		s.name(y, l)
		for _, bar := range l.bars {
			s.bar(y, l, bar)
		}
		y += s.lane
	}
	s.Line(0, y, s.Width(), y, 1, theme.ColorNameSeparator)
}

// nothing says what belongs on an empty board and offers the first step.
func (s *boardSketch) nothing() {
	text := "No work is planned. List who works in prep week and what has to be done: then this shows who does what when."
	y := 24 + s.Para(24, 24, min(460, s.Width()-48), 4, text, small)
	for _, step := range s.steps {
		y += 12
		link := small.In(theme.ColorNamePrimary)
		wide := s.Text(24, y, s.Width(), step.words, link)
		s.Shape(poster.Chevron, 24+wide+10, y+link.Line()/2, 10, theme.ColorNamePrimary)
		s.Zone(22, y-2, wide+20, link.Line()+4, step.words, step.do)
		y += link.Line()
	}
}

// step is something that an empty board offers to do.
type step struct {
	words string
	do    func()
}

// boardNeed is the least height of a board with so many lanes.
func boardNeed(lanes int) float32 { return headHigh + 2 + laneLeast*float32(max(1, lanes)) }

func (s *boardSketch) column() float32 {
	return (s.Width() - nameWide) / float32(len(s.b.days))
}

// x is where a time of a day lies.
func (s *boardSketch) x(day int, t time.Time) float32 {
	d, wide := s.b.days[day], s.column()
	gap := float32(0)
	if len(s.b.days) > 1 {
		gap = 3
	}
	part := float32(t.Sub(d.from).Seconds() / d.to.Sub(d.from).Seconds())
	return nameWide + float32(day)*wide + gap + max(0, min(1, part))*(wide-2*gap)
}

// day draws the hours of one day: the room's closed hours and the breaks are shaded.
func (s *boardSketch) day(i int) {
	d := s.b.days[i]
	left, right := s.x(i, d.from), s.x(i, d.to)
	bottom := headHigh + s.lane*float32(len(s.b.lanes))
	s.Ground(left, headHigh, right-left, bottom-headHigh, theme.ColorNameHeaderBackground)
	for _, w := range d.work {
		s.Ground(s.x(i, w.Start), headHigh, s.x(i, w.End)-s.x(i, w.Start), bottom-headHigh, theme.ColorNameInputBackground)
	}
	title := d.title
	if d.today {
		title += " · today"
		s.Ground(left, 1, right-left, headHigh-3, theme.ColorNameSelection)
	}
	s.Text(left+4, 2, right-left-8, title, strong)
	s.hours(i)
}

// hours writes the clock along the top, as many hours as there is room for.
func (s *boardSketch) hours(i int) {
	d := s.b.days[i]
	perHour := s.column() / float32(d.to.Sub(d.from).Hours())
	every := 1
	for float32(every)*perHour < 42 && every < 8 {
		every *= 2
	}
	bottom := headHigh + s.lane*float32(len(s.b.lanes))
	first := d.from.Truncate(time.Hour)
	for t := first; t.Before(d.to); t = t.Add(time.Hour) {
		if t.Before(d.from) || (t.Hour()-first.Add(time.Hour).Hour())%every != 0 {
			continue
		}
		x := s.x(i, t)
		s.Rule(x, headHigh-5, 1, bottom-headHigh+5, theme.ColorNameSeparator)
		s.Text(x+2, 20, 40, t.Format("15:04"), poster.Style{Size: 11, Colour: theme.ColorNamePlaceHolder})
	}
}

func (s *boardSketch) name(y float32, l lane) {
	mid := y + s.lane/2
	s.Text(6, mid-strong.Line(), nameWide-12, l.name, strong)
	s.Text(6, mid, nameWide-12, l.note, quiet)
}

// bar draws a task on one day: a box for each stretch of work, its name, and under it how much there is of it and what
// is wrong.
func (s *boardSketch) bar(y float32, l lane, b bar) {
	h := (s.lane - 6) / float32(l.depth)
	top := y + 3 + float32(b.level)*h
	left, right := s.x(b.day, b.from), s.x(b.day, b.to)
	wide := max(4, right-left-1)
	edge := theme.ColorNamePrimary
	if b.trouble {
		edge = theme.ColorNameError
	}
	for _, w := range b.work {
		from := s.x(b.day, w.Start)
		s.Ground(from, top, max(4, s.x(b.day, w.End)-from-1), h-1, theme.ColorNameSelection)
	}
	thick := float32(1)
	if b.task == s.selected {
		thick = 3
	}
	s.Frame(left, top, wide, h-1, thick, edge)
	s.Bar(left, top, 3, h-1, edge)
	s.barWords(left, top, wide, h, b)
	hint := b.name + ": " + b.from.Format("15:04") + "–" + b.to.Format("15:04") + ", " + b.detail
	s.Zone(left, top, wide, h-1, hint, func() { s.pick(b.task) })
}

func (s *boardSketch) barWords(left, top, wide, h float32, b bar) {
	at, room := left+7, wide-10
	if sign, ink := signOf(b); sign != poster.NoSign && wide > 22 {
		s.Shape(sign, at+4, top+11, 10, ink)
		at, room = at+14, room-14
	}
	if h < 2*small.Line()+2 {
		s.Text(at, top+(h-small.Line())/2, room, b.name, small)
		return
	}
	s.Text(at, top+3, room, b.name, small.InBold())
	s.Text(left+7, top+3+small.Line(), wide-10, b.detail, small)
}

func signOf(b bar) (poster.Sign, fyne.ThemeColorName) {
	switch {
	case b.trouble:
		return poster.Triangle, theme.ColorNameError
	case b.pinned:
		return poster.Pin, theme.ColorNameForeground
	}
	return poster.NoSign, ""
}
