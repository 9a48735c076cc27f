package prep

import (
	"strconv"
	"strings"

	"groundrow/tapeout/drawing"
	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/marks"
)

// Outgoing gathers what other programs are given of a floor: its lines and marks in
// the scene of the work, each stock by the name and colour of its tape.
func Outgoing(p *Production, w *FloorWork) layout.Source {
	s := layout.Source{
		Title: p.Settings.Title, Revision: p.Plan.Revision,
		Floor: w.Floor, Lines: w.Lines, Pieces: w.Pieces,
		Marks: make([]marks.Mark, len(w.Marks)),
	}
	if w.Scene != "" {
		s.Scene = p.Plan.SceneName(w.Scene)
	}
	for i, m := range w.Marks {
		s.Marks[i] = m.Mark
	}
	for _, stock := range p.Stocks {
		s.Stocks = append(s.Stocks, layout.Stock{ID: stock.ID, Name: stock.Name, Colour: swatch(stock.Swatch)})
	}
	return s
}

// swatch reads a colour written as "#rrggbb"; it is not known for anything else.
func swatch(text string) linework.Colour {
	digits, ok := strings.CutPrefix(text, "#")
	rgb, err := strconv.ParseUint(digits, 16, 24)
	if !ok || err != nil || len(digits) != 6 {
		return linework.Colour{}
	}
	return linework.RGB(uint32(rgb))
}

// MarkRows returns the marks of a floor as the rows of a table.
func MarkRows(w *FloorWork) []drawing.MarkRow {
	var rows []drawing.MarkRow
	for _, m := range w.Marks {
		row := drawing.MarkRow{Label: m.Label, Kind: string(m.Kind), What: m.What, Up: m.Up(), Over: m.Over()}
		if m.HasTapes {
			row.Tapes = &drawing.Tapes{A: m.Tapes.A, B: m.Tapes.B, Side: string(m.Tapes.Side), Pivots: m.Pair.Words()}
		}
		rows = append(rows, row)
	}
	return rows
}
