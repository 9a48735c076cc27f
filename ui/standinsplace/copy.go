package standinsplace

import (
	"slices"

	"groundrow/ui/grid"
)

// copied writes the titles and the selected rows as tab-separated text; all rows when none is selected.
func copied(columns []grid.Column, rows []grid.Row, selected []string) string {
	if len(rows) == 0 {
		return ""
	}
	var titles []string
	for _, c := range columns {
		titles = append(titles, c.Title)
	}
	cells := [][]string{titles}
	for _, r := range rows {
		if len(selected) == 0 || slices.Contains(selected, r.ID) {
			cells = append(cells, r.Cells)
		}
	}
	return grid.Text(cells)
}

// Copy returns what is selected in the table that is open, or all of it.
func (p *place) Copy() string {
	switch p.tabs.SelectedIndex() {
	case tabStock:
		return copied(stockColumns(), stockRows(p.view.P), p.stock.Selected())
	case tabPull:
		return copied(pullColumns(), pullRows(p.view.P), p.pull.Selected())
	default:
		return copied(pairColumns(), pairRows(p.view), p.pairs.Selected())
	}
}
