package dxf

import (
	"bufio"
	"fmt"
	"io"
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// Write writes the sheet as an ASCII DXF of release R12, which every program reads:
// LINE, ARC, CIRCLE, POINT for an edge of no length, and TEXT, layers with their nearest numbered colours, dashes as
// linetypes, and the unit as $INSUNITS.
//
// Items and texts that are hidden though their layer is shown are left out, since
// R12 cannot say so; words of several lines become one TEXT for each. Blocks, pen
// widths and what dimensions state are not carried. An arc of a radius beyond 10⁹
// drawing units is written as its chord. The error is that of w, or says that a
// coordinate is no number, in which case nothing has been written.
func Write(w io.Writer, s *linework.Sheet) error {
	if err := checkFinite(s); err != nil {
		return err
	}
	out := &writer{w: bufio.NewWriter(w), sheet: s}
	out.names(s)
	out.header()
	out.tables()
	out.section("BLOCKS")
	out.str(0, "ENDSEC")
	out.section("ENTITIES")
	for i := range s.Items {
		out.item(&s.Items[i])
	}
	for i := range s.Texts {
		out.words(&s.Texts[i])
	}
	out.str(0, "ENDSEC")
	out.str(0, "EOF")
	if err := out.w.Flush(); err != nil {
		return fmt.Errorf("write DXF: %w", err)
	}
	return nil
}

func checkFinite(s *linework.Sheet) error {
	for _, item := range s.Items {
		for _, e := range item.Edges {
			if !inRange(e) {
				return fmt.Errorf("write DXF: on layer %s, %s", item.Layer, whyFar)
			}
		}
	}
	for _, t := range s.Texts {
		if !inRange(plane.Edge{A: t.At, B: t.At}) || !(math.Abs(t.Height) <= maxCoord) || !(math.Abs(t.Turn) <= maxCoord) {
			return fmt.Errorf("write DXF: in the words %q, %s", t.Text, whyFar)
		}
	}
	return nil
}

// writer writes pairs; errors wait in the buffer for Flush.
type writer struct {
	w         *bufio.Writer
	sheet     *linework.Sheet
	layers    []writtenLayer
	byName    map[string]int // by the layer's name in the sheet
	linetypes []writtenLine
	byDash    map[string]string
}

func (o *writer) str(code int, value string) {
	fmt.Fprintf(o.w, "%3d\r\n%s\r\n", code, value)
}

func (o *writer) num(code int, value float64) { o.str(code, number(value)) }

func (o *writer) whole(code, value int) { o.str(code, fmt.Sprint(value)) }

func (o *writer) point(code int, p plane.Point) {
	o.num(code, p.X)
	o.num(code+10, p.Y)
	o.num(code+20, 0)
}

func (o *writer) section(name string) {
	o.str(0, "SECTION")
	o.str(2, name)
}

func (o *writer) header() {
	o.section("HEADER")
	o.variable("$ACADVER")
	o.str(1, "AC1009")
	o.variable("$DWGCODEPAGE")
	o.str(3, "ANSI_1252")
	o.variable("$INSUNITS")
	unit, metric := insertUnit(o.sheet.Unit)
	o.whole(70, unit)
	o.variable("$MEASUREMENT")
	o.whole(70, metric)
	o.variable("$LTSCALE")
	o.num(40, 1)
	o.variable("$PDMODE")
	o.whole(70, circleAndCross)
	if b := o.sheet.Box; b != (plane.Box{}) && inRange(plane.Edge{A: b.Min, B: b.Max}) {
		o.variable("$EXTMIN")
		o.point(10, b.Min)
		o.variable("$EXTMAX")
		o.point(10, b.Max)
	}
	o.str(0, "ENDSEC")
}

// circleAndCross is the $PDMODE in which points are seen: as dots they are lost
// among lines.
const circleAndCross = 34

func (o *writer) variable(name string) { o.str(9, name) }

// insertUnit returns the value of $INSUNITS, zero where there is none, and that of
// $MEASUREMENT: 0 for inches and 1 for metric.
func insertUnit(u linework.Unit) (code, metric int) {
	metric = 1
	switch u {
	case linework.Inch, linework.Foot, linework.Yard, linework.Mile, linework.SurveyFoot:
		metric = 0
	}
	for c, unit := range insertUnits {
		if unit == u {
			return c, metric
		}
	}
	return 0, metric
}

// item writes the edges of an item, each as an entity of its own.
func (o *writer) item(item *linework.Item) {
	l := &o.layers[o.byName[item.Layer]]
	if item.Hidden && !l.hides() {
		return
	}
	for i := 0; i < len(item.Edges); i++ {
		e := item.Edges[i]
		centre, radius, round := e.Circle()
		switch {
		case e.A == e.B:
			o.begin("POINT", l, item)
			o.point(10, e.A)
		case i+1 < len(item.Edges) && fullCircle(e, item.Edges[i+1]):
			i++
			o.begin("CIRCLE", l, item)
			o.point(10, centre)
			o.num(40, radius)
		case round && radius <= longestRadius:
			o.begin("ARC", l, item)
			o.arc(e, centre, radius)
		default:
			o.begin("LINE", l, item)
			o.point(10, e.A)
			o.point(11, e.B)
		}
	}
}

// longestRadius is that beyond which the centre of an arc is too far off to write.
const longestRadius = 1e9

func (o *writer) begin(kind string, l *writtenLayer, item *linework.Item) {
	o.str(0, kind)
	o.str(8, l.name)
	if len(item.Dash) > 0 {
		o.str(6, o.byDash[dashKey(item.Dash)])
	}
	if item.Colour.Known && item.Colour != l.Colour {
		o.whole(62, nearestIndex(item.Colour.RGB))
	}
}

// arc writes an arc counter-clockwise, as DXF wants it.
func (o *writer) arc(e plane.Edge, centre plane.Point, radius float64) {
	from, to := e.A, e.B
	if e.Bulge < 0 {
		from, to = to, from
	}
	o.point(10, centre)
	o.num(40, radius)
	o.num(50, degrees(from.Sub(centre).Angle()))
	o.num(51, degrees(to.Sub(centre).Angle()))
}

func degrees(angle float64) float64 {
	d := angle * 180 / math.Pi
	if d < 0 {
		d += 360
	}
	return d
}

// fullCircle tells whether two edges make one circle.
func fullCircle(e, f plane.Edge) bool {
	c, r, ok := e.Circle()
	d, q, ok2 := f.Circle()
	const same = 1e-9
	return ok && ok2 && e.A == f.B && e.B == f.A && e.Bulge*f.Bulge > 0 &&
		c.To(d) <= same*r && math.Abs(r-q) <= same*r && r <= longestRadius
}
