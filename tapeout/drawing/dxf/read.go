package dxf

import (
	"context"
	"errors"
	"io"
	"slices"
	"strings"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// defaultTolerance is a millimetre.
const defaultTolerance = 0.001

// Read reads a drawing. Curves that are not circular are flattened so that no chord
// departs from its curve by more than tol metres, as long as that takes no more than
// 65 536 chords to a Bézier curve or 10 000 to an ellipse; where the file does not
// say its unit, by no more than 1/10 000 of the curve's own size. A tol not above
// zero counts as a millimetre.
//
// progress, unless nil, is called with the share that has been read, from 0 to 1,
// when r tells its size (by Len or by Seek). The error, when the file cannot be read
// as a whole, wraps a *linework.Fault, or is that of r or of ctx. What can be done
// without is left aside and listed in the sheet.
func Read(ctx context.Context, r io.Reader, tol float64, progress func(done float64)) (*linework.Sheet, error) {
	if !(tol > 0) {
		tol = defaultTolerance
	}
	d := &reader{
		in: newScanner(ctx, r, progress), tol: tol,
		layers: map[string]*layer{}, layerByName: map[string]*layer{},
		linetypes: map[string]*linetype{}, blocks: map[string]*block{},
	}
	d.header = header{unit: -1, metric: -1, lengths: -1, lineScale: 1}
	d.fineness = d.header.fineness(tol)
	if err := d.read(); err != nil {
		return nil, err
	}
	if progress != nil {
		progress(1)
	}
	return d.finish(), nil
}

// reader gathers a sheet.
type reader struct {
	in     *scanner
	record record
	text   decoder
	tol    float64
	header header
	budget
	left linework.Leftovers

	layers      map[string]*layer // by the bytes in the file
	layerByName map[string]*layer // by name in capitals: names differ in more than that
	layerOrder  []*layer
	linetypes   map[string]*linetype

	blocks     map[string]*block // by name in capitals
	blocksRead bool
	block      *block   // that is being read; nil: the drawing itself
	open       compound // whose further entities are being read
	deferred   []*entity

	fineness fineness
	scratch  []plane.Edge
	arena    []plane.Edge
	items    [][]linework.Item // in the order of the drawing
	groups   int
	sheet    linework.Sheet
}

// compound is an entity that others belong to, up to a SEQEND.
type compound interface {
	add(r *reader, e *record) error
	close(r *reader) error
}

func (r *reader) read() error {
	if err := r.in.checkStart(); err != nil {
		return err
	}
	sections, err := r.readSections()
	var fault *linework.Fault
	if sections == 0 && (err == nil || errors.As(err, &fault) && fault.Reason == linework.ErrDamaged) {
		return refuse(linework.ErrNotThatFormat, "This is no DXF drawing: it does not begin with a section of one",
			"Export the drawing as ASCII DXF")
	}
	if err != nil {
		return err
	}
	for _, e := range r.deferred {
		if err := r.placeTop(e); err != nil {
			return err
		}
	}
	return nil
}

// readSections reads to the end of the file and returns how many sections it has.
func (r *reader) readSections() (sections int, err error) {
	for {
		code, value, err := r.in.next()
		switch {
		case errors.Is(err, io.EOF):
			if sections > 0 {
				r.left.Add("end mark of the file", "it is missing, so that the end of the drawing may be, too", 1)
			}
			return sections, nil
		case err != nil:
			return sections, err
		case code == 999:
			continue
		case code == 0 && string(value) == "EOF":
			return sections, nil
		case code != 0 || string(value) != "SECTION":
			return sections, damaged(r.in.line, "a section should begin here")
		}
		code, value, err = r.in.next()
		if err != nil {
			return sections, r.cut(err)
		}
		if code != 2 {
			return sections, damaged(r.in.line, "a section has no name")
		}
		sections++
		if err := r.section(string(value)); err != nil {
			return sections, err
		}
	}
}

func (r *reader) section(name string) error {
	var err error
	switch name {
	case "HEADER":
		err = r.readHeader()
		r.fineness = r.header.fineness(r.tol)
	case "TABLES":
		err = r.readTables()
	case "BLOCKS":
		err = r.readBlocks()
	case "ENTITIES":
		err = r.readEntities()
	}
	if err != nil {
		return err
	}
	return r.skipSection()
}

// skipSection goes on behind the end of the section.
func (r *reader) skipSection() error {
	for {
		code, value, err := r.in.next()
		if err != nil {
			return r.cut(err)
		}
		if code == 0 {
			switch string(value) {
			case "ENDSEC":
				return nil
			case "EOF", "SECTION":
				return damaged(r.in.line, "a section is not closed")
			}
		}
	}
}

// cut turns the end of the file into the error that it is inside a section.
func (r *reader) cut(err error) error {
	if errors.Is(err, io.EOF) {
		return damaged(r.in.line, "the file is cut short")
	}
	return err
}

// eachRecord calls do for every record up to the end of the section, which stays to
// be read. The record holds until do returns.
func (r *reader) eachRecord(do func(e *record) error) error {
	for {
		code, value, err := r.in.next()
		if err != nil {
			return r.cut(err)
		}
		if code != 0 {
			continue
		}
		switch string(value) {
		case "ENDSEC", "EOF", "SECTION":
			r.in.putBack()
			return nil
		}
		if string(value) != r.record.kind {
			r.record.kind = string(value)
		}
		if err := r.in.readRecord(&r.record, 0); err != nil {
			return err
		}
		if err := do(&r.record); err != nil {
			return err
		}
	}
}

// finish completes the sheet.
func (r *reader) finish() *linework.Sheet {
	s := &r.sheet
	s.Items = slices.Concat(r.items...)
	s.Format, s.Version = "DXF", r.header.version()
	s.Unit, s.UnitHint, s.UnitWhy = r.header.units()
	for _, l := range r.layerOrder {
		s.Layers = append(s.Layers, l.Layer)
	}
	if r.text.odd > 0 {
		r.left.Add("encoding of words", "it is not UTF-8 as this release prescribes; accents may be wrong", r.text.odd)
	}
	s.Left = r.left.List()
	s.Box, _ = s.Bounds((*linework.Item).Shown)
	return s
}

func capitals(name string) string { return strings.ToUpper(strings.TrimSpace(name)) }
