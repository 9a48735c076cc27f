package crewplace

import (
	"fmt"
	"strconv"
	"strings"
)

func itoa(n int) string { return strconv.Itoa(n) }

// between stands between the names of a list: a task's name may itself hold a comma.
const between = "; "

// readNames finds which of the names a text lists, apart by commas or semicolons, in the order written. Where a name
// holds a comma the longest name that fits is taken. Capitals do not matter.
func readNames(text string, names []string) ([]int, error) {
	var out []int
	rest := strings.TrimLeft(text, " ,;\n\t")
	for rest != "" {
		i := longestStart(rest, names)
		if i < 0 {
			word, _, _ := strings.Cut(rest, ";")
			return nil, fmt.Errorf("“%s” is not in the list; write names as they are listed, with ; between them", strings.TrimSpace(word))
		}
		out = append(out, i)
		rest = strings.TrimLeft(rest[len(strings.TrimSpace(names[i])):], " ,;\n\t")
	}
	return out, nil
}

// longestStart returns the longest name that the text begins with; −1 when there is none.
func longestStart(text string, names []string) int {
	best, most := -1, 0
	for i, name := range names {
		n := len(strings.TrimSpace(name))
		if n <= most || n > len(text) || !strings.EqualFold(text[:n], strings.TrimSpace(name)) {
			continue
		}
		if after := strings.TrimLeft(text[n:], " \n\t"); after == "" || after[0] == ',' || after[0] == ';' {
			best, most = i, n
		}
	}
	return best
}
