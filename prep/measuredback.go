package prep

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// BackPoint is one mark of a piece, found again on the floor.
type BackPoint struct {
	Label    string
	At       plane.Point // datum axes; where it was measured
	Expected plane.Point // datum axes; where the floor should have it
	Miss     float64     // metres from where the judgement carries it
	Cause    string      // the likely slip of one that does not belong
}

// Finding is what has become of a piece.
type Finding string

// Findings.
const (
	Stayed     Finding = "where it should be"
	HasMoved   Finding = "moved"
	WrongPoint Finding = "one point wrong"
	Stretched  Finding = "stretched"
	NoPiece    Finding = "no rigid piece"
)

// Back is a piece measured back from the floor and what that says.
type Back struct {
	Finding Finding
	Element plan.ElementID // empty: the tape-out as a whole
	Scene   plan.SceneID
	Points  []BackPoint
	Wrong   string  // the label of the point that does not belong
	Stretch float64 // of Stretched: by how much of itself the whole is too large
	Allowed float64 // metres; how far a mark may lie from its place (Errors.Allowed)
	Move    Move    // how the piece has gone; Over, Up and Turn are set
}

// Takeable tells whether the plan can follow what was found.
func (b Back) Takeable() bool {
	return b.Element != "" && (b.Finding == HasMoved || b.Finding == WrongPoint) && (b.Move.Over != 0 || b.Move.Up != 0 || b.Move.Turn != 0)
}

// ReadBack returns where a mark was found by up and over, or by two tapes from the
// floor's first two pivots, in datum axes. The texts are what a person read; side says on
// which side of the line of the pivots the mark lies and is empty for up and over.
// Tapes that cannot meet give a *survey.LocateError.
func (w *FloorWork) ReadBack(p *Production, first, second string, side survey.Side) (plane.Point, error) {
	if side == "" {
		up, err := length.ParseUp(first, p.Unit())
		if err != nil {
			return plane.Point{}, fmt.Errorf("up: %w", err)
		}
		over, err := length.ParseOver(second, p.Unit())
		if err != nil {
			return plane.Point{}, fmt.Errorf("over: %w", err)
		}
		if math.Hypot(up, over) > longestRead {
			return plane.Point{}, errors.New("that is farther than any tape reaches: look at the unit")
		}
		return plane.Point{X: over, Y: up}, nil
	}
	pair, ok := Pivots(w.Floor)
	if !ok {
		return plane.Point{}, fmt.Errorf("%s has no two pivots: set them, or measure up and over", w.Floor.Name)
	}
	a, err := p.ReadLength(first)
	if err != nil {
		return plane.Point{}, fmt.Errorf("tape 1: %w", err)
	}
	b, err := p.ReadLength(second)
	if err != nil {
		return plane.Point{}, fmt.Errorf("tape 2: %w", err)
	}
	return pair.Locate(survey.Reading{A: a, B: b, Side: side})
}

// MarksOfPiece returns the marks that go with an element when it is moved, as a
// scene needs them: ends and corners of its own lines and its spikes, not where it
// crosses something else or is cut short at the room. With no element named it
// returns all marks of the floor in the scene.
func (w *FloorWork) MarksOfPiece(e plan.ElementID, scene plan.SceneID) []MeasuredMark {
	in := w.In(scene)
	if e == "" {
		return in.Marks
	}
	return filter(in.Marks, func(m MeasuredMark) bool {
		if !slices.Contains(m.Elements, e) {
			return false
		}
		return m.Kind == marks.Spike || slices.ContainsFunc(in.Lines, func(l floor.Line) bool {
			return l.Element == e && (!l.Cut.A && l.A.To(m.At) <= sameMark || !l.Cut.B && l.B.To(m.At) <= sameMark)
		})
	})
}

// MeasureBack judges points of a piece that were measured on the floor: whether it
// is where it should be, has been shifted or turned as a whole, or whether the
// measures are those of a wrong reading or of a tape-out that is stretched. found
// has where each mark was measured, in datum axes. Two points tell a shift and a
// turn, three a wrong point; one is not enough.
//
// A point belongs to the piece when it lies as near as Errors.Allowed to where the
// piece's motion carries it (survey.BestFit). A piece that stands in several places
// needs the scene, since its marks are those of different places.
func MeasureBack(p *Production, w *FloorWork, e plan.ElementID, scene plan.SceneID, found []BackPoint) (Back, error) {
	b := Back{Element: e, Scene: scene, Allowed: p.Errors().Allowed}
	if piece := p.Plan.Element(e); piece != nil {
		if _, _, err := p.standsIn(piece, scene); err != nil {
			return Back{}, err
		}
	}
	of := map[string]plane.Point{}
	for _, m := range w.MarksOfPiece(e, scene) {
		of[m.Label] = m.At
	}
	var from, to []plane.Point
	seen := map[string]bool{}
	for _, f := range found {
		at, ok := of[f.Label]
		switch {
		case !ok:
			return Back{}, fmt.Errorf("mark %s is no mark of this piece in this scene", f.Label)
		case seen[f.Label]:
			return Back{}, fmt.Errorf("mark %s is there twice: keep one of the two", f.Label)
		}
		seen[f.Label] = true
		f.Expected, f.Miss = at, at.To(f.At)
		b.Points = append(b.Points, f)
		from, to = append(from, at), append(to, f.At)
	}
	if len(from) < 2 {
		return Back{}, errors.New("measure at least two marks of the piece: one cannot tell a shift from a turn")
	}
	if b.stays() {
		b.Finding = Stayed
		return b, nil
	}
	fit, err := survey.BestFit(from, to, b.Allowed, false)
	if err != nil {
		return Back{}, err
	}
	fit = b.judge(fit, from, to)
	for i := range b.Points {
		b.Points[i].Miss = fit.Apply(from[i]).To(to[i])
	}
	b.setMove(p, w, fit)
	return b, nil
}

// stays tells whether every point that belongs is where it should be.
func (b *Back) stays() bool {
	return !slices.ContainsFunc(b.Points, func(f BackPoint) bool {
		return f.Label != b.Wrong && f.Expected.To(f.At) > b.Allowed
	})
}

// judge tells what the fit of a rigid piece means, and returns the one that the
// points follow.
func (b *Back) judge(fit survey.Fit, from, to []plane.Point) survey.Fit {
	if fits(fit, from, to, b.Allowed) {
		b.Finding = HasMoved
		return fit
	}
	if s, err := survey.BestFit(from, to, b.Allowed, true); err == nil && len(from) > 2 && s.Within(b.Allowed) {
		b.Finding, b.Stretch = Stretched, s.Scale-1
		return s
	}
	without, wrong, ok := oneWrong(from, to, b.Allowed)
	if !ok {
		b.Finding = NoPiece
		return fit
	}
	b.Finding, b.Wrong = WrongPoint, b.Points[wrong].Label
	b.Points[wrong].Cause = causeOfPlace(without.Apply(from[wrong]), to[wrong], b.Allowed)
	return without
}

// fits tells whether a rigid fit carries all points where they were measured. Two
// points check each other by their distance alone. allowed is in metres.
func fits(f survey.Fit, from, to []plane.Point, allowed float64) bool {
	if len(from) == 2 {
		return math.Abs(from[0].To(from[1])-to[0].To(to[1])) <= allowed
	}
	return f.Within(allowed)
}

// oneWrong returns the one point without which all others make a rigid piece, and
// how that has moved. ok is false when there is none, or when leaving out another
// would do as well.
func oneWrong(from, to []plane.Point, allowed float64) (fit survey.Fit, wrong int, ok bool) {
	found := 0
	for i := range from {
		a, b := slices.Delete(slices.Clone(from), i, i+1), slices.Delete(slices.Clone(to), i, i+1)
		f, err := survey.BestFit(a, b, allowed, false)
		if err == nil && fits(f, a, b, allowed) {
			fit, wrong, found = f, i, found+1
		}
	}
	return fit, wrong, found == 1
}

// causeOfPlace names the slip that makes the one place of the other; it is in up or
// in over, and the other of the two agrees to what is allowed, in metres.
func causeOfPlace(should, is plane.Point, allowed float64) string {
	up, over := math.Abs(should.Y-is.Y) <= allowed, math.Abs(should.X-is.X) <= allowed
	switch {
	case over && !up:
		if cause := slipOf(math.Abs(should.Y), math.Abs(is.Y), allowed/2); cause != "" {
			return cause + ", up"
		}
	case up && !over && math.Abs(should.X+is.X) <= allowed:
		return "left taken for right"
	case up && !over:
		if cause := slipOf(math.Abs(should.X), math.Abs(is.X), allowed/2); cause != "" {
			return cause + ", over"
		}
	}
	return ""
}

// setMove turns the motion of the fit in datum axes into one of the middle of the
// piece in plan axes. What the floor has moved aside is so on this floor alone and
// does not count.
func (b *Back) setMove(p *Production, w *FloorWork, fit survey.Fit) {
	b.Move = Move{Floor: w.Floor.ID, Element: b.Element, Scene: b.Scene}
	e := p.Plan.Element(b.Element)
	if e == nil || b.Finding != HasMoved && b.Finding != WrongPoint || b.stays() {
		return
	}
	at, _, err := p.standsIn(e, b.Scene)
	anchor, ok := e.Anchor()
	if err != nil || !ok {
		return
	}
	datum := w.Floor.PlanToDatum()
	aside := plane.Motion{}
	if t := w.Floor.Decide(e); t.How == floor.MovedAside {
		aside.Shift = plane.Point{X: t.Over, Y: t.Up}
	}
	lay := aside.Then(datum)
	by := lay.Then(fit.Motion).Then(lay.Inverse())
	middle := at.Apply(anchor)
	gone := by.Apply(middle).Sub(middle)
	b.Move.Over, b.Move.Up = gone.X, gone.Y
	b.Move.Turn = math.Remainder(by.Turn, 2*math.Pi) * 180 / math.Pi
}
