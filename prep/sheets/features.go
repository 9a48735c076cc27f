package sheets

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// The pens of what belongs to the room and of the ways across it.
var (
	featurePen = pen{0.35, "solid"}
	seamPen    = pen{0.3, "centre line"}
	wayPen     = pen{0.5, "long-two"}
	gapPen     = pen{0.9, "solid"}
)

// thick is how thick a wall with a window, or a mirror, is drawn, in metres on the
// floor, and half of a stroke across the end of a narrow place.
const thick = 0.08

// features adds doors with the quarter circle of their leaf, windows, mirrors, sockets,
// seams and areas of other floors.
func (d *drawing) features(f *floor.Floor) {
	m := f.FloorToDatum()
	var used struct{ door, window, mirror, outlet, seam bool }
	add := func(n pen, edges ...plane.Edge) {
		for i := range edges {
			edges[i] = edges[i].Moved(m)
		}
		d.Strokes = append(d.Strokes, stroke{edges, n})
	}
	for i := range f.Features {
		t := &f.Features[i]
		edges := t.Shape.Edges()
		switch t.Kind {
		case floor.RoomDoor:
			used.door = true
			for _, leaf := range f.Leaves(t) {
				add(featurePen, leaf.Open)
				if leaf.Way.Chord() > 0 {
					add(featurePen, leaf.Way)
				}
			}
			if swing, ok := f.Swing(t); ok {
				d.Areas = append(d.Areas, area{swing.Moved(m), "", false})
			}
		case floor.RoomWindow:
			used.window = true
			for _, e := range edges {
				add(featurePen, shifted(e, thick))
				add(featurePen, shifted(e, -thick))
			}
		case floor.WallMirror:
			used.mirror = true
			for _, e := range edges {
				d.Strokes = append(d.Strokes, mirrorStrokes(e, f.Inward(e), m)...)
			}
		case floor.PowerOutlet:
			used.outlet = true
			if len(t.Shape.Vertices) > 0 {
				d.Strokes = append(d.Strokes, stroke{plane.Circle(m.Apply(t.Shape.Vertices[0].Point), thick).Edges(), featurePen})
			}
		default:
			used.seam = true
			add(seamPen, edges...)
		}
		if box, ok := t.Shape.Moved(m).Bounds(); ok {
			d.Names = append(d.Names, spot{At: box.Centre(), Text: t.Name, Kind: naming, Half: max(halfOf(box), besideLine)})
		}
	}
	d.entry(entry{Pen: featurePen, Text: featureEntry(used.door, used.window, used.mirror, used.outlet)}, used.door || used.window || used.mirror || used.outlet)
	d.entry(entry{Pen: seamPen, Text: "seam, or the edge of another floor"}, used.seam)
}

// featureEntry words what the thin lines at the walls are.
func featureEntry(door, window, mirror, outlet bool) string {
	var names []string
	for _, n := range []struct {
		is   bool
		name string
	}{{door, "door with its swing"}, {window, "window"}, {mirror, "mirror"}, {outlet, "power (ring)"}} {
		if n.is {
			names = append(names, n.name)
		}
	}
	return prep.Listed(names)
}

// shifted returns a straight edge moved to its left; an arc stays.
func shifted(e plane.Edge, by float64) plane.Edge {
	u, ok := e.B.Sub(e.A).Unit()
	if !ok || !e.Straight() {
		return e
	}
	return e.Moved(plane.Motion{Shift: u.Left().Times(by)})
}

// mirrorStrokes are the glass, and strokes aslant behind it.
func mirrorStrokes(e plane.Edge, in plane.Point, m plane.Motion) []stroke {
	u, _ := e.B.Sub(e.A).Unit()
	out := []stroke{{[]plane.Edge{e.Moved(m)}, featurePen}}
	n := min(max(int(e.Length()/(3*thick)), 1), 200)
	for k := range n {
		from := e.At((float64(k) + 0.5) / float64(n))
		back := plane.Edge{A: from, B: from.Sub(in.Times(thick)).Add(u.Times(thick))}
		out = append(out, stroke{[]plane.Edge{back.Moved(m)}, featurePen})
	}
	return out
}

// ways adds each way across the floor, its narrowest place and how wide that is.
func (d *drawing) ways(p *prep.Production, w *prep.FloorWork) {
	if w.Floor == nil {
		return
	}
	m := w.Floor.FloorToDatum()
	drawn := false
	for _, way := range w.Ways {
		if path := way.Path(); len(path) > 1 {
			d.Strokes = append(d.Strokes, stroke{plane.Open(path...).Moved(m).Edges(), wayPen})
			drawn = true
		}
		if way.Found.Limit == "" || way.None() {
			continue
		}
		gap := plane.Edge{A: way.Found.At[0], B: way.Found.At[1]}.Moved(m)
		d.Strokes = append(d.Strokes, stroke{[]plane.Edge{gap}, gapPen})
		if u, ok := gap.B.Sub(gap.A).Unit(); ok {
			for _, end := range []plane.Point{gap.A, gap.B} {
				across := u.Left().Times(thick)
				d.Strokes = append(d.Strokes, stroke{[]plane.Edge{{A: end.Add(across), B: end.Sub(across)}}, gapPen})
			}
		}
		text := way.Breadth(p)
		if way.Short() {
			text += ", too narrow"
		}
		d.Points = append(d.Points, spot{At: gap.At(0.5), Text: text, Kind: breadth})
	}
	d.entry(entry{Pen: wayPen, Text: "way across the floor"}, drawn)
	d.entry(entry{Pen: gapPen, Text: "where a way is narrowest"}, drawn)
}
