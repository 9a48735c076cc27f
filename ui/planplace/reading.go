package planplace

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// reading is an element while it is read off the paper: one person reads the
// scale rule aloud, another types.
type reading struct {
	name    string
	kind    plan.Kind
	level   plan.LevelID
	closed  bool
	on      ruler
	edge    length.Scale // of the rule; zero: that which is nearest to the plot's
	corners []readCorner
}

// readCorner is one corner with the lengths as they were typed.
type readCorner struct {
	at       plane.Point // on the floor, in plan axes
	bow      float64     // of the edge from the corner before, positive to its left
	up, over string
	bowText  string
}

// ruler is what the lengths are read with.
type ruler string

// The rulers.
const (
	fullSize    ruler = "full-size lengths"
	scaleEdge   ruler = "full-size lengths on the rule's scale edge"
	inches      ruler = "inches on the paper"
	centimetres ruler = "centimetres on the paper"
	millimetres ruler = "millimetres on the paper"
)

var rulers = []ruler{fullSize, scaleEdge, inches, centimetres, millimetres}

var rulerUnits = map[ruler]length.Unit{
	inches: length.Inches, centimetres: length.Centimetres, millimetres: length.Millimetres,
}

// lens turns what is read into lengths on the floor.
type lens struct {
	on    ruler
	unit  length.Unit
	scale length.Scale // of the plot
	edge  length.Scale // of the rule's edge
}

func lensOf(p *prep.Production, r *reading) lens {
	l := lens{on: r.on, unit: p.Unit(), scale: length.Scale(p.Plan.Scale), edge: r.edge}
	if u, ok := rulerUnits[r.on]; ok {
		l.unit = u
	}
	if !l.edge.Valid() {
		l.edge = l.nearestEdge()
	}
	return l
}

// nearestEdge is the edge that a person turns a scale rule to for the plot: of the
// usual scales the one that is nearest.
func (l lens) nearestEdge() length.Scale {
	if !l.scale.Valid() {
		return length.UsualScale(l.unit)
	}
	off := func(s length.Scale) float64 { return math.Abs(math.Log(float64(s / l.scale))) }
	return slices.MinFunc(length.UsualScales(l.unit), func(a, b length.Scale) int { return cmp.Compare(off(a), off(b)) })
}

// stretch is how much longer a length is on the floor than the rule's edge says,
// since the plot is not quite at that scale.
func (l lens) stretch() float64 {
	if !l.scale.Valid() {
		return 1
	}
	return float64(l.scale / l.edge)
}

func (l lens) onFloor(text string, parse func(string, length.Unit) (float64, error)) (float64, error) {
	m, err := parse(text, l.unit)
	switch {
	case err != nil || l.on == fullSize:
		return m, err
	case l.on == scaleEdge:
		return m * l.stretch(), nil
	}
	if !l.scale.Valid() {
		return 0, errors.New("the plan has no scale yet, so a length on the paper says nothing: set it under Plan")
	}
	return l.scale.OnFloor(m), nil
}

func (l lens) up(text string) (float64, error) { return l.onFloor(text, length.ParseUp) }

func (l lens) over(text string) (float64, error) { return l.onFloor(text, length.ParseOver) }

func (l lens) bow(text string) (float64, error) { return l.onFloor(text, parseBow) }

// read makes a corner of three texts; the bow may be empty. at tells which text
// could not be read.
func (l lens) read(up, over, bow string) (c readCorner, at string, err error) {
	c = readCorner{up: up, over: over, bowText: bow}
	if c.at.Y, err = l.up(up); err != nil {
		return c, upColumn, err
	}
	if c.at.X, err = l.over(over); err != nil {
		return c, overColumn, err
	}
	if c.bow, err = l.bow(bow); err != nil {
		return c, bowColumn, err
	}
	return c, "", nil
}

// path is the line read so far. Where a bow cannot be, the edge is straight; check
// says so.
func (r *reading) path() plane.Path {
	path := plane.Path{Closed: r.closed && len(r.corners) > 2}
	for _, c := range r.corners {
		path.Vertices = append(path.Vertices, plane.Vertex{Point: c.at})
	}
	for i, c := range r.corners {
		if i > 0 && c.bow != 0 {
			if setBow(&path, i-1, c.bow) != nil {
				path.Vertices[i-1].Bulge = 0
			}
		}
	}
	return path
}

// check refuses a corner that cannot follow the last one.
func (r *reading) check(c readCorner) error {
	if len(r.corners) == 0 {
		if c.bow != 0 {
			return errors.New("the first corner has nothing before it that could bow")
		}
		return nil
	}
	last := r.corners[len(r.corners)-1]
	if last.at.To(c.at) < 1e-6 {
		return errors.New("this is where the last corner is")
	}
	two := plane.Open(last.at, c.at)
	return setBow(&two, 0, c.bow)
}

// as makes it another kind of thing, whose line is closed or open as that kind's
// mostly is.
func (r *reading) as(kind plan.Kind) {
	if kind != r.kind {
		r.kind, r.closed = kind, kind.Area()
	}
}

// add sets the next corner.
func (r *reading) add(c readCorner) error {
	if err := r.check(c); err != nil {
		return err
	}
	r.corners = append(r.corners, c)
	return nil
}

// back takes the last corner away.
func (r *reading) back() {
	if n := len(r.corners); n > 0 {
		r.corners = r.corners[:n-1]
	}
}

// finish tells what is still missing.
func (r *reading) finish() error {
	switch {
	case r.name == "":
		return errors.New("give it a name first")
	case len(r.corners) < 2:
		return errors.New("read two corners at least")
	}
	return nil
}

// into adds what was read to the plan. Lengths read full size come back as they
// were typed.
func (r *reading) into(p *prep.Production, id newID) plan.ElementID {
	e := plan.Element{ID: plan.ElementID(id()), Name: r.name, Kind: r.kind, Level: r.level, Use: plan.Essential}
	role := plan.Outline
	if r.kind == plan.Track {
		role = plan.Way
	}
	row := addPath(&e, role, r.path(), id)
	p.Plan.Elements = append(p.Plan.Elements, e)
	if r.on != fullSize { // what was typed is not what the lengths are
		return e.ID
	}
	for i, c := range r.corners {
		p.KeepTyped(string(row), column(upColumn, i), c.up)
		p.KeepTyped(string(row), column(overColumn, i), c.over)
		if i > 0 && c.bowText != "" {
			p.KeepTyped(string(row), column(bowColumn, i-1), c.bowText)
		}
	}
	return e.ID
}

// again starts the next element with the same answers.
func (r *reading) again() reading {
	return reading{kind: r.kind, level: r.level, on: r.on, edge: r.edge, closed: r.closed}
}
