package sense

import (
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// titleWords are those that fill a title block.
var titleWords = []string{"scale", "date", "drawn", "sheet", "rev", "revision", "designer", "director", "plate", "drawing", "project", "checked", "approved", "title", "production", "venue", "copyright"}

// titleBox returns the area around the words of a title block. There is none
// without three of them in an area that is small beside the drawing.
func titleBox(s *linework.Sheet) (plane.Box, bool) {
	type word struct {
		at     plane.Point
		height float64
	}
	var found []word
	for _, t := range s.Texts {
		if ts := tokens(t.Text); !t.Hidden && len(ts) > 0 && len(ts) <= 12 && hasWord(ts, titleWords...) {
			found = append(found, word{t.At, t.Height})
		}
	}
	w, h := s.Box.Width(), s.Box.Height()
	best, most, tall := plane.Box{}, 2, 0.0
	for _, seed := range found {
		area := plane.Box{Min: seed.at, Max: seed.at}
		n, height := 0, 0.0
		for _, o := range found {
			if math.Abs(o.at.X-seed.at.X) <= 0.2*w && math.Abs(o.at.Y-seed.at.Y) <= 0.2*h {
				area = area.Union(plane.Box{Min: o.at, Max: o.at})
				n, height = n+1, max(height, o.height)
			}
		}
		if n > most {
			best, most, tall = area, n, height
		}
	}
	if most < 3 {
		return plane.Box{}, false
	}
	best = enclosing(s, best, best.Grow(4*tall), 0.25*w*h)
	return best, best.Width()*best.Height() <= 0.25*w*h
}

// enclosing returns the box of the smallest item around the inner box, when its
// area is below most, and what otherwise.
func enclosing(s *linework.Sheet, inner, otherwise plane.Box, most float64) plane.Box {
	best, found := otherwise, false
	for i := range s.Items {
		b, ok := plane.Bounds(s.Items[i].Edges)
		if ok && !s.Items[i].Hidden && len(s.Items[i].Edges) >= 4 && holds(b, inner) && b.Width()*b.Height() < most {
			best, found, most = b, true, b.Width()*b.Height()
		}
	}
	if found {
		// The frame's own line, and what touches it from within.
		return best.Grow(1e-3 * max(best.Width(), best.Height()))
	}
	return best
}
