package sheets

// set draws the table over as many pages as it needs. A row is never split
// unless it is higher than a page. The title of a group is said again on every page
// that goes on with it.
func (t table) set(p *press) {
	if len(t.Rows) == 0 {
		if t.Empty != "" {
			paragraph{Text: t.Empty}.set(p)
		}
		return
	}
	s := setting{p: p, t: t, widths: t.widths(p.body.w)}
	if t.Whole {
		p.need(min(s.wholeHeight(), p.body.h))
	}
	group := ""
	for i, r := range t.Rows {
		need := s.height(r)
		for j := i; t.Rows[j].Span && j+1 < len(t.Rows); j++ {
			need += s.height(t.Rows[j+1])
		}
		if i == 0 {
			p.need(s.titleHeight() + need)
			s.titles()
		} else if p.left() < need && !s.fresh {
			p.newPage()
			s.titles()
			if group != "" && !r.Span && !r.Total {
				s.row(span(group + ", continued"))
			}
		}
		if r.Span {
			group = r.cell(0)
		}
		s.row(r)
	}
	p.y += 3
}

// setting is a table on its way to the page.
type setting struct {
	p      *press
	t      table
	widths []float64
	fresh  bool // nothing but the titles stands on the page yet
}

// lines returns the lines of cell i of the row.
func (s *setting) lines(r row, i int) []string {
	if s.t.Columns[i].Kind != words {
		return nil
	}
	return wrap(r.cell(i), s.t.Columns[i].type_(r), s.widths[i]-2*cellPad)
}

func (s *setting) height(r row) float64 {
	if r.Span {
		return float64(len(s.spanLines(r)))*spanType.line() + 2*rowPad + 1.5
	}
	h := bodyType.line()
	for i, c := range s.t.Columns {
		h = max(h, float64(len(s.lines(r, i)))*c.type_(r).line())
		if c.Kind == tick {
			h = max(h, boxSide)
		}
		if c.Kind == blank {
			h = max(h, c.High, 7)
		}
	}
	return h + 2*rowPad
}

func (s *setting) wholeHeight() float64 {
	h := s.titleHeight()
	for _, r := range s.t.Rows {
		h += s.height(r)
	}
	return h
}

var spanType = type_{bold: true, size: 11}

func (s *setting) spanLines(r row) []string {
	return firstLines(wrap(r.cell(0), spanType, s.p.body.w-2*cellPad), 3)
}

// firstLines returns no more than n lines, with an ellipsis where some are left off.
func firstLines(lines []string, n int) []string {
	if len(lines) <= n {
		return lines
	}
	return append(lines[:n-1:n-1], lines[n-1]+" …")
}

func (s *setting) titleHeight() float64 {
	h := 0.0
	for i, c := range s.t.Columns {
		h = max(h, float64(len(wrap(c.Title, strongType, s.widths[i]-2*cellPad)))*strongType.line())
	}
	return h + 2*rowPad
}

// titles draws the titles of the columns on a grey band.
func (s *setting) titles() {
	p, h := s.p, s.titleHeight()
	p.fill(inset{p.body.x, p.y, p.body.w, h}, 225)
	x := p.body.x
	for i, c := range s.t.Columns {
		a := c.Align
		if c.Kind == tick {
			a = middle
		}
		s.cellText(wrap(c.Title, strongType, s.widths[i]-2*cellPad), strongType, inset{x, p.y, s.widths[i], h}, a)
		x += s.widths[i]
	}
	p.y += h
	p.rule(p.body.x, p.y, p.body.x+p.body.w, p.y, 0.4)
	s.fresh = true
}

func (s *setting) row(r row) {
	p, h := s.p, s.height(r)
	if h > p.left() && !r.Span {
		s.tall(r)
		return
	}
	s.fresh = false
	if r.Span {
		p.y += 1.5
		s.cellText(s.spanLines(r), spanType, inset{p.body.x, p.y, p.body.w, h - 1.5}, left)
		p.y += h - 1.5
		p.rule(p.body.x, p.y, p.body.x+p.body.w, p.y, 0.4)
		return
	}
	if r.Total {
		p.rule(p.body.x, p.y, p.body.x+p.body.w, p.y, 0.5)
	}
	x := p.body.x
	for i := range s.t.Columns {
		s.cell(r, i, inset{x, p.y, s.widths[i], h})
		x += s.widths[i]
	}
	p.y += h
	p.rule(p.body.x, p.y, p.body.x+p.body.w, p.y, 0.15)
}

func (s *setting) cell(r row, i int, at inset) {
	c := s.t.Columns[i]
	switch c.Kind {
	case tick:
		if r.cell(i) == noTick {
			return
		}
		s.p.tickBox(at.x+(at.w-boxSide)/2, at.y+(at.h-boxSide)/2, boxSide, r.cell(i) == ticked)
	case blank:
		if have := clean(r.cell(i)); have != "" {
			s.p.textIn(inset{at.x + cellPad, 0, at.w - 2*cellPad, 0}, at.bottom()-2.4, have, bodyType, c.Align)
		}
		s.p.rule(at.x+cellPad, at.bottom()-1.6, at.right()-cellPad, at.bottom()-1.6, 0.25)
	default:
		s.cellText(s.lines(r, i), c.type_(r), at, c.Align)
	}
}

// cellText draws lines in the middle of the cell's height.
func (s *setting) cellText(lines []string, t type_, at inset, a align) {
	y := at.y + (at.h-float64(len(lines))*t.line())/2
	for _, l := range lines {
		free := at.w - 2*cellPad - t.width(l)
		s.p.text(at.x+cellPad+a.offset(free), y+t.line()*0.78, l, t)
		y += t.line()
	}
}

// tall draws a row that is higher than a page: its cells run on from page to
// page, each as far as it goes.
func (s *setting) tall(r row) {
	p := s.p
	rest := make([][]string, len(s.t.Columns))
	for i := range rest {
		rest[i] = s.lines(r, i)
	}
	for {
		x, deepest, more := p.body.x, 0.0, false
		for i, c := range s.t.Columns {
			t := c.type_(r)
			n := min(max(int((p.left()-2*rowPad)/t.line()), 1), len(rest[i]))
			h := float64(n) * t.line()
			s.cellText(rest[i][:n], t, inset{x, p.y + rowPad, s.widths[i], h}, c.Align)
			rest[i] = rest[i][n:]
			deepest, more = max(deepest, h), more || len(rest[i]) > 0
			x += s.widths[i]
		}
		p.y += deepest + 2*rowPad
		if !more {
			break
		}
		p.newPage()
		s.titles()
	}
	s.fresh = false
	p.rule(p.body.x, p.y, p.body.x+p.body.w, p.y, 0.15)
}
