package prep

import (
	"fmt"
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// MeasuredMark is a mark with its measurements by both methods, and with what each
// method makes of it. Up and over are in the mark itself.
type MeasuredMark struct {
	marks.Mark
	Tapes    survey.Reading // from the pivots of Pair
	Pair     PivotPair
	HasTapes bool // false: no usable pair of pivots
	Weak     bool // the tapes meet too flat
	Far      bool // a tape is longer than the longest owned
	Blocked  bool // a wall, an obstacle or a step lies in the way of a tape

	Ways    []survey.Way  // of survey.Methods, in their order
	Advised survey.Method // recommended; empty: no method serves here
	Method  survey.Method // chosen by somebody, or else recommended; never empty
	Chosen  bool          // Method was chosen by somebody
	Error   float64       // metres; the longer half-axis of the 95 % ellipse by Method
	Good    bool          // Method is usable here and Error within what is allowed

	Progress marks.Progress
}

// OutOfReach tells whether the mark will not be placed: no method serves here, and
// nobody has chosen one all the same.
func (m MeasuredMark) OutOfReach() bool { return m.Advised == "" && !m.Chosen }

// Way returns what a method makes of the mark.
func (m MeasuredMark) Way(method survey.Method) survey.Way {
	i := slices.IndexFunc(m.Ways, func(w survey.Way) bool { return w.Method == method })
	if i < 0 {
		return survey.Way{Method: method}
	}
	return m.Ways[i]
}

// enough is a team in which nothing is left undone for want of hands: common
// practice, no source.
const enough = 4

// Hands returns how many people of the team can kneel, measure and lay tape; known
// is false while the team is not listed.
func (p *Production) Hands() (n int, known bool) {
	for _, person := range p.People {
		if person.Hands {
			n++
		}
	}
	return n, len(p.People) > 0
}

// FewHands tells whether weighted stands must hold the zero ends of the tapes: with
// fewer than four people there is nobody to hold them (common practice, no source).
func (p *Production) FewHands() bool {
	n, known := p.Hands()
	return known && n < enough
}

// placer measures the marks of one floor.
type placer struct {
	p       *Production
	f       *floor.Floor
	budget  survey.Budget
	sight   floor.Sight
	pairs   []PivotPair
	frame   survey.Frame
	framed  bool    // frame is one
	alone   bool    // one person places
	least   float64 // radians; tapes that meet flatter are weak
	allowed float64 // metres; the longest half-axis of a good ellipse
	whole   survey.Method
	single  []MethodChoice
}

func newPlacer(p *Production, f *floor.Floor, found []marks.Mark) *placer {
	pl := &placer{p: p, f: f, budget: errorBudget(p, f), sight: floor.SightOn(f, nil), least: p.Settings.WeakAngle * math.Pi / 180, allowed: p.Errors().Allowed}
	pl.pairs = pivotPairs(f)
	pl.frame, pl.framed = frameFor(p, pl.sight, found, pl.budget)
	pl.whole, pl.single = methodsChosen(p, f.ID)
	n, known := p.Hands()
	pl.alone = known && n < 2
	return pl
}

// measure measures one mark by every method and says which is to be used.
func (pl *placer) measure(m marks.Mark) MeasuredMark {
	out := MeasuredMark{Mark: m}
	tapes := pl.byTapes(&out)
	out.Ways = []survey.Way{pl.upOver(m), tapes, pl.guided(m)}
	best, good := survey.Advise(out.Ways, pl.allowed)
	out.Method, out.Good = survey.UpAndOver, good
	if best >= 0 {
		out.Advised = out.Ways[best].Method
		out.Method = out.Advised
	}
	if c := pl.chosenFor(m); c != "" {
		way := out.Way(c)
		out.Method, out.Chosen, out.Good = c, true, way.Usable && way.Ellipse.Major <= pl.allowed
	}
	out.Error = out.Way(out.Method).Ellipse.Major
	return out
}

// tooFar tells whether a length cannot be measured with the longest tape.
func (pl *placer) tooFar(l float64) bool {
	longest := pl.p.Settings.TapeLength
	return longest > 0 && l > longest
}

func (pl *placer) upOver(m marks.Mark) survey.Way {
	w := survey.Way{Method: survey.UpAndOver}.Place(pl.budget.UpOver(m.At))
	w.Why = pl.noArm(m)
	w.Usable = w.Why == ""
	return w
}

// noArm says why over cannot be measured from the centre line; empty where it can.
func (pl *placer) noArm(m marks.Mark) string {
	switch {
	case pl.tooFar(math.Abs(m.Over())) || pl.tooFar(math.Abs(m.Up())):
		return "farther than the longest tape"
	case pl.sight.Blocked(plane.Point{Y: m.Up()}, m.At):
		return "a wall, an obstacle or a step lies between the centre line and the mark"
	}
	return ""
}

func (pl *placer) guided(m marks.Mark) survey.Way {
	w := survey.Way{Method: survey.WithGuideLines}
	switch {
	case !pl.framed:
		w.Why = "no frame of guide lines fits the floor"
		return w
	case pl.alone:
		w.Why = "guide lines need two people"
	default:
		w.Why = pl.noArm(m)
	}
	why := w.Why
	w = w.Place(pl.budget.Guided(pl.frame, m.At))
	w.Why, w.Usable = why, why == ""
	return w
}

// byTapes takes the first pair of pivots that places the mark as well as is
// allowed, so that a second pair is pulled from only where the first does not
// serve; where none does, the one that does best.
func (pl *placer) byTapes(out *MeasuredMark) survey.Way {
	best := survey.Way{Method: survey.TwoTapes, Why: pl.noPair()}
	for _, pair := range pl.pairs {
		one := *out
		way := pl.byPair(&one, pair)
		good := way.Usable && way.Ellipse.Major <= pl.allowed
		if !out.HasTapes || good || betterWay(way, best) {
			one.Pair = pair
			*out, best = one, way
		}
		if good {
			break
		}
	}
	return best
}

func betterWay(a, b survey.Way) bool {
	if a.Usable != b.Usable {
		return a.Usable
	}
	return a.Usable && a.Ellipse.Major < b.Ellipse.Major
}

// noPair says why no two tapes can be pulled at all.
func (pl *placer) noPair() string {
	if len(pl.f.Pivots) < 2 {
		return "two tapes need two pivots"
	}
	return "all pivots stand in one place"
}

// byPair measures from one pair of pivots.
func (pl *placer) byPair(out *MeasuredMark, pair PivotPair) survey.Way {
	w := survey.Way{Method: survey.TwoTapes}
	t := pair.Tapes
	if out.Tapes, out.HasTapes = t.Read(out.At); !out.HasTapes {
		w.Why = "the mark is on a pivot"
		return w
	}
	out.Weak = survey.Weak(out.Tapes.Angle, pl.least)
	out.Far = pl.tooFar(max(out.Tapes.A, out.Tapes.B))
	noA, noB := pl.sight.Blocked(t.A, out.At), pl.sight.Blocked(t.B, out.At)
	out.Blocked = noA || noB
	c, ok := pl.budget.TwoTape(t, out.At)
	if !ok {
		w.Why = "the mark lies on the line of the pivots, where nothing holds it across"
		return w
	}
	w = w.Place(c)
	switch {
	case out.Far:
		w.Why = "farther than the longest tape"
	case noA && noB:
		w.Why = "a wall, an obstacle or a step lies between both pivots and the mark"
	case out.Blocked:
		w.Why = fmt.Sprintf("only one of the two pivots reaches it: a wall, an obstacle or a step lies before pivot %d", pair.blockedOne(noA)+1)
	case out.Weak:
		w.Why = fmt.Sprintf("the tapes meet flatter than %.0f°", pl.p.Settings.WeakAngle)
	case pl.alone:
		w.Why = "two tapes need two people"
	}
	w.Usable = w.Why == ""
	return w
}
