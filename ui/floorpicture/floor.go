package floorpicture

import (
	"slices"
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// Options choose what of a floor is shown.
type Options struct {
	FloorAxes bool     // the room stays and the plan turns; else datum axes
	Labels    bool     // marks with their labels
	Sure      []string // labels of the marks about which the 95 % ellipse is drawn
	Spikes    bool     // pieces that are set by hand
	Names     bool     // names of elements
	Pivots    bool     // the two pivots as handles
	Corners   bool     // the corners of the room as handles
	Placement bool     // handles that shift and turn the plan
	Ways      bool     // the ways across the floor and where they are narrowest
	Faint     bool     // what the chosen scene does not need is shown faintly
	Sometimes bool     // what is down only in some scenes lies on a band
}

// OfFloor draws a floor from all that was computed for it. whole is the work over
// all scenes; the scene is the one looked at.
func OfFloor(p *prep.Production, whole *prep.FloorWork, scene plan.SceneID, o Options) floorcanvas.Picture {
	d := drawing{p: p, w: whole.In(scene), o: o, tapes: tapesOf(p)}
	d.fromDatum = plane.Motion{}
	if o.FloorAxes {
		d.fromDatum = whole.Floor.FloorToDatum().Inverse()
	}
	d.fromFloor = whole.Floor.FloorToDatum().Then(d.fromDatum)
	d.pic = picture(p)
	d.pic.Datum = d.fromDatum
	if whole.Floor.OwnDatum {
		d.pic.Baseline = "this floor's baseline" // the plan's name for its own is not true of it
	}
	d.boards()
	d.room()
	d.steps()
	d.features()
	if o.Ways {
		d.ways()
	}
	if o.Faint && scene != "" {
		d.others(whole, scene)
	}
	if o.Sometimes {
		d.sometimes()
	}
	d.lines()
	d.cuts()
	d.overhangs()
	if o.Spikes {
		d.pieces()
		d.spikeTape()
	}
	d.asides()
	if o.Labels {
		d.guides(whole)
		d.marks()
	}
	d.dance()
	d.handles()
	return d.pic
}

// picture is an empty picture in the production's unit.
func picture(p *prep.Production) floorcanvas.Picture {
	return floorcanvas.Picture{
		Baseline: string(p.Plan.Baseline),
		Style:    p.Style(),
	}
}

type drawing struct {
	p         *prep.Production
	w         *prep.FloorWork
	o         Options
	tapes     tapes
	pic       floorcanvas.Picture
	fromDatum plane.Motion
	fromFloor plane.Motion
}

func (d *drawing) area(a floorcanvas.Area) { d.pic.Areas = append(d.pic.Areas, a) }

func (d *drawing) room() {
	f := d.w.Floor
	if len(f.Outline.Vertices) > 0 {
		outline := f.Outline.Moved(d.fromFloor)
		d.area(floorcanvas.Area{
			ID: ID(desk.Floor, string(f.ID)), Path: outline, Ink: theme.Wall, Outline: 3, Z: -3,
		})
		if b, ok := outline.Bounds(); ok {
			d.pic.Bounds = b
		}
	}
	for _, k := range f.KeepClears {
		d.area(floorcanvas.Area{
			ID: ID(desk.KeepClear, k.ID), Path: k.Shape.Moved(d.fromFloor), Fill: floorcanvas.Rising,
			Ink: theme.KeepClear, Outline: 1, Dash: floorcanvas.Dashed, Label: k.Name, Z: -2,
		})
	}
	for _, ob := range f.Obstacles {
		d.area(floorcanvas.Area{
			ID: ID(desk.Obstacle, ob.ID), Path: ob.Shape.Moved(d.fromFloor), Fill: floorcanvas.Crossed,
			Ink: theme.Obstacle, Outline: 1.5, Label: ob.Name, Z: -1,
		})
	}
}

// steps draws the lines along which the floor changes its height.
func (d *drawing) steps() {
	for _, s := range d.w.Floor.Steps {
		line := s.Line.Moved(d.fromFloor)
		id := ID(desk.Step, s.ID)
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{ID: id, Edges: line.Edges(), Ink: theme.Obstacle, Width: 2, Dash: floorcanvas.DashDot})
		if edges := line.Edges(); len(edges) > 0 {
			d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
				ID: id, At: edges[len(edges)/2].At(0.5), Text: s.Name, Size: 11, Ink: theme.FaintLabel, Anchor: floorcanvas.AtRight,
			})
		}
	}
}

// lines draws the tape, one shape for each path of an element.
func (d *drawing) lines() {
	for _, g := range byPath(d.w.Lines) {
		d.pic.Shapes = append(d.pic.Shapes, d.tapes.tapeShapes(
			ID(desk.Element, string(g[0].Element)), g[0].Stock, dashOf(g[0].Role), d.edges(g))...)
	}
	if d.o.Names {
		d.names()
	}
}

// others draws faintly what only other scenes need.
func (d *drawing) others(whole *prep.FloorWork, scene plan.SceneID) {
	var rest []plane.Edge
	for _, l := range whole.Lines {
		if !l.In(scene) {
			rest = append(rest, l.Edge.Moved(d.fromDatum))
		}
	}
	d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{Edges: rest, Ink: theme.FaintLine, Width: thinWidth})
}

func (d *drawing) edges(lines []floor.Line) []plane.Edge {
	out := make([]plane.Edge, len(lines))
	for i, l := range lines {
		out[i] = l.Edge.Moved(d.fromDatum)
	}
	return out
}

// byPath gathers neighbouring lines of one path of an element.
func byPath(lines []floor.Line) [][]floor.Line {
	var out [][]floor.Line
	for i, l := range lines {
		if i > 0 && l.Element == lines[i-1].Element && l.Path == lines[i-1].Path {
			out[len(out)-1] = append(out[len(out)-1], l)
			continue
		}
		out = append(out, []floor.Line{l})
	}
	return out
}

func (d *drawing) names() {
	boxes := map[plan.ElementID]plane.Box{}
	var order []plan.ElementID
	for _, l := range d.w.Lines {
		b := l.Edge.Moved(d.fromDatum).Bounds()
		if had, ok := boxes[l.Element]; ok {
			b = had.Union(b)
		} else {
			order = append(order, l.Element)
		}
		boxes[l.Element] = b
	}
	for _, id := range order {
		if e := d.p.Plan.Element(id); e != nil {
			d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
				ID: ID(desk.Element, string(id)), At: boxes[id].Centre(), Text: e.Name,
				Size: 11, Ink: theme.FaintLabel, Anchor: floorcanvas.Centred,
				Room: roomFor(boxes[id]),
			})
		}
	}
}

// roomFor is how wide a name may be to stand at a thing of this size: what is
// narrow from left to right may be named along its other side.
func roomFor(b plane.Box) float64 { return max(b.Width(), b.Height()) }

// overhangs marks what lies outside: broad, dotted, in the ink of trouble.
func (d *drawing) overhangs() {
	for _, o := range d.w.Overhangs {
		edges := make([]plane.Edge, len(o.Edges))
		for i, e := range o.Edges {
			edges[i] = e.Moved(d.fromDatum)
		}
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{
			ID: ID(desk.Element, string(o.Element)), Edges: edges, Ink: theme.Outside,
			Width: 3, Dash: floorcanvas.Dotted, Z: 3,
		})
	}
}

// pieces draws what is set by hand, thinly: it is not taped.
func (d *drawing) pieces() {
	for _, piece := range d.w.Pieces {
		id := ID(desk.Element, string(piece.Element))
		var box plane.Box
		for i, path := range piece.Paths {
			moved := path.Path.Moved(d.fromDatum)
			d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{
				ID: id, Edges: moved.Edges(), Ink: theme.FaintLabel, Width: thinWidth, Dash: dashOf(path.Role), Z: 1,
			})
			if b, ok := moved.Bounds(); ok && i == 0 {
				box = b
			}
		}
		if e := d.p.Plan.Element(piece.Element); e != nil && d.o.Names {
			d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
				ID: id, At: box.Centre(), Text: e.Name, Size: 11, Ink: theme.FaintLabel, Anchor: floorcanvas.Centred,
				Room: roomFor(box),
			})
		}
	}
}

func (d *drawing) marks() {
	for _, m := range d.w.Marks {
		id, at := ID(desk.Mark, m.Label), d.fromDatum.Apply(m.At)
		ink := theme.Line
		switch {
		case m.Weak:
			ink = theme.Care
		case !m.Progress.Placed.Open():
			ink = theme.Done
		}
		d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{ID: id, At: at, Sign: signs[m.Kind], Ink: ink})
		d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
			ID: id, At: at, Text: m.Label, Bold: true, Ink: theme.Label, Anchor: floorcanvas.AboveRight, Priority: 1,
		})
		if slices.Contains(d.o.Sure, m.Label) {
			e := m.Way(m.Method).Ellipse
			d.pic.Ellipses = append(d.pic.Ellipses, floorcanvas.Ellipse{
				At: at, Major: e.Major, Minor: e.Minor, Direction: e.Direction + d.fromDatum.Turn, Ink: ink, Text: "95 %",
			})
		}
	}
}

// guides draws the guide lines and the second baseline, where marks need them.
func (d *drawing) guides(whole *prep.FloorWork) {
	_, lines := whole.GuideLines()
	for _, l := range lines {
		e := l.Edge.Moved(d.fromDatum)
		d.pic.Shapes = append(d.pic.Shapes, floorcanvas.Shape{Edges: []plane.Edge{e}, Ink: theme.Datum, Width: 1, Dash: floorcanvas.Dashed})
		d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{At: e.B, Text: l.Name, Ink: theme.Datum, Anchor: floorcanvas.AboveRight})
	}
}

func (d *drawing) dance() {
	for _, n := range d.w.Dance {
		at := d.fromDatum.Apply(n.At)
		d.pic.Dots = append(d.pic.Dots, floorcanvas.Dot{At: at, Sign: floorcanvas.Square, Ink: theme.Datum, Size: 5})
		d.pic.Labels = append(d.pic.Labels, floorcanvas.Label{
			At: at, Text: n.Text, Ink: theme.Datum, Anchor: floorcanvas.Below,
		})
	}
}

func (d *drawing) handles() {
	f := d.w.Floor
	add := func(kind desk.Kind, id string, at plane.Point, form floorcanvas.HandleKind, name string) {
		d.pic.Handles = append(d.pic.Handles, floorcanvas.Handle{ID: ID(kind, id), At: at, Kind: form, Name: name})
	}
	if d.o.Pivots {
		for _, v := range f.Pivots {
			add(desk.Pivot, v.ID, d.fromFloor.Apply(v.At), floorcanvas.Pivot, v.Name)
		}
	}
	if d.o.Corners {
		for i, v := range f.Outline.Vertices {
			add(Corner, strconv.Itoa(i), d.fromFloor.Apply(v.Point), floorcanvas.Corner, "corner of the room")
		}
	}
	if d.o.Placement {
		plan := f.Placement.Then(d.fromFloor)
		add(Placement, ShiftPlan, plan.Apply(plane.Point{}), floorcanvas.Shift, "shift the plan")
		add(Placement, TurnPlan, plan.Apply(plane.Point{Y: turnArm}), floorcanvas.Turn, "turn the plan")
	}
}

// Kinds and identifiers of handles that are no rows of the production.
const (
	Corner    desk.Kind = "corner" // numbered from 0 in the order of the outline
	Placement desk.Kind = "placement"

	ShiftPlan = "shift"
	TurnPlan  = "turn"
)

// turnArm is how far up the centre line the turning handle stands, in metres.
const turnArm = 3
