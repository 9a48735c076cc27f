package prep

import (
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// Spare is an element whose tape no actor needs in any scene, and what leaving it
// out would save. The figures come from working the floor and the purchase out again
// without it.
type Spare struct {
	Element plan.ElementID
	Name    string
	Reason  string
	Metres  float64 // tape not laid, with what wears and is wasted
	Cents   int     // not spent on what is still to be bought
}

// behindBy is how far behind the last piece that actors use something must lie to
// count as behind it, in metres: a tape's breadth.
const behindBy = 0.05

// Spares returns what the floor lays and no actor needs, in plan order: what is
// never used, escape stairs, what stands in no scene, and what is not essential
// behind the last big piece. What somebody has decided on stays out of it, and so
// does the house. all is what leaving all of them out would save together, which is
// less than the sum where they share tape, and may be more where it saves a roll.
func Spares(p *Production, id floor.ID, works func(floor.ID) *FloorWork) (each []Spare, all Spare) {
	f := p.Floor(id)
	if f == nil || f.Kind == floor.Stage {
		return nil, Spare{}
	}
	base := floorWorks(p, works)
	saves := func(without ...Spare) (metres float64, cents int) {
		q := draft(p)
		TakeSpares(&q, id, without)
		floors := slices.Clone(base)
		for i, w := range floors {
			if w.Floor.ID == id {
				floors[i] = Work(&q, id, "")
			}
		}
		a, b := spentOn(p, base), spentOn(&q, floors)
		return a.metres - b.metres, a.cents - b.cents
	}
	last := lastPiece(p, f)
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		t := f.Decide(e)
		if !t.Decided.Open() || t.How == floor.LeftOut || e.Kind.House() {
			continue
		}
		if why := spareWhy(p, f, e, last); why != "" {
			s := Spare{Element: e.ID, Name: e.Name, Reason: why}
			s.Metres, s.Cents = saves(s)
			if s.Metres > 1e-6 || len(p.Plan.Standings(e)) == 0 {
				each = append(each, s)
			}
		}
	}
	if len(each) > 0 {
		all.Metres, all.Cents = saves(each...)
	}
	return each, all
}

// TakeSpares leaves the elements out on the floor, as one step of an edit, each with
// its reason. They wait for somebody to decide.
func TakeSpares(p *Production, id floor.ID, spares []Spare) {
	f := p.Floor(id)
	if f == nil {
		return
	}
	for _, s := range spares {
		if e := p.Plan.Element(s.Element); e != nil && f.Decide(e).Decided.Open() {
			f.SetTreatment(floor.Treatment{Element: s.Element, How: floor.LeftOut, Reason: s.Reason})
		}
	}
}

// behindLast is the last big piece of a floor: how far up it reaches, in plan axes.
type behindLast struct {
	up   float64
	name string
}

// lastPiece finds the piece that actors use which reaches farthest upstage over all
// scenes; ok by its name not being empty. What is laid flat across the whole stage,
// as masking, is no piece that somebody can be behind.
func lastPiece(p *Production, f *floor.Floor) behindLast {
	var last behindLast
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		needed := e.Use == plan.Essential || e.Use == plan.Danced
		if !needed || e.Kind.House() || e.Kind.Movable() || e.Kind == plan.Masking || f.Decide(e).How == floor.LeftOut {
			continue
		}
		if _, high, ok := upRange(p, e); ok && (last.name == "" || high > last.up) {
			last = behindLast{high, e.Name}
		}
	}
	return last
}

// upRange is how far down and up the element reaches over all its positions.
func upRange(p *Production, e *plan.Element) (low, high float64, ok bool) {
	for _, s := range p.Plan.Standings(e) {
		for _, path := range e.Paths {
			b, has := path.Path.Moved(s.Motion).Bounds()
			if !has {
				continue
			}
			if !ok {
				low, high, ok = b.Min.Y, b.Max.Y, true
			}
			low, high = min(low, b.Min.Y), max(high, b.Max.Y)
		}
	}
	return low, high, ok
}

// spareWhy says why no actor needs the element; empty where one might.
func spareWhy(p *Production, f *floor.Floor, e *plan.Element, last behindLast) string {
	if len(p.Plan.Standings(e)) == 0 {
		return "it stands in no scene"
	}
	if e.Use == plan.Seen {
		return "no actor uses it"
	}
	if e.Use == plan.Essential || e.Use == plan.Danced {
		return ""
	}
	if e.Kind == plan.EscapeStair {
		return "nobody is seen on an escape stair"
	}
	low, _, ok := upRange(p, e)
	if ok && last.name != "" && low > last.up+behindBy && f.Decide(e).How != floor.MovedAside {
		return "it lies behind " + last.name + ", the last piece that actors use"
	}
	return ""
}
