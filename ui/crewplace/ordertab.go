package crewplace

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
	"groundrow/ui/theme"
)

// orderTab shows the order of placing as a path on the floor and as a list.
type orderTab struct {
	place   *place
	canvas  *floorcanvas.Canvas
	list    *grid.Grid
	said    *widget.Label
	placed  *widget.Check
	content fyne.CanvasObject

	key    orderKey
	walk   walk
	fitted floor.ID
}

// orderKey is what a walk follows from.
type orderKey struct {
	of     *prep.Production
	floor  floor.ID
	scene  plan.SceneID
	placed bool
}

func newOrderTab(p *place) *orderTab {
	t := &orderTab{place: p, canvas: floorcanvas.New(), list: grid.New(orderColumns()), said: widget.NewLabel("")}
	t.said.Wrapping = fyne.TextWrapWord
	t.placed = widget.NewCheck("also those that are placed", func(bool) {
		if p.view != nil {
			t.show(p.view)
		}
	})
	t.canvas.OnSelect = func(ids []string, _ bool) {
		if s := floorpicture.Selection(ids); s.Kind == desk.Mark || s.Kind == desk.Nothing {
			p.desk.Select(s)
		}
	}
	t.canvas.OnHover = func(at plane.Point, _ string) { p.desk.Pointed(at, true) }
	t.canvas.OnLeave = func() { p.desk.Pointed(plane.Point{}, false) }
	t.list.OnSelect = func(ids []string) { p.desk.Select(desk.Select(desk.Mark, ids...)) }
	t.list.SetEmpty("No marks to place. They follow from the plan and a floor, and those already placed are left out.", "", nil)
	right := container.NewBorder(container.NewVBox(t.said, t.placed), nil, nil, nil, t.list)
	split := container.NewHSplit(t.canvas, right)
	split.SetOffset(0.5)
	t.content = split
	return t
}

// fewMarks is up to how many marks the order is found without leaving the screen's own goroutine.
const fewMarks = 120

func (t *orderTab) show(v *desk.View) {
	here := v.Here()
	key := orderKey{v.P, v.Floor, v.Scene, t.placed.Checked}
	switch {
	case here == nil:
		t.key, t.walk = key, walk{}
		t.set(v)
		t.said.SetText("No floor yet: add the rehearsal room under Floors.")
	case key == t.key:
		t.mark(v)
	default:
		t.key = key
		t.find(v, walkOf(here, key.placed))
	}
}

// find settles the walk, in the background where it may take a while; an answer to a question of before is dropped.
func (t *orderTab) find(v *desk.View, k walk) {
	if len(k.marks) <= fewMarks {
		t.walk = k.settle()
		t.set(v)
		return
	}
	key := t.key
	t.place.run("Looking for a short walk", func(context.Context) error {
		k = k.settle()
		return nil
	}, func(err error) {
		if err == nil && key == t.key {
			t.walk = k
			t.set(t.place.view)
		}
	})
}

// set shows the walk.
func (t *orderTab) set(v *desk.View) {
	t.list.SetRows(orderRows(v, t.walk))
	pic := floorcanvas.Picture{Style: v.Style()}
	if w := v.Work(v.Floor); w != nil {
		t.said.SetText(t.walk.sentence(v))
		pic = floorpicture.OfFloor(v.P, w, v.Scene, floorpicture.Options{Labels: true, Pivots: true})
		soften(&pic)
		addWalk(&pic, t.walk)
	}
	t.canvas.Set(pic)
	if t.fitted != v.Floor {
		t.fitted = v.Floor
		t.canvas.Fit()
	}
	t.mark(v)
}

// soften draws the tape thinly, so that the walk stands out from it.
func soften(pic *floorcanvas.Picture) {
	for i := range pic.Shapes {
		s := &pic.Shapes[i]
		s.ID, s.Colour, s.Ink, s.Width = "", nil, theme.FaintLine, 1
	}
}

// addWalk draws the path and where it begins.
func addWalk(pic *floorcanvas.Picture, k walk) {
	if len(k.order) == 0 {
		return
	}
	pic.Shapes = append(pic.Shapes, floorcanvas.Shape{Edges: k.path(), Ink: theme.Selection, Width: 1.8, Z: 4})
	pic.Dots = append(pic.Dots, floorcanvas.Dot{At: k.start, Sign: floorcanvas.Square, Ink: theme.Selection, Size: 12})
	pic.Labels = append(pic.Labels, floorcanvas.Label{
		At: k.start, Text: "start", Bold: true, Ink: theme.Selection, Anchor: floorcanvas.BelowLeft, Priority: 3,
	})
	last := k.marks[k.order[len(k.order)-1]]
	pic.Labels = append(pic.Labels, floorcanvas.Label{
		At: last.At, Text: "end", Bold: true, Ink: theme.Selection, Anchor: floorcanvas.BelowLeft, Priority: 3,
	})
}

// mark shows what is selected in both.
func (t *orderTab) mark(v *desk.View) {
	t.canvas.SetSelected(floorpicture.IDs(v.Selected))
	follow(t.list, v.Selected, desk.Mark)
	if v.Selected.Kind == desk.Mark {
		t.canvas.Reveal(floorpicture.IDs(v.Selected)...)
	}
}
