package prep

import (
	"fmt"
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// PivotOffer says where pivots may be set.
type PivotOffer struct {
	Pivots     bool     // where pivots are already
	Corners    bool     // in the corners of the room
	Walls      bool     // anywhere along its walls
	Columns    bool     // at the feet of what stands in the room
	CentreLine bool     // anywhere on the centre line
	Baseline   bool     // anywhere on the baseline
	Marks      []string // on these marks
	Furnished  bool     // the pieces that are set by hand stand on the floor already
}

// AnyPivot offers every place that can be found again.
var AnyPivot = PivotOffer{Pivots: true, Corners: true, Walls: true, Columns: true, CentreLine: true, Baseline: true}

// PivotPlace is a place proposed for a pivot.
type PivotPlace struct {
	Pivot string      // identifier, where it is a pivot already
	Name  string      // what to look for in the room
	At    plane.Point // datum axes
}

// PivotChoice is a proposed pair of pivots and what it does to the marks.
type PivotChoice struct {
	A, B    PivotPlace
	Weakest string // the label of the mark; empty: none
	survey.Choice
}

// offered is a site with the name that a place in it gets.
type offered struct {
	survey.Site
	pivot string
	name  func(at plane.Point) string
}

// BestPivots returns the best few pairs of pivots for the marks of w among the
// places that are offered; see survey.BestPairs. Tapes do not pass walls, obstacles
// or steps.
func BestPivots(p *Production, w *FloorWork, offer PivotOffer, keep int) ([]PivotChoice, error) {
	sites := pivotSites(p, w, offer)
	plain := make([]survey.Site, len(sites))
	for i, s := range sites {
		plain[i] = s.Site
	}
	limits := pivotLimits(p, w, offer.Furnished)
	limits.Keep = keep
	found, err := survey.BestPairs(plain, pointsOf(w), limits)
	if err != nil {
		return nil, err
	}
	out := make([]PivotChoice, len(found))
	for i, c := range found {
		a, b := sites[c.A.Site].readable(p, c.A.At), sites[c.B.Site].readable(p, c.B.At)
		judged := survey.JudgePair(survey.TwoTape{A: a.At, B: b.At}, pointsOf(w), limits)
		out[i] = PivotChoice{A: a, B: b, Choice: judged, Weakest: labelAt(w, judged.Weakest)}
	}
	return out, nil
}

// JudgePivots tells what the first two pivots of the floor do to the marks; ok is
// false when it has no two.
func JudgePivots(p *Production, w *FloorWork) (c PivotChoice, ok bool) {
	pair, ok := Pivots(w.Floor)
	if !ok || pair.Base() < survey.Near || len(w.Marks) == 0 {
		return PivotChoice{}, false
	}
	judged := survey.JudgePair(pair, pointsOf(w), pivotLimits(p, w, false))
	return PivotChoice{Choice: judged, Weakest: labelAt(w, judged.Weakest)}, true
}

// Gain compares a pair with the one that is pulled from by habit, the centre of the
// stage edge and the centre line at the back wall (common practice, no source): how
// many times smaller the worst error is over the marks that both reach, and how many
// marks that pair leaves out of reach. ok is false where the floor has no such pair.
func Gain(p *Production, w *FloorWork, pair survey.TwoTape) (factor float64, left int, ok bool) {
	habit, ok := habitualPair(w.Floor)
	if !ok {
		return 0, 0, false
	}
	limits := pivotLimits(p, w, false)
	var both []plane.Point
	for _, m := range w.Marks {
		alone := []plane.Point{m.At}
		reached := survey.JudgePair(habit, alone, limits).OutOfReach == 0
		if !reached {
			left++
		}
		if reached && survey.JudgePair(pair, alone, limits).OutOfReach == 0 {
			both = append(both, m.At)
		}
	}
	better := survey.JudgePair(pair, both, limits).Worst
	if !(better > 0) {
		return 0, left, false
	}
	return survey.JudgePair(habit, both, limits).Worst / better, left, true
}

func habitualPair(f *floor.Floor) (survey.TwoTape, bool) {
	_, up, ok := axisEnds(f, plane.Point{Y: 1})
	return survey.TwoTape{B: up}, ok && up.Len() >= survey.Near
}

func pivotLimits(p *Production, w *FloorWork, furnished bool) survey.Limits {
	var pieces []floor.Piece
	if furnished {
		pieces = w.Pieces
	}
	s := floor.SightOn(w.Floor, pieces)
	return survey.Limits{Budget: ErrorBudget(p, w), Longest: p.Settings.TapeLength, Blocked: s.Blocked, Allowed: p.Errors().Allowed}
}

func pointsOf(w *FloorWork) []plane.Point {
	out := make([]plane.Point, len(w.Marks))
	for i, m := range w.Marks {
		out[i] = m.At
	}
	return out
}

func labelAt(w *FloorWork, i int) string {
	if i < 0 {
		return ""
	}
	return w.Marks[i].Label
}

// readable is the place nearest to at in the site whose distance from the site's
// beginning can be read off a tape.
func (o offered) readable(p *Production, at plane.Point) PivotPlace {
	if long := o.Length(); long >= survey.Near {
		_, along := o.Nearest(at)
		at = o.At(min(1, p.Style().Round(along*long)/long))
	}
	return PivotPlace{Pivot: o.pivot, Name: o.name(at), At: at}
}

// onePlace is how near, in metres, two fixed places offered are one.
const onePlace = 0.05

// pivotSites lists the sites offered; a fixed place is listed once.
func pivotSites(p *Production, w *FloorWork, offer PivotOffer) []offered {
	f, m := w.Floor, w.Floor.FloorToDatum()
	var out []offered
	spot := func(pivot, name string, at plane.Point) {
		if !slices.ContainsFunc(out, func(o offered) bool { return o.A.To(at) < onePlace && o.B.To(at) < onePlace }) {
			out = append(out, offered{survey.Spot(at), pivot, func(plane.Point) string { return name }})
		}
	}
	if offer.Pivots {
		for _, v := range f.Pivots {
			spot(v.ID, v.Name, m.Apply(v.At))
		}
	}
	outline := f.Outline.Moved(m)
	if offer.Corners {
		for i, v := range outline.Vertices {
			spot("", fmt.Sprintf("Corner %d of the room, %s", i+1, whereabouts(v.Point)), v.Point)
		}
	}
	if offer.Columns {
		for _, o := range f.Obstacles {
			for _, v := range o.Shape.Moved(m).Vertices {
				spot("", "Foot of "+o.Name+", "+whereabouts(v.Sub(middleOf(o.Shape.Moved(m))))+" corner", v.Point)
			}
		}
	}
	for _, k := range w.Marks {
		if slices.Contains(offer.Marks, k.Label) {
			spot("", "Mark "+k.Label, k.At)
		}
	}
	return append(out, lineSites(p, f, outline, offer)...)
}

// lineSites lists the sites along walls, centre line and baseline.
func lineSites(p *Production, f *floor.Floor, outline plane.Path, offer PivotOffer) []offered {
	style := p.Style()
	var out []offered
	if offer.Walls {
		for i, e := range outline.Edges() {
			corner, begins := i+1, e.A
			out = append(out, offered{survey.Site{Edge: e}, "", func(at plane.Point) string {
				return fmt.Sprintf("On the wall, %s from corner %d of the room", style.Format(begins.To(at)), corner)
			}})
		}
	}
	along := func(way plane.Point, name func(at plane.Point) string) {
		if low, high, ok := axisEnds(f, way); ok {
			out = append(out, offered{survey.Site{Edge: plane.Edge{A: low, B: high}}, "", name})
		}
	}
	if offer.CentreLine {
		along(plane.Point{Y: 1}, func(at plane.Point) string { return "Centre line, " + style.FormatUp(at.Y) })
	}
	if offer.Baseline {
		along(plane.Point{X: 1}, func(at plane.Point) string { return "Baseline, " + style.FormatOver(at.X) })
	}
	return out
}

func middleOf(shape plane.Path) plane.Point {
	box, _ := shape.Bounds()
	return box.Centre()
}

// whereabouts says roughly where a place in datum axes lies.
func whereabouts(at plane.Point) string {
	along, side := "upstage", "left"
	if at.Y < 0 {
		along = "downstage"
	}
	if at.X < 0 {
		side = "right"
	}
	return along + " " + side
}

// axisEnds returns where the line through the datum along way meets the walls on
// either side, in datum axes; the datum itself where it meets none on one side. ok is
// false when it meets no wall at all, as on a floor that is not measured.
func axisEnds(f *floor.Floor, way plane.Point) (low, high plane.Point, ok bool) {
	outline := f.Outline.Moved(f.FloorToDatum())
	end := func(way plane.Point) (nearest plane.Point) {
		least := math.Inf(1)
		for _, e := range outline.Edges() {
			for _, at := range plane.Intersect(e, plane.Edge{B: way.Times(farAway)}, 1e-9) {
				if d := at.Len(); d < least {
					nearest, least, ok = at, d, true
				}
			}
		}
		return nearest
	}
	return end(way.Times(-1)), end(way), ok
}

// UsePair makes a proposed pair the first two pivots of the floor; the others follow
// in their order. AddPair puts it after those that are there. newID makes an
// identifier for each place that is no pivot yet.
func (c PivotChoice) UsePair(f *floor.Floor, newID func() string) { c.into(f, newID, true) }

// AddPair adds a proposed pair to the pivots of the floor, for the marks that those
// before it do not serve.
func (c PivotChoice) AddPair(f *floor.Floor, newID func() string) { c.into(f, newID, false) }

func (c PivotChoice) into(f *floor.Floor, newID func() string, first bool) {
	rest := slices.Clone(f.Pivots)
	var pair []floor.Pivot
	for _, k := range []PivotPlace{c.A, c.B} {
		i := slices.IndexFunc(rest, func(v floor.Pivot) bool { return v.ID == k.Pivot })
		switch {
		case i >= 0 && first:
			pair = append(pair, rest[i])
			rest = slices.Delete(rest, i, i+1)
		case i < 0:
			pair = append(pair, floor.Pivot{ID: newID(), Name: k.Name, At: f.FloorToDatum().Inverse().Apply(k.At)})
		}
	}
	if first {
		f.Pivots = append(pair, rest...)
		return
	}
	f.Pivots = append(rest, pair...)
}
