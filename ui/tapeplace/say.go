package tapeplace

import (
	"fmt"
	"strings"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
	"groundrow/ui/suppliesplace/reckoning"
)

// undecidedWords says for what no tape has been chosen yet; empty when everything
// has one.
func undecidedWords(p *prep.Production, runs []supplies.Run, elements int) string {
	r, ok := runOf(runs, "")
	if !ok || !(r.Total > 0) {
		return ""
	}
	var what []string
	if elements > 0 {
		what = append(what, reckoning.Count(elements, "element"))
	}
	if missing := listed(serves(p, "")); missing != "" && r.Lines < r.Total-r.Waste-r.Wear-r.Overlaps {
		what = append(what, missing)
	}
	return fmt.Sprintf("%s of tape have no stock chosen: %s. They are in no roll and no price.", reckoning.Tape(p, r.Total), strings.Join(what, ", and "))
}

func listed(duties []supplies.Duty) string {
	var out []string
	for _, d := range duties {
		out = append(out, string(d))
	}
	return strings.Join(out, ", ")
}

// stockWords says what a stock is laid for, and where.
func stockWords(p *prep.Production, id plan.StockID) string {
	elements := users(p, id)
	said := "Named by " + reckoning.Count(elements, "element") + " of the plan"
	if elements == 0 {
		said = "No element of the plan names it"
	}
	if also := listed(serves(p, id)); also != "" {
		said += "; also laid for " + also
	}
	return said + "."
}

// savingWords says what would be saved and what would be lost.
func savingWords(p *prep.Production, s prep.Saving) string {
	said := "Saves " + reckoning.Tape(p, s.Metres)
	switch {
	case s.Cents > 0:
		said += " and " + p.Money(s.Cents)
	default:
		said += ", but no whole roll and so no money"
	}
	if s.Loses > 0 {
		said += "; " + reckoning.Count(s.Loses, "element") + " would be laid otherwise"
	}
	return said + "."
}

// sheetWords names what the canvas shows.
func sheetWords(p *prep.Production, floor string, chosen bool, id plan.StockID) string {
	if floor == "" {
		return ""
	}
	if !chosen {
		return floor + ": all tape, in every scene. Choose a tape to see its lines alone."
	}
	return floor + ": " + nameOf(p, id) + ", in every scene; the rest is faint."
}
