package floorsplace

import (
	"context"
	"fmt"
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
)

// spareTab offers to leave out the tape that no actor needs in any scene. It is worked
// out off the UI goroutine and only while it is looked at, since the purchase is
// counted again for each.
type spareTab struct {
	p       *place
	quietly func(work func(context.Context), done func()) (callOff func())
	callOff func()
	said    *fields.Banner
	list    *grid.Grid
	content fyne.CanvasObject

	from   *prep.Production // and floor: what was last asked for
	floor  floor.ID
	spares []prep.Spare
}

func newSpareTab(p *place) *spareTab {
	t := &spareTab{p: p, quietly: p.desk.Quietly, callOff: func() {}, said: fields.NewBanner(fields.Note, "", "", nil)}
	t.list = grid.New([]grid.Column{
		{Title: "Element", Width: 160, ReadOnly: true},
		{Title: "Why nobody needs it", Width: 260, Grow: true, ReadOnly: true},
		{Title: "Tape saved", Width: 96, Right: true, ReadOnly: true},
		{Title: "Money saved", Width: 100, Right: true, ReadOnly: true},
	})
	t.list.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.Element, IDs: ids}) }
	t.list.SetTools(
		fields.NewButton("Leave out the selected", func() { t.take(t.list.Selected()) }),
		fields.NewButton("Leave out all of it", func() { t.take(nil) }),
	)
	t.list.SetEmpty("Actors need all the tape that is laid here, or somebody has decided on it.", "", nil)
	t.content = container.NewBorder(t.said, nil, nil, nil, t.list)
	return t
}

// look brings the list up to date with the snapshot and the floor.
func (t *spareTab) look(v *desk.View, w *prep.FloorWork) {
	id := w.Floor.ID
	if t.from == v.P && t.floor == id {
		return
	}
	t.callOff()
	if t.floor != id {
		t.spares = nil
		t.list.SetRows(nil)
		t.said.Set(fields.Note, "Working out what each of them saves.", "", nil)
	}
	t.from, t.floor = v.P, id
	production, each, all := v.P, []prep.Spare(nil), prep.Spare{}
	t.callOff = t.quietly(
		func(context.Context) {
			done := map[floor.ID]*prep.FloorWork{}
			each, all = prep.Spares(production, id, func(id floor.ID) *prep.FloorWork {
				if done[id] == nil {
					done[id] = prep.Work(production, id, "")
				}
				return done[id]
			})
		},
		func() { t.set(production, each, all) },
	)
}

func (t *spareTab) set(p *prep.Production, each []prep.Spare, all prep.Spare) {
	t.spares = each
	style := p.Style()
	rows := make([]grid.Row, len(each))
	for i, s := range each {
		rows[i] = grid.Row{ID: string(s.Element), Cells: []string{s.Name, s.Reason, style.Format(s.Metres), p.Money(s.Cents)}}
	}
	t.list.SetRows(rows)
	if len(each) == 0 {
		t.said.Set(fields.Note, "", "", nil)
		return
	}
	t.said.Set(fields.Note, fmt.Sprintf("Without all of it: %s less tape and %s less to buy. It is then left out as proposed and waits for a decision; undo brings it back.",
		style.Format(all.Metres), p.Money(all.Cents)), "", nil)
}

// take leaves out the elements named, or all that is offered.
func (t *spareTab) take(ids []string) {
	taken := t.spares
	if ids != nil {
		taken = nil
		for _, s := range t.spares {
			if slices.Contains(ids, string(s.Element)) {
				taken = append(taken, s)
			}
		}
	}
	if len(taken) == 0 {
		t.p.desk.Told("Select what is to be left out.")
		return
	}
	id := t.floor
	if t.p.desk.Edit("Leave out what nobody needs", func(pr *prep.Production) error {
		prep.TakeSpares(pr, id, taken)
		return nil
	}) {
		t.p.desk.Told("Left out what nobody needs: " + prep.Counted(len(taken), "element") + ". Undo brings it back.")
	}
}

// swatch is the colour of a tape; nil for none.
func swatch(text string) color.Color {
	if c, ok := floorpicture.Swatch(text); ok {
		return c
	}
	return nil
}
