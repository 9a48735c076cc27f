package floorpicture

import (
	"image/color"
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// Widths of lines, in toolkit pixels.
const (
	tapeWidth   = 2.4
	edgingWidth = 4
	thinWidth   = 1.2
)

// faintTape is the contrast against the paper below which a tape colour gets an
// edging of ink, so that white tape is seen on a white sheet.
const faintTape = 2

// tapes gives every stock the colour of its tape.
type tapes map[plan.StockID]color.Color

func tapesOf(p *prep.Production) tapes {
	t := tapes{}
	for _, s := range p.Stocks {
		if c, ok := Swatch(s.Swatch); ok {
			t[s.ID] = c
		}
	}
	return t
}

// Swatch reads a colour written as "#rrggbb"; ok is false for anything else.
func Swatch(text string) (color.NRGBA, bool) {
	if len(text) != 7 || text[0] != '#' {
		return color.NRGBA{}, false
	}
	rgb, err := strconv.ParseUint(text[1:], 16, 32)
	if err != nil {
		return color.NRGBA{}, false
	}
	return color.NRGBA{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb), A: 0xff}, true
}

// tapeShapes draws edges as the tape that they are laid in. A colour that the
// paper would swallow is drawn on an edging of ink.
func (t tapes) tapeShapes(id string, stock plan.StockID, dash floorcanvas.Dash, edges []plane.Edge) []floorcanvas.Shape {
	tape := floorcanvas.Shape{ID: id, Edges: edges, Ink: theme.Line, Width: tapeWidth, Dash: dash, Z: 2}
	c, known := t[stock]
	if !known {
		return []floorcanvas.Shape{tape}
	}
	tape.Colour = c
	if theme.Contrast(c, theme.CurrentInks().Colour(theme.Paper)) >= faintTape {
		return []floorcanvas.Shape{tape}
	}
	edging := floorcanvas.Shape{Edges: edges, Ink: theme.Line, Width: edgingWidth, Dash: dash, Z: 1}
	return []floorcanvas.Shape{edging, tape}
}

func dashOf(r plan.Role) floorcanvas.Dash {
	if r.Dashed() {
		return floorcanvas.Dashed
	}
	return floorcanvas.Solid
}
