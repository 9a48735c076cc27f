package standinsplace

import (
	"errors"
	"fmt"
	"strings"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

var (
	errNoElement  = errors.New("this element is gone from the plan")
	errNoneChosen = errors.New("choose the object that stands in first")
	errOtherScene = errors.New("this element is not in that scene")
)

// pair is an element in the scene that is looked at.
type pair struct {
	element plan.ElementID
	scene   plan.SceneID
}

// recordOf returns what is on record for the element in the scene; nil when nothing is.
func recordOf(p *prep.Production, at pair) *prep.StandIn {
	for _, n := range prep.StandInNeeds(p, at.scene) {
		if n.Element == at.element {
			return n.StandIn
		}
	}
	return nil
}

// onPair makes a change to what is on record for an element, which is begun when there is nothing yet: it then holds
// for every scene.
func onPair(at pair, change func(*prep.Production, *prep.StandIn) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		if p.Plan.Element(at.element) == nil {
			return errNoElement
		}
		if s := recordOf(p, at); s != nil {
			return change(p, s)
		}
		s := prep.StandIn{ID: uuid.NewString(), Element: at.element, Number: 1, State: prep.Wanted}
		if err := change(p, &s); err != nil {
			return err
		}
		p.StandIns = append(p.StandIns, s)
		return nil
	}
}

// use puts an object in the place of an element; empty takes it away. Another object than before is wanted anew.
func use(at pair, object string) func(*prep.Production) error {
	return onPair(at, func(p *prep.Production, s *prep.StandIn) error {
		if object != "" && p.Object(object) == nil {
			return errNoObject
		}
		if s.Object != object {
			s.Object, s.State = object, prep.Wanted
		}
		return nil
	})
}

// pairEdit turns what was typed or chosen in a cell into a change and its name.
func pairEdit(p *prep.Production, at pair, column int, text string) (label string, change func(*prep.Production) error) {
	text = strings.TrimSpace(text)
	name := "an element"
	if e := p.Plan.Element(at.element); e != nil {
		name = e.Name
	}
	switch column {
	case colObject:
		return chooseObject(p, at, name, text)
	case colNumber:
		return "Change how many stand in for " + name, onPair(at, func(_ *prep.Production, s *prep.StandIn) error {
			n, err := readCount(text, 1)
			if err == nil {
				s.Number = n
			}
			return err
		})
	default:
		return "Stand-in for " + name + ": " + text, onPair(at, func(_ *prep.Production, s *prep.StandIn) error {
			return setState(s, prep.StandInState(text))
		})
	}
}

func chooseObject(p *prep.Production, at pair, name, text string) (string, func(*prep.Production) error) {
	if text == "" || strings.EqualFold(text, nothing) {
		return "Take away what stands in for " + name, use(at, "")
	}
	o := objectNamed(p, text)
	if o == nil {
		return "", func(*prep.Production) error {
			return fmt.Errorf("there is no “%s” in the rehearsal stock; add it there first", text)
		}
	}
	return "Let " + o.Name + " stand in for " + name, use(at, o.ID)
}

func setState(s *prep.StandIn, to prep.StandInState) error {
	for _, known := range prep.StandInStates {
		if known != to {
			continue
		}
		if s.Object == "" && (to == prep.Confirmed || to == prep.InRoom) {
			return errNoneChosen
		}
		s.State = to
		return nil
	}
	return fmt.Errorf("“%s” is not a state; choose one of: %s", to, strings.Join(stateNames(), ", "))
}

// setScope makes what is on record hold for one scene only, or for every scene.
func setScope(at pair, scene plan.SceneID) func(*prep.Production) error {
	return onPair(at, func(p *prep.Production, s *prep.StandIn) error {
		if scene != "" {
			if _, in := p.Plan.Where(p.Plan.Element(at.element), scene); !in {
				return errOtherScene
			}
		}
		for _, other := range p.StandIns {
			if other.Element == s.Element && other.Scene == scene && other.ID != s.ID {
				return fmt.Errorf("something already stands in for it in %s", scopeName(p, scene))
			}
		}
		s.Scene = scene
		return nil
	})
}

// everyScene is how a stand-in that holds for all scenes is offered.
const everyScene = "every scene"

func scopeName(p *prep.Production, scene plan.SceneID) string {
	if scene == "" {
		return everyScene
	}
	return p.Plan.SceneName(scene)
}

// another begins a record for one scene beside the one for every scene.
func another(at pair) func(*prep.Production) error {
	return func(p *prep.Production) error {
		if p.Plan.Element(at.element) == nil {
			return errNoElement
		}
		p.StandIns = append(p.StandIns, prep.StandIn{
			ID: uuid.NewString(), Element: at.element, Scene: at.scene, Number: 1, State: prep.Wanted,
		})
		return nil
	}
}

// propose takes every proposal for the scene as one change.
func propose(scene plan.SceneID) func(*prep.Production) error {
	return func(p *prep.Production) error {
		for _, f := range prep.ProposeStandIns(p, scene) {
			if err := use(pair{f.Element, scene}, f.Object)(p); err != nil {
				return err
			}
		}
		return nil
	}
}

// forget deletes what is on record for the elements in the scene.
func forget(elements []plan.ElementID, scene plan.SceneID) func(*prep.Production) error {
	return func(p *prep.Production) error {
		for _, e := range elements {
			s := recordOf(p, pair{e, scene})
			if s == nil {
				continue
			}
			var rest []prep.StandIn
			for _, other := range p.StandIns {
				if other.ID != s.ID {
					rest = append(rest, other)
				}
			}
			p.StandIns = rest
		}
		return nil
	}
}

// others names the elements of the scene that need no stand-in so far.
func others(p *prep.Production, scene plan.SceneID) (names []string, ids []plan.ElementID) {
	listed := map[plan.ElementID]bool{}
	for _, n := range prep.StandInNeeds(p, scene) {
		listed[n.Element] = true
	}
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		if listed[e.ID] {
			continue
		}
		in := len(p.Plan.Standings(e)) > 0
		if scene != "" {
			_, in = p.Plan.Where(e, scene)
		}
		if in {
			names, ids = append(names, e.Name), append(ids, e.ID)
		}
	}
	return names, ids
}
