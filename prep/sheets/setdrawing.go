package sheets

import (
	"fmt"

	"groundrow/tapeout/length"
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

// set draws the floor on a page of its own. When a scale was asked for at which
// it does not fit one, it goes over several; when none was and there are labels
// without room, parts at a larger scale follow, so that every label is on paper.
func (d drawing) set(p *press) {
	box, ok := d.bounds()
	if !ok {
		paragraph{Text: d.Empty}.set(p)
		return
	}
	pageBreak{}.set(p)
	plan := d.divide(p.body)
	if p.scale.Valid() {
		d.parts(p, plan, cutUp(box, plan.frame, p.scale))
		return
	}
	scale := fitting(box, plan.frame.w, plan.frame.h, d.Unit)
	whole := cutUp(box, plan.frame, scale)
	if larger := d.roomier(box, plan.frame, scale); len(larger.views) > 0 {
		whole.advice = "They are on the parts that follow."
		d.parts(p, plan, whole)
		p.newPage()
		d.parts(p, plan, larger)
		return
	}
	d.parts(p, plan, whole)
}

// roomier returns the parts at the first larger usual scale at which every label
// has room, or at the largest that makes a bearable number of parts; none when
// all have room already.
func (d drawing) roomier(box plane.Box, frame inset, scale length.Scale) parts {
	hidden := func(ps parts) (n int) {
		for _, v := range ps.views {
			n += d.hidden(v)
		}
		return n
	}
	if hidden(cutUp(box, frame, scale)) == 0 {
		return parts{}
	}
	var best parts
	for _, s := range length.UsualScales(d.Unit) {
		if s >= scale || s < largestScale {
			continue
		}
		ps := cutUp(box, frame, s)
		if len(ps.views) > bearableParts && len(best.views) > 0 {
			break
		}
		best = ps
		if hidden(ps) == 0 {
			break
		}
	}
	return best
}

// bearableParts is how many pages of parts may follow a plan unasked.
const bearableParts = 9

// parts draws views of the floor, each on a page of its own.
func (d drawing) parts(p *press, plan sheetPlan, ps parts) {
	for i, v := range ps.views {
		if i > 0 {
			p.newPage()
		}
		d.floor(p, v, ps.advice)
		p.audience(plan.audience)
		d.key(p, plan, v)
		if len(ps.views) > 1 {
			p.matchMarks(v, ps.note(i))
		}
	}
	p.y = p.body.bottom()
}

// note says which part of the plan a page is.
func (ps parts) note(i int) string {
	return fmt.Sprintf("Part %d of %d: row %d of %d from downstage, %d of %d from stage right. Lay cross on cross.",
		i+1, len(ps.views), i/ps.across+1, ps.up, i%ps.across+1, ps.across)
}

// floor draws everything that lies on the floor.
func (d drawing) floor(p *press, v view, advice string) {
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
	d.spots(p, v, advice)
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
