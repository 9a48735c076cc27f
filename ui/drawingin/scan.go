package drawingin

import (
	"context"
	"errors"
	"fmt"
	"image"
	"math"

	"github.com/google/uuid"
	"groundrow/prep"

	"groundrow/tapeout/drawing/picture"
	"groundrow/tapeout/plane"
	"groundrow/ui/drawingfile"
	"groundrow/ui/floorcanvas"
)

// scan is a picture on its way to lie under the plan.
type scan struct {
	img   image.Image
	ready *floorcanvas.Scan
	way   way
	known []knownPoint
}

// way is how a scan is laid.
type way string

// The ways.
const (
	byTwo  way = "two known points: a flat scan"
	byFour way = "four corners of a known rectangle: a photograph"
)

var ways = []way{byTwo, byFour}

// points is how many known points the way needs.
func (w way) points() int {
	if w == byFour {
		return 4
	}
	return 2
}

// knownPoint is a point of the scan whose place on the plan is known.
type knownPoint struct {
	pixel    plane.Point
	set      bool        // pixel has been shown
	floor    plane.Point // plan axes, metres
	up, over string      // as typed; empty: not yet
}

// cornerNames say which corner of the rectangle each of the four points is.
var cornerNames = [4]string{"downstage right", "downstage left", "upstage left", "upstage right"}

// newScan makes a picture ready. It takes a while for a large one.
func newScan(img image.Image) *scan {
	return &scan{img: img, ready: floorcanvas.NewScan(img), way: byTwo, known: make([]knownPoint, 2)}
}

// Under lays a kept scan, or a page of a kept PDF, under the plan again, by its
// known points.
func Under(ctx context.Context, d prep.Drawing, content []byte, points []prep.KnownPoint) (*floorcanvas.Backdrop, error) {
	src, err := drawingfile.Of(d.Name, content)
	if err != nil {
		return nil, err
	}
	img, err := drawingfile.Drawn(ctx, src, max(d.Page()-1, 0), scanDPI)
	if err != nil {
		return nil, err
	}
	s := newScan(img)
	s.lie(points, func(float64) string { return "known" })
	if s.missing() != "" {
		return nil, errors.New("the scan has too few known points to lie under the plan")
	}
	return s.laid(ctx)
}

// lie takes over points that are known already.
func (s *scan) lie(points []prep.KnownPoint, say func(float64) string) {
	if len(points) >= byFour.points() {
		s.turn(byFour)
	}
	for i := range min(len(points), len(s.known)) {
		k := points[i]
		s.known[i] = knownPoint{pixel: k.Pixel, set: true, floor: k.Floor, up: say(k.Floor.Y), over: say(k.Floor.X)}
	}
}

// points are what the production keeps of how the scan lies.
func (s *scan) points() []prep.KnownPoint {
	out := make([]prep.KnownPoint, len(s.known))
	for i, k := range s.known {
		out[i] = prep.KnownPoint{ID: uuid.NewString(), Pixel: k.pixel, Floor: k.floor}
	}
	return out
}

// turn changes the way; points that both ways have stay.
func (s *scan) turn(w way) {
	s.way = w
	known := make([]knownPoint, w.points())
	copy(known, s.known)
	s.known = known
}

// rectangle types the four points in from the size of the rectangle; the first one
// stays where it is.
func (s *scan) rectangle(wide, deep float64, say func(float64) string) error {
	if !(wide > 0) || !(deep > 0) {
		return errors.New("a rectangle is more than nothing wide and deep")
	}
	from := s.known[0].floor
	for i, by := range [4]plane.Point{{}, {X: wide}, {X: wide, Y: deep}, {Y: deep}} {
		p := from.Add(by)
		s.known[i].floor = p
		s.known[i].up, s.known[i].over = say(p.Y), say(p.X)
	}
	return nil
}

// missing says what is still to be done before the scan can be laid; empty:
// nothing.
func (s *scan) missing() string {
	for i, k := range s.known {
		switch {
		case !k.set:
			return fmt.Sprintf("Show %s in the picture.", prep.Counted(s.way.points(), "point"))
		case k.up == "" || k.over == "":
			return fmt.Sprintf("Type where point %d is on the plan: up and over.", i+1)
		}
	}
	return ""
}

// rawPixel is how wide a pixel of an unplaced scan is shown, in metres of the
// picture's own making.
const rawPixel = 0.01

// raw shows the scan as it came.
func (s *scan) raw() *floorcanvas.Backdrop {
	b := &floorcanvas.Backdrop{Scan: s.ready, PerPixel: rawPixel}
	b.Snap = snapTo(s.img, b)
	return b
}

// pixelOf returns the pixel under a point of the raw picture.
func pixelOf(p plane.Point) plane.Point { return plane.Point{X: p.X / rawPixel, Y: -p.Y / rawPixel} }

// snapTo offers the middle of the drawn line that is nearest.
func snapTo(img image.Image, b *floorcanvas.Backdrop) func(plane.Point, float64) (plane.Point, bool) {
	return func(p plane.Point, within float64) (plane.Point, bool) {
		at := b.Place.Inverse().Apply(p).Times(1 / b.PerPixel)
		origin := img.Bounds().Min
		from := plane.Point{X: at.X + float64(origin.X), Y: -at.Y + float64(origin.Y)}
		q, ok := picture.SnapToDark(img, from, within/b.PerPixel)
		if !ok {
			return plane.Point{}, false
		}
		q = plane.Point{X: q.X - float64(origin.X), Y: -(q.Y - float64(origin.Y))}
		return b.Place.Apply(q.Times(b.PerPixel)), true
	}
}

// laid returns the scan as it lies on the plan: scaled and turned, or straightened
// as well where it takes four points.
func (s *scan) laid(ctx context.Context) (*floorcanvas.Backdrop, error) {
	if s.way == byFour {
		return s.straightened(ctx)
	}
	sim, err := picture.TwoPoints(s.known[0].pixel, s.known[1].pixel, s.known[0].floor, s.known[1].floor)
	if err != nil {
		return nil, err
	}
	b := &floorcanvas.Backdrop{Scan: s.ready, PerPixel: sim.Scale, Place: plane.Motion{Turn: sim.Turn, Shift: sim.Shift}}
	b.Snap = snapTo(s.img, b)
	return b, nil
}

func (s *scan) straightened(ctx context.Context) (*floorcanvas.Backdrop, error) {
	var pixels, floor [4]plane.Point
	for i, k := range s.known {
		pixels[i], floor[i] = k.pixel, k.floor
	}
	h, err := picture.FourPoints(pixels, floor)
	if err != nil {
		return nil, err
	}
	box, per := s.extent(h, floor)
	img, err := picture.Rectify(ctx, s.img, h, per, box)
	if err != nil {
		return nil, err
	}
	b := &floorcanvas.Backdrop{Scan: floorcanvas.NewScan(img), PerPixel: 1 / per, Place: plane.Motion{Shift: plane.Point{X: box.Min.X, Y: box.Max.Y}}}
	b.Snap = snapTo(img, b)
	return b, nil
}

// extent returns which part of the floor the straightened picture shows, and at
// how many pixels to the metre. What a photograph shows near its horizon is far
// away and blurred, so no more than three times the rectangle on every side.
func (s *scan) extent(h picture.Homography, floor [4]plane.Point) (box plane.Box, perMetre float64) {
	core, _ := plane.BoxOf(floor[:]...)
	most := core.Grow(3 * max(core.Width(), core.Height()))
	box = core
	w, ht := s.ready.Size()
	const steps = 32
	for i := range steps + 1 {
		for j := range steps + 1 {
			p, ok := h.Apply(plane.Point{X: float64(w) * float64(i) / steps, Y: float64(ht) * float64(j) / steps})
			if ok && most.Holds(p) {
				box = box.Union(plane.Box{Min: p, Max: p})
			}
		}
	}
	// As fine as the picture is in the middle of the rectangle.
	perMetre = 100
	if back, ok := h.Inverse(); ok {
		c := core.Centre()
		a, okA := back.Apply(c)
		x, okX := back.Apply(c.Add(plane.Point{X: 0.1}))
		y, okY := back.Apply(c.Add(plane.Point{Y: 0.1}))
		if okA && okX && okY {
			perMetre = max(a.To(x), a.To(y)) * 10
		}
	}
	if most := picture.MaxRectified * 0.95; box.Width()*box.Height()*perMetre*perMetre > most {
		perMetre = math.Sqrt(most / (box.Width() * box.Height()))
	}
	return box, perMetre
}
