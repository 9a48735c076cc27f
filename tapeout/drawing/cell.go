package drawing

import (
	"strings"
	"unicode/utf8"
)

// formulaStarts begin a cell that a spreadsheet would run as a formula.
const formulaStarts = "=+-@"

// guard returns text so that no spreadsheet takes it for a formula: with an
// apostrophe before it, which unguard takes off again.
func guard(text string) string {
	if startsFormula(text) {
		return "'" + text
	}
	return text
}

// unguard returns the text that guard was given.
func unguard(cell string) string {
	if rest, ok := strings.CutPrefix(cell, "'"); ok && startsFormula(rest) {
		return rest
	}
	return cell
}

// startsFormula tells whether text is a formula, behind any number of guards.
func startsFormula(text string) bool {
	text = strings.TrimLeft(text, "'")
	return text != "" && strings.ContainsRune(formulaStarts, rune(text[0]))
}

// key returns a name as it is compared: in lower case, runs of white space as one.
func key(name string) string { return strings.ToLower(tidy(name)) }

// tidy returns a name on one line with runs of white space as one.
func tidy(name string) string { return strings.Join(strings.Fields(name), " ") }

// shortened returns a cell as a message can carry it.
func shortened(cell string) string {
	cell = tidy(cell)
	if utf8.RuneCountInString(cell) > 60 {
		return string([]rune(cell)[:60]) + "…"
	}
	return cell
}
