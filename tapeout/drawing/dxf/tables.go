package dxf

import (
	"math"
	"strings"

	"groundrow/tapeout/drawing/linework"
)

// layer is one of the drawing's layers, while it is read.
type layer struct {
	linework.Layer
	linetype *linetype
	weight   int // hundredths of a millimetre; below zero: not said
}

// linetype is a pattern of dashes. One without dashes is solid.
type linetype struct {
	name   string
	dashes []float64 // drawn, gap, … in drawing units, before any scale
	scaled map[float64][]float64
}

// Names that stand for another's linetype.
const (
	lineByLayer = "BYLAYER"
	lineByBlock = "BYBLOCK"
)

// readTables reads the layers and the linetypes.
func (r *reader) readTables() error {
	return r.eachRecord(func(e *record) error {
		if e.kind != "LAYER" && e.kind != "LTYPE" {
			return nil
		}
		if err := r.spend(costName + 8*len(e.tags)); err != nil {
			return err
		}
		if e.kind == "LAYER" {
			r.readLayer(e)
		} else {
			r.readLinetype(e)
		}
		return nil
	})
}

func (r *reader) readLayer(e *record) {
	l, err := r.layer(e)
	if err != nil {
		return
	}
	const frozen = 1
	i := e.ink()
	l.Off = i.number < 0
	l.Frozen = e.whole(70, 0)&frozen != 0
	i.number = int(math.Abs(float64(i.number)))
	l.Colour = i.colour(indexed(foreground), indexed(foreground))
	if name, ok := e.find(6); ok {
		l.linetype = r.linetype(name)
	}
	l.weight = e.whole(370, -1)
}

// layer returns the layer that the record names with code 8, or with 2 in the table
// itself; a layer that has no entry there is shown, in the foreground colour.
func (r *reader) layer(e *record) (*layer, error) {
	code := 8
	if e.kind == "LAYER" {
		code = 2
	}
	raw, _ := e.find(code)
	if l := r.layers[string(raw)]; l != nil {
		return l, nil
	}
	name := r.text.text(raw)
	if name == "" {
		name = "0"
	}
	key := strings.ToUpper(name)
	l := r.layerByName[key]
	if l == nil {
		if err := r.spend(costName + len(name)); err != nil {
			return nil, err
		}
		l = &layer{Layer: linework.Layer{Name: name, Colour: indexed(foreground)}, weight: -1}
		r.layerByName[key] = l
		r.layerOrder = append(r.layerOrder, l)
	}
	r.layers[string(raw)] = l
	return l, r.spend(costName)
}

// linetype returns the linetype of that name, which may get its dashes later.
func (r *reader) linetype(raw []byte) *linetype {
	if l := r.linetypes[string(raw)]; l != nil {
		return l
	}
	key := strings.ToUpper(strings.TrimSpace(string(raw)))
	l := r.linetypes[key]
	r.bytes += costName // the next one to spend finds out if that is too much
	if l == nil {
		l = &linetype{name: key}
		r.linetypes[key] = l
	}
	r.linetypes[string(raw)] = l
	return l
}

func (r *reader) readLinetype(e *record) {
	name, _ := e.find(2)
	l := r.linetype(name)
	var parts []float64
	for _, t := range e.tags {
		if t.code == 49 {
			parts = append(parts, e.parse(e.value(t)))
		}
	}
	const most = 64 // the DXF reference allows 12
	if len(parts) > most {
		e.bad = whyLong
	}
	if e.bad != "" {
		r.left.Add("LTYPE", e.bad, 1)
		return
	}
	l.dashes = alternating(parts)
}

// alternating turns lengths, negative for gaps and zero for dots, into drawn, gap,
// drawn, gap; neighbours of one sort are joined. nil when there is no gap.
func alternating(parts []float64) []float64 {
	var out []float64
	gaps := false
	for _, p := range parts {
		gap := p < 0
		gaps = gaps || gap
		switch isGap := len(out)%2 == 0; { // what the last entry of out is
		case len(out) == 0 && gap:
			out = append(out, 0, -p)
		case len(out) == 0, isGap != gap:
			out = append(out, math.Abs(p))
		default:
			out[len(out)-1] += math.Abs(p)
		}
	}
	if !gaps {
		return nil
	}
	if len(out)%2 == 1 { // the next dash joins the first
		out[0] += out[len(out)-1]
		out = out[:len(out)-1]
	}
	return out
}

// dash returns the pattern at that scale; equal ones share their memory.
func (l *linetype) dash(scale float64) []float64 {
	if l == nil || len(l.dashes) == 0 || !(scale > 0) {
		return nil
	}
	if d, ok := l.scaled[scale]; ok {
		return d
	}
	d := make([]float64, len(l.dashes))
	for i, x := range l.dashes {
		d[i] = x * scale
	}
	const most = 256 // scales are few; a file that has more pays in memory
	if l.scaled == nil {
		l.scaled = map[float64][]float64{}
	}
	if len(l.scaled) < most {
		l.scaled[scale] = d
	}
	return d
}
