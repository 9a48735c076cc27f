package sheets

import (
	"fmt"

	"groundrow/tapeout/plane"
)

// The bands of a drawing's page, in millimetres.
const (
	audienceBand = 7.0
	keyLine      = 4.6
	keySample    = 15.0
	barRoom      = 96.0 // width kept for the scale bar and its words
	barHigh      = 18.0
)

// sheetPlan is how a drawing's page is divided.
type sheetPlan struct {
	frame, audience, bar, key inset
	columns                   int // of the key
}

// divide shares the body of a page out between the drawing, its scale bar and
// its key; the key stands beside the bar or under it, where it takes less height.
func (d drawing) divide(body inset) sheetPlan {
	wide := 0.0
	for _, e := range d.Entries {
		wide = max(wide, smallType.width(clean(e.Text)))
	}
	keyIn := func(w float64) (columns int, h float64) {
		columns = max(1, int(w/(keySample+min(wide, 70)+5)))
		rows := (len(d.Entries) + columns - 1) / columns
		return columns, float64(rows)*keyLine + 2
	}
	besideColumns, beside := keyIn(body.w - barRoom)
	underColumns, under := keyIn(body.w)
	h, columns := max(barHigh, beside), besideColumns
	key := inset{barRoom, 0, body.w - barRoom, h}
	if barHigh+under < h {
		h, columns = barHigh+under, underColumns
		key = inset{0, barHigh, body.w, under}
	}
	h = min(h, body.h/2)
	top := body.bottom() - h
	return sheetPlan{
		frame:    inset{body.x, body.y, body.w, top - body.y - audienceBand - 1},
		audience: inset{body.x, top - audienceBand - 1, body.w, audienceBand},
		bar:      inset{body.x, top, barRoom, barHigh},
		key:      inset{body.x + key.x, top + key.y, key.w, key.h},
		columns:  columns,
	}
}

// lies tells whether the drawing is larger on a page that lies on its long side.
func (d drawing) lies(size PageSize) bool {
	box, ok := d.bounds()
	if !ok {
		return false
	}
	upright, lying := d.divide(size.body()).frame, d.divide(size.turned().body()).frame
	a, b := fitting(box, upright.w, upright.h, d.Unit), fitting(box, lying.w, lying.h, d.Unit)
	return b < a || b == a && box.Width() >= box.Height()
}

// set draws the floor on a page of its own, or on several when a scale was asked
// for at which it does not fit one.
func (d drawing) set(p *press) {
	box, ok := d.bounds()
	if !ok {
		paragraph{Text: d.Empty}.set(p)
		return
	}
	pageBreak{}.set(p)
	plan := d.divide(p.body)
	scale := fitting(box, plan.frame.w, plan.frame.h, d.Unit)
	if p.scale.Valid() {
		scale = p.scale
	}
	views, across, up := tiles(box, plan.frame, scale)
	for i, v := range views {
		if i > 0 {
			p.newPage()
		}
		d.floor(p, v)
		p.audience(plan.audience)
		d.key(p, plan, v)
		if len(views) > 1 {
			p.matchMarks(v, fmt.Sprintf("Part %d of %d: row %d of %d from downstage, %d of %d from stage right. Lay cross on cross.",
				i+1, len(views), i/across+1, up, i%across+1, across))
		}
	}
	p.y = p.body.bottom()
}

// floor draws everything that lies on the floor.
func (d drawing) floor(p *press, v view) {
	p.pdf.ClipRect(v.frame.x, v.frame.y, v.frame.w, v.frame.h, false)
	for _, a := range d.Areas {
		p.hatch(a, v)
	}
	if edges := d.Walls.Edges(); len(edges) > 0 {
		p.wall(edges, v)
	}
	p.datum(v)
	for _, s := range d.Strokes {
		p.take(s.Pen)
		p.trace(s.Edges, v)
	}
	p.pdf.ClipEnd()
	d.spots(p, v)
	p.box(v.frame, 0.2)
}

// datum draws the centre line, the baseline and where they meet.
func (p *press) datum(v view) {
	o := plane.Point{}
	p.take(centrePen)
	p.pdf.Line(v.x(o), v.frame.y, v.x(o), v.frame.bottom())
	p.take(baselinePen)
	p.pdf.Line(v.frame.x, v.y(o), v.frame.right(), v.y(o))
	p.take(pen{0.35, "solid"})
	p.pdf.Circle(v.x(o), v.y(o), 1.8, "D")
}

// audience draws the band that says which way the audience is.
func (p *press) audience(r inset) {
	p.fill(inset{r.x, r.y + 0.8, r.w, r.h - 1.6}, 0)
	p.pdf.SetTextColor(255, 255, 255)
	base := r.y + r.h/2 + 1.3
	p.textIn(inset{r.x + 3, 0, r.w / 3, 0}, base, "◄ stage right", strongType, left)
	p.textIn(inset{r.x + r.w/3, 0, r.w / 3, 0}, base, "▼  A U D I E N C E  ▼", strongType, middle)
	p.textIn(inset{r.x + r.w*2/3 - 3, 0, r.w / 3, 0}, base, "stage left ►", strongType, right)
	p.pdf.SetTextColor(0, 0, 0)
}

// matchMarks draws the crosses by which neighbouring parts are laid over each other,
// in the middle of what both of them show.
func (p *press) matchMarks(v view, note string) {
	p.take(pen{0.25, "solid"})
	const in, arm = lapping / 2, 4.0
	for _, x := range []float64{v.frame.x + in, v.frame.right() - in} {
		for _, y := range []float64{v.frame.y + in, v.frame.bottom() - in} {
			p.pdf.Line(x-arm, y, x+arm, y)
			p.pdf.Line(x, y-arm, x, y+arm)
		}
	}
	w := smallType.width(clean(note)) + 4
	r := inset{v.frame.x + (v.frame.w-w)/2, v.frame.y, w, 5}
	p.fill(r, 255)
	p.textIn(r, r.y+3.6, note, smallType, middle)
}
