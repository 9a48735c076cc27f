package sense

import (
	"cmp"
	"slices"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Options say how a sheet becomes a plan.
type Options struct {
	PerUnit float64      // metres on the floor in one drawing unit
	Motion  plane.Motion // from the sheet in metres to plan axes; the inverse of Axes
	Keep    Set          // the items to make elements of; nil: all that are seen
	Join    float64      // metres within which lines meet; zero: DefaultJoin
	Speck   float64      // metres of line work below which a piece is dropped; zero: DefaultSpeck
}

// What counts as meeting and as a speck unless the options say otherwise, in
// metres on the floor (judgement).
const (
	DefaultJoin  = 0.005
	DefaultSpeck = 0.05
)

// Candidate is line work that may be one element.
type Candidate struct {
	Name       string
	Kind       plan.Kind
	Level      string // as the drawing names it; empty: the stage floor
	Layer      string
	Items      Set
	Paths      []plan.Path // plan axes; without identifiers
	Why        string      // sentences: what it was taken together by, and what tells its kind and name
	Confidence float64     // from 0 to 1, that the kind is right; judgement
}

// Proposal is what a sheet may be as elements.
type Proposal struct {
	Candidates []Candidate // by layer as the sheet first uses it, then in drawing order
	Specks     Set         // items that are too small to be anything
}

// ProposeElements gathers line work that belongs together into candidates, each
// with a name and a kind as far as the drawing tells. What one block of the
// drawing holds is one candidate; so are a quarter arc and the leaf that makes a
// door of it; of the rest, what touches on one layer. Arcs stay arcs. Lines keep
// the places at which they are drawn; only ends that meet within the tolerance are
// made one.
//
// It returns nothing where PerUnit is not above zero.
func ProposeElements(s *linework.Sheet, o Options) Proposal {
	if !(o.PerUnit > 0) {
		return Proposal{}
	}
	o = o.filled(s)
	g := gather(s, o)
	var out Proposal
	var specks []int
	for _, group := range g {
		c, total := candidate(s, group, o)
		if total < o.Speck {
			specks = append(specks, group.items...)
			continue
		}
		out.Candidates = append(out.Candidates, c)
	}
	out.Specks = NewSet(specks...)
	nameAll(s, out.Candidates, o)
	return out
}

func (o Options) filled(s *linework.Sheet) Options {
	if !(o.Join > 0) {
		o.Join = DefaultJoin
	}
	if !(o.Speck > 0) {
		o.Speck = DefaultSpeck
	}
	if o.Keep == nil {
		o.Keep = Seen(s)
	}
	return o
}

// edge returns an edge of the sheet in plan axes.
func (o Options) edge(e plane.Edge) plane.Edge {
	return plane.Edge{A: o.point(e.A), B: o.point(e.B), Bulge: e.Bulge}
}

func (o Options) point(p plane.Point) plane.Point { return o.Motion.Apply(p.Times(o.PerUnit)) }

// group is items that belong together, and by what.
type group struct {
	items []int // ascending
	layer string
	block string
	door  bool
}

// gather returns the groups of the items to keep, by layer and drawing order.
func gather(s *linework.Sheet, o Options) []group {
	byBlock := map[int]int{} // group of the sheet to place in out
	var out []group
	var loose []int
	for _, i := range o.Keep {
		if i < 0 || i >= len(s.Items) || len(s.Items[i].Edges) == 0 {
			continue
		}
		item := &s.Items[i]
		if item.Group == 0 {
			loose = append(loose, i)
			continue
		}
		k, ok := byBlock[item.Group]
		if !ok {
			k = len(out)
			byBlock[item.Group] = k
			out = append(out, group{layer: item.Layer, block: item.Block})
		}
		out[k].items = append(out[k].items, i)
	}
	doors, loose := doorSwings(s, loose, o)
	out = append(out, doors...)
	out = append(out, touching(s, loose, o)...)

	rank := map[string]int{}
	for i := range s.Items {
		if _, ok := rank[s.Items[i].Layer]; !ok {
			rank[s.Items[i].Layer] = len(rank)
		}
	}
	slices.SortStableFunc(out, func(a, b group) int {
		return cmp.Or(cmp.Compare(rank[a.layer], rank[b.layer]), cmp.Compare(a.items[0], b.items[0]))
	})
	return out
}

// touching returns the loose items in groups that touch, layer by layer.
func touching(s *linework.Sheet, loose []int, o Options) []group {
	byLayer := map[string][]int{}
	var order []string
	for _, i := range loose {
		name := s.Items[i].Layer
		if byLayer[name] == nil {
			order = append(order, name)
		}
		byLayer[name] = append(byLayer[name], i)
	}
	var out []group
	for _, name := range order {
		items := byLayer[name]
		place := map[int]int{}
		for k, root := range connected(s, items, o.Join/o.PerUnit) {
			g, ok := place[root]
			if !ok {
				g = len(out)
				place[root] = g
				out = append(out, group{layer: name})
			}
			out[g].items = append(out[g].items, items[k])
		}
	}
	return out
}

// candidate makes a candidate of a group, without its name, and returns its
// length in metres.
func candidate(s *linework.Sheet, g group, o Options) (Candidate, float64) {
	c := Candidate{Layer: g.layer, Items: NewSet(g.items...)}
	c.Paths = pathsOf(s, g, o)
	total := 0.0
	for _, p := range c.Paths {
		total += p.Length()
	}
	switch {
	case g.block != "":
		c.say("It is the block “" + g.block + "”.")
	case g.door:
	case len(g.items) == 1:
		c.say("It touches nothing else on its layer.")
	default:
		c.say("Its lines touch.")
	}
	c.Level = levelOf(g.layer)
	c.decide(g)
	c.roles()
	return c, total
}

func (c *Candidate) say(why string) {
	if why == "" {
		return
	}
	if c.Why != "" {
		c.Why += " "
	}
	c.Why += why
}
