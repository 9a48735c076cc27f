package sheets

import (
	"slices"

	"groundrow/prep"
)

// tabs is a label for every mark, to be cut out or copied onto tape.
func tabs(j Job) content {
	f := figuresOf(j.production())
	var grid tabGrid
	sorted := slices.Clone(j.work().Marks)
	slices.SortStableFunc(sorted, func(a, b prep.MeasuredMark) int { return compareLabels(a.Label, b.Label) })
	for _, m := range sorted {
		t := tab{m.Label, f.upWords(m.Up()), f.overWords(m.Over())}
		if m.Cut {
			t.Over += "  // cut short" // nobody may take it for the end of the wall
		}
		grid.Tabs = append(grid.Tabs, t)
	}
	if len(grid.Tabs) == 0 {
		return content{blocks: []block{paragraph{Text: noMarks}}}
	}
	return content{blocks: []block{
		paragraph{Text: prep.Counted(len(grid.Tabs), "tab") + ". Cut along the broken lines, or copy each label onto a piece of tape. The tip of the arrow is the mark."},
		grid,
	}}
}

// tab is one label to cut.
type tab struct{ Label, Up, Over string }

// tabGrid is labels with cutting lines between them.
type tabGrid struct{ Tabs []tab }

// tabHeight and tabWidth are about two hands of one inch tape each, in
// millimetres; the width is stretched so that a whole number fills the page.
const (
	tabHeight = 25.4
	tabWidth  = 46.0
)

func (g tabGrid) set(p *press) {
	columns := max(1, int(p.body.w/tabWidth))
	w := p.body.w / float64(columns)
	for i := 0; i < len(g.Tabs); i += columns {
		p.need(tabHeight)
		if i == 0 || p.y == p.body.y {
			p.cut(p.body.x, p.y, p.body.right(), p.y)
		}
		line := g.Tabs[i:min(i+columns, len(g.Tabs))]
		for k, t := range line {
			p.tab(t, inset{p.body.x + float64(k)*w, p.y, w, tabHeight})
		}
		for k := range len(line) + 1 {
			x := p.body.x + float64(k)*w
			p.cut(x, p.y, x, p.y+tabHeight)
		}
		p.y += tabHeight
		p.cut(p.body.x, p.y, p.body.x+float64(len(line))*w, p.y)
	}
}

// cut draws a line to cut along.
func (p *press) cut(x1, y1, x2, y2 float64) {
	p.take(cutPen)
	p.pdf.Line(x1, y1, x2, y2)
}

// tab draws one label: large letters, small figures, and an arrow whose tip
// at the edge is laid on the mark.
func (p *press) tab(t tab, r inset) {
	mid := r.x + r.w/2
	p.pdf.SetFillColor(0, 0, 0)
	p.pdf.MoveTo(mid, r.y+0.4)
	p.pdf.LineTo(mid+2.2, r.y+3.6)
	p.pdf.LineTo(mid-2.2, r.y+3.6)
	p.pdf.ClosePath()
	p.pdf.DrawPath("F")
	in := inset{r.x + 2, r.y, r.w - 4, r.h}
	p.textIn(in, r.y+14.2, t.Label, type_{bold: true, size: 38}, middle)
	p.textIn(in, r.y+19.4, t.Up, type_{size: 9}, middle)
	p.textIn(in, r.y+23.2, t.Over, type_{size: 9}, middle)
}
