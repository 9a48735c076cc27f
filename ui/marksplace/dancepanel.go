package marksplace

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// dancePanel lists the dance lines of the floor and where their figures go.
type dancePanel struct {
	p       *place
	content fyne.CanvasObject
	lines   *grid.Grid
	figures *grid.Grid
}

func newDancePanel(p *place) *dancePanel {
	t := &dancePanel{p: p}
	g := grid.New(danceColumns())
	g.SetToolWords("Add", "Delete")
	g.OnAdd, g.OnDelete = t.add, t.remove
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.DanceLine, IDs: ids}) }
	g.OnEdit = func(id string, column int, text string) error {
		return p.desk.TryEdit("Change a dance line", func(pr *prep.Production) error { return editDance(pr, id, column, text) })
	}
	g.SetEmpty("No dance line on this floor yet: numbers across the stage at even distances from centre.", "Add a dance line", t.add)
	g.SetTools(
		widget.NewButton("To the proscenium", func() { t.reach(prep.ToProscenium) }),
		widget.NewButton("To the wings", func() { t.reach(prep.ToWings) }),
	)
	t.lines = g
	t.figures = grid.New(figureColumns())
	t.figures.ShowTools(false)
	t.figures.SetEmpty("The figures of a dance line are listed here.", "", nil)
	split := container.NewVSplit(g, container.NewBorder(wrapped(danceCaution), nil, nil, nil, t.figures))
	split.SetOffset(0.3)
	t.content = split
	return t
}

func (t *dancePanel) show(v *desk.View, w *prep.FloorWork) {
	t.lines.SetRows(danceRows(v))
	var chosen []string
	if v.Selected.Kind == desk.DanceLine {
		chosen = v.Selected.IDs
		t.lines.Select(chosen...)
	}
	t.figures.SetRows(figureRows(v, w, chosen))
}

func (t *dancePanel) add() {
	id, on := uuid.NewString(), t.p.view.Floor
	if !t.p.desk.Edit("Add a dance line", func(pr *prep.Production) error {
		pr.DanceLines = append(pr.DanceLines, newDance(pr, on, id))
		return nil
	}) {
		return
	}
	t.p.desk.Select(desk.Select(desk.DanceLine, id))
	t.lines.Edit(id, dlName)
}

// reach lets the selected lines run as far as the plan leaves free.
func (t *dancePanel) reach(to prep.DanceReach) {
	v, ids := t.p.view, t.lines.Selected()
	if len(ids) == 0 {
		t.p.desk.Told("Select the dance lines that are to run " + string(to) + ".")
		return
	}
	reach, ok := prep.ReachOf(v.P, v.P.Floor(v.Floor), to)
	if !ok {
		t.p.desk.Told("The plan has nothing on both sides that a dance line could run " + string(to) + ": type its reach.")
		return
	}
	t.p.desk.Edit("Let "+verb(len(ids), "dance line", "dance lines")+" run "+string(to), func(pr *prep.Production) error {
		for i := range pr.DanceLines {
			if d := &pr.DanceLines[i]; has(ids, d.ID) {
				d.Reach = reach
			}
		}
		return nil
	})
}

func (t *dancePanel) remove(ids []string) {
	if len(ids) == 0 {
		return
	}
	t.p.desk.Edit("Delete "+verb(len(ids), "dance line", "dance lines"), func(pr *prep.Production) error {
		for _, id := range ids {
			pr.RemoveDanceLine(id)
		}
		return nil
	})
}
