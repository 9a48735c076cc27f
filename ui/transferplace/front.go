package transferplace

import (
	"fmt"
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/marks"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

func missingColumns() []grid.Column {
	return []grid.Column{
		{Title: "What would be missing if it were handed over today", Width: 360, Grow: true, ReadOnly: true},
		{Title: "Mend it in", Width: 96, ReadOnly: true},
	}
}

// missingRows says what the next team would miss.
func missingRows(t prep.Transfer) []grid.Row {
	rows := make([]grid.Row, len(t.Problems))
	for i, pr := range t.Problems {
		rows[i] = grid.Row{ID: strconv.Itoa(i), Cells: []string{pr.Sentence(), pr.Place}}
	}
	return rows
}

// cure tells where a problem of the transfer can be mended, and on which floor.
func cure(pr prep.Problem) (desk.Name, desk.Selection) {
	kind := map[string]desk.Kind{
		prep.PlacePlan: desk.Element, prep.PlaceTransfer: desk.Note,
	}[pr.Place]
	if kind == desk.Nothing || pr.ID == "" {
		return desk.Name(pr.Place), desk.Selection{}
	}
	return desk.Name(pr.Place), desk.Select(kind, pr.ID)
}

func bringColumns() []grid.Column {
	return []grid.Column{
		{Title: "Tape to bring", Width: 150, Grow: true, ReadOnly: true, Swatch: true},
		{Title: "To lay", Width: 90, Right: true, ReadOnly: true},
		{Title: "With waste", Width: 100, Right: true, ReadOnly: true},
		{Title: "Rolls", Width: 60, Right: true, ReadOnly: true},
	}
}

// bringRows says which tape the next floor takes.
func bringRows(v *desk.View, t prep.Transfer) []grid.Row {
	style := v.Style()
	var rows []grid.Row
	for _, r := range t.Tape {
		if !(r.Total > 0) {
			continue
		}
		rolls := ""
		if r.Rolls > 0 {
			rolls = strconv.Itoa(r.Rolls)
		}
		row := grid.Row{ID: "stock " + string(r.Stock), Cells: []string{
			stockName(v.P, r.Stock), style.Format(r.Lines + r.Overlaps + r.Patches + r.Tabs + r.Spikes + r.Figures), style.Format(r.Total), rolls,
		}}
		row.Swatch = swatch(v.P, r.Stock)
		rows = append(rows, row)
	}
	return rows
}

// danceWords tell how the dance lines are laid on the next floor.
func danceWords(v *desk.View, t prep.Transfer) string {
	if len(t.Dance) == 0 {
		return "No dance line goes."
	}
	var out []string
	for _, d := range t.Dance {
		out = append(out, recipe(v, d))
	}
	return strings.Join(out, "\n")
}

func recipe(v *desk.View, d prep.DanceRecipe) string {
	style := v.Style()
	name := d.Line.Name
	if name == "" {
		name = "Dance line"
	}
	text := fmt.Sprintf("%s: a row of figures straight across, %s", name, upWords(v, d.Line.Up, "the baseline"))
	if d.Line.Habit == marks.Quarters {
		text += fmt.Sprintf(", quarters and eighths out to %s on each side.", style.Format(d.Line.Reach))
	} else {
		text += fmt.Sprintf(", every %s from centre out to %s on each side.", style.Format(d.Line.Step), style.Format(d.Line.Reach))
	}
	text += " Measure straight out from centre, never along the curve."
	worst := 0.0
	for _, n := range d.Figures {
		worst = max(worst, n.Slip)
	}
	if style.Round(worst) > 0 {
		text += fmt.Sprintf(" Along the curve the last figure would slip by %s.", style.Format(worst))
	}
	if !d.Here {
		text += " It is laid here only so far: add it to the next floor to have it on that floor's sheets."
	}
	return text
}

// upWords says in a sentence how far up or down from a line something lies.
func upWords(v *desk.View, up float64, line string) string {
	style := v.Style()
	switch up = style.Round(up); {
	case up < 0:
		return style.Format(-up) + " downstage of " + line
	case up > 0:
		return style.Format(up) + " upstage of " + line
	}
	return "on " + line
}

// handOver says in one sentence whether it could be handed over today.
func handOver(t prep.Transfer) (ready bool, text string) {
	goes, stays, open := 0, 0, len(t.Open)
	for _, r := range t.Rows {
		if r.Goes {
			goes++
		} else {
			stays++
		}
	}
	text = fmt.Sprintf("%s %s to %s, %d %s not.", prep.Counted(goes, "element"), agree(goes, "goes", "go"), t.To.Name, stays, agree(stays, "does", "do"))
	switch n := len(t.Problems); {
	case n == 0:
		return true, text + " Nothing would be missing if it were handed over today."
	case open > 0:
		return false, text + fmt.Sprintf(" Handed over today, %s would be missing; %s open.", prep.Counted(n, "thing"), prep.Counted(open, "note")+" "+agree(open, "is", "are"))
	default:
		return false, text + fmt.Sprintf(" Handed over today, %s would be missing.", prep.Counted(n, "thing"))
	}
}

func agree(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}
