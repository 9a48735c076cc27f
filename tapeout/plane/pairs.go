package plane

import (
	"cmp"
	"slices"
)

// eachPair calls visit once for every two boxes that share a point, by their
// indices. It sweeps along the axis on which the boxes overlap less, so that
// neither a row nor a stack of edges makes it compare all with all.
func eachPair(boxes []Box, visit func(i, j int)) {
	type span struct {
		low, high, left, right float64
		index                  int
	}
	flip := !sweepOver(boxes)
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
	for k, s := range spans {
		for _, t := range spans[k+1:] {
			if t.low > s.high {
				break
			}
			if t.left <= s.right && s.left <= t.right {
				visit(s.index, t.index)
			}
		}
	}
}

// sweepOver tells whether the boxes overlap less along X than along Y.
func sweepOver(boxes []Box) bool {
	if len(boxes) == 0 {
		return true
	}
	all, over, up := boxes[0], 0.0, 0.0
	for _, b := range boxes {
		all = all.Union(b)
		over += b.Width()
		up += b.Height()
	}
	return over*all.Height() <= up*all.Width()
}
