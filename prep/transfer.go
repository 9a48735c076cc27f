package prep

import (
	"fmt"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Transfer is what the team at one floor needs to lay what was settled on
// another.
type Transfer struct {
	From, To *floor.Floor
	Rows     []TransferRow // in plan order
	Open     []Note
	Closed   []Note
	Dance    []DanceRecipe
	Rests    []Rest         // where what turns or runs comes to rest on To
	Tape     []supplies.Run // to bring to To
	Problems []Problem      // what would be missing if it were handed over today
}

// TransferRow is one element on both floors.
type TransferRow struct {
	Element plan.ElementID
	Name    string
	Kind    plan.Kind
	Level   string
	Scenes  []string // names; empty: all
	Stock   plan.StockID
	Here    floor.Treatment
	There   floor.Treatment
	Marks   []MeasuredMark // its marks on To, in To's datum and under To's labels
	Goes    bool           // it is laid or set on To
	Changes []string       // what differs between the floors, a sentence each
	Notes   []Note         // about this element, open ones first
}

// DanceRecipe says how to lay a dance line: its line, its step and what of it
// cannot be measured straight on a curved edge.
type DanceRecipe struct {
	Line    marks.DanceLine
	Here    bool // the line is To's own; false: it is From's, to be laid again
	Figures []marks.Numbered
}

// TransferRows compares two floors element by element. Positions are those of
// the floor to, measured from its own datum by its own marks. It fails when
// either floor does not exist or both are the same.
func TransferRows(p *Production, from, to floor.ID) (Transfer, error) {
	here, there := p.Floor(from), p.Floor(to)
	switch {
	case here == nil:
		return Transfer{}, fmt.Errorf("compare floors: there is no floor %q to hand on from; choose one that exists", from)
	case there == nil:
		return Transfer{}, fmt.Errorf("compare floors: there is no floor %q to hand on to; choose one that exists", to)
	case from == to:
		return Transfer{}, fmt.Errorf("compare floors: %s cannot be handed on to itself; choose two floors", here.Name)
	}
	return transfer(p, here, Work(p, to, "")), nil
}

// TransferBetween is TransferRows for floors that have been computed already; the
// two must be different floors of the production.
func TransferBetween(p *Production, from, to *FloorWork) Transfer { return transfer(p, from.Floor, to) }

func transfer(p *Production, here *floor.Floor, w *FloorWork) Transfer {
	t := Transfer{From: here, To: w.Floor, Tape: w.Tape}
	at := map[plan.ElementID][]MeasuredMark{}
	for _, m := range w.Marks {
		for _, e := range m.Elements {
			at[e] = append(at[e], m)
		}
	}
	laid := map[plan.ElementID]bool{}
	for _, e := range elementsOn(p, here) {
		laid[e] = true
	}
	for _, e := range elementsOn(p, w.Floor) {
		laid[e] = true
	}
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		if laid[e.ID] {
			t.Rows = append(t.Rows, transferRow(p, e, here, w, at[e.ID]))
		}
	}
	for _, n := range p.Notes {
		if n.Open {
			t.Open = append(t.Open, n)
		} else {
			t.Closed = append(t.Closed, n)
		}
	}
	t.Dance = danceRecipes(p, here, w)
	t.Rests = Rests(p, w)
	t.Problems = transferProblems(p, t, w)
	return t
}

// elementsOn returns what a floor lays or sets; a playing area is neither.
func elementsOn(p *Production, f *floor.Floor) []plan.ElementID {
	var out []plan.ElementID
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		if f.Decide(e).How != floor.LeftOut && !e.Kind.Bare() && len(p.Plan.Standings(e)) > 0 {
			out = append(out, e.ID)
		}
	}
	return out
}

func transferRow(p *Production, e *plan.Element, here *floor.Floor, w *FloorWork, at []MeasuredMark) TransferRow {
	r := TransferRow{
		Element: e.ID, Name: e.Name, Kind: e.Kind, Stock: e.Stock, Marks: at,
		Here: here.Decide(e), There: w.Floor.Decide(e),
	}
	if l := p.Plan.Level(e.Level); l != nil {
		r.Level = l.Name
	}
	for _, s := range e.Stands {
		r.Scenes = append(r.Scenes, p.Plan.SceneName(s.Scene))
	}
	r.Goes = r.There.How != floor.LeftOut
	r.Changes = changes(p.Style(), r.Here, r.There)
	for _, m := range p.MovesOf(here.ID, e.ID) {
		r.Changes = append(r.Changes, p.MoveSentence(m))
	}
	for _, open := range []bool{true, false} {
		for _, n := range p.Notes {
			if n.Element == e.ID && n.Open == open {
				r.Notes = append(r.Notes, n)
			}
		}
	}
	return r
}

// danceRecipes returns the dance lines of the next floor or, when it has none,
// those of this one as they would lie there: as far up from the next floor's
// baseline as their middle is, and with that floor's own stage edge.
func danceRecipes(p *Production, here *floor.Floor, w *FloorWork) []DanceRecipe {
	var out []DanceRecipe
	for _, d := range p.DanceLines {
		if d.Floor == w.Floor.ID {
			own := filter(w.Dance, func(n marks.Numbered) bool { return n.Line == d.ID })
			out = append(out, DanceRecipe{Line: d, Here: true, Figures: own})
		}
	}
	if len(out) > 0 {
		return out
	}
	edge := apron(p, w.Floor)
	toThere := here.PlanToDatum().Inverse().Then(w.Floor.PlanToDatum())
	for _, d := range p.DanceLines {
		if d.Floor == here.ID {
			d.Up = toThere.Apply(plane.Point{Y: d.Up}).Y
			out = append(out, DanceRecipe{Line: d, Figures: d.Figures(edge)})
		}
	}
	return out
}

// transferProblems names what the next team would miss.
func transferProblems(p *Production, t Transfer, w *FloorWork) []Problem {
	var out []Problem
	f := t.To
	where := func(rule, got string) Problem {
		return Problem{Rule: rule, Where: f.Name, Place: PlaceFloors, ID: string(f.ID), Got: got}
	}
	if len(f.Outline.Vertices) == 0 {
		out = append(out, where(RuleNotMeasured, ""))
	}
	if f.Rule == floor.AskFirst || f.Rule == floor.NoTape || f.Rule == "" {
		out = append(out, where(RuleOwner, string(ownerRule(f))))
	}
	if len(f.Pivots) < 2 {
		out = append(out, where(RulePivots, ""))
	}
	for _, r := range t.Rows {
		if r.Goes && len(r.Marks) == 0 {
			out = append(out, Problem{Rule: RuleNoPosition, Where: r.Name, Place: PlacePlan, ID: string(r.Element), Got: f.Name})
		}
	}
	for _, r := range w.Tape {
		if r.Stock == "" && r.Total > 0 {
			out = append(out, Problem{Rule: RuleNoStock, Where: f.Name, Place: PlaceTape, Got: p.Style().Format(r.Total)})
		}
	}
	out = append(out, moveProblems(p, t.From.ID)...)
	for _, n := range t.Open {
		out = append(out, noteProblem(p, n))
	}
	return out
}

// moveProblems names the pieces of a floor that have moved in rehearsal and not on
// the plan.
func moveProblems(p *Production, id floor.ID) []Problem {
	var out []Problem
	for _, m := range p.Moves {
		if m.Floor != id || m.Taken {
			continue
		}
		name := string(m.Element)
		if e := p.Plan.Element(m.Element); e != nil {
			name = e.Name
		}
		out = append(out, Problem{Rule: RuleMoved, Where: name, Place: PlaceMarks, ID: string(m.Element), Got: p.MoveSentence(m)})
	}
	return out
}

func ownerRule(f *floor.Floor) floor.Rule {
	if f.Rule == "" {
		return floor.AskFirst
	}
	return f.Rule
}

func noteProblem(p *Production, n Note) Problem {
	name := "The whole floor"
	if e := p.Plan.Element(n.Element); e != nil {
		name = e.Name
	}
	return Problem{Rule: RuleNote, Where: name, Place: PlaceTransfer, ID: n.ID, Got: n.Text, Limit: n.Owner}
}
