package drawing

import (
	"fmt"
	"math"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

// stated is what a row said first of an element or a path.
type stated struct {
	row  int
	text string
}

// state notes what a row says in a column. It is news the first time; saying the
// same again is not, and saying something else is a problem.
func (p *planReader) state(said map[string]stated, r row, column string) (text string, news bool) {
	text = r.cell(column)
	if text == "" {
		return "", false
	}
	first, before := said[column]
	if !before {
		said[column] = stated{r.number, text}
		return text, true
	}
	if key(first.text) != key(text) {
		p.problem(RowProblem{Row: r.number, Column: column, Got: text,
			Why:  fmt.Sprintf("row %d says “%s” of the same thing", first.row, shortened(first.text)),
			Want: "the same, or nothing"})
	}
	return "", false
}

// describe takes what the row says of its element.
func (p *planReader) describe(d *draft, r row) {
	if text, news := p.state(d.stated, r, "kind"); news {
		kind, ok := kindOf(text)
		if !ok {
			p.unknown(r, "kind", offered(plan.Kinds))
			kind = plan.Other
		}
		d.Kind = kind
	}
	if text, news := p.state(d.stated, r, "use"); news {
		use, ok := word(text, plan.Uses)
		if !ok {
			p.unknown(r, "use", offered(plan.Uses))
			use = plan.Useful
		}
		d.Use = use
	}
	if text, news := p.state(d.stated, r, "note"); news {
		d.Note = text
	}
	if text, news := p.state(d.stated, r, "level"); news {
		d.Level = p.levels.id(text)
	}
	if height := r.cell("height"); height != "" {
		p.height(d, r, height)
	}
}

// height takes the height of the element's level.
func (p *planReader) height(d *draft, r row, text string) {
	v, err := length.Parse(text, p.options.Unit)
	if err != nil {
		p.problem(lengthProblem(r.number, "height", text, err))
		return
	}
	if v = p.onFloor(v); math.Abs(v) > length.Limit {
		p.problem(RowProblem{Row: r.number, Column: "height", Got: text, Why: "at this scale it is beyond 10 km"})
		return
	}
	if why := p.levels.setHeight(d.Level, v); why != "" {
		p.problem(RowProblem{Row: r.number, Column: "height", Got: text, Why: why})
	}
}

// describePath takes what the row says of its path.
func (p *planReader) describePath(t *trace, r row) {
	if text, news := p.state(t.stated, r, "role"); news {
		role, ok := word(text, plan.Roles)
		if !ok {
			p.unknown(r, "role", offered(plan.Roles))
			role = plan.Outline
		}
		t.role = role
	}
	if text, news := p.state(t.stated, r, "close"); news {
		closed, ok := yes(text)
		if !ok {
			p.unknown(r, "close", "yes or no")
		}
		t.closed = closed
	}
}

func (p *planReader) unknown(r row, column, want string) {
	p.problem(RowProblem{Row: r.number, Column: column, Got: r.cell(column), Want: want})
}

// levelBook finds levels by name and adds those that are missing.
type levelBook struct {
	newID  func() string
	byName map[string]plan.LevelID
	height map[plan.LevelID]float64 // where it is known
	added  []plan.Level
}

// stageFloor is the name of the level that has no identifier.
const stageFloor = "stage floor"

func newLevelBook(o PlanOptions) *levelBook {
	b := &levelBook{newID: o.NewID, byName: map[string]plan.LevelID{}, height: map[plan.LevelID]float64{"": 0}}
	for _, l := range o.Levels {
		b.byName[key(l.Name)] = l.ID
		b.height[l.ID] = l.Height
	}
	return b
}

// id returns the level of the name.
func (b *levelBook) id(name string) plan.LevelID {
	id, ok := b.byName[key(name)]
	if ok || key(name) == stageFloor {
		return id
	}
	id = plan.LevelID(b.newID())
	b.byName[key(name)] = id
	b.added = append(b.added, plan.Level{ID: id, Name: tidy(name)})
	return id
}

// sameHeight is how far two heights of one level may differ, in metres: what the
// rounding of a table makes of one.
const sameHeight = 0.0005

// setHeight gives a level its height the first time; why says what is wrong with
// another one.
func (b *levelBook) setHeight(id plan.LevelID, v float64) (why string) {
	known, ok := b.height[id]
	switch {
	case ok && math.Abs(known-v) <= sameHeight:
		return ""
	case ok && id == "":
		return "the element is on the stage floor; name its level"
	case ok:
		return fmt.Sprintf("the level has a height of %s already", length.Style{Unit: length.Metres}.Format(known))
	}
	b.height[id] = v
	for i := range b.added {
		if b.added[i].ID == id {
			b.added[i].Height = v
		}
	}
	return ""
}
