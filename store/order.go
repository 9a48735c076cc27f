package store

import "slices"

// places gives every row of an ordered list its seq. Rows that base knows keep
// theirs as far as the order allows: of them, the longest chain that is still in
// order stays, and the others are put between. Rows at either end are one apart.
func places(keys []string, base sheet) []float64 {
	seqs := make([]float64, len(keys))
	kept := make([]bool, len(keys))
	for _, i := range longestChain(keys, base) {
		seqs[i], kept[i] = base[keys[i]].seq, true
	}
	for i := 0; i < len(keys); {
		if kept[i] {
			i++
			continue
		}
		end := i
		for end < len(keys) && !kept[end] {
			end++
		}
		if !fill(seqs, i, end) {
			return renumbered(seqs)
		}
		i = end
	}
	return seqs
}

// fill puts the rows from start to before end between their neighbours; false
// when there is no room left for them.
func fill(seqs []float64, start, end int) bool {
	n := float64(end - start)
	low, step := 0.0, 1.0
	switch {
	case start == 0 && end == len(seqs):
	case start == 0:
		low = seqs[end] - n - 1
	case end == len(seqs):
		low = seqs[start-1]
	default:
		low = seqs[start-1]
		step = (seqs[end] - low) / (n + 1)
	}
	for i := start; i < end; i++ {
		seqs[i] = low + step*float64(i-start+1)
		if i > 0 && seqs[i] <= seqs[i-1] {
			return false
		}
	}
	return end == len(seqs) || seqs[end-1] < seqs[end]
}

func renumbered(seqs []float64) []float64 {
	for i := range seqs {
		seqs[i] = float64(i + 1)
	}
	return seqs
}

// longestChain returns the indices of the longest run of known keys whose seqs
// rise (patience sorting, O(n log n)).
func longestChain(keys []string, base sheet) []int {
	var tops []int // tops[k]: the index that ends the best chain of k+1 rows
	before := make([]int, len(keys))
	for i, key := range keys {
		rec, known := base[key]
		if !known {
			continue
		}
		k, _ := slices.BinarySearchFunc(tops, rec.seq, func(top int, seq float64) int {
			if base[keys[top]].seq < seq {
				return -1
			}
			return 1
		})
		before[i] = -1
		if k > 0 {
			before[i] = tops[k-1]
		}
		tops = append(tops[:k], append([]int{i}, tops[min(k+1, len(tops)):]...)...)
	}
	if len(tops) == 0 {
		return nil
	}
	chain := make([]int, 0, len(tops))
	for i := tops[len(tops)-1]; i >= 0; i = before[i] {
		chain = append(chain, i)
	}
	slices.Reverse(chain)
	return chain
}
