package layout

import (
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// Sizes of the signs, in metres on the floor (common practice, no source).
const (
	breakLong    = 0.26 // a stroke of the sign where a line is cut short
	breakApart   = 0.07 // between its two strokes
	breakAslant  = math.Pi / 3
	oneBreak     = 1e-3 // two lines that are cut this near each other have one sign
	glass        = 0.08 // between the lines of a window, and from a mirror to its backing
	outletRadius = 0.08
)

// featureLayers are the layers of the features by their kinds, in drawing order.
var featureLayers = []struct {
	name  string
	kinds []floor.FeatureKind
	draw  func(b *builder, l *Layer, t *floor.Feature)
}{
	{"Doors", []floor.FeatureKind{floor.RoomDoor}, (*builder).door},
	{"Windows", []floor.FeatureKind{floor.RoomWindow}, (*builder).window},
	{"Mirrors", []floor.FeatureKind{floor.WallMirror}, (*builder).mirror},
	{"Power outlets", []floor.FeatureKind{floor.PowerOutlet}, (*builder).outlet},
	{"Seams", []floor.FeatureKind{floor.Seam}, (*builder).broken},
	{"Other surfaces", []floor.FeatureKind{floor.SprungFloor, floor.DanceFloor}, (*builder).broken},
}

// features returns a layer for each kind of feature of the room, and one for its steps.
func (b *builder) features() []Layer {
	var out []Layer
	for _, of := range featureLayers {
		layer := Layer{Name: of.name, Use: Features, Colour: grey}
		for i := range b.Floor.Features {
			t := &b.Floor.Features[i]
			for _, kind := range of.kinds {
				if t.Kind == kind {
					of.draw(b, &layer, t)
					layer.Texts = b.inside(layer.Texts, t.Shape, t.Name)
				}
			}
		}
		out = append(out, layer)
	}
	return append(out, b.steps())
}

// chain adds edges in floor axes, each beginning where the one before ends, as one path.
func (b *builder) chain(l *Layer, broken bool, edges ...plane.Edge) {
	moved := make([]plane.Edge, len(edges))
	for i, e := range edges {
		moved[i] = e.Moved(b.fromRoom)
	}
	if len(moved) > 0 {
		l.Paths = append(l.Paths, Path{Edges: moved, Broken: broken})
	}
}

// door draws the way through the wall as a broken line, and the leaf as it stands open
// with the way that it swings.
func (b *builder) door(l *Layer, t *floor.Feature) {
	closed, ok := t.Leaf()
	if !ok {
		return
	}
	b.chain(l, true, closed)
	for _, leaf := range b.Floor.Leaves(t) {
		if leaf.Way.Length() > 0 {
			b.chain(l, false, leaf.Open, leaf.Way.Reversed())
			continue
		}
		b.chain(l, false, leaf.Open)
	}
}

// window draws the glass between the two faces of its wall.
func (b *builder) window(l *Layer, t *floor.Feature) {
	for _, e := range t.Shape.Edges() {
		across := b.Floor.Inward(e).Times(glass)
		for _, by := range []plane.Point{across, {}, across.Times(-1)} {
			b.chain(l, false, e.Moved(plane.Motion{Shift: by}))
		}
	}
}

// mirror draws the glass, and its backing on the side of the wall.
func (b *builder) mirror(l *Layer, t *floor.Feature) {
	for _, e := range t.Shape.Edges() {
		b.chain(l, false, e)
		b.chain(l, true, e.Moved(plane.Motion{Shift: b.Floor.Inward(e).Times(-glass)}))
	}
}

// outlet draws a socket as a circle with a stroke through it.
func (b *builder) outlet(l *Layer, t *floor.Feature) {
	if len(t.Shape.Vertices) == 0 {
		return
	}
	at := t.Shape.Vertices[0].Point
	b.chain(l, false, plane.Circle(at, outletRadius).Edges()...)
	b.chain(l, false, plane.Edge{A: at.Sub(plane.Point{Y: outletRadius}), B: at.Add(plane.Point{Y: outletRadius})})
}

// broken draws the shape of a feature as a broken line.
func (b *builder) broken(l *Layer, t *floor.Feature) { b.chain(l, true, t.Shape.Edges()...) }

// steps returns the lines along which the floor changes its height.
func (b *builder) steps() Layer {
	layer := Layer{Name: "Steps in the floor", Use: Features, Colour: brown}
	for _, s := range b.Floor.Steps {
		b.chain(&layer, false, s.Line.Edges()...)
		layer.Texts = b.inside(layer.Texts, s.Line, s.Name)
	}
	return layer
}

// cuts signs every end at which the room cuts a line short, with two strokes aslant
// across it: nobody may take it for the end of the scenery.
func (b *builder) cuts() Layer {
	layer := Layer{Name: "Cut short", Use: CutShort, Colour: orange}
	var signed []plane.Point
	for _, line := range b.Lines {
		for _, end := range []struct {
			cut    bool
			at     plane.Point
			beyond plane.Point
		}{{line.Cut.A, line.A, line.Tangent(0).Times(-1)}, {line.Cut.B, line.B, line.Tangent(1)}} {
			if end.cut && !anyNear(signed, end.at) {
				signed = append(signed, end.at)
				b.cut(&layer, end.at, end.beyond)
			}
		}
	}
	return layer
}

func anyNear(points []plane.Point, p plane.Point) bool {
	for _, q := range points {
		if q.To(p) < oneBreak {
			return true
		}
	}
	return false
}

// cut draws one sign at a point in datum axes from which the scenery goes on in the
// direction beyond.
func (b *builder) cut(l *Layer, at, beyond plane.Point) {
	half := plane.Motion{Turn: breakAslant}.Rotate(beyond).Times(breakLong / 2)
	for _, along := range []float64{-breakApart / 2, breakApart / 2} {
		middle := at.Add(beyond.Times(along))
		stroke := plane.Edge{A: middle.Sub(half), B: middle.Add(half)}
		l.Paths = append(l.Paths, Path{Edges: []plane.Edge{stroke.Moved(b.fromDatum)}})
	}
	l.Texts = append(l.Texts, Text{Text: "cut short", At: b.fromDatum.Apply(at.Add(beyond.Times(breakLong)))})
}
