package suppliesplace

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
	"groundrow/ui/grid"
	"groundrow/ui/suppliesplace/reckoning"
)

// Columns of the shelf.
const (
	shelfName = iota
	shelfGroup
	shelfCount
	shelfOut
	shelfBack
	shelfMissing
	shelfPrice
	shelfDays
	shelfSupplier
)

func shelfColumns() []grid.Column {
	return []grid.Column{
		{Title: "What", Width: 220, Grow: true, Swatch: true},
		{Title: "Kind", Width: 96},
		{Title: "Shelf", Width: 70, Right: true, Hint: "count"},
		{Title: "Gone out", Width: 76, Right: true},
		{Title: "Come back", Width: 84, Right: true},
		{Title: "Missing", Width: 70, Right: true, ReadOnly: true},
		{Title: "Price", Width: 76, Right: true, Hint: "12.50"},
		{Title: "Comes in", Width: 78, Right: true, Hint: "days"},
		{Title: "Supplier", Width: 110, Grow: true},
	}
}

// shelfRows shows every tape and every thing of the kit with what is there.
func shelfRows(p *prep.Production) []grid.Row {
	var rows []grid.Row
	for _, s := range p.Stocks {
		r := grid.Row{ID: string(s.ID), Cells: []string{
			s.Name, s.Material, reckoning.Rolls(s.Shelf), "", "", "", fields.FormatCents(s.Cents), days(s.LeadDays), s.Supplier,
		}}
		if c, ok := floorpicture.Swatch(s.Swatch); ok {
			r.Swatch = c
		}
		rows = append(rows, r)
	}
	for _, it := range p.Items {
		r := grid.Row{ID: it.ID, Cells: []string{
			it.Name, it.Group, strconv.Itoa(it.Shelf), blankZero(it.Out), blankZero(it.Back), "", fields.FormatCents(it.Cents), days(it.LeadDays), it.Supplier,
		}}
		if it.Out > 0 {
			r.Cells[shelfBack] = strconv.Itoa(it.Back)
		}
		if gone := it.Out - it.Back; it.Back > 0 && gone > 0 {
			r.Cells[shelfMissing] = strconv.Itoa(gone)
			r.CellProblems = map[int]string{shelfMissing: fmt.Sprintf("%d went out and %d came back.", it.Out, it.Back)}
		}
		rows = append(rows, r)
	}
	return rows
}

func days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return strconv.Itoa(n) + " days"
}

var errNotCounted = errors.New("tape is used up, so it is not counted out and back")

// editShelf takes a cell of the shelf into the production.
func editShelf(p *prep.Production, id string, column int, text string) error {
	if s := p.Stock(plan.StockID(id)); s != nil {
		return editStock(s, column, text)
	}
	if it := itemOf(p, id); it != nil {
		return editItem(it, column, text)
	}
	return errGone
}

func editStock(s *supplies.Stock, column int, text string) error {
	switch column {
	case shelfName:
		return setName(&s.Name, text)
	case shelfGroup:
		s.Material = strings.TrimSpace(text)
	case shelfCount:
		return take(&s.Shelf, parseRolls, text)
	case shelfOut, shelfBack:
		return errNotCounted
	case shelfPrice:
		return take(&s.Cents, fields.ParseCents, text)
	case shelfDays:
		return take(&s.LeadDays, parseDays, text)
	case shelfSupplier:
		s.Supplier = strings.TrimSpace(text)
	}
	return nil
}

func editItem(it *supplies.Item, column int, text string) error {
	switch column {
	case shelfName:
		return setName(&it.Name, text)
	case shelfGroup:
		it.Group = strings.TrimSpace(text)
	case shelfCount:
		return take(&it.Shelf, parseCount, text)
	case shelfOut:
		return take(&it.Out, parseCount, text)
	case shelfBack:
		return take(&it.Back, parseCount, text)
	case shelfPrice:
		return take(&it.Cents, fields.ParseCents, text)
	case shelfDays:
		return take(&it.LeadDays, parseDays, text)
	case shelfSupplier:
		it.Supplier = strings.TrimSpace(text)
	}
	return nil
}

// take sets what was read, and leaves it as it was when it could not be read.
func take[T any](to *T, read func(string) (T, error), text string) error {
	v, err := read(text)
	if err == nil {
		*to = v
	}
	return err
}

func setName(to *string, text string) error {
	text = strings.TrimSpace(text)
	if text == "" {
		return errors.New("this needs a name: it is how everyone finds it")
	}
	*to = text
	return nil
}

// most is more of one thing than any tape-out takes; beyond it is a slip.
const most = 10_000

func parseCount(text string) (int, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return 0, nil
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > most {
		return 0, fmt.Errorf("“%s” is not a count; type a whole number from 0 to %d", text, most)
	}
	return n, nil
}

func parseDays(text string) (int, error) {
	text = strings.TrimSpace(strings.TrimRight(strings.ToLower(text), "days "))
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > 365 {
		return 0, errors.New("type the days from order to delivery, such as 3")
	}
	return n, nil
}

func parseRolls(text string) (float64, error) {
	n, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(text), ",", "."), 64)
	if err != nil || math.IsNaN(n) || n < 0 || n > most {
		return 0, fmt.Errorf("“%s” is not a number of rolls; type one such as 1.5", text)
	}
	return n, nil
}

// shelfLabels name the edits of the columns.
var shelfLabels = map[int]string{
	shelfName: "Rename %s", shelfGroup: "Change the kind of %s", shelfCount: "Count %s on the shelf", shelfOut: "Count %s out",
	shelfBack: "Count %s back", shelfPrice: "Change the price of %s", shelfDays: "Change the days of delivery of %s", shelfSupplier: "Change the supplier of %s",
}
