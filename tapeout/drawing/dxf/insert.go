package dxf

import (
	"errors"
	"math"
	"strings"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// openInsert is an INSERT whose attributes may follow.
type openInsert struct{ entity *entity }

const maxArray = 32767 // rows or columns, by the DXF reference

func (r *reader) startInsert(e *record) error {
	s, err := r.style(e)
	if err != nil {
		return err
	}
	own := ownPlane(e.extrusion())
	turned := own.after(spin(radians(e.num(50, 0))))
	i := &insert{columns: clamp(e.whole(70, 1)), rows: clamp(e.whole(71, 1))}
	r.nameBlock(i, e)
	i.across = turned.X.times(e.num(44, 0))
	i.along = turned.Y.times(e.num(45, 0))
	i.place = affine{
		X: turned.X.times(e.num(41, 1)), Y: turned.Y.times(e.num(42, 1)), Z: turned.Z.times(e.num(43, 1)),
		O: own.apply(e.vec(10)),
	}
	if e.bad != "" {
		r.note(e.kind, e.bad)
		return nil
	}
	open := &openInsert{&entity{kind: e.kind, style: s, insert: i}}
	if e.whole(66, 0) == 0 {
		return open.close(r)
	}
	r.open = open
	return nil
}

func clamp(n int) int { return max(1, min(n, maxArray)) }

func (r *reader) nameBlock(i *insert, e *record) {
	raw, _ := e.find(2)
	i.name = strings.TrimSpace(r.text.text(raw))
	i.block = capitals(i.name)
}

func (o *openInsert) add(r *reader, e *record) error {
	if e.kind != "ATTRIB" {
		return nil
	}
	a, err := r.wordsOf(e)
	if errors.Is(err, errLeft) {
		return nil
	}
	if err != nil {
		return err
	}
	o.entity.insert.attribs = append(o.entity.insert.attribs, a)
	return r.spend(a.cost())
}

func (o *openInsert) close(r *reader) error { return r.take(o.entity) }

// Types of a DIMENSION, the low bits of its code 70.
const (
	dimRotated  = 0
	dimAligned  = 1
	dimAngular  = 2
	dimDiameter = 3
	dimRadius   = 4
	dimAngular3 = 5
	dimType     = 7
)

// dimension reads what a DIMENSION states, and places its picture: a block that is
// drawn where the dimension is.
func (r *reader) dimension(e *record) error {
	s, err := r.style(e)
	if err != nil {
		return err
	}
	i := &insert{columns: 1, rows: 1, picture: true}
	r.nameBlock(i, e)
	i.place = shift(ownPlane(e.extrusion()).apply(e.vec(12)))
	i.measure = r.measureOf(e)
	if e.bad != "" {
		r.note(e.kind, e.bad)
		return nil
	}
	return r.take(&entity{kind: e.kind, style: s, insert: i})
}

func (r *reader) measureOf(e *record) *linework.Measure {
	raw, _ := e.find(1)
	says := strings.TrimSpace(plainMText(r.text.text(raw)))
	if says == "<>" {
		says = ""
	}
	m := &linework.Measure{Says: says}
	kind := e.whole(70, 0) & dimType
	from, to := 13, 14
	switch kind {
	case dimAngular, dimAngular3:
		m.Angular = true
		m.Measured = e.num(42, 0)
		return m
	case dimDiameter, dimRadius:
		from, to = 10, 15
	}
	m.From, m.To = e.vec(from).plan(), e.vec(to).plan()
	m.Measured = e.num(42, 0)
	if m.Measured == 0 { // older releases do not record it
		span := m.To.Sub(m.From)
		m.Measured = span.Len()
		if kind == dimRotated {
			m.Measured = math.Abs(span.Dot(plane.Polar(1, radians(e.num(50, 0)))))
		}
	}
	return m
}

// tablePicture places the block that shows a table.
func (r *reader) tablePicture(e *record) error {
	s, err := r.style(e)
	if err != nil {
		return err
	}
	i := &insert{columns: 1, rows: 1, picture: true, place: shift(e.vec(10))}
	r.nameBlock(i, e)
	if e.bad != "" {
		r.note(e.kind, e.bad)
		return nil
	}
	return r.take(&entity{kind: e.kind, style: s, insert: i})
}
