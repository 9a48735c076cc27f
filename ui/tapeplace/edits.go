package tapeplace

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/floorpicture"
)

var errGone = errors.New("this tape is not there any more: somebody has deleted it")

// onStock makes a change to one stock.
func onStock(id plan.StockID, change func(*supplies.Stock) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		s := p.Stock(id)
		if s == nil {
			return errGone
		}
		return change(s)
	}
}

// newStock returns a tape to start from: an inch of cloth on sixty yards.
func newStock() supplies.Stock {
	return supplies.Stock{
		ID: plan.StockID(uuid.NewString()), Name: "New tape", Material: "cloth", Colour: "grey", Swatch: "#8a8a8a",
		Width: length.Inch, Roll: 180 * length.Foot, Duty: supplies.Lines,
	}
}

// copyOf returns another stock like one; nothing of it is on the shelf.
func copyOf(s supplies.Stock) supplies.Stock {
	s.ID, s.Shelf = plan.StockID(uuid.NewString()), 0
	s.Name += ", another"
	return s
}

// Checks of what was typed, in words.

func named(s *supplies.Stock, text string) error {
	if strings.TrimSpace(text) == "" {
		return errors.New("a tape needs a name: it is how everyone finds it")
	}
	s.Name = strings.TrimSpace(text)
	return nil
}

func swatched(s *supplies.Stock, text string) error {
	text = strings.ToLower(strings.TrimSpace(text))
	if text != "" && text[0] != '#' {
		text = "#" + text
	}
	if _, ok := floorpicture.Swatch(text); !ok {
		return fmt.Errorf("“%s” is not a swatch; type it as # and six of 0–9 and a–f, such as #c62828, or choose one", text)
	}
	s.Swatch = text
	return nil
}

// positive refuses what cannot be the width of a tape or the length of a roll.
func positive(metres float64) error {
	if !(metres > 0) {
		return errors.New("this must be more than nothing")
	}
	return nil
}

// parseRolls reads a number of rolls on the shelf.
func parseRolls(text string) (float64, error) {
	n, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(text), ",", "."), 64)
	if err != nil || math.IsNaN(n) || n < 0 || n > mostRolls {
		return 0, fmt.Errorf("“%s” is not a number of rolls; type one such as 1.5", text)
	}
	return n, nil
}

// mostRolls is more than any shelf holds; beyond it is a slip.
const mostRolls = 10_000
