package sheets

import (
	"fmt"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// head words the common head and foot of a sheet.
func (j Job) head(s Sheet) head {
	p := j.production()
	h := head{
		Sheet:      s.Name,
		Production: or(p.Settings.Title, "Production without a title"),
		Revision:   revision(p.Plan),
		Ask:        or(p.Settings.Contact, "the production stage manager"),
	}
	if p.Settings.Company != "" {
		h.Production += " · " + p.Settings.Company
	}
	if s.PerScene {
		h.Scene = p.Plan.SceneName(j.Scene)
	}
	if !s.PerFloor {
		return h
	}
	h.Audience = true
	h.Floor = "floor not chosen"
	side := floor.Centred
	if f := j.floor(); f != nil {
		h.Floor = or(f.Name, "floor without a name")
		if f.Side != "" {
			side = f.Side
		}
	}
	h.Datum = datumWords(p.Plan.Baseline, j.floor())
	h.Reading = fmt.Sprintf("Read the tape measure at the %s. Figures are rounded to %s. Tape lies %s.",
		strings.TrimPrefix(or(p.Settings.ReadEdge, "same edge throughout"), "the "), figuresOf(p).step(), side)
	return h
}

func revision(p plan.Plan) string {
	if p.Title == "" && p.Revision == "" {
		return "no ground plan yet"
	}
	return strings.TrimSpace(or(p.Title, "Ground plan") + ", revision " + or(p.Revision, "not stated"))
}

// datumWords says from where up and over are read.
func datumWords(b plan.Baseline, f *floor.Floor) string {
	if f != nil && f.OwnDatum {
		return "Datum: this floor's own centre line and baseline, as drawn on its floor plan."
	}
	return fmt.Sprintf("Datum: up is read from the %s along the centre line, then over from the centre line. SL and SR as an actor facing the audience.",
		or(string(b), "baseline"))
}

// or returns s, or other when s is empty.
func or(s, other string) string {
	if strings.TrimSpace(s) == "" {
		return other
	}
	return s
}

// headsAndFeet goes back over the finished pages, when their number is known.
func (p *press) headsAndFeet(h head, job Job) {
	printed := job.Printed.Format("Mon 2 Jan 2006, 15:04")
	if job.By != "" {
		printed += " by " + job.By
	}
	n := p.pdf.PageCount()
	for i := 1; i <= n; i++ {
		p.pdf.SetPage(i)
		// The library states font and colour only when they change, and takes the
		// last page's for this one's.
		p.pdf.SetFont(family, "", 1)
		p.pdf.SetFillColor(0, 0, 0)
		p.pdf.SetTextColor(0, 0, 0)
		p.head(h, printed, fmt.Sprintf("page %d of %d", i, n))
		p.foot(h)
	}
}

// head draws what the sheet is at the left, where it belongs and when it was
// printed under it, and the audience side at the right.
func (p *press) head(h head, printed, page string) {
	top := inset{margin, margin, p.size.Width - 2*margin, headHeight - 4}
	if h.Audience {
		const w = 26
		p.compass(inset{top.right() - w, top.y, w, top.h - 0.5})
		top.w -= w + 4
	}
	pageType := strongType
	pw := pageType.width(page)
	p.textIn(inset{top.x, top.y, top.w - pw - 4, 0}, top.y+titleType.cap(), h.Sheet, titleType, left)
	p.textIn(top, top.y+titleType.cap(), page, pageType, right)

	where := h.Production
	for _, part := range []string{h.Floor, h.Scene} {
		if part != "" {
			where += " · " + part
		}
	}
	p.textIn(top, top.y+11.5, where, strongType, left)
	stamp := smallType.width(clean(printed))
	stamp = min(stamp, top.w/2)
	p.textIn(inset{top.x, 0, top.w - stamp - 4, 0}, top.y+16.5, "Plan: "+h.Revision, smallType, left)
	p.textIn(inset{top.right() - stamp, 0, stamp, 0}, top.y+16.5, printed, smallType, right)
	p.rule(margin, margin+headHeight-3.5, p.size.Width-margin, margin+headHeight-3.5, 0.5)
}

// compass draws which way the audience is: a stage seen from above, as on every
// plan here.
func (p *press) compass(r inset) {
	small := type_{bold: true, size: 7}
	stage := inset{r.x + 5, r.y + 3.4, r.w - 10, r.h - 10.5}
	p.box(stage, 0.3)
	p.textIn(inset{r.x, 0, r.w, 0}, stage.y-0.9, "upstage", type_{size: 7}, middle)
	p.textIn(inset{r.x, 0, 4.4, 0}, stage.y+stage.h/2+0.9, "SR", small, middle)
	p.textIn(inset{stage.right() + 0.6, 0, 4.4, 0}, stage.y+stage.h/2+0.9, "SL", small, middle)
	mid := stage.x + stage.w/2
	p.pdf.SetDashPattern([]float64{1.6, 0.6, 0.4, 0.6}, 0)
	p.pdf.SetLineWidth(0.2)
	p.pdf.Line(mid, stage.y, mid, stage.bottom())
	p.fill(inset{r.x, r.bottom() - 5, r.w, 4.6}, 0)
	p.pdf.SetTextColor(255, 255, 255)
	p.textIn(inset{r.x, 0, r.w, 0}, r.bottom()-1.8, "AUDIENCE", type_{bold: true, size: 8}, middle)
	p.pdf.SetTextColor(0, 0, 0)
}

// foot draws datum, reading and whom to ask.
func (p *press) foot(h head) {
	w := p.size.Width - 2*margin
	y := p.size.Height - margin - footHeight + 2.5
	p.rule(margin, y, margin+w, y, 0.3)
	line := smallType.line()
	for i, s := range []string{h.Datum, h.Reading, "Ask: " + h.Ask} {
		p.textIn(inset{margin, 0, w, 0}, y+line*(float64(i)+0.9), s, smallType, left)
	}
}
