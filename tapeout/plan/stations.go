package plan

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// Station is a place at which a revolve or what runs on a track comes to rest.
type Station struct {
	At     plane.Point // plan axes; on the rim of a revolve, on the way of a track
	Across plane.Point // unit vector along the tick that marks it: the radius, or square to the way
	Turns  bool        // a revolve, which turns about its centre
	Centre plane.Point // plan axes; of a revolve
	Travel float64     // degrees counter-clockwise from above, or metres along the way
	Start  bool        // the revolve as drawn, or where the way begins
	Stop   bool        // where the way ends
	Scenes []SceneID   // those that use it, in the plan's order; none: only the way passes here
}

// Stations returns where the carrier comes to rest: a revolve as drawn and at
// each other angle, a track at its start, its stop and each distance that a scene
// uses. The reference of a revolve is the point of its rim straight downstage of
// its centre as drawn. What is no carrier, a revolve that never turns, a track
// without a way and a carrier that is in no scene have none.
func (p *Plan) Stations(e *Element) []Station {
	switch e.Kind {
	case Revolve:
		return p.turned(e)
	case Track:
		return p.travelled(e)
	}
	return nil
}

func (p *Plan) turned(e *Element) []Station {
	box, ok := BoundsOf(e.Paths, plane.Motion{})
	if !ok || !p.travels(e) {
		return nil
	}
	centre := box.Centre()
	rim := centre.Add(plane.Point{Y: -min(box.Width(), box.Height()) / 2})
	at := func(travel float64) Station {
		turn := plane.About(centre, travel*math.Pi/180)
		return Station{
			At: turn.Apply(rim), Across: turn.Rotate(plane.Point{Y: -1}), Turns: true, Centre: centre, Travel: travel, Start: travel == 0,
		}
	}
	return p.collect(e, []Station{at(0)}, func(travel float64) Station {
		travel = math.Mod(travel, 360)
		if travel < 0 {
			travel += 360
		}
		return at(travel)
	})
}

func (p *Plan) travelled(e *Element) []Station {
	i := slices.IndexFunc(e.Paths, func(path Path) bool { return path.Role == Way && len(path.Vertices) > 1 })
	if i < 0 {
		return nil
	}
	way := e.Paths[i]
	long := way.Length()
	at := func(travel float64) Station {
		travel = min(max(travel, 0), long)
		on, ahead := way.at(travel)
		return Station{At: on, Across: ahead.Left(), Travel: travel, Start: travel == 0, Stop: travel == long}
	}
	out := []Station{at(0)}
	if !way.Closed && long > 0 {
		out = append(out, at(long))
	}
	return p.collect(e, out, at)
}

// collect adds the station of every scene to those that are there anyway, and
// leaves the order that of travel.
func (p *Plan) collect(e *Element, out []Station, at func(travel float64) Station) []Station {
	seen := len(p.Scenes) == 0
	for _, scene := range p.Scenes {
		own, in := p.Where(e, scene.ID)
		if !in {
			continue
		}
		seen = true
		if e.Kind == Track && !p.carriesIn(e, scene.ID) {
			continue
		}
		s := at(p.travel(e, scene.ID)).moved(own)
		i := slices.IndexFunc(out, func(o Station) bool {
			return o.At.To(s.At) < 1e-6 && math.Abs(o.Travel-s.Travel) < 1e-6
		})
		if i < 0 {
			out = append(out, s)
			i = len(out) - 1
		}
		out[i].Scenes = append(out[i].Scenes, scene.ID)
	}
	if !seen {
		return nil
	}
	slices.SortStableFunc(out, func(a, b Station) int {
		switch {
		case a.Travel < b.Travel:
			return -1
		case a.Travel > b.Travel:
			return 1
		}
		return 0
	})
	return out
}

func (s Station) moved(m plane.Motion) Station {
	s.At, s.Centre, s.Across = m.Apply(s.At), m.Apply(s.Centre), m.Rotate(s.Across)
	return s
}

// carriesIn tells whether anything runs on the track in the scene.
func (p *Plan) carriesIn(e *Element, scene SceneID) bool {
	if slices.ContainsFunc(p.Carries, func(c Carry) bool { return c.Carrier == e.ID && c.Scene == scene }) {
		return true
	}
	for i := range p.Elements {
		if rider := &p.Elements[i]; rider.Rides == e.ID {
			if _, in := rider.stand(scene); in {
				return true
			}
		}
	}
	return false
}

// travels tells whether any scene turns the carrier away from where it is drawn.
func (p *Plan) travels(e *Element) bool {
	return slices.ContainsFunc(p.Carries, func(c Carry) bool { return c.Carrier == e.ID && math.Mod(c.Travel, 360) != 0 })
}

func (p *Plan) travel(e *Element, scene SceneID) float64 {
	for _, c := range p.Carries {
		if c.Carrier == e.ID && c.Scene == scene {
			return c.Travel
		}
	}
	return 0
}

// at returns the point travel metres along the path and the unit vector ahead.
func (p Path) at(travel float64) (on, ahead plane.Point) {
	edges := p.Edges()
	for i, e := range edges {
		n := e.Length()
		if travel <= n || i == len(edges)-1 {
			t := 0.0
			if n > 0 {
				t = min(travel/n, 1)
			}
			ahead, _ = e.Tangent(t).Unit()
			return e.At(t), ahead
		}
		travel -= n
	}
	return on, ahead
}
