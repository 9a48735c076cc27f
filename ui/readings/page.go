// Package readings is the page on which check measures are entered while one
// kneels on the floor: narrow, for one hand, one measure at a time.
package readings

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// Size is the size in which the page is opened: a small tablet upright.
var Size = fyne.NewSize(480, 800)

// Page is the page. It stands in a window of its own beside the main one.
type Page struct {
	desk *desk.Desk
	view *desk.View
	work *prep.FloorWork // in the scene looked at
	all  *prep.FloorWork // over all scenes: what the verdict asks for may lie outside the scene
	list []prep.Measure
	at   int
	key  string // of the measure that is looked at
	last string // the reading kept last; empty: none to take back
	bare length.Unit

	face *face
	body *fyne.Container
	none fyne.CanvasObject
}

// New builds the page.
func New(d *desk.Desk) *Page {
	p := &Page{desk: d}
	p.face = newFace(p)
	p.none = fields.Empty("Nothing to measure yet", "Check measures appear once the chosen floor has two marks.", "", nil)
	p.body = container.NewStack(p.face.whole)
	return p
}

// Content is everything that the page shows.
func (p *Page) Content() fyne.CanvasObject { return p.body }

// Focus brings the keyboard to the reading.
func (p *Page) Focus() { p.face.focus() }

// Show sets the page from the view. The measure that is looked at stays.
func (p *Page) Show(v *desk.View) {
	if p.view == nil || p.view.Path != v.Path {
		p.bare, p.key, p.last = v.P.Unit(), "", ""
	}
	p.view, p.work, p.all, p.list = v, v.Here(), v.Work(v.Floor), nil
	if p.work != nil {
		p.list = prep.MeasuresOf(v.P, p.work)
	}
	if len(p.list) == 0 {
		p.present(p.none)
		return
	}
	p.present(p.face.whole)
	p.find()
	p.face.show(p)
}

func (p *Page) present(o fyne.CanvasObject) {
	if p.body.Objects[0] != o {
		p.body.Objects = []fyne.CanvasObject{o}
		p.body.Refresh()
	}
}

// find looks for the measure that was looked at; at first it is the first one that
// nobody has read.
func (p *Page) find() {
	for i, m := range p.list {
		if m.Key() == p.key {
			p.at = i
			return
		}
	}
	p.at = min(p.at, len(p.list)-1)
	if p.key == "" {
		if first, ok := nextUnread(p.list, len(p.list)-1); ok {
			p.at = first
		}
	}
	p.key = p.list[p.at].Key()
}

// step looks at the measure so many places on, round the end of the list.
func (p *Page) step(by int) {
	if len(p.list) == 0 {
		return
	}
	p.look((p.at + by + len(p.list)) % len(p.list))
}

func (p *Page) look(at int) {
	p.at, p.key = at, p.list[at].Key()
	p.face.note(fields.Note, "")
	p.face.show(p)
}

// keep records what was read and goes on to the next measure, or stays when the
// reading does not belong. Without a reading it goes on.
func (p *Page) keep(text string) error {
	if len(p.list) == 0 {
		return nil
	}
	text = asTyped(text, p.bare, p.view.P.Unit())
	if text == "" {
		p.step(1)
		return nil
	}
	m, w := p.list[p.at], p.all
	r := prep.Reading{ID: uuid.NewString(), From: m.Ends[0], To: m.Ends[1], Text: text, By: p.who(), On: time.Now()}
	err := p.desk.TryEdit("Read "+m.From+" to "+m.To, func(to *prep.Production) error { return to.KeepReading(w, r) })
	if err != nil {
		return err
	}
	p.last = r.ID
	p.kept(r.ID)
	return nil
}

// kept says what became of a reading, and goes on when it belongs.
func (p *Page) kept(id string) {
	for i, m := range p.list {
		if m.Read == nil || m.Read.ID != id {
			continue
		}
		kind, said := saidOf(p.view.P, m)
		said = m.From + " – " + m.To + ". " + said
		next, more := nextUnread(p.list, i)
		switch {
		case kind != fields.Good:
			again := p.again(i)
			p.look(again)
			if again != i {
				said += " Type what you read the second time."
			}
		case more:
			p.look(next)
		default:
			p.look(i)
			said += " That was the last one."
		}
		p.face.note(kind, said)
		return
	}
}

// again returns where the same distance is asked for once more, or the reading
// itself.
func (p *Page) again(i int) int {
	for k := i + 1; k < len(p.list) && p.list[k].Ends == p.list[i].Ends; k++ {
		if p.list[k].Read == nil {
			return k
		}
	}
	return i
}

// takeBack deletes the reading kept last, for a slip of the fingers.
func (p *Page) takeBack() {
	id := p.last
	if id == "" {
		return
	}
	for _, m := range p.list {
		if m.Read != nil && m.Read.ID == id {
			m.Nth = 0
			p.key = m.Key()
		}
	}
	p.last = ""
	p.face.note(fields.Note, "")
	p.desk.Edit("Take a reading back", func(to *prep.Production) error { to.RemoveReading(id); return nil })
	p.face.focus()
}

// tick records that a mark has been placed or checked.
func (p *Page) tick(label string, checked, on bool) {
	id, by := p.view.Floor, floor.Decision{By: p.who(), On: time.Now()}
	s := step(checked)
	if on {
		p.desk.Edit("Tick mark "+label+" as "+string(s), func(to *prep.Production) error { return to.TakeStep(id, []string{label}, s, by) })
		return
	}
	p.desk.Edit("Untick mark "+label+" as "+string(s), func(to *prep.Production) error { return to.TakeBackStep(id, []string{label}, s, by) })
}

func (p *Page) who() string {
	if p.view.Who == "" {
		return "somebody"
	}
	return p.view.Who
}

// verdict says what all readings of the floor say together, and what to do next.
func (p *Page) verdict() (fields.Kind, string) {
	v := p.work.Verdict()
	kind := fields.Warning
	if v.State == prep.Accepted {
		kind = fields.Good
	}
	text := v.Headline(p.view.P)
	for _, f := range v.Faults {
		text += " " + v.FaultSentence(p.view.P, f)
	}
	for _, n := range v.Flat {
		text += " " + v.TriangleSentence(p.view.P, n)
	}
	return kind, text + " " + v.Next(p.view.P)
}
