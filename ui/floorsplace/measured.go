package floorsplace

import (
	"maps"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey/room"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// measuredPage is the room as a tape has found it: walls typed in the order in
// which they are walked, lengths across, and what all of them together say.
type measuredPage struct {
	desk    *desk.Desk
	view    *desk.View
	close   func()
	content fyne.CanvasObject

	said   *fields.Banner
	use    *fields.Button
	begin  *fields.Button
	canvas *floorcanvas.Canvas
	walls  *grid.Grid
	across *grid.Grid

	shown       floor.ID
	corners     int                    // of the room when it was last fitted
	comingWalls []string               // identifiers of the empty rows, for what is typed into them
	comingCross []string               // the same, of the lengths across
	begun       map[string]begunAcross // lengths across without all of their parts
	picked      string                 // the corner from which a length across is being picked
	next        []room.Pair
	worked      *worked
}

// comingRows is how many empty rows a table ends with: typing into the first leaves
// one below to go on to.
const comingRows = 2

func newMeasuredPage(d *desk.Desk, close func()) *measuredPage {
	p := &measuredPage{desk: d, close: close, said: fields.NewBanner(fields.Note, "", "", nil), begun: map[string]begunAcross{}}
	p.comingWalls, p.comingCross = freshIDs(nil, ""), freshIDs(nil, "")
	p.worked = newWorked(d, func() { p.Show(p.view) })
	p.buildCanvas()
	p.buildWalls()
	p.buildAcross()

	p.use = fields.NewButton("Use these walls", p.useWalls)
	p.use.Importance = widget.HighImportance
	p.begin = fields.NewButton("Begin as drawn", p.beginAsDrawn)
	bar := container.NewHBox(fields.NewButton("Back to the floor", close), p.use, p.begin,
		fields.NewButton(fromTable, func() { askRoomTable(d) }), fields.NewButton("Whole room", p.canvas.Fit))
	hint := widget.NewLabel("Walk with the room on your left and type each wall; Tab goes along, Enter down. The turn at a wall's end is a guess to begin from; tick Square where a right angle was tried.")
	hint.Wrapping = fyne.TextWrapWord
	tables := container.NewVSplit(p.walls, p.across)
	tables.SetOffset(0.58)
	middle := container.NewBorder(container.NewVBox(bar, p.said), nil, nil, nil, p.canvas)
	all := container.NewHSplit(middle, container.NewBorder(hint, nil, nil, nil, tables))
	all.SetOffset(0.46)
	p.content = all
	return p
}

// freshIDs replaces a used identifier of the coming rows by a new last one.
func freshIDs(ids []string, used string) []string {
	ids = slices.DeleteFunc(slices.Clone(ids), func(id string) bool { return id == used })
	for len(ids) < comingRows {
		ids = append(ids, uuid.NewString())
	}
	return ids
}

func (p *measuredPage) buildCanvas() {
	c := floorcanvas.New()
	c.OnSelect = func(ids []string, _ bool) { p.pick(first(ids)) }
	c.OnHover = func(at plane.Point, _ string) {
		if f := p.view.P.Floor(p.view.Floor); f != nil {
			p.desk.Pointed(f.FloorToDatum().Apply(at), true)
		}
	}
	c.OnLeave = func() { p.desk.Pointed(plane.Point{}, false) }
	c.OnKey = func(key *fyne.KeyEvent) bool {
		if key.Name != fyne.KeyEscape {
			return false
		}
		p.pick("")
		return true
	}
	p.canvas = c
}

func (p *measuredPage) buildWalls() {
	g := grid.New(wallColumns())
	g.OnEdit = p.editWall
	g.OnDelete = func(ids []string) { p.drop("Take out walls", ids) }
	g.OnAdd = func() { p.walls.Edit(p.comingWalls[0], wallLength) }
	g.SetTools(widget.NewButton("Put a wall before it", p.insertWall))
	g.SetToolWords("Next wall", "Take out")
	p.walls = g
}

func (p *measuredPage) buildAcross() {
	g := grid.New(acrossColumns())
	g.OnEdit = p.editAcross
	g.OnDelete = func(ids []string) { p.drop("Take out lengths across", ids) }
	g.OnAdd = func() { p.across.Edit(p.comingCross[0], acrossFrom) }
	g.SetTools(widget.NewButton("Enter what is asked for", p.enterNext))
	g.SetToolWords("Next diagonal", "Take out")
	p.across = g
}

// Show sets the page from the view.
func (p *measuredPage) Show(v *desk.View) {
	f := v.P.Floor(v.Floor)
	p.view = v
	if f == nil {
		return
	}
	if p.shown != v.Floor {
		p.shown, p.begun, p.picked, p.corners = v.Floor, map[string]begunAcross{}, "", -1
	}
	p.worked.look(v.P, f)
	m := p.worked.room
	p.next = m.Next
	p.say(f, m)
	p.walls.SetRows(wallRows(v, f, m, p.comingWalls))
	p.across.SetRows(acrossRows(v, f, m, p.comingCross, p.coming(f)))
	p.canvas.Set(measuredPicture(v, f, m))
	if n := len(f.Measured.Walls); n != p.corners {
		p.corners = n
		p.canvas.Fit()
	}
	p.canvas.SetSelected(nil)
	if p.picked != "" {
		p.canvas.SetSelected([]string{floorpicture.ID(cornerThing, p.picked)})
	}
}

// say writes what the measurements make of the room.
func (p *measuredPage) say(f *floor.Floor, m prep.Measured) {
	p.use.SetEnabled(f.Measured.Any() && m.Why == "" && !m.InUse)
	p.begin.SetEnabled(!f.Measured.Any() && len(f.Outline.Vertices) > 0)
	var words []string
	if p.worked.known {
		words = m.Say(p.view.Style())
	}
	kind := fields.Note
	switch {
	case !p.worked.known:
		words = []string{"What the measurements say of each other is " + underWay}
	case !f.Measured.Any():
		words = []string{"Nothing has been measured of this floor yet. Begin at any corner, call it A, and type the first wall."}
	case m.Why != "":
		kind = fields.Danger
	case len(m.Verdict.Faults) > 0:
		kind = fields.Warning
	case m.Open == 0 && m.Freedom > 0:
		kind = fields.Good
	}
	if p.picked != "" {
		words = append([]string{"From corner " + room.PlaceName(f.Measured, p.picked) + ": click the corner that was measured to, Esc gives up."}, words...)
	}
	p.said.Set(kind, strings.Join(words, " "), "", nil)
}

// editWall takes one cell of the table of walls.
func (p *measuredPage) editWall(id string, column int, text string) error {
	change, err := readWall(id, column, text, p.view.P.Unit())
	if err != nil {
		return err
	}
	fresh := slices.Contains(p.comingWalls, id)
	if fresh {
		p.comingWalls = freshIDs(p.comingWalls, id)
	}
	on := p.view.Floor
	return p.desk.TryEdit("Measure a wall", func(pr *prep.Production) error { return change.apply(pr, on) })
}

// editAcross takes one cell of a length across. One that has not all its parts yet
// waits on the page.
func (p *measuredPage) editAcross(id string, column int, text string) error {
	b := p.typedAcross(id)
	switch column {
	case acrossFrom:
		b.from = strings.TrimSpace(text)
	case acrossTo:
		b.to = strings.TrimSpace(text)
	case acrossLength:
		if f := p.view.P.Floor(p.view.Floor); f != nil && id == p.comingCross[0] && strings.TrimSpace(text) != "" {
			if asked, ok := p.asked(f); ok {
				b = asked
			}
		}
		b.length = strings.TrimSpace(text)
	}
	fresh := slices.Contains(p.comingCross, id)
	if fresh && !b.whole() {
		p.begun[id] = b
		p.Show(p.view)
		return nil
	}
	on := p.view.Floor
	coming := p.comingCross
	if fresh {
		p.comingCross = freshIDs(p.comingCross, id)
	}
	err := p.desk.TryEdit("Measure across", func(pr *prep.Production) error { return setAcross(pr, on, id, b) })
	if err != nil {
		p.comingCross = coming
		return err
	}
	delete(p.begun, id)
	return nil
}

// asked is the length across that is asked for next, which the first empty row offers;
// ok is false when none is, or when the row is begun already.
func (p *measuredPage) asked(f *floor.Floor) (b begunAcross, ok bool) {
	if _, begun := p.begun[p.comingCross[0]]; begun || len(p.next) == 0 {
		return b, false
	}
	from, to := p.next[0].From, p.next[0].To
	i, okFrom := f.Measured.Corner(from)
	j, okTo := f.Measured.Corner(to)
	if n := len(f.Measured.Walls); okFrom && okTo && ((i+1)%n == j || (j+1)%n == i) {
		return b, false // a wall
	}
	return begunAcross{from: room.PlaceName(f.Measured, from), to: room.PlaceName(f.Measured, to)}, true
}

// coming is what the empty rows show: what was begun, and what is asked for next.
func (p *measuredPage) coming(f *floor.Floor) map[string]begunAcross {
	out := maps.Clone(p.begun)
	if b, ok := p.asked(f); ok {
		out[p.comingCross[0]] = b
	}
	return out
}

// typedAcross is a length across as its row shows it.
func (p *measuredPage) typedAcross(id string) begunAcross {
	f := p.view.P.Floor(p.view.Floor)
	if f == nil {
		return p.begun[id]
	}
	for _, d := range f.Measured.Diagonals {
		if d.ID == id {
			return begunAcross{room.PlaceName(f.Measured, d.From), room.PlaceName(f.Measured, d.To), lengthTyped(p.view.P, id, "length", d.Length)}
		}
	}
	return p.begun[id]
}

func (p *measuredPage) drop(label string, ids []string) {
	for _, id := range ids {
		delete(p.begun, id)
	}
	on := p.view.Floor
	p.desk.Edit(label, func(pr *prep.Production) error {
		return pr.Measure(on, func(m *floor.Measured) error {
			m.Drop(ids)
			forgetPoints(m)
			return nil
		})
	})
}

// insertWall puts a wall before the one that is selected.
func (p *measuredPage) insertWall() {
	id, _, ok := p.walls.Current()
	if !ok || slices.Contains(p.comingWalls, id) {
		p.walls.Say("Choose the wall that it comes before.")
		return
	}
	on, fresh := p.view.Floor, uuid.NewString()
	if p.desk.Edit("Put in a wall", func(pr *prep.Production) error {
		return pr.Measure(on, func(m *floor.Measured) error { return wallBefore(m, id, fresh) })
	}) {
		p.walls.Edit(fresh, wallLength)
	}
}

// enterNext opens a row for the first length that is asked for.
func (p *measuredPage) enterNext() {
	if len(p.next) == 0 {
		p.across.Say("Nothing more is asked for.")
		return
	}
	p.enter(p.next[0].From, p.next[0].To)
}

// enter opens the length of what runs between two places: a wall that was not
// measured, a length across that is there, or a new one.
func (p *measuredPage) enter(from, to string) {
	f := p.view.P.Floor(p.view.Floor)
	if f == nil || from == to {
		return
	}
	i, okFrom := f.Measured.Corner(from)
	j, okTo := f.Measured.Corner(to)
	if n := len(f.Measured.Walls); okFrom && okTo && ((i+1)%n == j || (j+1)%n == i) {
		if (j+1)%n == i {
			from = to
		}
		p.walls.Edit(from, wallLength)
		return
	}
	for _, d := range f.Measured.Diagonals {
		if d.From == from && d.To == to || d.From == to && d.To == from {
			p.across.Edit(d.ID, acrossLength)
			return
		}
	}
	id := p.comingCross[0]
	p.begun[id] = begunAcross{from: room.PlaceName(f.Measured, from), to: room.PlaceName(f.Measured, to)}
	p.Show(p.view)
	p.across.Edit(id, acrossLength)
}

// pick takes a click on the canvas: two corners open the length between them, a
// wall or a length across opens its own.
func (p *measuredPage) pick(name string) {
	kind, id, _ := floorpicture.Parse(name)
	from := p.picked
	p.picked = ""
	switch {
	case kind == cornerThing && from == "":
		p.picked = id
	case kind == cornerThing:
		p.Show(p.view)
		p.enter(from, id)
		return
	case kind == wallThing:
		p.walls.Edit(id, wallLength)
	case kind == acrossThing:
		p.across.Edit(id, acrossLength)
	}
	p.Show(p.view)
}

func (p *measuredPage) useWalls() {
	on := p.view.Floor
	p.desk.Edit("Use the measured walls", func(pr *prep.Production) error { return pr.UseMeasured(on) })
}

func (p *measuredPage) beginAsDrawn() {
	if p.desk.Edit("Begin to measure the walls", onFloor(p.view.Floor, func(f *floor.Floor) error {
		f.Measured.Walls = asDrawn(f)
		return nil
	})) {
		if f := p.view.P.Floor(p.view.Floor); f != nil && f.Measured.Any() {
			p.walls.Edit(f.Measured.Walls[0].ID, wallLength)
		}
	}
}
