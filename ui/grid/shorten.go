package grid

import (
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// firstLine returns the first line of a text, marked where there are more: a cell has one line.
func firstLine(text string) string {
	first, rest, more := strings.Cut(text, "\n")
	if more && strings.TrimSpace(rest) != "" {
		return strings.TrimSpace(first) + " …"
	}
	return first
}

// shorten returns as much of the text as fits the width at the theme's text size, ended by an ellipsis where it
// does not fit whole. A width that does not even hold the ellipsis gets nothing.
func shorten(text string, width float32, style fyne.TextStyle) string {
	fits := func(s string) bool { return fyne.MeasureText(s, theme.TextSize(), style).Width <= width }
	if text == "" || fits(text) {
		return text
	}
	runes := []rune(text)
	cut := func(n int) string { return strings.TrimRight(string(runes[:n]), " ") + "…" }
	n := sort.Search(len(runes), func(n int) bool { return !fits(cut(n)) })
	if n == 0 {
		return ""
	}
	return cut(n - 1)
}
