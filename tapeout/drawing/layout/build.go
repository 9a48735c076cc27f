package layout

import (
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// builder makes the layers of one layout.
type builder struct {
	Source
	fromDatum, fromRoom plane.Motion // to the axes of the layout
}

// Colours of what is not tape; each is legible on white and on black.
var (
	grey   = linework.RGB(0x707070)
	brown  = linework.RGB(0x9a6a3a)
	orange = linework.RGB(0xd07020)
	blue   = linework.RGB(0x3a78c8)
	black  = linework.RGB(0x000000)
)

// room returns the layers of the floor itself.
func (b *builder) room() []Layer {
	outline := Layer{Name: "Room", Use: Room, Colour: grey}
	outline.Paths = b.shape(outline.Paths, b.Floor.Outline)
	obstacles := Layer{Name: "Obstacles", Use: Obstacles, Colour: brown}
	for _, o := range b.Floor.Obstacles {
		obstacles.Paths = b.shape(obstacles.Paths, o.Shape)
		obstacles.Texts = b.inside(obstacles.Texts, o.Shape, o.Name)
	}
	clear := Layer{Name: "Keep clear", Use: KeepClear, Colour: orange}
	for _, k := range b.Floor.KeepClears {
		clear.Paths = b.shape(clear.Paths, k.Shape)
		clear.Texts = b.inside(clear.Texts, k.Shape, k.Name)
	}
	return []Layer{outline, obstacles, clear}
}

// shape adds a path in floor axes to the paths.
func (b *builder) shape(paths []Path, p plane.Path) []Path {
	if edges := p.Moved(b.fromRoom).Edges(); len(edges) > 0 {
		paths = append(paths, Path{Edges: edges})
	}
	return paths
}

func (b *builder) inside(texts []Text, shape plane.Path, name string) []Text {
	box, ok := shape.Moved(b.fromRoom).Bounds()
	if !ok || name == "" {
		return texts
	}
	return append(texts, Text{Text: name, At: box.Centre()})
}

// reach is how far the lines of the datum go where the floor has no outline, and
// beyond it where it has one, in metres.
const (
	reach     = 5.0
	overshoot = 0.3
)

// datum returns the centre line and the baseline, as far as the floor and a little
// further.
func (b *builder) datum() Layer {
	box := plane.Box{Min: plane.Point{X: -reach, Y: -reach}, Max: plane.Point{X: reach, Y: reach}}
	if room, ok := b.Floor.Outline.Moved(b.Floor.FloorToDatum()).Bounds(); ok {
		box = room.Grow(overshoot).Union(plane.Box{})
	}
	line := func(x1, y1, x2, y2 float64) Path {
		e := plane.Edge{A: plane.Point{X: x1, Y: y1}, B: plane.Point{X: x2, Y: y2}}
		return Path{Edges: []plane.Edge{e.Moved(b.fromDatum)}}
	}
	text := func(word string, x, y float64) Text {
		return Text{Text: word, At: b.fromDatum.Apply(plane.Point{X: x, Y: y})}
	}
	const aside = 0.05
	return Layer{
		Name: "Datum", Use: Datum, Colour: blue,
		Paths: []Path{line(0, box.Min.Y, 0, box.Max.Y), line(box.Min.X, 0, box.Max.X, 0)},
		Texts: []Text{
			text("Centre line, upstage", aside, box.Max.Y-textHeight),
			text("Audience", aside, box.Min.Y),
			text("Baseline, stage right", box.Min.X, aside),
		},
	}
}

// tape returns one layer for each stock that is laid, in the order of the stocks;
// what has no stock that is known comes last.
func (b *builder) tape() []Layer {
	at := map[plan.StockID]int{}
	var layers []Layer
	for _, s := range b.Stocks {
		at[s.ID] = len(layers)
		layers = append(layers, Layer{Name: "Tape " + s.Name, Use: Tape, Colour: s.Colour})
	}
	undecided := len(layers)
	layers = append(layers, Layer{Name: "Tape not decided", Use: Tape, Colour: black})
	for i, line := range b.Lines {
		n, ok := at[line.Stock]
		if !ok {
			n = undecided
		}
		paths := &layers[n].Paths
		edge := line.Moved(b.fromDatum)
		if i > 0 && goesOn(b.Lines[i-1], line) {
			last := &(*paths)[len(*paths)-1]
			last.Edges = append(last.Edges, edge)
			continue
		}
		*paths = append(*paths, Path{Edges: []plane.Edge{edge}, Broken: line.Role.Dashed()})
	}
	return layers
}

// goesOn tells whether next continues the chain that line belongs to.
func goesOn(line, next floor.Line) bool {
	return line.Element == next.Element && line.Path == next.Path && line.Stock == next.Stock &&
		line.Role == next.Role && line.B == next.A
}

// spiked returns the pieces that are set by hand.
func (b *builder) spiked() Layer {
	layer := Layer{Name: "Set by hand", Use: Spiked, Colour: grey}
	for _, piece := range b.Pieces {
		for _, p := range piece.Paths {
			if edges := p.Moved(b.fromDatum).Edges(); len(edges) > 0 {
				layer.Paths = append(layer.Paths, Path{Edges: edges, Broken: p.Role.Dashed()})
			}
		}
	}
	return layer
}

// labels returns the labels of the marks, each a little up and over from its point.
func (b *builder) labels() Layer {
	layer := Layer{Name: "Labels", Use: Marks, Colour: black}
	const aside = 0.04
	for _, m := range b.marks() {
		layer.Texts = append(layer.Texts, Text{Text: m.Label, At: m.At.Add(plane.Point{X: aside, Y: aside})})
	}
	return layer
}

func (b *builder) marks() []Point {
	var out []Point
	for _, m := range b.Source.Marks {
		out = append(out, Point{Label: m.Label, What: string(m.Kind) + " " + m.What, At: b.fromDatum.Apply(m.At)})
	}
	return out
}

func (b *builder) control() []Point {
	out := []Point{{Label: "datum", What: "centre line meets baseline", At: b.fromDatum.Apply(plane.Point{})}}
	for _, p := range b.Floor.Pivots {
		out = append(out, Point{Label: "pivot", What: p.Name, At: b.fromRoom.Apply(p.At)})
	}
	return out
}
