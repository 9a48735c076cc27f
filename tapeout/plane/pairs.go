package plane

import (
	"cmp"
	"math"
	"slices"
)

// span is a box on the axis that is swept, and across it.
type span struct {
	low, high, left, right float64
	index                  int
}

// eachPair calls visit once for every two boxes that share a point, by their
// indices. It sweeps along the axis on which the boxes overlap less, in strips
// about as wide as a box, so that neither a row nor a stack nor a field of edges
// makes it compare all with all.
func eachPair(boxes []Box, visit func(i, j int)) {
	if len(boxes) < 2 {
		return
	}
	spans := spansOf(boxes)
	s := stripsFor(spans)
	for k, strip := range s.fill(spans) {
		for n, a := range strip {
			for _, b := range strip[n+1:] {
				if b.low > a.high {
					break
				}
				// Only the strip in which both are first together tells.
				if b.left <= a.right && a.left <= b.right && s.of(max(a.left, b.left)) == k {
					visit(a.index, b.index)
				}
			}
		}
	}
}

// spansOf returns the boxes sorted along the axis that separates them best.
func spansOf(boxes []Box) []span {
	all, over, up := boxes[0], 0.0, 0.0
	for _, b := range boxes {
		all = all.Union(b)
		over += b.Width()
		up += b.Height()
	}
	flip := over*all.Height() > up*all.Width()
	spans := make([]span, len(boxes))
	for i, b := range boxes {
		spans[i] = span{b.Min.X, b.Max.X, b.Min.Y, b.Max.Y, i}
		if flip {
			spans[i] = span{b.Min.Y, b.Max.Y, b.Min.X, b.Max.X, i}
		}
	}
	slices.SortFunc(spans, func(a, b span) int {
		return cmp.Or(compare(a.low, b.low), a.index-b.index)
	})
	return spans
}

// strips divides the axis across the sweep.
type strips struct {
	start, width float64
	count        int
}

// stripsFor makes strips as wide as the average span, and no more than spans.
func stripsFor(spans []span) strips {
	start, end, sum := math.Inf(1), math.Inf(-1), 0.0
	for _, s := range spans {
		start, end, sum = min(start, s.left), max(end, s.right), sum+s.right-s.left
	}
	n := float64(len(spans))
	width := max(sum/n, (end-start)/n)
	if !(width > 0) {
		return strips{start, 1, 1}
	}
	return strips{start, width, 1 + int((end-start)/width)}
}

func (s strips) of(x float64) int {
	return max(0, min(s.count-1, int((x-s.start)/s.width)))
}

// fill puts every span into each strip that it touches, keeping their order.
func (s strips) fill(spans []span) [][]span {
	sizes := make([]int, s.count)
	total := 0
	for _, a := range spans {
		for k := s.of(a.left); k <= s.of(a.right); k++ {
			sizes[k]++
			total++
		}
	}
	room := make([]span, total)
	out := make([][]span, s.count)
	for k, n := range sizes {
		out[k], room = room[:0:n], room[n:]
	}
	for _, a := range spans {
		for k := s.of(a.left); k <= s.of(a.right); k++ {
			out[k] = append(out[k], a)
		}
	}
	return out
}
