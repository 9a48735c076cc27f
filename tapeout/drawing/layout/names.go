package layout

import (
	"fmt"
	"strings"
	"unicode"
)

// longestName is how many characters a layer's name has at most: programs show no
// more of it, and R2000 allows 255 bytes.
const longestName = 60

// nameLayers makes the names of the layers ones that every program takes: without
// the characters that are forbidden in DXF (published reference, symbol tables), and
// different from each other whatever their capitals.
func (l *Layout) nameLayers() {
	taken := map[string]bool{strings.ToLower(MarkLayer): true}
	for i := range l.Layers {
		plain := plainName(l.Layers[i].Name)
		name := plain
		for n := 2; taken[strings.ToLower(name)]; n++ {
			name = fmt.Sprintf("%s (%d)", plain, n)
		}
		taken[strings.ToLower(name)] = true
		l.Layers[i].Name = name
	}
}

func plainName(name string) string {
	name = strings.Map(func(r rune) rune {
		switch {
		case strings.ContainsRune("<>/\\\":;?*|=,`'", r), r == unicode.ReplacementChar:
			return '-'
		case !unicode.IsPrint(r):
			return ' '
		}
		return r
	}, strings.ToValidUTF8(name, "-"))
	name = strings.Join(strings.Fields(name), " ")
	if letters := []rune(name); len(letters) > longestName {
		name = strings.TrimSpace(string(letters[:longestName]))
	}
	if name == "" {
		return "Nameless"
	}
	return name
}
