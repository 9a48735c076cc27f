package pdf

import (
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

const (
	thin       = 0.0015 / float64(linework.Point) // a filled strip below 1.5 mm on paper is a line
	lengthwise = 2.0                              // and it is at least that many times as long as wide
	parallel   = 0.01                             // radians between its long sides, at most
)

// strip is the centre line of a thin filled rectangle. Some programs fill lines
// instead of drawing them with a pen.
type strip struct {
	centre plane.Edge
	width  float64
}

// asStrip returns the outline's centre line, if it is a thin quadrilateral with two
// long parallel sides; its ends may be mitred.
func (o *outline) asStrip() (s strip, ok bool) {
	q, ok := o.corners()
	if !ok {
		return strip{}, false
	}
	if q[0].To(q[1])+q[2].To(q[3]) < q[1].To(q[2])+q[3].To(q[0]) {
		q = [4]plane.Point{q[1], q[2], q[3], q[0]}
	}
	there, back := q[1].Sub(q[0]), q[2].Sub(q[3])
	centre := plane.Edge{A: q[0].Towards(q[3], 0.5), B: q[1].Towards(q[2], 0.5)}
	length := centre.Length()
	area := plane.Closed(q[:]...).Area()
	width := area / length
	if !(width < thin) || !(min(there.Len(), back.Len()) >= lengthwise*width) || length == 0 {
		return strip{}, false
	}
	if math.Abs(there.Cross(back)) > parallel*there.Len()*back.Len() || there.Dot(back) <= 0 {
		return strip{}, false
	}
	return strip{centre, width}, true
}

// corners returns the four corners of an outline that has four straight sides.
func (o *outline) corners() (q [4]plane.Point, ok bool) {
	points := []plane.Point{o.start}
	for _, s := range o.rest {
		if s.curve || len(points) > 5 {
			return q, false
		}
		if s.end() != points[len(points)-1] {
			points = append(points, s.end())
		}
	}
	if len(points) == 5 && points[4] == points[0] {
		points = points[:4]
	}
	if len(points) != 4 {
		return q, false
	}
	return [4]plane.Point(points), true
}
