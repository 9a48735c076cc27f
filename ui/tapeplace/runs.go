package tapeplace

import (
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// undecided is the row of what no tape has been chosen for; a row needs an
// identifier that is not empty.
const undecided = "undecided"

// noTape is how a run without a stock is called.
const noTape = "No tape chosen"

// rowOf and stockOf turn a stock into the identifier of its row and back.
func rowOf(id plan.StockID) string {
	if id == "" {
		return undecided
	}
	return string(id)
}

func stockOf(row string) plan.StockID {
	if row == undecided {
		return ""
	}
	return plan.StockID(row)
}

// runsOf returns the tape of all floors together, or what the chosen floor would
// take if it were the only one.
func runsOf(v *desk.View, onlyHere bool) []supplies.Run {
	if !onlyHere {
		return prep.Purchase(v.P, v.Work)
	}
	if w := v.Work(v.Floor); w != nil {
		return w.Tape
	}
	return nil
}

// runOf returns the run of a stock; ok is false when there is none.
func runOf(runs []supplies.Run, id plan.StockID) (r supplies.Run, ok bool) {
	for _, r := range runs {
		if r.Stock == id {
			return r, true
		}
	}
	return supplies.Run{}, false
}

func nameOf(p *prep.Production, id plan.StockID) string {
	if id == "" {
		return noTape
	}
	if s := p.Stock(id); s != nil {
		return s.Name
	}
	return "Unknown tape"
}

// Columns of the table.
const (
	colName = iota
	colLines
	colAllowed
	colTotal
	colNeed
	colShelf
	colComing
	colBuy
	colCost
	colOrder
)

// runColumns are the columns of the table; lengths are in the unit of tape.
func runColumns(unit string) []grid.Column {
	figure := func(title string, width float32) grid.Column {
		return grid.Column{Title: title, Width: width, Right: true, ReadOnly: true}
	}
	in := ", " + unit
	cols := []grid.Column{
		{Title: "Tape", Width: 146, Grow: true, Swatch: true},
		figure("Lines"+in, 66), figure("Added"+in, 76), figure("Total"+in, 70),
		figure("Rolls", 52), {Title: "Shelf", Width: 52, Right: true, Hint: "rolls"}, figure("Coming", 64), figure("To buy", 62), figure("Cost", 70),
		{Title: "Order by", Width: 130, ReadOnly: true},
	}
	return cols
}

// runRows shows every stock with what it takes and what must be bought of it.
func runRows(p *prep.Production, runs []supplies.Run, now time.Time) []grid.Row {
	rows := make([]grid.Row, 0, len(runs))
	for _, r := range runs {
		row := grid.Row{ID: rowOf(r.Stock), Dim: !(r.Total > 0), Bold: r.Short()}
		row.Cells = []string{
			nameOf(p, r.Stock), reckoning.Figure(p, r.Lines, 1), reckoning.Figure(p, r.Total-r.Lines, 1), reckoning.Figure(p, r.Total, 1),
		}
		if s := p.Stock(r.Stock); s != nil {
			row.Cells = append(row.Cells, stockCells(p, s, r, now)...)
			row.CellProblems = runProblems(s, r)
			if c, ok := floorpicture.Swatch(s.Swatch); ok {
				row.Swatch = c
			}
		} else {
			row.Problem = "No tape is chosen for this: it is counted in no roll and no price."
		}
		rows = append(rows, row)
	}
	return rows
}

func stockCells(p *prep.Production, s *supplies.Stock, r supplies.Run, now time.Time) []string {
	return []string{
		reckoning.Rolls(r.Need), reckoning.Rolls(s.Shelf), blankZero(r.Coming),
		blankZero(r.Buy), money(p, r.Cents), reckoning.OrderBy(r.Buy, r.OrderBy, now),
	}
}

func runProblems(s *supplies.Stock, r supplies.Run) map[int]string {
	found := map[int]string{}
	if !(s.Roll > 0) && r.Total > 0 {
		found[colNeed] = "The length of a roll is not known, so its rolls cannot be counted."
	}
	if r.Late > 0 {
		found[colComing] = reckoning.Count(r.Late, "roll") + " of what is coming will come too late."
	}
	if r.Short() {
		found[colBuy] = reckoning.Count(r.Buy, "roll") + " must still be ordered."
	}
	return found
}

func blankZero(n int) string {
	if n == 0 {
		return ""
	}
	return reckoning.Rolls(float64(n))
}

func money(p *prep.Production, cents int) string {
	if cents == 0 {
		return ""
	}
	return p.Money(cents)
}

// together says what all tapes come to.
func together(p *prep.Production, runs []supplies.Run) string {
	metres, rolls, cents := 0.0, 0, 0
	for _, r := range runs {
		metres += r.Total
		rolls += r.Buy
		cents += r.Cents
	}
	if !(metres > 0) {
		return "Nothing to tape yet: it follows from the plan and a floor."
	}
	said := "Together " + reckoning.Tape(p, metres) + " of tape"
	if rolls == 0 {
		return said + "; no roll is to be bought."
	}
	return said + "; " + reckoning.Count(rolls, "roll") + " to buy for " + p.Money(cents) + "."
}
