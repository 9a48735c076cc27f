package standinsplace

import (
	"groundrow/ui/grid"
)

// Copy returns what is selected in the table that is open, or all of it.
func (p *place) Copy() string {
	switch p.tabs.SelectedIndex() {
	case tabStock:
		return grid.Copied(stockColumns(), stockRows(p.view.P), p.stock.Selected())
	case tabPull:
		return grid.Copied(pullColumns(), pullRows(p.view.P), p.pull.Selected())
	default:
		return grid.Copied(pairColumns(), pairRows(p.view), p.pairs.Selected())
	}
}
