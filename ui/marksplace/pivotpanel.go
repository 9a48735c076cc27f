package marksplace

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// pivotPanel lists the pivots, proposes pairs, and says how the right angle is
// laid out.
type pivotPanel struct {
	p       *place
	content fyne.CanvasObject
	table   *grid.Grid
	words   *widget.Label
	angle   *widget.Label
	best    *grid.Grid
	found   *widget.Label
	use     *fields.Button

	offer   offerPanel
	rest    bool // the choices are for the marks that the pivots do not serve
	choices []prep.PivotChoice
	of      floor.ID // the floor that the choices belong to
}

// proposed is how many pairs are shown.
const proposed = 5

func newPivotPanel(p *place) *pivotPanel {
	t := &pivotPanel{p: p, words: wrapped(""), angle: wrapped(""), found: wrapped("")}
	t.buildTable()
	t.best = grid.New(choiceColumns())
	t.best.ShowTools(false)
	t.best.SetEmpty("“Best pair” compares every two of the places ticked above, and the marks selected in the table. “Best for the rest” looks for a second pair, for the marks that the pivots leave.", "", nil)
	t.best.OnActivate = t.take
	t.best.OnSelect = func([]string) { t.showUse() }
	t.use = fields.NewButton("Use this pair", func() {
		if ids := t.best.Selected(); len(ids) == 1 {
			t.take(ids[0])
		}
	})
	find := fields.NewButton("Best pair", func() { t.find(false) })
	find.Importance = widget.HighImportance
	t.offer = newOfferPanel()
	head := container.NewVBox(
		container.NewHBox(find, fields.NewButton("Best for the rest", func() { t.find(true) }), t.use),
		t.offer.content, t.found)
	top := container.NewBorder(nil, t.words, nil, nil, t.table)
	bottom := container.NewBorder(head, container.NewVBox(heading("The right angle"), t.angle), nil, nil, t.best)
	split := container.NewVSplit(top, bottom)
	split.SetOffset(0.42)
	t.content = split
	t.showUse()
	return t
}

func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

func heading(text string) *widget.Label {
	return widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
}

func (t *pivotPanel) buildTable() {
	g := grid.New(pivotColumns())
	g.SetToolWords("Add", "Delete")
	g.OnSelect = func(ids []string) { t.p.desk.Select(desk.Selection{Kind: desk.Pivot, IDs: ids}) }
	g.OnAdd, g.OnDelete = t.add, t.remove
	g.OnEdit = func(id string, column int, text string) error {
		label := "Move a pivot"
		if column == pvName {
			label = "Rename a pivot"
		}
		on := t.p.view.Floor
		return t.p.desk.TryEdit(label, func(pr *prep.Production) error { return editPivot(pr, on, id, column, text) })
	}
	g.SetTools(
		widget.NewButton("Pick on the floor", t.pick),
		widget.NewButton("Earlier", func() { t.reorder(-1) }),
		widget.NewButton("Later", func() { t.reorder(1) }),
	)
	g.SetEmpty("No pivots yet. A pivot is a fixed place from which a tape is pulled: a stud, a corner, the foot of a column.", "Pick one on the floor", t.pick)
	t.table = g
}

func (t *pivotPanel) show(v *desk.View, w *prep.FloorWork) {
	t.table.SetRows(pivotRows(v, w.Floor))
	if v.Selected.Kind == desk.Pivot {
		t.table.Select(v.Selected.IDs...)
	}
	t.words.SetText(pivotWords(v, w))
	t.angle.SetText(rightAngle(v.P, w) + guideWords(v.P, w))
	if t.of != v.Floor {
		t.of = v.Floor
		t.forget()
	}
	if len(t.choices) > 0 {
		t.found.SetText(foundWords(v.P, w, t.choices[0])) // the pair in use may be another one now
	}
	t.showUse()
}

func (t *pivotPanel) showUse() {
	t.use.SetText("Use this pair")
	if t.rest {
		t.use.SetText("Add this pair")
	}
	if len(t.best.Selected()) == 1 {
		t.use.Enable()
		return
	}
	t.use.Disable()
}

// pick lets the next click on the canvas set a pivot.
func (t *pivotPanel) pick() {
	t.p.setting = true
	t.p.Show(t.p.view)
}

// add adds a pivot at the datum, whose place is then typed.
func (t *pivotPanel) add() {
	if id := t.addAt(plane.Point{}); id != "" {
		t.table.Edit(id, pvName)
	}
}

// addAt adds a pivot at a place in datum axes and selects it.
func (t *pivotPanel) addAt(at plane.Point) (id string) {
	id = uuid.NewString()
	if !t.p.edit("Add a pivot", func(f *floor.Floor) error {
		f.Pivots = append(f.Pivots, floor.Pivot{
			ID: id, Name: floor.UnnamedPivot, At: f.FloorToDatum().Inverse().Apply(at),
		})
		return nil
	}) {
		return ""
	}
	t.p.tabs.SelectIndex(tabPivots)
	t.p.desk.Select(desk.Select(desk.Pivot, id))
	return id
}

func (t *pivotPanel) remove(ids []string) {
	if len(ids) == 0 {
		return
	}
	on := t.p.view.Floor
	t.p.desk.Edit("Delete "+verb(len(ids), "pivot", "pivots"), func(pr *prep.Production) error {
		for _, id := range ids {
			pr.RemovePivot(on, id)
		}
		return nil
	})
}

func (t *pivotPanel) reorder(by int) {
	ids := t.table.Selected()
	if len(ids) != 1 {
		t.p.desk.Told("Select one pivot to move it in the order: marks are measured from the first two wherever those serve.")
		return
	}
	t.p.edit("Change the order of the pivots", func(f *floor.Floor) error { return reorder(f, ids[0], by) })
}

// find proposes pairs for the marks of the scene; for the rest, only for those that
// the pivots do not serve.
func (t *pivotPanel) find(rest bool) {
	v := t.p.view
	w := v.Here()
	if w == nil {
		return
	}
	t.rest = rest
	if rest {
		w = unserved(v.P, w)
	}
	offer := t.offer.places()
	offer.Marks = t.p.table.Selected()
	list, err := prep.BestPivots(v.P, w, offer, proposed)
	t.choices, t.of = list, v.Floor
	t.best.SetRows(choiceRows(v.P, list))
	switch {
	case rest && len(w.Marks) == 0:
		t.found.SetText("The pivots serve every mark of this scene.")
	case err != nil:
		t.found.SetText(sentence(err))
	default:
		t.found.SetText(foundWords(v.P, w, list[0]))
		t.best.Select("0")
	}
	t.showUse()
}

// take makes the proposed pair the first two pivots, or adds it for the rest.
func (t *pivotPanel) take(id string) {
	i, err := strconv.Atoi(id)
	if err != nil || i < 0 || i >= len(t.choices) {
		return
	}
	c, rest := t.choices[i], t.rest
	if rest { // what was found was for the marks that were left, and these are served now
		t.forget()
	}
	t.p.edit("Use "+c.A.Name+" and "+c.B.Name+" as pivots", func(f *floor.Floor) error {
		if rest {
			c.AddPair(f, uuid.NewString)
		} else {
			c.UsePair(f, uuid.NewString)
		}
		return nil
	})
}

// forget takes away the pairs that were proposed.
func (t *pivotPanel) forget() {
	t.choices = nil
	t.best.SetRows(nil)
	t.found.SetText("")
}
