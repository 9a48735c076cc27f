package marks

import (
	"math"
	"slices"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// straightOn is the turn, in radians, below which two straight strips that meet
// are one straight line: nobody needs a mark in the middle of it.
const straightOn = 0.5 * math.Pi / 180

// Of returns the marks of a floor for all scenes, labelled and in order:
// downstage rows first, each row from stage right to stage left. issued are the
// labels already printed for this floor; longest is the length in metres of the
// longest tape, zero for no limit, from which a curve can be swung.
func Of(pl *plan.Plan, f *floor.Floor, issued []Issued, rules Rules, longest float64) []Mark {
	lines := f.Lines(pl)
	s := swinger{on: rules.CentreSwing, f: f, sight: floor.SightOn(f, nil), longest: longest}
	ms := ofLines(lines, s, rules)
	cutEnds(ms, lines, rules.Weld)
	ms = append(ms, spikes(pl, f.Spiked(pl))...)
	ms = addStops(ms, f.Stops(pl), f, rules)
	setAside(ms, pl, f)
	ms = addDatums(ms, f.Asides(pl), rules)
	for i := range ms {
		ms[i].What = what(pl, ms[i].Elements)
	}
	inOrder(ms, rules.Row)
	assign(ms, issued, rules)
	return ms
}

func ofLines(lines []floor.Line, s swinger, rules Rules) []Mark {
	edges := make([]plane.Edge, len(lines))
	for i, l := range lines {
		edges[i] = l.Edge
	}
	arr := plane.Arrange(edges, rules.Weld)
	curves := curvesOf(arr, lines, s)
	var out []Mark
	for i := range arr.Nodes {
		if curves.inside[i] {
			continue
		}
		if kind, ok := kindOf(arr, lines, i, rules); ok {
			m := Mark{Kind: kind, At: arr.Nodes[i].At}
			for _, l := range arr.Nodes[i].Links {
				m.meet(lines, arr.Links[l].Sources)
			}
			out = append(out, m)
		}
	}
	add := func(kind Kind, at plane.Point, link int) {
		m := Mark{Kind: kind, At: at}
		m.meet(lines, arr.Links[link].Sources)
		out = append(out, m)
	}
	for _, c := range curves.chains {
		for _, p := range c.points(rules.Chord) {
			add(Curve, p.at, c.links[p.part])
		}
	}
	for _, link := range curves.swung {
		centre, _, _ := arr.Links[link].Circle()
		add(Centre, centre, link)
	}
	return weldCentres(out, rules.Weld)
}

// kindOf tells why a node needs a mark; ok is false in the middle of a straight
// line that is laid alike on both sides.
func kindOf(arr plane.Arrangement, lines []floor.Line, node int, rules Rules) (Kind, bool) {
	links := arr.Nodes[node].Links
	switch len(links) {
	case 0:
		return "", false
	case 1:
		return End, true
	case 2:
		a, b := leaving(arr, links[0], node), leaving(arr, links[1], node)
		if links[0] == links[1] {
			return Curve, true
		}
		turn := math.Pi - math.Abs(math.Atan2(a.Cross(b), a.Dot(b)))
		straight := arr.Links[links[0]].Straight() && arr.Links[links[1]].Straight()
		switch {
		case turn > straightOn, straight && bend(arr, node) > rules.Weld:
			return Corner, true
		case straight:
			return changeOf(lines, arr.Links[links[0]].Sources, arr.Links[links[1]].Sources)
		}
		return Curve, true
	}
	return Crossing, true
}

// bend returns how far in metres the node of two straight links lies off the
// straight line between their other ends: by so much the tape would miss it.
func bend(arr plane.Arrangement, node int) float64 {
	far := func(link int) plane.Point {
		l := arr.Links[link]
		if l.From == node {
			return arr.Nodes[l.To].At
		}
		return arr.Nodes[l.From].At
	}
	links := arr.Nodes[node].Links
	chord := plane.Edge{A: far(links[0]), B: far(links[1])}
	return chord.Distance(arr.Nodes[node].At)
}

// leaving returns the direction in which the link leaves the node.
func leaving(arr plane.Arrangement, link, node int) plane.Point {
	l := arr.Links[link]
	if l.From == node {
		return l.Tangent(0)
	}
	return l.Tangent(1).Times(-1)
}

// weldCentres makes one mark of the centres that several arcs of a circle share,
// and of a centre that lies on another mark.
func weldCentres(ms []Mark, weld float64) []Mark {
	var out []Mark
	for _, m := range ms {
		if m.Kind == Centre {
			if i := slices.IndexFunc(out, func(o Mark) bool { return o.At.To(m.At) <= weld }); i >= 0 {
				out[i].join(m)
				continue
			}
		}
		out = append(out, m)
	}
	return out
}

// meet notes the lines that meet at the mark.
func (m *Mark) meet(lines []floor.Line, sources []int) {
	for _, s := range sources {
		l := lines[s]
		everywhere := len(m.Elements) > 0 && len(m.Scenes) == 0
		switch {
		case len(l.Scenes) == 0, everywhere:
			m.Scenes = nil
		default:
			for _, sc := range l.Scenes {
				m.Scenes = addOnce(m.Scenes, sc)
			}
		}
		m.Elements = addOnce(m.Elements, l.Element)
		m.Stocks = addOnce(m.Stocks, l.Stock)
	}
}

func (m *Mark) join(o Mark) {
	if len(o.Scenes) == 0 || len(m.Scenes) == 0 {
		m.Scenes = nil
	} else {
		for _, s := range o.Scenes {
			m.Scenes = addOnce(m.Scenes, s)
		}
	}
	for _, e := range o.Elements {
		m.Elements = addOnce(m.Elements, e)
	}
	for _, s := range o.Stocks {
		m.Stocks = addOnce(m.Stocks, s)
	}
}

func addOnce[T comparable](list []T, v T) []T {
	if slices.Contains(list, v) {
		return list
	}
	return append(list, v)
}

// namesShown bounds how many elements are named at one mark; a sheet has no room
// for more.
const namesShown = 3

func what(pl *plan.Plan, ids []plan.ElementID) string {
	var names []string
	for _, id := range ids {
		if e := pl.Element(id); e != nil {
			names = append(names, e.Name)
		}
	}
	if len(names) > namesShown {
		names = append(names[:namesShown], "…")
	}
	return strings.Join(names, ", ")
}

// In tells whether the mark is needed in the scene; the empty scene asks for any.
func (m Mark) In(scene plan.SceneID) bool { return floor.InScene(m.Scenes, scene) }
