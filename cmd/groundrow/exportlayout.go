package main

import (
	"fmt"
	"io"

	"groundrow/prep"
	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// goingOut are the options of what goes out as a drawing or as points.
type goingOut struct {
	axes, scale, unit, north, east string
	header                         bool
}

// axesNamed are what --axes takes, in the order of layout.AllAxes.
var axesNamed = []string{"datum", "room"}

// layout gathers the chosen floor in the chosen scene and axes.
func (e *export) layout(p *production) (*layout.Layout, error) {
	f, scene, err := e.chosen(p.P)
	if err != nil {
		return nil, err
	}
	i, err := named("axes", e.axes, axesNamed)
	if err != nil {
		return nil, fmt.Errorf("--axes: %w", err)
	}
	return layout.Of(prep.Outgoing(p.P, p.work(f.ID).In(scene)), layout.AllAxes[i]), nil
}

// outgoing returns how the floor is written as a DXF or SVG drawing or as points.
func (e *export) outgoing(p *production, what string) (func(io.Writer) error, error) {
	l, err := e.layout(p)
	if err != nil {
		return nil, err
	}
	switch what {
	case "dxf":
		unit, err := e.unitOf(p)
		return func(w io.Writer) error { return l.WriteDXF(w, layout.UnitFor(unit)) }, err
	case "svg":
		scale, err := e.scaleOf(p)
		return func(w io.Writer) error { return l.WriteSVG(w, scale) }, err
	}
	list, err := e.pointList(p)
	return func(w io.Writer) error { return l.WritePoints(w, list) }, err
}

// unitOf returns the unit that --unit names, or the production's.
func (e *export) unitOf(p *production) (length.Unit, error) {
	if e.unit == "" {
		return p.P.Unit(), nil
	}
	u, err := unitNamed(e.unit)
	if err != nil {
		return "", fmt.Errorf("--unit: %w", err)
	}
	return u, nil
}

// scaleOf returns the scale that --scale names, or that of the plan, or the usual.
func (e *export) scaleOf(p *production) (length.Scale, error) {
	if e.scale != "" {
		s, err := length.ParseScale(e.scale)
		if err != nil {
			return 0, fmt.Errorf("--scale: %w", err)
		}
		return s, nil
	}
	if s := length.Scale(p.P.Plan.Scale); s.Valid() {
		return s, nil
	}
	return length.UsualScale(p.P.Unit()), nil
}

// pointList returns how the list of points is written. Instruments count in metres
// or in feet; centimetres and millimetres stand for metres.
func (e *export) pointList(p *production) (layout.PointList, error) {
	list := layout.PointList{Unit: linework.Metre, Header: e.header}
	unit, err := e.unitOf(p)
	if err != nil {
		return list, err
	}
	if unit == length.FeetInches {
		list.Unit = linework.Foot
	}
	list.Origin, err = e.origin(unit)
	return list, err
}

func (e *export) origin(unit length.Unit) (origin plane.Point, err error) {
	for _, typed := range []struct {
		option, text string
		at           *float64
	}{{"--north", e.north, &origin.Y}, {"--east", e.east, &origin.X}} {
		if typed.text == "" {
			continue
		}
		if *typed.at, err = length.Parse(typed.text, unit); err != nil {
			return origin, fmt.Errorf("%s: %w", typed.option, err)
		}
	}
	return origin, nil
}
