package sense

import "slices"

// Set is a set of items by their indices in the sheet, ascending, each once.
// The zero value is the empty set. Its methods change neither side.
type Set []int

// NewSet returns the set of the indices.
func NewSet(indices ...int) Set {
	s := slices.Clone(indices)
	slices.Sort(s)
	return slices.Compact(s)
}

// Has tells whether the item is in the set.
func (s Set) Has(i int) bool {
	_, ok := slices.BinarySearch(s, i)
	return ok
}

// With returns what is in either set.
func (s Set) With(o Set) Set { return NewSet(slices.Concat(s, o)...) }

// Without returns what is in s and not in o.
func (s Set) Without(o Set) Set {
	var out Set
	for _, i := range s {
		if !o.Has(i) {
			out = append(out, i)
		}
	}
	return out
}

// Within returns what is in both sets.
func (s Set) Within(o Set) Set {
	var out Set
	for _, i := range s {
		if o.Has(i) {
			out = append(out, i)
		}
	}
	return out
}
