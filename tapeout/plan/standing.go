package plan

import (
	"math"

	"groundrow/tapeout/plane"
)

// Standing is one position of an element and the scenes that use it.
type Standing struct {
	Motion plane.Motion // from where it is drawn, in plan axes
	Scenes []SceneID    // empty: all
}

// Anchor is the point about which an element turns: the centre of the box around
// what is drawn of it. ok is false for an element without line work.
func (e *Element) Anchor() (anchor plane.Point, ok bool) {
	box, ok := BoundsOf(e.Paths, plane.Motion{})
	return box.Centre(), ok
}

// BoundsOf returns the box around paths that are moved; ok is false when there is
// no line work.
func BoundsOf(paths []Path, m plane.Motion) (box plane.Box, ok bool) {
	for _, path := range paths {
		b, has := path.Moved(m).Bounds()
		switch {
		case !has:
		case !ok:
			box, ok = b, true
		default:
			box = box.Union(b)
		}
	}
	return box, ok
}

// Where returns the motion from where the element is drawn to where it stands in
// the scene; ok is false when it is not in that scene. The empty scene stands
// for the plan as drawn.
func (p *Plan) Where(e *Element, scene SceneID) (m plane.Motion, ok bool) {
	return p.where(e, scene, len(p.Elements))
}

// where follows carriers that ride carriers; depth ends a ring of them.
func (p *Plan) where(e *Element, scene SceneID, depth int) (plane.Motion, bool) {
	if scene == "" {
		return plane.Motion{}, true
	}
	own, ok := e.stand(scene)
	if !ok {
		return plane.Motion{}, false
	}
	carrier := p.Element(e.Rides)
	if carrier == nil || depth == 0 {
		return own, true
	}
	under, ok := p.where(carrier, scene, depth-1)
	if !ok {
		under = plane.Motion{}
	}
	return own.Then(p.carry(carrier, scene)).Then(under), true
}

// Motion returns how the stand takes a piece from where it is drawn, in plan axes:
// turned about its anchor, then shifted.
func (s Stand) Motion(anchor plane.Point) plane.Motion {
	return plane.About(anchor, s.Turn*math.Pi/180).Then(plane.Motion{Shift: plane.Point{X: s.Over, Y: s.Up}})
}

func (e *Element) stand(scene SceneID) (plane.Motion, bool) {
	if len(e.Stands) == 0 {
		return plane.Motion{}, true
	}
	for _, s := range e.Stands {
		if s.Scene == scene {
			anchor, _ := e.Anchor()
			return s.Motion(anchor), true
		}
	}
	return plane.Motion{}, false
}

// carry returns how far the carrier has taken its riders in the scene.
func (p *Plan) carry(carrier *Element, scene SceneID) plane.Motion {
	travel := p.travel(carrier, scene)
	if carrier.Kind == Revolve {
		centre, _ := carrier.Anchor()
		return plane.About(centre, travel*math.Pi/180)
	}
	return plane.Motion{Shift: carrier.along(travel)}
}

// along returns the displacement from the start of the track's way to the point
// travel metres along it, held at its ends.
func (e *Element) along(travel float64) plane.Point {
	for _, path := range e.Paths {
		if path.Role == Way && len(path.Vertices) > 1 {
			on, _ := path.at(max(travel, 0))
			return on.Sub(path.Vertices[0].Point)
		}
	}
	return plane.Point{}
}

// Standings returns the different positions of the element over the scenes,
// first use first. A plan without scenes has it where it is drawn; an element
// that is in no scene has none.
func (p *Plan) Standings(e *Element) []Standing {
	if len(p.Scenes) == 0 {
		return []Standing{{}}
	}
	var out []Standing
	for _, s := range p.Scenes {
		m, ok := p.Where(e, s.ID)
		if !ok {
			continue
		}
		out = joinStanding(out, m, s.ID)
	}
	if len(out) == 1 && len(out[0].Scenes) == len(p.Scenes) {
		out[0].Scenes = nil
	}
	return out
}

func joinStanding(out []Standing, m plane.Motion, scene SceneID) []Standing {
	for i := range out {
		if sameMotion(out[i].Motion, m) {
			out[i].Scenes = append(out[i].Scenes, scene)
			return out
		}
	}
	return append(out, Standing{m, []SceneID{scene}})
}

// sameMotion holds two motions for one when they differ by less than a
// micrometre and a microradian: far below what anyone can lay.
func sameMotion(a, b plane.Motion) bool {
	turn := math.Remainder(a.Turn-b.Turn, 2*math.Pi)
	return math.Abs(turn) < 1e-6 && a.Shift.To(b.Shift) < 1e-6
}
