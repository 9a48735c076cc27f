package floorpicture

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// boards draws the joints between boards or tiles, so lightly that nothing is lost in
// them; where they are narrow only every second, fourth, … is shown.
func (d *drawing) boards() {
	var edges []plane.Edge
	for _, e := range d.w.Floor.Boards(leastBoard) {
		edges = append(edges, e.Moved(d.fromFloor))
	}
	if len(edges) > 0 {
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{Edges: edges, Ink: theme.GridMajor, Width: 1, Z: -4})
	}
}

// leastBoard is how near two joints may be drawn, in metres on the floor.
const leastBoard = 0.15

// features draws the doors, windows and other features of the room in the signs of
// plan drawing.
func (d *drawing) features() {
	f := d.w.Floor
	for i := range f.Features {
		t := &f.Features[i]
		id := ID(desk.Feature, t.ID)
		path := t.Shape.Moved(d.fromFloor)
		switch t.Kind {
		case floor.RoomDoor:
			d.door(id, t)
		case floor.RoomWindow:
			d.window(id, path)
		case floor.WallMirror:
			d.mirror(id, t)
		case floor.PowerOutlet:
			d.outlet(id, t.Name, path)
		case floor.Seam:
			d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{ID: id, Edges: path.Edges(), Ink: theme.FaintLabel, Width: thinWidth, Dash: floorcanvas.DashDot, Z: -1})
			d.named(id, t.Name, path)
		default:
			d.area(floorcanvas.Area{ID: id, Path: path, Ink: theme.FaintLabel, Outline: thinWidth, Dash: floorcanvas.DashDot, Label: t.Name, Z: -3})
		}
	}
}

// door draws a door: the wall is open there, the leaf stands open at a right angle, and
// a quarter circle shows its way, to the inside or the outside. One that slides is a
// leaf beside its opening.
func (d *drawing) door(id string, t *floor.Feature) {
	leaf, ok := t.Leaf()
	if !ok {
		return
	}
	f := d.w.Floor
	shape := func(width float64, ink theme.Ink, dash floorcanvas.Dash, edges ...plane.Edge) {
		for i := range edges {
			edges[i] = edges[i].Moved(d.fromFloor)
		}
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{ID: id, Edges: edges, Ink: ink, Width: width, Dash: dash, Z: -1})
	}
	d.opening(leaf)
	if swing, in := f.Swing(t); in {
		d.area(floorcanvas.Area{ID: id, Path: swing.Moved(d.fromFloor), Fill: floorcanvas.Rising, Ink: theme.KeepClear, Z: -2})
	}
	for _, s := range f.Leaves(t) {
		shape(2.5, theme.Wall, floorcanvas.Solid, s.Open)
		if s.Way.Length() > 0 {
			shape(thinWidth, theme.Wall, floorcanvas.Solid, s.Way)
		}
	}
	d.named(id, t.Name, t.Shape.Moved(d.fromFloor))
}

// opening takes the wall away behind a door or a window.
func (d *drawing) opening(e plane.Edge) {
	d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{Edges: []plane.Edge{e.Moved(d.fromFloor)}, Ink: theme.Paper, Width: 5, Z: -2})
}

// glass is how far apart the lines of a window, or of a mirror and its back, are
// drawn, in metres on the floor.
const glass = 0.08

// window draws the two faces of the wall and the glass between them.
func (d *drawing) window(id string, path plane.Path) {
	for _, e := range path.Edges() {
		d.pic.Shapes = append(d.pic.Shapes,
			floorcanvas.Shape{Edges: []plane.Edge{e}, Ink: theme.Paper, Width: 5, Z: -2},
			floorcanvas.Shape{ID: id, Edges: []plane.Edge{beside(e, glass), e, beside(e, -glass)}, Ink: theme.Wall, Width: thinWidth, Z: -1})
	}
}

// beside returns a straight edge shifted to its left; an arc is left where it is.
func beside(e plane.Edge, by float64) plane.Edge {
	u, ok := e.B.Sub(e.A).Unit()
	if !ok || !e.Straight() {
		return e
	}
	return e.Moved(plane.Motion{Shift: u.Left().Times(by)})
}

// mirror draws the glass, and strokes aslant behind it.
func (d *drawing) mirror(id string, t *floor.Feature) {
	inwards := d.w.Floor.Inward
	for _, e := range t.Shape.Edges() {
		in := inwards(e)
		u, _ := e.B.Sub(e.A).Unit()
		edges := []plane.Edge{e.Moved(d.fromFloor)}
		n := math.Min(math.Ceil(e.Length()/(2*glass)), 200)
		for k := 0.0; k < n; k++ {
			from := e.At((k + 0.5) / n)
			edges = append(edges, plane.Edge{A: from, B: from.Sub(in.Times(glass)).Add(u.Times(glass))}.Moved(d.fromFloor))
		}
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{ID: id, Edges: edges, Ink: theme.Datum, Width: 1.5, Z: -1})
	}
	d.named(id, t.Name, t.Shape.Moved(d.fromFloor))
}

// outlet draws a socket: a ring with a stroke through it.
func (d *drawing) outlet(id, name string, path plane.Path) {
	if len(path.Vertices) == 0 {
		return
	}
	at := path.Vertices[0].Point
	d.pic.Dots = append(d.pic.Dots,
		floorcanvas.Dot{ID: id, At: at, Sign: floorcanvas.Ring, Ink: theme.Wall, Size: 12},
		floorcanvas.Dot{ID: id, At: at, Sign: floorcanvas.Square, Ink: theme.Wall, Size: 4})
	d.named(id, name, path)
}

// named writes the name of a feature beside it.
func (d *drawing) named(id, name string, path plane.Path) {
	if box, ok := path.Bounds(); ok {
		d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{ID: id, At: box.Centre(), Text: name, Size: 11, Ink: theme.FaintLabel, Anchor: floorcanvas.AboveRight})
	}
}
