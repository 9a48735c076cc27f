package main

import (
	"fmt"
	"math"
	"strings"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// drawingReport is what a drawing holds, in JSON. Lengths are metres on the floor at
// the scale that holds, or at the file's own unit where no scale is known; null where
// neither is.
type drawingReport struct {
	Name      string          `json:"name"`
	Format    string          `json:"format"`
	Version   string          `json:"version"`
	Page      int             `json:"page"`
	Pages     int             `json:"pages"`
	Unit      string          `json:"unit"`
	UnitSize  metres          `json:"unit_m"`
	UnitWhy   string          `json:"unit_why"`
	PerUnit   *float64        `json:"per_unit_m"`
	ScaleWhy  string          `json:"scale_why"`
	Scales    []scaleReport   `json:"scales"`
	Datum     *datumReport    `json:"datum"`
	Layers    []layerReport   `json:"layers"`
	Length    metres          `json:"length_m"`
	Visible   metres          `json:"visible_length_m"`
	Extents   *extents        `json:"extents_m"`
	LeftAside []leftReport    `json:"left_aside"`
	Elements  []elementReport `json:"elements"`
	Taken     []string        `json:"taken"`
	Revision  *revisionReport `json:"revision"` // null where the plan was empty, or the elements are added
}

type scaleReport struct {
	Scale      string  `json:"scale"`
	PerUnit    float64 `json:"per_unit_m"`
	Why        string  `json:"why"`
	Confidence float64 `json:"confidence"`
}

type datumReport struct {
	X        float64 `json:"x"` // drawing units
	Y        float64 `json:"y"`
	Turn     float64 `json:"turn_deg"`
	Baseline string  `json:"baseline"`
	Why      string  `json:"why"`
}

type layerReport struct {
	Layer         string `json:"layer"`
	Off           bool   `json:"off"`
	Entities      int    `json:"entities"`
	Visible       int    `json:"visible_entities"`
	Length        metres `json:"length_m"`
	VisibleLength metres `json:"visible_length_m"`
}

type extents struct {
	Left   metres `json:"min_x"`
	Bottom metres `json:"min_y"`
	Right  metres `json:"max_x"`
	Top    metres `json:"max_y"`
}

type leftReport struct {
	What  string `json:"what"`
	Count int    `json:"count"`
	Why   string `json:"why"`
	Lines bool   `json:"in_the_sheet"` // false: the reader could not use it at all
}

type elementReport struct {
	Name   string `json:"name"`
	Kind   string `json:"kind"`
	Level  string `json:"level"`
	Length metres `json:"length_m"`
	Why    string `json:"why"`
}

// report sums up a page.
func (in *drawingIn) report(n int) drawingReport {
	s, file := in.Sheet, in.file
	r := drawingReport{
		Name: file.Name, Format: s.Format, Version: s.Version, Page: n + 1, Pages: len(file.Pages),
		Unit: s.Unit.String(), UnitSize: metres(s.Unit), UnitWhy: s.UnitWhy, ScaleWhy: in.why,
		Layers: none(in.layersOf()), Taken: []string{}, Scales: []scaleReport{}, LeftAside: []leftReport{}, Elements: []elementReport{},
	}
	k := float64(s.Unit)
	if in.perUnit > 0 {
		k = in.perUnit
		r.PerUnit = &in.perUnit
	}
	for _, g := range in.Scales {
		r.Scales = append(r.Scales, scaleReport{g.Scale.String(), g.PerUnit, g.Why, g.Confidence})
	}
	for _, l := range r.Layers {
		r.Length += l.Length
		r.Visible += l.VisibleLength
	}
	if k > 0 && s.Box != (plane.Box{}) {
		r.Extents = &extents{metres(s.Box.Min.X * k), metres(s.Box.Min.Y * k), metres(s.Box.Max.X * k), metres(s.Box.Max.Y * k)}
	}
	if in.datum {
		r.Datum = &datumReport{X: in.origin.X, Y: in.origin.Y, Turn: in.turn * 180 / math.Pi, Baseline: string(in.baseline), Why: in.datumWhy()}
	}
	for _, a := range in.Aside {
		r.LeftAside = append(r.LeftAside, leftReport{string(a.Category), len(a.Items), a.Why, true})
	}
	for _, l := range s.Left {
		r.LeftAside = append(r.LeftAside, leftReport{l.What, l.Count, l.Why, false})
	}
	for i, c := range in.made {
		r.Elements = append(r.Elements, elementReport{c.Name, string(c.Kind), c.Level, metres(lengthOf(&in.elements[i])), c.Why})
	}
	return r
}

func (in *drawingIn) datumWhy() string {
	if len(in.Datums) > 0 && in.Datums[0].Origin == in.origin {
		return in.Datums[0].Why
	}
	return "It was given."
}

func lengthOf(e *plan.Element) float64 {
	total := 0.0
	for _, path := range e.Paths {
		total += path.Length()
	}
	return total
}

// tell writes the report.
func (r *drawingReading) tell(d drawingReport) error {
	if r.json {
		d.Taken = none(d.Taken)
		return r.writeJSON(d)
	}
	var text strings.Builder
	fmt.Fprintf(&text, "%s: %s %s, page %d of %d. %s\n", plain(d.Name), d.Format, d.Version, d.Page, d.Pages, plain(d.UnitWhy))
	if d.PerUnit != nil {
		fmt.Fprintf(&text, "One unit of the drawing is %.6g m. %s\n", *d.PerUnit, plain(d.ScaleWhy))
	} else {
		text.WriteString("Its scale is not known.\n")
	}
	for _, l := range d.LeftAside {
		fmt.Fprintf(&text, "Left aside, %d of %s: %s\n", l.Count, plain(l.What), plain(l.Why))
	}
	if _, err := fmt.Fprint(r.out, text.String()); err != nil {
		return err
	}
	table := newTable("Layer", ">Entities", ">Seen", ">Length (m)", ">Seen (m)")
	for _, l := range d.Layers {
		table.row(plain(l.Layer), fmt.Sprint(l.Entities), fmt.Sprint(l.Visible), fmt.Sprintf("%.3f", float64(l.Length)), fmt.Sprintf("%.3f", float64(l.VisibleLength)))
	}
	if err := table.write(r.out); err != nil {
		return err
	}
	if _, err := fmt.Fprintf(r.out, "Elements proposed: %d; brought in: %d\n", len(d.Elements), len(d.Taken)); err != nil {
		return err
	}
	return r.tellRevision(d.Revision)
}

// plain writes words of a drawing in one line, without signs that a terminal would
// obey.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7F || (r >= 0x80 && r < 0xA0) {
			return ' '
		}
		return r
	}, text)
}
