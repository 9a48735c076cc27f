package sheets

import "strings"

// wish is what a column asks of the width of a page, in millimetres.
type wish struct {
	least   float64 // its longest word; its longest figure whole
	natural float64 // all its text on one line
	flex    bool
}

// mostFixed is the share of the width that a column without Flex may ask for, so
// that one absurd cell does not press the others flat.
const mostFixed = 0.4

// leastFlex is the share of the width that a column with Flex gets in any case.
const leastFlex = 0.14

// wishes returns what the columns ask for.
func (t table) wishes(total float64) []wish {
	out := make([]wish, len(t.Columns))
	for i, c := range t.Columns {
		w := wish{least: longestWord(c.Title, strongType), flex: c.Flex}
		w.natural = w.least
		switch c.Kind {
		case tick:
			w.least = max(w.least, boxSide)
			w.natural = w.least
		case blank:
			w.natural = max(w.least, c.Width)
			w.least = max(w.least, c.Width*0.8)
		default:
			t.askWords(i, &w)
		}
		pad := 2*cellPad + 0.2
		w.least, w.natural = min(w.least+pad, total*mostFixed), min(w.natural+pad, total*mostFixed)
		if c.Flex {
			w.least = max(min(w.least, total*leastFlex), total*leastFlex*0.8)
		}
		out[i] = w
	}
	return out
}

// askWords adds what the cells of column i ask for.
func (t table) askWords(i int, w *wish) {
	c := t.Columns[i]
	for _, r := range t.Rows {
		if r.Span {
			continue
		}
		text, ty := clean(r.cell(i)), c.type_(r)
		whole := ty.width(text)
		w.natural = max(w.natural, whole)
		if c.Align == right {
			w.least = max(w.least, whole)
		} else {
			w.least = max(w.least, longestWord(text, ty))
		}
	}
}

func longestWord(s string, t type_) float64 {
	w := 0.0
	for _, word := range strings.Fields(clean(s)) {
		w = max(w, t.width(word))
	}
	return w
}

// widths shares the width of the page out: every column gets its least, then
// those of figures what their text needs, then the flexible ones the rest. What
// does not fit even so is pressed together, and its cells wrap.
func (t table) widths(total float64) []float64 {
	wishes := t.wishes(total)
	out := make([]float64, len(wishes))
	sum, flexes := 0.0, 0
	for i, w := range wishes {
		out[i] = w.least
		sum += w.least
		if w.flex {
			flexes++
		}
	}
	if sum > total {
		for i := range out {
			out[i] *= total / sum
		}
		return out
	}
	free := total - sum
	free -= t.spread(out, wishes, free, false)
	free -= t.spread(out, wishes, free, true)
	for i, w := range wishes {
		switch {
		case flexes > 0 && w.flex:
			out[i] += free / float64(flexes)
		case flexes == 0:
			out[i] += min(free/float64(len(out)), 12)
		}
	}
	return out
}

// spread gives the columns that are flexible, or those that are not, what they
// still want of the free width, or the same part of it each; it returns what it
// gave.
func (t table) spread(out []float64, wishes []wish, free float64, flex bool) float64 {
	wanted := 0.0
	for i, w := range wishes {
		if w.flex == flex {
			wanted += max(0, w.natural-out[i])
		}
	}
	if wanted <= 0 {
		return 0
	}
	part := min(1, free/wanted)
	for i, w := range wishes {
		if w.flex == flex {
			out[i] += max(0, w.natural-out[i]) * part
		}
	}
	return wanted * part
}
