package linework

import (
	"cmp"
	"fmt"
	"slices"
)

// LeftAside is something in the file that is not in the sheet, or not in full.
type LeftAside struct {
	What  string // what the format calls it, or plain words
	Count int    // how many of them, at least one
	Why   string // a clause that can follow “since”
}

// String returns a sentence for a person.
func (l LeftAside) String() string {
	return fmt.Sprintf("%s (%d): %s.", l.What, l.Count, l.Why)
}

// Leftovers counts what a reader leaves aside. The zero value is empty.
type Leftovers struct {
	counts map[LeftAside]int
	more   int
}

// maxLeftovers bounds the list: a damaged file can name any number of kinds.
const maxLeftovers = 200

// Add counts n more of what left aside for the reason why.
func (l *Leftovers) Add(what, why string, n int) {
	if l.counts == nil {
		l.counts = map[LeftAside]int{}
	}
	key := LeftAside{What: what, Why: why}
	if _, ok := l.counts[key]; !ok && len(l.counts) >= maxLeftovers {
		l.more += n
		return
	}
	l.counts[key] += n
}

// List returns what was left aside, the most numerous first.
func (l *Leftovers) List() []LeftAside {
	var out []LeftAside
	for key, n := range l.counts {
		key.Count = n
		out = append(out, key)
	}
	slices.SortFunc(out, func(a, b LeftAside) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.What, b.What), cmp.Compare(a.Why, b.Why))
	})
	if l.more > 0 {
		out = append(out, LeftAside{What: "other things", Count: l.more, Why: "there are too many kinds of them to list"})
	}
	return out
}
