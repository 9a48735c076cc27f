package sheets

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
)

// content is what a sheet says, worded and rounded, before it meets a page.
type content struct {
	head   head // what the sheet words itself; the rest is filled in for it
	blocks []block
	wide   bool // the page lies on its long side
}

// head is the common head and foot.
type head struct {
	Sheet      string // what the sheet is
	Production string
	Floor      string // empty: not about one floor
	Scene      string // empty: not about a scene
	Revision   string // of the plan
	Audience   bool   // say which way the audience is
	Datum      string // in words; empty: the sheet has no figures on the floor
	Reading    string // edge, side of the line, rounding
	Ask        string
}

// block is one part of a sheet. Blocks are plain values without pointers, so
// that two equal ones print the same to the fingerprint.
type block interface {
	// set puts the block at the press's cursor, on as many pages as it needs.
	set(*press)
}

// tabular is a block that is also wanted as CSV.
type tabular interface {
	records() [][]string
}

// State is a fingerprint of what the sheet shows: equal for equal content,
// whatever the paper, the scale, the hour and the person. A sheet printed from
// another state is out of date.
func State(kind Kind, job Job) string {
	s, ok := Find(kind)
	if !ok {
		return ""
	}
	c := s.content(job)
	h := sha256.New()
	fmt.Fprintf(h, "%#v\n", c.head)
	for _, b := range c.blocks {
		fmt.Fprintf(h, "%#v\n", b)
	}
	return hex.EncodeToString(h.Sum(nil)[:12])
}

// content builds the sheet and fills in its head.
func (s Sheet) content(job Job) content {
	c := s.build(job)
	h := job.head(s)
	h.Floor = or(c.head.Floor, h.Floor)
	h.Datum = or(c.head.Datum, h.Datum)
	c.head = h
	return c
}
