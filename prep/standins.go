package prep

import (
	"fmt"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// StandInNeed is an element that something must stand in for in a scene.
type StandInNeed struct {
	Element plan.ElementID
	Name    string
	Kind    plan.Kind
	Why     Why
	StandIn *StandIn // what is on record for it; nil when nothing is
	Object  *Object  // what stands in; nil while none is found
	Number  int      // how many of the object; zero while none is found
	State   StandInState
	Safety  bool // the object must be weighted before anyone leans on it
}

// Met tells whether an object is on record, whatever its state.
func (n StandInNeed) Met() bool { return n.Object != nil || n.State == Swapped }

// Why says what makes an element need a stand-in.
type Why string

// The reasons.
const (
	ByTreatment Why = "object only on the floor"
	ByKind      Why = "used by hand"
	ByRecord    Why = "asked for"
)

// StandInNeeds returns the elements that need a stand-in in the scene, in plan
// order: those of which some rehearsal floor sets an object only; furniture and
// doors, since actors handle them; and those for which one is on record. What
// no actor uses, and what every rehearsal floor leaves out, needs none. The
// empty scene asks for any scene.
func StandInNeeds(p *Production, scene plan.SceneID) []StandInNeed {
	var out []StandInNeed
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		if !standsIn(p, e, scene) {
			continue
		}
		record := p.standIn(e.ID, scene)
		why, needed := whyStandIn(p, e)
		if record != nil && !needed {
			why, needed = ByRecord, true
		}
		if !needed {
			continue
		}
		out = append(out, needOf(p, e, why, record))
	}
	return out
}

func needOf(p *Production, e *plan.Element, why Why, record *StandIn) StandInNeed {
	n := StandInNeed{Element: e.ID, Name: e.Name, Kind: e.Kind, Why: why, StandIn: record, State: Wanted}
	if record == nil {
		return n
	}
	n.State = record.State
	if n.State == "" {
		n.State = Wanted
	}
	if n.Object = p.Object(record.Object); n.Object != nil {
		n.Number = max(1, record.Number)
		n.Safety = n.Object.Ballast
	}
	return n
}

// standsIn tells whether the element is in the scene.
func standsIn(p *Production, e *plan.Element, scene plan.SceneID) bool {
	if scene == "" {
		return len(p.Plan.Standings(e)) > 0
	}
	_, ok := p.Plan.Where(e, scene)
	return ok
}

// standIn returns what is on record for the element in the scene: an entry for
// that scene before one for all. The empty scene takes the first entry.
func (p *Production) standIn(e plan.ElementID, scene plan.SceneID) *StandIn {
	var all *StandIn
	for i := range p.StandIns {
		s := &p.StandIns[i]
		switch {
		case s.Element != e:
		case s.Scene == scene || scene == "":
			return s
		case s.Scene == "" && all == nil:
			all = s
		}
	}
	return all
}

func whyStandIn(p *Production, e *plan.Element) (Why, bool) {
	rooms, out := 0, 0
	for i := range p.Floors {
		f := &p.Floors[i]
		if f.Kind == floor.Stage {
			continue
		}
		rooms++
		switch f.Decide(e).How {
		case floor.ObjectOnly:
			return ByTreatment, true
		case floor.LeftOut:
			out++
		}
	}
	if e.Use == plan.Seen || rooms > 0 && out == rooms {
		return "", false
	}
	if e.Kind == plan.Furniture || e.Kind == plan.Door {
		return ByKind, true
	}
	return "", false
}

// Object returns the object with the identifier; nil when there is none.
func (p *Production) Object(id string) *Object {
	i := slices.IndexFunc(p.Objects, func(o Object) bool { return o.ID == id })
	if i < 0 {
		return nil
	}
	return &p.Objects[i]
}

// Pull is one line of the pull list: how many of an object are needed at once.
type Pull struct {
	Object  Object
	Number  int          // most needed in any one scene
	Scene   plan.SceneID // the scene that needs most; empty in a plan without scenes
	Missing int          // Number less how many there are
	State   StandInState // the least far of the stand-ins that use it
}

// PullList returns every object that stands in for something, in the order of
// the objects. What has been swapped for the real thing is needed no more.
func PullList(p *Production) []Pull {
	scenes := []plan.SceneID{""}
	if len(p.Plan.Scenes) > 0 {
		scenes = scenes[:0]
		for _, s := range p.Plan.Scenes {
			scenes = append(scenes, s.ID)
		}
	}
	at := map[string]*Pull{}
	for _, scene := range scenes {
		used := map[string]int{}
		for _, n := range StandInNeeds(p, scene) {
			if n.Object == nil || n.State == Swapped {
				continue
			}
			used[n.Object.ID] += n.Number
			l := at[n.Object.ID]
			if l == nil {
				l = &Pull{Object: *n.Object, State: n.State}
				at[n.Object.ID] = l
			}
			if slices.Index(StandInStates, n.State) < slices.Index(StandInStates, l.State) {
				l.State = n.State
			}
		}
		for id, n := range used {
			if l := at[id]; n > l.Number {
				l.Number, l.Scene = n, scene
			}
		}
	}
	var out []Pull
	for _, o := range p.Objects {
		if l := at[o.ID]; l != nil {
			l.Missing = max(0, l.Number-o.Count)
			out = append(out, *l)
		}
	}
	return out
}

// StandInProblems names what has no stand-in, scene by scene, and the objects of
// which too few exist.
func StandInProblems(p *Production) []Problem {
	var out []Problem
	scenes := p.Plan.Scenes
	if len(scenes) == 0 {
		scenes = []plan.Scene{{}}
	}
	told := map[plan.ElementID]bool{}
	for _, s := range scenes {
		for _, n := range StandInNeeds(p, s.ID) {
			if n.Met() || told[n.Element] {
				continue
			}
			told[n.Element] = true
			out = append(out, Problem{Rule: RuleStandIn, Where: n.Name, Place: PlaceStandIns,
				ID: string(n.Element), Got: p.Plan.SceneName(s.ID)})
		}
	}
	for _, l := range PullList(p) {
		if l.Missing > 0 {
			out = append(out, Problem{Rule: RuleObjects, Where: l.Object.Name, Place: PlaceStandIns,
				ID: l.Object.ID, Got: fmt.Sprint(l.Number), Limit: fmt.Sprint(l.Object.Count)})
		}
	}
	return out
}

// StandInCount returns how many objects stand in, each as often as one scene
// needs it at most, and how many of them must be weighted.
func StandInCount(p *Production) (all, weighted int) {
	for _, l := range PullList(p) {
		all += l.Number
		if l.Object.Ballast {
			weighted += l.Number
		}
	}
	return all, weighted
}
