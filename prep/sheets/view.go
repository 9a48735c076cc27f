package sheets

import (
	"math"
	"slices"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// view is how a floor lies on a page: at a true scale, up the page upstage.
type view struct {
	frame inset       // of the drawing on the page
	at    plane.Point // datum place in the middle of the frame
	scale length.Scale
}

// mm returns the length on paper, in millimetres, of a length on the floor in
// metres.
func (v view) mm(m float64) float64 { return v.scale.OnPaper(m) * 1000 }

// x and y return where a floor point lies on the page.
func (v view) x(p plane.Point) float64 { return v.frame.x + v.frame.w/2 + v.mm(p.X-v.at.X) }
func (v view) y(p plane.Point) float64 { return v.frame.y + v.frame.h/2 - v.mm(p.Y-v.at.Y) }

// border is the paper around what is drawn, for labels that stand outside it.
const border = 9.0

// fitting returns the largest usual scale at which the box fits a frame of w by
// h millimetres. What is too large for the usual scales gets a round one.
func fitting(box plane.Box, w, h float64, u length.Unit) length.Scale {
	fits := func(s length.Scale) bool {
		return s.OnPaper(box.Width())*1000 <= w-2*border && s.OnPaper(box.Height())*1000 <= h-2*border
	}
	usual := length.UsualScales(u)
	slices.Sort(usual)
	for _, s := range usual {
		if s >= largestScale && fits(s) {
			return s
		}
	}
	for magnitude := 100.0; ; magnitude *= 10 {
		for _, k := range []float64{1, 2, 5} {
			if s := length.Scale(k * magnitude); s > usual[len(usual)-1] && fits(s) {
				return s
			}
		}
	}
}

// largestScale keeps a plan with a single piece on it from being drawn as a
// detail.
const largestScale = 10

// lapping is how much of the floor two neighbouring sheets both show, in
// millimetres on paper, so that they can be laid over each other.
const lapping = 20.0

// parts are the views of a plan that is cut up over several pages, row by row
// from downstage, each from stage right.
type parts struct {
	views      []view
	across, up int
	advice     string // where to find what has no room
}

// cutUp returns the views that cover the box at a scale on frames of the size;
// one when it fits.
func cutUp(box plane.Box, frame inset, s length.Scale) parts {
	split := func(span, room float64) (int, float64) {
		need := s.OnPaper(span)*1000 + 2*border
		if need <= room {
			return 1, 0
		}
		n := int(math.Ceil((need - lapping) / (room - lapping)))
		n = min(n, maxTiles)
		return n, (room - lapping) / 1000 * float64(s)
	}
	ps := parts{advice: "Print the plan at a larger scale, or scene by scene, to see all."}
	var stepX, stepY float64
	ps.across, stepX = split(box.Width(), frame.w)
	ps.up, stepY = split(box.Height(), frame.h)
	c := box.Centre()
	for j := range ps.up {
		for i := range ps.across {
			at := plane.Point{
				X: c.X + (float64(i)-float64(ps.across-1)/2)*stepX,
				Y: c.Y + (float64(j)-float64(ps.up-1)/2)*stepY,
			}
			ps.views = append(ps.views, view{frame: frame, at: at, scale: s})
		}
	}
	return ps
}

// maxTiles bounds how many sheets a plan may take each way: more is a slip in
// the scale and would be glued together by nobody.
const maxTiles = 12
