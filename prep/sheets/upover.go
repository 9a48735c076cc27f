package sheets

import (
	"cmp"
	"fmt"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/survey"
)

// upOver lists every mark by up and over, row by row from downstage.
func upOver(j Job) content {
	p, w := j.production(), j.work()
	var blocks []block
	if len(w.Marks) > 0 {
		blocks = append(squareRecipe(p, w), guideNotes(p, w)...)
		blocks = append(blocks, bullets{Items: upOverRules(p)})
		blocks = append(blocks, asideNotes(p, w)...)
	}
	blocks = append(blocks, upOverTable(p, w))
	if len(w.Marks) > 0 {
		blocks = append(blocks, errorNotes(p, w)...)
	}
	return content{blocks: append(blocks, retired(w)...)}
}

// upOverRules say how the list is read.
func upOverRules(p *prep.Production) []string {
	rules := []string{
		"Row by row from downstage to upstage: read up first, then over. DS before a figure: that far downstage of the baseline.",
		"Every figure runs from one zero. Leave the tape hooked at the baseline for all rows and at the centre line for the whole of a row; never measure on from the mark before, or the errors add up.",
		usesNote,
	}
	if stands := zeroEnds(p); stands != "" {
		rules = append(rules, stands)
	}
	return rules
}

// upOverTable is the marks of a floor by up and over.
func upOverTable(p *prep.Production, w *prep.FloorWork) table {
	f := figuresOf(p)
	t := table{
		Columns: []column{
			{Title: "mark", Type: labelType},
			{Title: "up", Type: floorType, Align: right},
			{Title: "side", Type: floorType, Align: middle},
			{Title: "over", Type: floorType, Align: right},
			{Title: "what it is", Flex: true},
			{Title: "within", Align: right},
			{Title: "use"},
			{Title: "placed", Kind: tick},
			{Title: "checked", Kind: tick},
		},
		Empty: noMarks,
	}
	for i, group := range rowsOf(w.Marks, p.Settings.Rules.Row) {
		t.Rows = append(t.Rows, span(rowTitle(i, group, f)))
		for _, m := range group {
			method := survey.UpAndOver
			if m.Method == survey.WithGuideLines {
				method = m.Method
			}
			t.Rows = append(t.Rows, cells(m.Label, f.up(m.Up()), f.side(m.Over()), f.over(m.Over()),
				meaning(m), withinOf(p, m, method), upOverUse(m), tickedIf(!m.Progress.Placed.Open()), tickedIf(!m.Progress.Checked.Open())))
		}
	}
	return t
}

// upOverUse is what a list by up and over says of the method.
func upOverUse(m prep.MeasuredMark) string {
	if m.Method == survey.WithGuideLines {
		return usesWords[m.Method]
	}
	return useOf(m, survey.UpAndOver)
}

const noMarks = "There are no marks on this floor in this scene yet: they follow from the lines of the plan once it lies on the floor."

// rowsOf gathers marks into rows from downstage, each from stage right. A row
// holds what lies within tolerance metres of its first mark.
func rowsOf(all []prep.MeasuredMark, tolerance float64) [][]prep.MeasuredMark {
	sorted := slices.Clone(all)
	slices.SortStableFunc(sorted, func(a, b prep.MeasuredMark) int { return cmp.Compare(a.Up(), b.Up()) })
	var rows [][]prep.MeasuredMark
	for _, m := range sorted {
		if n := len(rows) - 1; n >= 0 && m.Up()-rows[n][0].Up() <= max(tolerance, 0) {
			rows[n] = append(rows[n], m)
			continue
		}
		rows = append(rows, []prep.MeasuredMark{m})
	}
	for _, r := range rows {
		slices.SortStableFunc(r, func(a, b prep.MeasuredMark) int { return cmp.Compare(a.Over(), b.Over()) })
	}
	return rows
}

// rowTitle says how far up a row lies.
func rowTitle(i int, group []prep.MeasuredMark, f figures) string {
	low, high := group[0].Up(), group[0].Up()
	for _, m := range group {
		low, high = min(low, m.Up()), max(high, m.Up())
	}
	from, to := f.upWords(low), f.upWords(high)
	if from == to {
		return fmt.Sprintf("Row %d, %s", i+1, from)
	}
	return fmt.Sprintf("Row %d, %s to %s", i+1, from, to)
}

// meaning says what a mark is, and what kind of point where that is not plain.
func meaning(m prep.MeasuredMark) string {
	switch m.Kind {
	case marks.Spike:
		return or(m.What, "spike") + " – spike, " + m.Form()
	case marks.Curve, marks.Centre, marks.Crossing, marks.Change, marks.CutEnd, marks.Stop:
		if m.What == "" {
			return string(m.Kind)
		}
		return m.What + " – " + string(m.Kind)
	}
	return or(m.What, string(m.Kind))
}

// asideNotes say what is to be written on the floor beside what is moved aside, and
// from where it is measured.
func asideNotes(p *prep.Production, w *prep.FloorWork) []block {
	if w.Floor == nil {
		return nil
	}
	var items []string
	f := figuresOf(p)
	for _, n := range w.AsideNotes(p) {
		text := "Write on the floor: " + n.Text + ". "
		if n.Mark != "" {
			text += "Its own datum is mark " + n.Mark + "; from there its marks read as in their true place."
		} else {
			text += "Its own datum, " + f.place(n.Datum) + ", cannot be marked on this floor; the figures from there stand beside its marks."
		}
		items = append(items, text)
	}
	if len(items) == 0 {
		return nil
	}
	return []block{bullets{Items: items, Tick: true}}
}

// retired names labels that were printed before and are no more, so that nobody
// looks for them.
func retired(w *prep.FloorWork) []block {
	if len(w.Gone) == 0 {
		return nil
	}
	list := ""
	for i, g := range w.Gone {
		if i > 0 {
			list += ", "
		}
		list += g.Label
	}
	return []block{paragraph{Text: "No longer needed; lift these if they are down: " + list + "."}}
}
