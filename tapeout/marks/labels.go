package marks

import (
	"slices"

	"groundrow/tapeout/plane"
)

const (
	allLetters  = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	safeLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ" // I and O read as 1 and 0 on a dim floor
)

// Label returns the n-th label, n from 0: A, B, … Z, AA, AB, …
func Label(n int, skipIO bool) string {
	letters := allLetters
	if skipIO {
		letters = safeLetters
	}
	k := len(letters)
	var out []byte
	for n++; n > 0; n = (n - 1) / k {
		out = append(out, letters[(n-1)%k])
	}
	slices.Reverse(out)
	return string(out)
}

// number is the inverse of Label; ok is false for a label that it never gives.
func number(label string, skipIO bool) (n int, ok bool) {
	letters := allLetters
	if skipIO {
		letters = safeLetters
	}
	for _, c := range []byte(label) {
		i := slices.Index([]byte(letters), c)
		if i < 0 {
			return 0, false
		}
		n = n*len(letters) + i + 1
	}
	return n - 1, n > 0
}

// inOrder sorts marks downstage rows first, each row from stage right to stage
// left. A row gathers what lies within the tolerance above its first mark.
func inOrder(ms []Mark, row float64) {
	slices.SortStableFunc(ms, func(a, b Mark) int { return compare(a.Up(), b.Up(), a.Over(), b.Over()) })
	for i := 0; i < len(ms); {
		j := i + 1
		for j < len(ms) && ms[j].Up()-ms[i].Up() <= row {
			j++
		}
		slices.SortStableFunc(ms[i:j], func(a, b Mark) int { return compare(a.Over(), b.Over(), a.Up(), b.Up()) })
		i = j
	}
}

func compare(a, b, thenA, thenB float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	case thenA < thenB:
		return -1
	case thenA > thenB:
		return 1
	}
	return 0
}

// assign labels marks that are already in order. Marks that lie where a label has
// been issued keep it; the others take the labels after the last one that was
// ever issued, so that no label moves to another place.
func assign(ms []Mark, issued []Issued, rules Rules) {
	next := 0
	for _, is := range issued {
		if n, ok := number(is.Label, rules.SkipIO); ok {
			next = max(next, n+1)
		}
	}
	taken := make(map[string]bool, len(issued))
	for i := range ms {
		if is, ok := nearestIssued(ms[i].At, issued, taken, rules.Weld); ok {
			ms[i].Label, ms[i].Frozen = is.Label, true
			taken[is.Label] = true
		}
	}
	for i := range ms {
		if ms[i].Label == "" {
			ms[i].Label = Label(next, rules.SkipIO)
			next++
		}
	}
}

func nearestIssued(at plane.Point, issued []Issued, taken map[string]bool, reach float64) (best Issued, ok bool) {
	for _, is := range issued {
		if is.Retired || taken[is.Label] {
			continue
		}
		// Of two labels on one spot the first printed goes to the first mark again.
		if d := is.At.To(at); d < reach || d == reach && !ok {
			best, ok, reach = is, true, d
		}
	}
	return best, ok
}

// Gone returns the issued labels that no mark of the floor carries any more:
// their tabs are to be lifted and the labels retired.
func Gone(ms []Mark, issued []Issued) []Issued {
	used := make(map[string]bool, len(ms))
	for _, m := range ms {
		used[m.Label] = true
	}
	var out []Issued
	for _, is := range issued {
		if !is.Retired && !used[is.Label] {
			out = append(out, is)
		}
	}
	return out
}
