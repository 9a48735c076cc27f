package tapeplace

import (
	"fmt"
	"strconv"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// sumColumns are those of the sum that leads to a run's total and price.
func sumColumns() []grid.Column {
	return []grid.Column{
		{Title: "What", Width: 140, ReadOnly: true},
		{Title: "How", Width: 190, Grow: true, ReadOnly: true},
		{Title: "Comes to", Width: 92, Right: true, ReadOnly: true},
	}
}

// sumRows writes the sum of a run step by step, down to what must be paid, with
// enough decimals that a calculator comes to the same.
func sumRows(p *prep.Production, r supplies.Run) []grid.Row {
	var rows []grid.Row
	add := func(bold bool, what, how, comes string) {
		rows = append(rows, grid.Row{ID: strconv.Itoa(len(rows)), Bold: bold, Cells: []string{what, how, comes}})
	}
	unit := " " + reckoning.Unit(p)
	for _, s := range r.Sum() {
		add(false, s.Label, stepHow(p, s), reckoning.Figure(p, s.Metres, 2)+unit)
	}
	add(true, "Total", "all of these added up", reckoning.Figure(p, r.Total, 2)+unit)
	s := p.Stock(r.Stock)
	if s == nil || !(s.Roll > 0) {
		return rows
	}
	add(false, "Rolls", "÷ "+reckoning.Figure(p, s.Roll, 2)+unit+" on a roll", fmt.Sprintf("%.2f", r.Need))
	add(false, "On the shelf", "rolls, part rolls too", "− "+reckoning.Rolls(r.Shelf))
	if r.Coming > 0 {
		add(false, "Coming", comingHow(r), "− "+strconv.Itoa(r.Coming))
	}
	add(true, "To buy", "whole rolls, rounded up", strconv.Itoa(r.Buy))
	if r.Buy > 0 {
		add(true, "Cost", fmt.Sprintf("%d × %s a roll", r.Buy, p.Money(s.Cents)), p.Money(r.Cents))
		add(false, "Order by", orderHow(p, s), reckoning.Day(r.OrderBy))
	}
	return rows
}

func stepHow(p *prep.Production, s supplies.Step) string {
	switch {
	case s.Count > 0:
		return fmt.Sprintf("%d × %s %s", s.Count, reckoning.Figure(p, s.Each, 3), reckoning.Unit(p))
	case s.Share > 0:
		return fmt.Sprintf("%.4g %% of %s %s", s.Share*100, reckoning.Figure(p, s.Of, 2), reckoning.Unit(p))
	}
	return "true length; what coincides counts once"
}

func comingHow(r supplies.Run) string {
	if r.Late > 0 {
		return fmt.Sprintf("rolls on order, %d of them too late", r.Late)
	}
	return "rolls on order"
}

func orderHow(p *prep.Production, s *supplies.Stock) string {
	if p.Needed().IsZero() {
		return "set the first rehearsal to have a day"
	}
	return fmt.Sprintf("%s to deliver before %s", reckoning.Count(s.LeadDays, "day"), reckoning.Day(p.Needed()))
}
