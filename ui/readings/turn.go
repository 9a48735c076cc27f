package readings

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/ui/fields"
)

// turn is what the page shows of one measure.
type turn struct {
	title    string // "A – K", in large type
	where    string // what the two marks are
	expected string
	other    string // the same in feet for metres, in metres for feet
	count    string // how far one has got
	kind     fields.Kind
	said     string   // what has been read of it already, and what that means
	ends     []ending // the marks that can be ticked
}

// ending is one end of a measure that is a mark.
type ending struct {
	label           string
	placed, checked bool
}

// turnOf returns what is shown of the measure at a place in the list.
func turnOf(p *prep.Production, w *prep.FloorWork, list []prep.Measure, at int) turn {
	m := list[at]
	read := 0
	for _, x := range list {
		if x.Read != nil {
			read++
		}
	}
	t := turn{
		title: m.From + " – " + m.To, expected: p.Style().Format(m.Expected), other: otherUnit(p).Format(m.Expected),
		count: fmt.Sprintf("Measure %d of %d: %s. %d read.", at+1, len(list), m.Why, read),
	}
	var where []string
	for _, end := range m.Ends {
		for _, k := range w.Marks {
			if k.Label != end {
				continue
			}
			where = append(where, fmt.Sprintf("%s: %s. Up %s, over %s", k.Label, k.What, p.Style().FormatUp(k.Up()), p.Style().FormatOver(k.Over())))
			t.ends = append(t.ends, ending{k.Label, !k.Progress.Placed.Open(), !k.Progress.Checked.Open()})
		}
	}
	if m.Ends[0] == prep.FirstPivot && m.Ends[1] == prep.SecondPivot {
		t.title, where = "Pivot 1 – pivot 2", []string{"1: " + m.From, "2: " + m.To}
	}
	t.where = strings.Join(where, "\n")
	if m.Read != nil {
		t.kind, t.said = saidOf(p, m)
	} else if !m.Ready {
		t.kind, t.said = fields.Note, "Not both of these marks have been ticked as placed yet."
	}
	return t
}

// saidOf says what was read of a measure, by whom and when, and what that is worth.
func saidOf(p *prep.Production, m prep.Measure) (fields.Kind, string) {
	good, judgement := p.Judgement(m)
	kind := fields.Warning
	if good {
		kind = fields.Good
	}
	return kind, fmt.Sprintf("Read: %s%s. %s", p.ShowReading(m.Read.Reading), prep.ByWhom(m.Read.By, m.Read.On), judgement)
}

// otherUnit is how a length is written for a tape in the other system.
func otherUnit(p *prep.Production) length.Style {
	if p.Unit().Metric() {
		return length.Style{Unit: length.FeetInches, Step: 0.0254 / 8}
	}
	return length.Style{Unit: length.Metres, Step: 0.005}
}

// asTyped returns the text with the unit that a bare number is meant in, so that it
// is kept as it was meant.
func asTyped(text string, bare, production length.Unit) string {
	text = strings.TrimSpace(text)
	if bare == production || text == "" || strings.Trim(text, "0123456789.,") != "" {
		return text
	}
	if bare == length.Metres {
		return text + " m"
	}
	return text + "'"
}

// nextUnread returns the next measure after one that nothing has been read of, round
// the end of the list; ok is false when there is none.
func nextUnread(list []prep.Measure, after int) (at int, ok bool) {
	for k := 1; k <= len(list); k++ {
		if at := (after + k) % len(list); list[at].Read == nil {
			return at, true
		}
	}
	return after, false
}

// step returns the step that a tick stands for.
func step(checked bool) marks.Step {
	if checked {
		return marks.Checked
	}
	return marks.Placed
}

// sentence makes a sentence of an error.
func sentence(err error) string {
	text := err.Error()
	first, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + strings.TrimSuffix(text[n:], ".") + "."
}
