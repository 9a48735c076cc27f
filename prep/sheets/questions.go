package sheets

import (
	"context"
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// questions are what the director must decide about this floor, each with a picture
// of what it is about and a place for the answer, and what was answered so far.
func questions(j Job) content {
	p, w := j.production(), j.work()
	var list asking
	if w.Floor != nil {
		over := map[plan.ElementID][]plane.Edge{}
		for _, o := range w.Overhangs {
			over[o.Element] = o.Edges
		}
		room := drawFloor(j).picture()
		proposals, _ := prep.Propose(context.Background(), p, w.Floor) // its only error is that of a context
		for i, q := range prep.Questions(p, w, proposals) {
			a := asked{No: i + 1, About: q.About, Text: q.Text, Proposed: capitalise(q.Proposed)}
			if e := p.Plan.Element(q.Element); e != nil {
				a.Picture = room.about(w.Floor.EdgesOf(&p.Plan, e), over[e.ID])
			}
			list.Items = append(list.Items, a)
		}
	}
	if len(list.Items) == 0 {
		list.Empty = "There is nothing to ask about this floor: everything fits as drawn, or has been decided."
	}
	blocks := []block{list}
	if said := placingWords(p, w.Floor); said != "" {
		blocks = []block{paragraph{Text: said}, list}
	}
	if w.Floor != nil {
		if answers := p.AnswersOn(w.Floor.ID); len(answers) > 0 {
			blocks = append(blocks, heading{"Answered"}, answered(answers))
		}
	}
	return content{blocks: blocks}
}

// placingWords says what the plan, as it is set on the floor, keeps and loses; empty
// where nothing can be said.
func placingWords(p *prep.Production, f *floor.Floor) string {
	if f == nil {
		return ""
	}
	k, ok := prep.PlacementScore(p, f)
	if !ok {
		return ""
	}
	said := "As it is set here the plan " + prep.KeptWords(k) + "."
	if lost := prep.LostWords(p, k, 4); lost != "" {
		said += " It loses " + lost + "."
	}
	return said
}

// answered lists the answers on record, the latest first.
func answered(answers []prep.Answer) table {
	t := table{Columns: []column{
		{Title: "about", Type: strongType, Flex: true},
		{Title: "question", Flex: true},
		{Title: "answer", Flex: true},
		{Title: "who"},
		{Title: "when"},
	}}
	for _, a := range answers {
		t.Rows = append(t.Rows, cells(or(a.About, "the whole floor"), a.Question, a.Text, a.By, day(a.On)))
	}
	return t
}

// asking is a list of questions, each with its picture.
type asking struct {
	Items []asked
	Empty string
}

type asked struct {
	No                    int
	About, Text, Proposed string
	Picture               closeUp
}

// closeUp is a drawing of the part of a floor around something, which is drawn
// broad, and hollow where it lies outside the floor.
type closeUp struct {
	Room    drawing
	Edges   []plane.Edge
	Outside []plane.Edge
}

// about returns the close-up of edges in the drawing.
func (d drawing) about(edges, outside []plane.Edge) closeUp {
	thin := d
	thin.Names, thin.Strokes = nil, nil
	for _, s := range d.Strokes {
		thin.Strokes = append(thin.Strokes, stroke{s.Edges, pen{0.15, "solid"}})
	}
	for _, n := range d.Names {
		if n.Kind == naming && isAreaName(d, n) {
			thin.Names = append(thin.Names, n)
		}
	}
	return closeUp{thin, edges, outside}
}

// isAreaName tells whether a name is that of something in the room, which helps to
// find one's way on a close-up.
func isAreaName(d drawing, n spot) bool {
	for _, a := range d.Areas {
		if box, ok := a.Shape.Bounds(); ok && a.Name == n.Text && box.Centre() == n.At {
			return true
		}
	}
	return false
}

// records is the list for CSV.
func (a asking) records() [][]string {
	out := [][]string{{"no.", "about", "question", "what we propose", "answer", "who and when"}}
	for _, q := range a.Items {
		out = append(out, []string{fmt.Sprint(q.No), q.About, q.Text, q.Proposed, "", ""})
	}
	return out
}

// The measures of a question on the page, in millimetres.
const (
	pictureWide = 78.0
	pictureHigh = 50.0
	answerLine  = 9.0
)

func (a asking) set(p *press) {
	if len(a.Items) == 0 {
		paragraph{Text: a.Empty}.set(p)
		return
	}
	for _, q := range a.Items {
		q.set(p)
	}
}

// set puts a question on the page: its picture at the left, the words and the lines
// to answer on at the right.
func (q asked) set(p *press) {
	x := p.body.x
	if len(q.Picture.Edges) > 0 {
		x += pictureWide + 5
	}
	w := p.body.right() - x
	title := wrap(fmt.Sprintf("%d. %s", q.No, q.About), strongType, w)
	text := wrap(q.Text, bodyType, w)
	proposed := wrap("We propose: "+q.Proposed, bodyType, w)
	words := strongType.line()*float64(len(title)) + bodyType.line()*float64(len(text)+len(proposed)) + 3
	high := words + 3*answerLine
	if len(q.Picture.Edges) > 0 {
		high = max(high, pictureHigh)
	}
	p.need(min(high+6, p.body.h))
	top := p.y
	q.Picture.set(p, inset{p.body.x, top, pictureWide, pictureHigh})
	p.lines(title, strongType, x)
	p.lines(text, bodyType, x)
	p.y += 1.5
	p.lines(proposed, bodyType, x)
	p.y += 1.5
	for _, label := range []string{"answer", "", "who and when"} {
		p.need(answerLine)
		p.text(x, p.y+answerLine-1.5, label, smallType)
		from := x
		if label != "" {
			from += smallType.width(label) + 2
		}
		p.rule(from, p.y+answerLine-1, p.body.right(), p.y+answerLine-1, 0.2)
		p.y += answerLine
	}
	if p.y > top { // nothing has gone to the next page
		p.y = max(p.y, top+high)
	}
	p.y += 3
	p.rule(p.body.x, p.y, p.body.right(), p.y, 0.15)
	p.y += 3
}

// around is how much of the floor a close-up shows on every side of what it is
// about, in metres.
const around = 1.5

// set draws the close-up into the frame at the largest usual scale that holds it.
func (c closeUp) set(p *press, frame inset) {
	box, ok := plane.Bounds(drawables(c.Edges))
	if !ok {
		return
	}
	v := view{frame: frame, at: box.Centre(), scale: fitting(box.Grow(around), frame.w+2*border, frame.h+2*border, c.Room.Unit)}
	p.pdf.ClipRect(frame.x, frame.y, frame.w, frame.h, false)
	for _, a := range c.Room.Areas {
		p.hatch(a, v)
	}
	if edges := c.Room.Walls.Edges(); len(edges) > 0 {
		p.wall(edges, v)
	}
	p.datum(v)
	for _, s := range c.Room.Strokes {
		p.take(s.Pen)
		p.trace(s.Edges, v)
	}
	for _, e := range c.Edges {
		p.take(doubtPen)
		p.trace([]plane.Edge{e}, v)
	}
	for _, e := range c.Outside {
		p.take(pen{doubtPen.Width - 0.6, "solid"})
		p.pdf.SetDrawColor(255, 255, 255)
		p.trace([]plane.Edge{e}, v)
		p.filled()
	}
	p.pdf.ClipEnd()
	c.Room.spots(p, v, "")
	p.box(frame, 0.2)
	note := "▼ audience · " + v.scale.String()
	if len(c.Outside) > 0 {
		note += " · hollow: outside"
	}
	wide := min(smallType.width(clean(note))+3, frame.w-0.6)
	p.fill(inset{frame.x + 0.3, frame.bottom() - 4.3, wide, 4}, 255)
	p.textIn(inset{frame.x + 1.5, 0, wide - 2, 0}, frame.bottom()-1.3, note, smallType, left)
}

func drawables(edges []plane.Edge) []plane.Edge {
	var out []plane.Edge
	for _, e := range edges {
		if drawableEdge(e) {
			out = append(out, e)
		}
	}
	return out
}
