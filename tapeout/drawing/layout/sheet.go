package layout

import (
	"slices"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// MarkLayer is the layer of a sheet on which the marks and the control points lie.
const MarkLayer = "Marks"

// PointKind is the kind of an item that is one point: an edge from there to itself.
const PointKind = "POINT"

// textHeight is the height of capitals, in metres on the floor: 2.4 mm on paper at
// 1:50.
const textHeight = 0.12

// dash is a broken line: drawn, gap, in metres.
var dash = []float64{0.15, 0.1}

// UnitFor returns the drawing unit for a production that writes its lengths in u.
// Feet and inches are drawn in inches, as drawing offices do (common practice, no
// source).
func UnitFor(u length.Unit) linework.Unit {
	switch u {
	case length.FeetInches:
		return linework.Inch
	case length.Centimetres:
		return linework.Centimetre
	case length.Millimetres:
		return linework.Millimetre
	}
	return linework.Metre
}

// Sheet returns the layout as line work in the drawing unit: a layer for each stock
// and for the room, the obstacles, what is kept clear, each kind of feature, the datum
// and the signs of what is cut short; the marks as items of PointKind on MarkLayer, and their labels. A unit that is not above zero
// counts as the metre.
func (l *Layout) Sheet(unit linework.Unit) *linework.Sheet {
	if !(unit > 0) {
		unit = linework.Metre
	}
	s := &linework.Sheet{Unit: linework.Metre}
	for _, layer := range l.Layers {
		name := sheetName(layer.Name)
		s.Layers = append(s.Layers, linework.Layer{Name: name, Colour: layer.Colour})
		for _, p := range layer.Paths {
			item := linework.Item{Edges: p.Edges, Layer: name, Kind: "LWPOLYLINE", Colour: layer.Colour}
			if p.Broken {
				item.Dash = dash
			}
			s.Items = append(s.Items, item)
		}
		for _, t := range layer.Texts {
			s.Texts = append(s.Texts, linework.Text{Text: t.Text, At: t.At, Height: textHeight, Layer: name})
		}
	}
	s.Layers = append(s.Layers, linework.Layer{Name: MarkLayer, Colour: black})
	for _, p := range slices.Concat(l.Control, l.Marks) {
		s.Items = append(s.Items, linework.Item{
			Edges: []plane.Edge{{A: p.At, B: p.At}}, Layer: MarkLayer, Kind: PointKind, Colour: black,
		})
	}
	s.Box, _ = s.Bounds(nil)
	s = s.Scaled(1 / float64(unit))
	s.Unit, s.UnitWhy = unit, "It is written so."
	return s
}
