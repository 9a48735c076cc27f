package dxf

import (
	"bytes"
	"errors"
	"io"
	"math"
	"strconv"
)

// record is the pairs of one entity, table entry or header variable.
type record struct {
	kind string
	line int // of its kind
	tags []tag
	text []byte // all values, one after the other
	bad  string // why it cannot be used, once something was asked for; a clause
}

type tag struct{ code, from, to int32 }

// Reasons for leaving an entity aside.
const (
	whyFar    = "a coordinate is no number, or beyond 10 000 million drawing units"
	whyBroken = "a number in it cannot be read"
	whyLong   = "it is larger than this program takes"
)

// readRecord reads the pairs up to the next of code end (0, or 9 in the header),
// which stays to be read, and of code 0 in any case. Application data and
// extended data are skipped: their codes do not mean what those of the entity mean.
func (s *scanner) readRecord(e *record, end int) error {
	e.line, e.tags, e.text, e.bad = s.line, e.tags[:0], e.text[:0], ""
	embedded, group := false, false
	for {
		code, value, err := s.next()
		if errors.Is(err, io.EOF) {
			return damaged(s.line, "the file is cut short")
		}
		if err != nil {
			return err
		}
		switch {
		case code == 0 || code == end:
			s.putBack()
			return nil
		case code == 102:
			group = bytes.HasPrefix(value, []byte("{"))
		case code == 101:
			embedded = true
		case code >= 999 || group || embedded:
		case len(e.text) > maxRecord || len(e.tags) > maxTags:
			e.bad = whyLong
		default:
			from := len(e.text)
			e.text = append(e.text, value...)
			e.tags = append(e.tags, tag{int32(code), int32(from), int32(len(e.text))})
		}
	}
}

func (e *record) value(t tag) []byte { return e.text[t.from:t.to] }

// find returns the first value with the code.
func (e *record) find(code int) ([]byte, bool) {
	for _, t := range e.tags {
		if int(t.code) == code {
			return e.value(t), true
		}
	}
	return nil, false
}

func (e *record) has(code int) bool {
	_, ok := e.find(code)
	return ok
}

// num returns the first number with the code, or else.
func (e *record) num(code int, or float64) float64 {
	if v, ok := e.find(code); ok {
		return e.parse(v)
	}
	return or
}

// parse reads a number; where it cannot, the record is bad.
func (e *record) parse(v []byte) float64 {
	x, err := strconv.ParseFloat(string(bytes.TrimSpace(v)), 64)
	switch {
	case errors.Is(err, strconv.ErrRange), err == nil && !(math.Abs(x) <= maxCoord):
		e.bad = whyFar
		return 0
	case err != nil:
		e.bad = whyBroken
		return 0
	}
	return x
}

// whole returns the first whole number with the code, or else.
func (e *record) whole(code, or int) int {
	v, ok := e.find(code)
	if !ok {
		return or
	}
	n, err := strconv.ParseInt(string(bytes.TrimSpace(v)), 10, 32)
	if err != nil { // some programs write 1.0 for 1
		return int(e.parse(v))
	}
	return int(n)
}

// vec returns the point whose X has the code, Y 10 more and Z 20 more.
func (e *record) vec(code int) vec {
	return vec{e.num(code, 0), e.num(code+10, 0), e.num(code+20, 0)}
}

// extrusion returns the direction that the entity's own plane faces.
func (e *record) extrusion() vec {
	if !e.has(210) && !e.has(230) {
		return vec{Z: 1}
	}
	return e.vec(210)
}
