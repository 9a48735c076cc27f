package layout

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"groundrow/tapeout/plane"
)

// look is how a layer is drawn on paper.
type look struct {
	stroke string
	swath  string // colour under the line; empty: none
	width  float64
	dash   string
}

// dotted is what is laid as a broken line, whatever its stock.
const dotted = "0.3 0.9"

// patterns of the stocks, in millimetres on paper: each can be told from the others
// without colour. From the ninth stock on they come again, with longer dashes.
var patterns = [][]float64{
	{}, {4, 1.2}, {2, 1}, {5, 1, 0.6, 1}, {5, 1, 0.6, 1, 0.6, 1}, {8, 1.5}, {2.5, 0.8, 2.5, 2.4}, {8, 1, 2, 1},
}

func pattern(n int) string {
	longer := 1 + 0.6*float64(n/len(patterns))
	var parts []string
	for _, v := range patterns[n%len(patterns)] {
		parts = append(parts, mm(v*longer))
	}
	if parts == nil && n > 0 {
		return mm(12*longer) + " " + mm(longer)
	}
	return strings.Join(parts, " ")
}

// looksOf returns how each layer is drawn.
func looksOf(layers []Layer) []look {
	looks := make([]look, len(layers))
	stocks := 0
	for i, layer := range layers {
		switch layer.Use {
		case Room:
			looks[i] = look{stroke: "black", width: 2 * lineWidth}
		case Datum:
			looks[i] = look{stroke: "black", width: thinWidth, dash: "10 1.2 1.2 1.2"}
		case CutShort:
			looks[i] = look{stroke: "black", width: 2 * lineWidth}
		case KeepClear:
			looks[i] = look{stroke: "black", width: thinWidth, dash: "1 1"}
		case Tape:
			looks[i] = look{stroke: "black", width: lineWidth, dash: pattern(stocks)}
			stocks++
			if c := layer.Colour; c.Known {
				looks[i].swath = tint(c.RGB)
			}
		default:
			looks[i] = look{stroke: "black", width: thinWidth}
		}
	}
	return looks
}

// broken tells whether all of the layer is laid or drawn as broken lines.
func (l Layer) broken() bool {
	return !slices.ContainsFunc(l.Paths, func(p Path) bool { return !p.Broken })
}

// tint returns the colour mixed with white paper, so that a black line is seen on
// the darkest of them.
func tint(rgb uint32) string {
	mixed := uint32(0)
	for shift := 0; shift < 24; shift += 8 {
		c := rgb >> shift & 0xff
		mixed |= (0xff - (0xff-c)*55/100) << shift
	}
	return fmt.Sprintf("#%06x", mixed)
}

// legend says what each kind of line is, below the drawing.
func legend(l *Layout, looks []look, top float64, caption string) group {
	words := group{Fill: "black", Size: mm(wordHeight), Family: "sans-serif"}
	g := group{ID: "legend", Title: "Legend"}
	for i, layer := range l.Layers {
		if len(layer.Paths) == 0 {
			continue
		}
		y := mm(top)
		d := "M" + mm(margin) + " " + y + "L" + mm(margin+sample) + " " + y
		look := looks[i]
		if layer.broken() {
			look.dash = dotted
		}
		if look.swath != "" {
			g.Groups = append(g.Groups, group{Stroke: look.swath, Width: mm(swathWidth), Paths: []path{{D: d}}})
		}
		g.Groups = append(g.Groups, group{Stroke: look.stroke, Width: mm(look.width), Dash: look.dash, Paths: []path{{D: d}}})
		at := plane.Point{X: margin + sample + 2, Y: top + wordHeight/3}
		words.Texts = append(words.Texts, text{mm(at.X), mm(at.Y), layer.Name})
		top += legendStep
	}
	words.Texts = append(words.Texts, text{mm(margin), mm(top + wordHeight/3), caption})
	g.Groups = append(g.Groups, words)
	return g
}

// mm writes millimetres to a millionth: on a drawing at 1:10000 that is a hundredth
// of a millimetre on the floor.
func mm(v float64) string {
	text := strings.TrimRight(strconv.FormatFloat(v, 'f', 6, 64), "0")
	text = strings.TrimSuffix(text, ".")
	if text == "-0" {
		return "0"
	}
	return text
}
