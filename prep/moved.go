package prep

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Move is a piece that stands elsewhere than the plan has it since it was moved in
// rehearsal, as it was measured back from the floor.
type Move struct {
	ID       string
	Floor    floor.ID // on which it was measured
	Element  plan.ElementID
	Scene    plan.SceneID // empty: in every scene that has the piece in that place
	Over, Up float64      // metres in plan axes; how far the middle of the piece has gone
	Turn     float64      // degrees counter-clockwise about its middle
	Points   string       // what was measured: "A, B, C"
	Reason   string
	By       string
	On       time.Time
	Taken    bool // the plan has it in the new place
}

// KeepMove records that a piece has moved and, when m.Taken, puts it there on the
// plan. What was only noted of the same piece in the same scene was measured from the
// same place of the plan, and gives way to it. It fails when the piece is not in the scene, or when it stands in several
// places and no scene is named; then nothing has changed.
func (p *Production) KeepMove(m Move) error {
	e := p.Plan.Element(m.Element)
	switch {
	case e == nil:
		return errors.New("the piece is not there any more: somebody has deleted it")
	case p.Floor(m.Floor) == nil:
		return errors.New("the floor is not there any more: somebody has deleted it")
	}
	if m.Taken {
		if err := p.moveTo(e, m); err != nil {
			return err
		}
	}
	p.Moves = append(filter(p.Moves, func(o Move) bool {
		return o.Taken || o.Floor != m.Floor || o.Element != m.Element || o.Scene != m.Scene
	}), m)
	return nil
}

// TakeMove puts a piece on the plan where a move that was only noted has brought
// it.
func (p *Production) TakeMove(id string) error {
	i := slices.IndexFunc(p.Moves, func(m Move) bool { return m.ID == id })
	if i < 0 {
		return errors.New("the move is not there any more: somebody has deleted it")
	}
	m := p.Moves[i]
	e := p.Plan.Element(m.Element)
	if e == nil || m.Taken {
		return errors.New("there is nothing to take: the plan has the piece there already, or has it no more")
	}
	if err := p.moveTo(e, m); err != nil {
		return err
	}
	p.Moves[i].Taken = true
	return nil
}

// RemoveMove deletes the record of a move; the plan stays as it is.
func (p *Production) RemoveMove(id string) { drop(&p.Moves, func(m Move) bool { return m.ID == id }) }

// MovesOf returns the moves of an element that were measured on a floor.
func (p *Production) MovesOf(id floor.ID, e plan.ElementID) []Move {
	return filter(p.Moves, func(m Move) bool { return m.Floor == id && m.Element == e })
}

// standsIn returns where a piece stands, and the scenes that have it there: one
// scene, or with none named all of them if they agree.
func (p *Production) standsIn(e *plan.Element, scene plan.SceneID) (plane.Motion, []plan.SceneID, error) {
	if scene != "" {
		at, ok := p.Plan.Where(e, scene)
		if !ok {
			return plane.Motion{}, nil, fmt.Errorf("%s is not in %s", e.Name, p.Plan.SceneName(scene))
		}
		return at, []plan.SceneID{scene}, nil
	}
	stands := p.Plan.Standings(e)
	switch {
	case len(stands) == 0:
		return plane.Motion{}, nil, fmt.Errorf("%s is in no scene", e.Name)
	case len(stands) > 1:
		return plane.Motion{}, nil, fmt.Errorf("%s stands in %d places: choose the scene in which it was measured", e.Name, len(stands))
	}
	scenes := stands[0].Scenes
	if scenes == nil {
		for _, s := range p.Plan.Scenes {
			scenes = append(scenes, s.ID)
		}
	}
	return stands[0].Motion, scenes, nil
}

// moveTo puts a piece on the plan where a move has brought it. A plan without
// scenes has what is drawn moved.
func (p *Production) moveTo(e *plan.Element, m Move) error {
	at, scenes, err := p.standsIn(e, m.Scene)
	if err != nil {
		return err
	}
	anchor, ok := e.Anchor()
	if !ok {
		return fmt.Errorf("nothing is drawn of %s that could be moved", e.Name)
	}
	by := plane.About(at.Apply(anchor), m.Turn*math.Pi/180).Then(plane.Motion{Shift: plane.Point{X: m.Over, Y: m.Up}})
	if len(p.Plan.Scenes) == 0 {
		e.Paths = slices.Clone(e.Paths)
		for i := range e.Paths {
			e.Paths[i].Path = e.Paths[i].Moved(by)
		}
		return nil
	}
	stands := p.standAll(e)
	for i, s := range stands {
		if !slices.Contains(scenes, s.Scene) {
			continue
		}
		own := s.Motion(anchor)
		where, _ := p.Plan.Where(e, s.Scene)
		under := own.Inverse().Then(where) // what carries the piece, and it with it
		next := own.Then(under).Then(by).Then(under.Inverse())
		shift := next.Apply(anchor).Sub(anchor)
		stands[i].Over, stands[i].Up = shift.X, shift.Y
		stands[i].Turn = math.Remainder(next.Turn, 2*math.Pi) * 180 / math.Pi
	}
	e.Stands = stands
	return nil
}

// standAll returns the stands of a piece; one that is as drawn in every scene gets
// one for each.
func (p *Production) standAll(e *plan.Element) []plan.Stand {
	if len(e.Stands) > 0 {
		return slices.Clone(e.Stands)
	}
	var out []plan.Stand
	for _, s := range p.Plan.Scenes {
		out = append(out, plan.Stand{Scene: s.ID})
	}
	return out
}
