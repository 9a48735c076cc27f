package prep

import (
	"math"
	"slices"

	"groundrow/tapeout/length"
)

// Unit is the production's unit of length.
func (p *Production) Unit() length.Unit { return length.Unit(p.Settings.Unit) }

// Style is how the production writes lengths.
func (p *Production) Style() length.Style {
	return length.Style{Unit: p.Unit(), Step: p.Settings.Step}
}

// ShowLength returns a length for an entry field: as it was typed while that
// still reads as the value, else in the production's unit.
func (p *Production) ShowLength(row, column string, metres float64) string {
	for _, t := range p.Typed {
		if t.Row != row || t.Column != column {
			continue
		}
		if m, err := length.Parse(t.Text, p.Unit()); err == nil && math.Abs(m-metres) < 1e-9 {
			return t.Text
		}
	}
	return p.Style().Bare(metres)
}

// KeepTyped remembers what was typed into a length field.
func (p *Production) KeepTyped(row, column, text string) {
	i := slices.IndexFunc(p.Typed, func(t Typed) bool { return t.Row == row && t.Column == column })
	if i < 0 {
		p.Typed = append(p.Typed, Typed{row, column, text})
		return
	}
	p.Typed[i].Text = text
}
