package layout

import (
	"fmt"
	"strings"
	"unicode"
)

// longestName is how many characters the name of a layer has at most in DXF R12
// (from memory).
const longestName = 31

// nameLayers makes the names of the layers ones that every program takes: without
// the characters that are forbidden in DXF (published reference, symbol tables), and
// different from each other whatever their capitals and whether a space or a stroke
// parts their words.
func (l *Layout) nameLayers() {
	taken := map[string]bool{strings.ToLower(MarkLayer): true}
	for i := range l.Layers {
		plain := plainName(l.Layers[i].Name)
		name := cut(plain, longestName)
		for n := 2; taken[strings.ToLower(sheetName(name))]; n++ {
			suffix := fmt.Sprintf("-%d", n)
			name = cut(plain, longestName-len(suffix)) + suffix
		}
		taken[strings.ToLower(sheetName(name))] = true
		l.Layers[i].Name = name
	}
}

// sheetName is the name of a layer in a sheet. DXF R12 knows no spaces in it.
func sheetName(name string) string { return strings.ReplaceAll(name, " ", "_") }

func cut(name string, longest int) string {
	letters := []rune(name)
	return strings.TrimSpace(string(letters[:min(len(letters), longest)]))
}

func plainName(name string) string {
	name = strings.Map(func(r rune) rune {
		switch {
		case strings.ContainsRune("\"'`,;", r), !unicode.IsPrint(r):
			return ' '
		case strings.ContainsRune("<>/\\:?*|=", r), r == unicode.ReplacementChar:
			return '-'
		}
		return r
	}, strings.ToValidUTF8(name, "-"))
	if name = strings.Join(strings.Fields(name), " "); name == "" {
		return "Nameless"
	}
	return name
}
