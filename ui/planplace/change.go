package planplace

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// errGone is told to a person whose element somebody else has deleted meanwhile.
var errGone = errors.New("the element is no longer there: somebody has deleted it")

// newID makes identifiers.
type newID func() string

// change runs an edit on one element of a production.
func change(p *prep.Production, id plan.ElementID, do func(*plan.Element) error) error {
	e := p.Plan.Element(id)
	if e == nil {
		return errGone
	}
	return do(e)
}

// rename gives an element its name.
func rename(p *prep.Production, id plan.ElementID, name string) error {
	if name == "" {
		return errors.New("an element needs a name, so that the crew can be told what to lay")
	}
	return change(p, id, func(e *plan.Element) error {
		e.Name = name
		return nil
	})
}

// ride puts an element onto a carrier; none takes it off. A ring of carriers is
// refused.
func ride(p *prep.Production, id, carrier plan.ElementID) error {
	for at, n := carrier, 0; at != "" && n <= len(p.Plan.Elements); n++ {
		if at == id {
			return fmt.Errorf("%s would carry itself round: choose another carrier", nameOf(p, id))
		}
		next := p.Plan.Element(at)
		if next == nil {
			break
		}
		at = next.Rides
	}
	return change(p, id, func(e *plan.Element) error {
		e.Rides = carrier
		return nil
	})
}

// carriers returns what an element can ride on.
func carriers(p *prep.Production, id plan.ElementID) []plan.Element {
	var out []plan.Element
	for _, e := range p.Plan.Elements {
		if e.Kind.Carrier() && e.ID != id {
			out = append(out, e)
		}
	}
	return out
}

// duplicate copies elements beside themselves and returns the copies. A copy has
// everything but the travels of a carrier, its treatments and its stand-ins.
func duplicate(p *prep.Production, ids []plan.ElementID, by plane.Point, id newID) []plan.ElementID {
	var out []plan.ElementID
	for _, of := range ids {
		e := p.Plan.Element(of)
		if e == nil {
			continue
		}
		copied := *e
		copied.ID = plan.ElementID(id())
		copied.Name = copyName(p, e.Name)
		copied.Stands = slices.Clone(e.Stands)
		copied.Paths = nil
		for _, path := range e.Paths {
			copied.Paths = append(copied.Paths, plan.Path{
				ID: plan.PathID(id()), Role: path.Role, Path: path.Moved(plane.Motion{Shift: by}),
			})
		}
		p.Plan.Elements = append(p.Plan.Elements, copied)
		out = append(out, copied.ID)
	}
	return out
}

// copyName counts up from the name that is copied: "Chair", "Chair 2".
func copyName(p *prep.Production, name string) string {
	base := name
	if at := strings.LastIndexByte(name, ' '); at > 0 && strings.Trim(name[at+1:], "0123456789") == "" && at+1 < len(name) {
		base = name[:at]
	}
	taken := map[string]bool{}
	for _, e := range p.Plan.Elements {
		taken[e.Name] = true
	}
	for n := 2; ; n++ {
		if next := fmt.Sprintf("%s %d", base, n); !taken[next] {
			return next
		}
	}
}

// move shifts elements by a displacement in plan axes, as they are seen in the
// scene. One that is placed by scene moves in that scene; any other moves as
// drawn. What a carrier turns is moved by what looks the same from the stage.
func move(p *prep.Production, ids []plan.ElementID, scene plan.SceneID, by plane.Point) {
	for _, id := range ids {
		e := p.Plan.Element(id)
		if e == nil {
			continue
		}
		seen, in := p.Plan.Where(e, scene)
		if !in {
			continue
		}
		stand := standIn(e, scene)
		if stand == nil {
			shift(e, plane.Motion{Turn: -seen.Turn}.Rotate(by))
			continue
		}
		carried := seen.Turn - stand.Turn*math.Pi/180
		own := plane.Motion{Turn: -carried}.Rotate(by)
		stand.Over += own.X
		stand.Up += own.Y
	}
}

func shift(e *plan.Element, by plane.Point) {
	for i := range e.Paths {
		e.Paths[i].Path = e.Paths[i].Moved(plane.Motion{Shift: by})
	}
}

// turn turns elements by degrees, counter-clockwise as seen from above, each about
// the middle of what is drawn of it: in the scene where it is placed by scene,
// else as drawn.
func turn(p *prep.Production, ids []plan.ElementID, scene plan.SceneID, degrees float64) {
	for _, id := range ids {
		e := p.Plan.Element(id)
		if e == nil {
			continue
		}
		if stand := standIn(e, scene); stand != nil {
			stand.Turn = wholeTurn(stand.Turn + degrees)
			continue
		}
		if anchor, ok := e.Anchor(); ok {
			for i := range e.Paths {
				e.Paths[i].Path = e.Paths[i].Moved(plane.About(anchor, degrees*math.Pi/180))
			}
		}
	}
}

// wholeTurn brings degrees into (−180, 180].
func wholeTurn(degrees float64) float64 {
	r := math.Remainder(degrees, 360)
	if r == -180 {
		return 180
	}
	return r
}
