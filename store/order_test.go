package store

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
)

func TestPlaces(t *testing.T) {
	base := sheet{"a": {seq: 1}, "b": {seq: 2}, "c": {seq: 3}, "d": {seq: 4}}
	tests := map[string]struct {
		keys []string
		want []float64
	}{
		"as it was":         {[]string{"a", "b", "c", "d"}, []float64{1, 2, 3, 4}},
		"one taken out":     {[]string{"a", "c", "d"}, []float64{1, 3, 4}},
		"one at the end":    {[]string{"a", "b", "c", "d", "x"}, []float64{1, 2, 3, 4, 5}},
		"one at the start":  {[]string{"x", "a", "b"}, []float64{0, 1, 2}},
		"one between":       {[]string{"a", "x", "b"}, []float64{1, 1.5, 2}},
		"the last first":    {[]string{"d", "a", "b", "c"}, []float64{0, 1, 2, 3}},
		"the first last":    {[]string{"b", "c", "d", "a"}, []float64{2, 3, 4, 5}},
		"a new list":        {[]string{"x", "y"}, []float64{1, 2}},
		"nothing":           {nil, []float64{}},
		"three at the head": {[]string{"x", "y", "z", "a"}, []float64{-2, -1, 0, 1}},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			if got := places(tt.keys, base); !slices.Equal(got, tt.want) {
				t.Errorf("got %v, want %v", got, tt.want)
			}
		})
	}
}

// However rows are shuffled, put in and taken out, places rise; and when there is
// no room between two any more, all are numbered anew.
func TestPlacesAlwaysRise(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	base, keys := sheet{}, []string{}
	for step := range 3000 {
		key := strconv.Itoa(step)
		switch at := r.IntN(len(keys) + 1); {
		case step%3 == 0:
			keys = slices.Insert(keys, min(1, len(keys)), key) // always the same gap
		case step%3 == 1:
			keys = slices.Insert(keys, at, key)
		case at < len(keys) && len(keys) > 20:
			keys = slices.Delete(keys, at, at+1)
		case step%100 == 2:
			r.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
		}
		next := sheet{}
		seqs := places(keys, base)
		for i, k := range keys {
			if i > 0 && seqs[i] <= seqs[i-1] {
				t.Fatalf("step %d: %v does not rise at %d", step, seqs, i)
			}
			next[k] = record{seq: seqs[i]}
		}
		base = next
	}
}
