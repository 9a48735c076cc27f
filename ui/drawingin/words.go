package drawingin

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// sentence writes a text with a capital.
func sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}

// spoken writes an error as a sentence of its own.
func spoken(err error) string { return strings.TrimSuffix(sentence(err.Error()), ".") + "." }

// options are choices by name that stand for values. Two of the same name are
// told apart by a number.
type options[T comparable] struct {
	names  []string
	values []T
}

func (o *options[T]) add(name string, value T) {
	unique := name
	for n := 2; slices.Contains(o.names, unique); n++ {
		unique = fmt.Sprintf("%s (%d)", name, n)
	}
	o.names = append(o.names, unique)
	o.values = append(o.values, value)
}

// name returns the choice that stands for a value; empty when none does.
func (o *options[T]) name(value T) string {
	if i := slices.Index(o.values, value); i >= 0 {
		return o.names[i]
	}
	return ""
}

// value returns what a choice stands for.
func (o *options[T]) value(name string) (v T, ok bool) {
	if i := slices.Index(o.names, name); i >= 0 {
		return o.values[i], true
	}
	return v, false
}

// asOffered are options whose names are what is kept, written with a capital.
func asOffered[T ~string](all []T) options[T] {
	var o options[T]
	for _, v := range all {
		o.add(sentence(string(v)), v)
	}
	return o
}
