package prep

import (
	"context"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// whole is the share of an element outside the floor from which it counts as wholly
// outside; the rest is the breadth of a line along the wall.
const whole = 0.98

// nearby is how far, in metres, something may be moved and still help to rehearse
// where it stands: common practice, no source.
const nearby = 3

// Propose returns what the program would do with elements on which nobody has
// decided yet, from their kind, how much they are needed and where they lie, each
// with its reason. It proposes nothing for what is best laid as drawn, and nothing
// for a stage, where all of it will stand. In plan order; a person decides.
//
// What can go is proposed first, then levels are laid beside those below, then the
// rest is fitted in, each in the room that the others leave. The rules are common
// practice, no source. A context that ends gives its error and no proposal.
func Propose(ctx context.Context, p *Production, f *floor.Floor) ([]floor.Treatment, error) {
	if f.Kind == floor.Stage {
		return nil, nil
	}
	bare := undecided(p, f)
	pr := proposing{ctx: ctx, p: p, f: &bare, over: map[plan.ElementID]floor.Overhang{}, made: map[plan.ElementID]floor.Treatment{}}
	for _, o := range bare.Overhangs(&p.Plan) {
		pr.over[o.Element] = o
	}
	pr.each(f, pr.goes)
	waiting := pr.levelsBeside()
	pr.each(f, func(e *plan.Element) (floor.Treatment, bool) {
		if waiting[e.Level] {
			return floor.Treatment{}, false
		}
		return pr.fits(e)
	})
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	var out []floor.Treatment
	for i := range p.Plan.Elements {
		if t, ok := pr.made[p.Plan.Elements[i].ID]; ok {
			out = append(out, t)
		}
	}
	return out, nil
}

// undecided returns the floor with those treatments only on which a person decided.
func undecided(p *Production, f *floor.Floor) floor.Floor {
	bare := *f
	bare.Treatments = filter(f.Treatments, func(t floor.Treatment) bool { return !t.Decided.Open() })
	return bare
}

type proposing struct {
	ctx  context.Context
	p    *Production
	f    *floor.Floor // with what is decided and what has been proposed so far
	over map[plan.ElementID]floor.Overhang
	made map[plan.ElementID]floor.Treatment

	sought int // for how many pieces a free place has been looked for
}

// mostSought is for how many pieces, one by one, a free place is looked for: a plan of
// which more lies outside wants another place in the room.
const mostSought = 30

// each asks a rule about every element on which nobody has decided and nothing has
// been proposed, until the work is called off.
func (pr *proposing) each(f *floor.Floor, rule func(*plan.Element) (floor.Treatment, bool)) {
	for i := range pr.p.Plan.Elements {
		if pr.ctx.Err() != nil {
			return
		}
		e := &pr.p.Plan.Elements[i]
		if _, made := pr.made[e.ID]; made || !f.Decide(e).Decided.Open() {
			continue
		}
		if t, ok := rule(e); ok {
			pr.make(e.ID, t)
		}
	}
}

func (pr *proposing) make(id plan.ElementID, t floor.Treatment) {
	t.Element = id
	pr.made[id] = t
	pr.f.SetTreatment(t)
}

func how(h floor.How, reason string) (floor.Treatment, bool) {
	return floor.Treatment{How: h, Reason: reason}, true
}

func needed(e *plan.Element) bool { return e.Use == plan.Essential || e.Use == plan.Danced }

// outside returns which share of the element lies outside, and that in words.
func (pr *proposing) outside(e *plan.Element) (share float64, words string) {
	o := pr.over[e.ID]
	if !(o.Of > 0) {
		return 0, ""
	}
	return o.Length / o.Of, pr.p.Style().Format(o.Length) + " of " + pr.p.Style().Format(o.Of) + " lie outside"
}

// goes proposes to leave out what actors miss least.
func (pr *proposing) goes(e *plan.Element) (floor.Treatment, bool) {
	share, words := pr.outside(e)
	switch {
	case len(pr.p.Plan.Standings(e)) == 0:
		return how(floor.LeftOut, "it stands in no scene")
	case e.Use == plan.Seen:
		return how(floor.LeftOut, "no actor uses it")
	case e.Kind == plan.EscapeStair && !needed(e):
		return how(floor.LeftOut, "nobody is seen on an escape stair")
	case share >= whole && e.Kind.House():
		return how(floor.LeftOut, "all of it lies outside")
	case share >= whole && !needed(e):
		return how(floor.LeftOut, "all of it lies outside, and no scene depends on it")
	case share > 0.5 && !needed(e):
		return how(floor.LeftOut, words+", and no scene depends on it")
	case !needed(e):
		return pr.onKeepClear(e)
	}
	return floor.Treatment{}, false
}

// fits proposes for what stays.
func (pr *proposing) fits(e *plan.Element) (floor.Treatment, bool) {
	share, words := pr.outside(e)
	switch {
	case share > 0 && e.Kind.Movable():
		return pr.inside(e, "part of it lies outside, and a piece that is set by hand cannot be cut")
	case share >= whole:
		return pr.inside(e, "all of it lies outside, and actors need it")
	case share > 0:
		return how(floor.CutShort, words+"; the rest is in its place")
	case e.Kind == plan.Stair && e.Use != plan.Danced && hasInner(e):
		return how(floor.OutlineOnly, "nobody dances on its treads")
	}
	return floor.Treatment{}, false
}

// inside proposes to bring something into the room that cannot be cut.
func (pr *proposing) inside(e *plan.Element, why string) (floor.Treatment, bool) {
	if pr.sought++; pr.sought > mostSought {
		return how(floor.ObjectOnly, why+"; so much lies outside that the plan is better set elsewhere in the room first")
	}
	over, up, ok := pr.f.Beside(&pr.p.Plan, []plan.ElementID{e.ID}, pr.step(), nearby)
	if !ok {
		return how(floor.ObjectOnly, why+"; there is no free place for its lines near by")
	}
	return floor.Treatment{How: floor.MovedAside, Over: over, Up: up, Reason: why + "; this is the nearest free place"}, true
}

// onKeepClear proposes for what lies where people must pass.
func (pr *proposing) onKeepClear(e *plan.Element) (floor.Treatment, bool) {
	toDatum := pr.f.FloorToDatum()
	one := plan.Plan{Scenes: pr.p.Plan.Scenes, Carries: pr.p.Plan.Carries, Elements: []plan.Element{*e}}
	lines := pr.f.Lines(&one)
	for _, k := range pr.f.Clears() {
		shape := k.Shape.Moved(toDatum)
		if slices.ContainsFunc(lines, func(l floor.Line) bool { return floor.Meets(l.Edge, shape) }) {
			return how(floor.LeftOut, "it lies on "+k.Name+", which must stay clear, and no scene depends on it")
		}
	}
	return floor.Treatment{}, false
}

// levelsBeside proposes to lay each level under which people pass beside the one
// below, all of it by one offset. It returns the levels for which there is no place.
func (pr *proposing) levelsBeside() (waiting map[plan.LevelID]bool) {
	waiting = map[plan.LevelID]bool{}
	for _, level := range pr.p.Plan.Levels {
		if pr.ctx.Err() != nil {
			break
		}
		all, open := pr.ofLevel(level)
		below := ""
		if level.Height >= floor.Headroom && len(open) > 0 {
			below = pr.below(level, all)
		}
		if below != "" && !pr.levelBeside(level, all, open, below) {
			waiting[level.ID] = true
		}
	}
	return waiting
}

// ofLevel returns what of a level the floor lays, and on what of it nobody has
// decided.
func (pr *proposing) ofLevel(level plan.Level) (all, open []plan.ElementID) {
	for i := range pr.p.Plan.Elements {
		e := &pr.p.Plan.Elements[i]
		t := pr.f.Decide(e)
		if e.Level != level.ID || t.How == floor.LeftOut || len(pr.p.Plan.Standings(e)) == 0 {
			continue
		}
		all = append(all, e.ID)
		if t.Decided.Open() {
			open = append(open, e.ID)
		}
	}
	return all, open
}

// levelBeside finds a place for a level; where there is none that is free, one that
// is taken only by what no scene depends on, which then goes.
func (pr *proposing) levelBeside(level plan.Level, all, open []plan.ElementID, below string) bool {
	over, up, ok := pr.f.Beside(&pr.p.Plan, all, pr.step(), farAway)
	if !ok {
		cleared := *pr.f
		cleared.Treatments = slices.Clone(pr.f.Treatments)
		for i := range pr.p.Plan.Elements {
			if e := &pr.p.Plan.Elements[i]; pr.gives(e, all) {
				cleared.SetTreatment(floor.Treatment{Element: e.ID, How: floor.LeftOut})
			}
		}
		if over, up, ok = cleared.Beside(&pr.p.Plan, all, pr.step(), farAway); !ok {
			return false
		}
		pr.makeRoom(level, all, plane.Point{X: over, Y: up})
	}
	if over == 0 && up == 0 {
		return true // it lies clear of what is below as it is
	}
	why := level.Name + " lies over " + below + "; this is the nearest free place beside it"
	for _, id := range open {
		pr.make(id, floor.Treatment{How: floor.MovedAside, Over: over, Up: up, Reason: why})
	}
	return true
}

// gives tells whether an element may go to make room.
func (pr *proposing) gives(e *plan.Element, level []plan.ElementID) bool {
	return !needed(e) && pr.f.Decide(e).Decided.Open() && !slices.Contains(level, e.ID)
}

// makeRoom proposes to leave out what lies where the level is moved to.
func (pr *proposing) makeRoom(level plan.Level, all []plan.ElementID, by plane.Point) {
	box, _ := floor.BoxAbout(&pr.p.Plan, all)
	place := plane.Rectangle(box.Min.Add(by), box.Max.Add(by)).Moved(pr.f.PlanToDatum())
	for _, l := range pr.f.Lines(&pr.p.Plan) {
		if _, made := pr.made[l.Element]; made {
			continue
		}
		if e := pr.p.Plan.Element(l.Element); pr.gives(e, all) && floor.Meets(l.Edge, place) {
			pr.make(e.ID, floor.Treatment{How: floor.LeftOut, Reason: "its place is taken by " + level.Name})
		}
	}
}

// below names the first element of a lower level that the level lies over; empty:
// none.
func (pr *proposing) below(level plan.Level, ids []plan.ElementID) string {
	over, has := floor.BoxAbout(&pr.p.Plan, ids)
	for i := range pr.p.Plan.Elements {
		e := &pr.p.Plan.Elements[i]
		height := 0.0
		if l := pr.p.Plan.Level(e.Level); l != nil {
			height = l.Height
		}
		if !has || height >= level.Height || pr.f.Decide(e).How == floor.LeftOut || slices.Contains(ids, e.ID) {
			continue
		}
		if b, ok := floor.BoxAbout(&pr.p.Plan, []plan.ElementID{e.ID}); ok && b.Meets(over) {
			return e.Name
		}
	}
	return ""
}

// step is the grid of offsets: whole half feet or multiples of 10 cm, which can be
// written on the floor and remembered.
func (pr *proposing) step() float64 {
	if pr.p.Unit().Metric() {
		return 0.1
	}
	return length.Foot / 2
}

func hasInner(e *plan.Element) bool {
	return slices.ContainsFunc(e.Paths, func(path plan.Path) bool { return path.Role == plan.Inner })
}

// TakeProposals lays the elements as proposed on the floor, as one step of an edit.
// They wait for somebody to decide, since a proposal is no decision. It returns how
// many it changed; what somebody has decided meanwhile stays.
func TakeProposals(p *Production, id floor.ID, proposals []floor.Treatment) (changed int) {
	f := p.Floor(id)
	if f == nil {
		return 0
	}
	for _, t := range proposals {
		e := p.Plan.Element(t.Element)
		if e == nil || !f.Decide(e).Decided.Open() {
			continue
		}
		t.Decided = floor.Decision{}
		f.SetTreatment(t)
		changed++
	}
	return changed
}
