package drawingin

import (
	"errors"
	"math"

	"groundrow/tapeout/plane"
)

// audience is where the audience is in the drawing.
type audience string

// The sides of the page.
const (
	atFoot  audience = "at the foot of the page"
	atHead  audience = "at the head of the page"
	atLeft  audience = "at its left"
	atRight audience = "at its right"
)

var audiences = []audience{atFoot, atHead, atLeft, atRight}

// upstage is the direction away from each, radians from the drawing's X.
var upstage = map[audience]float64{atFoot: math.Pi / 2, atHead: -math.Pi / 2, atLeft: 0, atRight: math.Pi}

// audience returns the side of the page that the audience is at; ok is false for
// a datum that is not square to the page.
func (d *drawn) audience() (audience, bool) {
	for _, a := range audiences {
		if math.Abs(math.Remainder(d.datum.up-upstage[a], 2*math.Pi)) < 1e-6 {
			return a, true
		}
	}
	return "", false
}

// faces turns the datum so that the audience is at a side, about its origin.
func (d *drawn) faces(a audience) { d.datum.up = upstage[a] }

// datumAt puts the origin of the plan at a point of the drawing.
func (d *drawn) datumAt(p plane.Point) {
	d.datum.origin = p
	d.datum.set, d.datum.sure, d.datum.why = true, true, "It was shown in the drawing."
}

var errOnePlace = errors.New("the two points lie on each other: click two that are far apart")

// centreLine takes the centre line through two points, the one nearer to the
// audience first. The baseline stays as far up as it was.
func (d *drawn) centreLine(a, b plane.Point) error {
	u, ok := b.Sub(a).Unit()
	if !ok {
		return errOnePlace
	}
	if d.datum.set {
		a = a.Add(u.Times(d.datum.origin.Sub(a).Dot(u)))
	}
	d.datumAt(a)
	d.datum.up = u.Angle()
	return nil
}

// baseline takes the baseline through a point; the centre line stays.
func (d *drawn) baseline(p plane.Point) {
	u := plane.Polar(1, d.datum.up)
	from := p
	if d.datum.set {
		from = d.datum.origin.Add(u.Times(p.Sub(d.datum.origin).Dot(u)))
	}
	d.datumAt(from)
}
