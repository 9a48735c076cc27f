package survey

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

// Check is a distance between two marks that was not used to place either.
type Check struct {
	From, To int     // indices of the marks, From < To
	Expected float64 // metres
	Why      CheckReason
}

// CheckReason is what a check measure is for.
type CheckReason string

// Reasons of a check measure.
const (
	Diagonal  CheckReason = "diagonal of a rectangle"
	Longest   CheckReason = "longest distance of all"
	Neighbour CheckReason = "to a near mark"
	OtherWay  CheckReason = "the other way across"
)

// Checking is what a check list has to respect.
type Checking struct {
	Marks   []Placed                        // where they should be, and how sure each is
	Squares [][4]int                        // corners of rectangles, in order round each
	Sigma   func(length float64) float64    // metres; the error of measuring a length
	Shows   float64                         // metres; a mark this far off has to show, whichever way it is off
	Reach   float64                         // metres of tape; zero: no limit
	Blocked func(from, to plane.Point) bool // something is in the way; nil: nothing is
}

// CheckList returns a short list of distances to measure before the marks are
// joined up. One distance shows an error along it and is blind to one across it,
// so that every mark is measured in at least two ways, and in more where its own
// error and its neighbours' leave a misplacement of c.Shows unsure. A mark that no
// distance within reach can show stays short of that.
//
// First come both diagonals of each square and the longest distance of all, which
// shows a stretched or turned whole. Then each mark in its order is joined with
// the mark that shows most for the length of the walk; a measure that is needed
// at both its ends is worth twice. In the end what the others make superfluous is
// struck out again. Two for each mark at two ends each: no list for errors in
// every direction has fewer measures than there are marks.
func CheckList(c Checking) []Check {
	l := newCheckList(c)
	for _, s := range c.Squares {
		l.add(s[0], s[2], Diagonal)
		l.add(s[1], s[3], Diagonal)
	}
	if a, b, ok := l.farthest(); ok {
		l.add(a, b, Longest)
	}
	for range mostWays {
		for i := range c.Marks {
			l.join(i)
		}
	}
	l.strike()
	return l.checks
}

const (
	// mostWays bounds how many measures one mark asks for.
	mostWays = 4
	// handy is the length in metres of tape that is thought worth half of what one
	// measure shows of one mark along it (common practice, no source).
	handy = 12
	// tooShort is the distance in metres below which two tabs are in each other's way.
	tooShort = 0.3
	// leastGain is the share of an axis that a measure must add to be asked for.
	leastGain = 0.02
	// inFull is the worth of a mark that is seen along both axes.
	inFull = 2 - 1e-9
)

// checkList is one on its way.
type checkList struct {
	Checking
	need   float64 // 1/m²; the weight that a mark must have along each axis
	checks []Check
	listed map[[2]int]bool
	across []int         // the marks from stage right to stage left
	rank   []int         // of each mark: where it stands in across
	shown  []Covariance2 // 1/m²; what the checks of each mark show of it, its own error apart
}

func newCheckList(c Checking) *checkList {
	n := len(c.Marks)
	l := &checkList{Checking: c, listed: map[[2]int]bool{}, shown: make([]Covariance2, n), across: make([]int, n), rank: make([]int, n)}
	_, two := critical(3 * n) // about two readings and one place for each
	sure := (math.Sqrt(two) + surely) / c.Shows
	l.need = sure * sure
	for i := range l.across {
		l.across[i] = i
	}
	slices.SortStableFunc(l.across, func(a, b int) int { return cmp.Compare(c.Marks[a].At.X, c.Marks[b].At.X) })
	for rank, i := range l.across {
		l.rank[i] = rank
	}
	return l
}

// add lists the distance from a to b once; what is no pair of marks is left out.
func (l *checkList) add(a, b int, why CheckReason) {
	if a > b {
		a, b = b, a
	}
	pair := [2]int{a, b}
	if a < 0 || a == b || b >= len(l.Marks) || l.listed[pair] || !(l.apart(a, b) >= Near) || !l.open(a, b) {
		return
	}
	l.listed[pair] = true
	l.shown[a], l.shown[b] = l.shown[a].Plus(l.shows(a, b)), l.shown[b].Plus(l.shows(b, a))
	l.checks = append(l.checks, Check{a, b, l.apart(a, b), why})
}

func (l *checkList) apart(a, b int) float64 { return l.Marks[a].At.To(l.Marks[b].At) }

// open tells whether a tape reaches from one mark to the other.
func (l *checkList) open(a, b int) bool {
	from, to := l.Marks[a].At, l.Marks[b].At
	return (l.Reach <= 0 || from.To(to) <= l.Reach) && (l.Blocked == nil || !l.Blocked(from, to))
}

// shows returns what a measure to the other mark shows of a mark: one over its
// variance, from the tape and the other mark's place, along its direction.
func (l *checkList) shows(mark, other int) Covariance2 {
	u, _ := l.Marks[mark].At.Sub(l.Marks[other].At).Unit()
	sigma, c := l.Sigma(l.apart(mark, other)), l.Marks[other].Covariance
	variance := sigma*sigma + u.X*u.X*c.XX + 2*u.X*u.Y*c.XY + u.Y*u.Y*c.YY
	return outer(u.Times(1 / math.Sqrt(variance)))
}

// worth tells how well a mark is seen by measures that show m of it: along each
// axis the share of what it needs, at most one. With the mark's own covariance C
// its misplacement has the weight (m⁻¹ + C)⁻¹ = m·(1 + C·m)⁻¹.
func (l *checkList) worth(mark int, m Covariance2) float64 {
	c := l.Marks[mark].Covariance
	a, b := 1+c.XX*m.XX+c.XY*m.XY, c.XX*m.XY+c.XY*m.YY
	d, e := c.XY*m.XX+c.YY*m.XY, 1+c.XY*m.XY+c.YY*m.YY
	det := a*e - b*d
	n := Covariance2{XX: (m.XX*e - m.XY*d) / det, XY: (m.XY*a - m.XX*b) / det, YY: (m.YY*a - m.XY*b) / det}
	axes := n.Standard()
	return math.Min(1, axes.Major*axes.Major/l.need) + math.Min(1, axes.Minor*axes.Minor/l.need)
}

// join adds the measure from a mark that is worth most for its length, unless the
// mark is seen in full already. One measure adds one axis at most at each end.
func (l *checkList) join(mark int) {
	was := l.worth(mark, l.shown[mark])
	if was >= inFull {
		return
	}
	best, most := -1, math.Inf(-1)
	for other, d := range l.outwards(mark) {
		if 2-d/(2*handy) <= most {
			break
		}
		d = l.apart(mark, other)
		if d < tooShort || 2-d/(2*handy) <= most || l.Reach > 0 && d > l.Reach || l.listed[[2]int{min(mark, other), max(mark, other)}] {
			continue
		}
		gain := l.worth(mark, l.shown[mark].Plus(l.shows(mark, other))) - was
		if gain < leastGain {
			continue
		}
		gain += l.worth(other, l.shown[other].Plus(l.shows(other, mark))) - l.worth(other, l.shown[other]) - d/(2*handy)
		if gain > most && l.open(mark, other) {
			best, most = other, gain
		}
	}
	if best < 0 {
		return
	}
	why := Neighbour
	if l.shown[mark] != (Covariance2{}) {
		why = OtherWay
	}
	l.add(mark, best, why)
}

// outwards goes through the other marks, the nearest over first, each with how far
// over it lies.
func (l *checkList) outwards(mark int) iter.Seq2[int, float64] {
	x := func(rank int) float64 { return l.Marks[l.across[rank]].At.X }
	return func(yield func(int, float64) bool) {
		lo, hi := l.rank[mark]-1, l.rank[mark]+1
		for lo >= 0 || hi < len(l.across) {
			at := hi
			if hi == len(l.across) || lo >= 0 && l.Marks[mark].At.X-x(lo) < x(hi)-l.Marks[mark].At.X {
				at, lo = lo, lo-1
			} else {
				hi++
			}
			if !yield(l.across[at], math.Abs(x(at)-l.Marks[mark].At.X)) {
				return
			}
		}
	}
}

// strike takes out each measure without which both its marks are seen as well.
func (l *checkList) strike() {
	kept := l.checks[:0:0]
	for k := len(l.checks) - 1; k >= 0; k-- {
		c := l.checks[k]
		a := l.shown[c.From].Plus(l.shows(c.From, c.To).minus())
		b := l.shown[c.To].Plus(l.shows(c.To, c.From).minus())
		if (c.Why == Neighbour || c.Why == OtherWay) && l.worth(c.From, a) >= inFull && l.worth(c.To, b) >= inFull {
			l.shown[c.From], l.shown[c.To] = a, b
			continue
		}
		kept = append(kept, c)
	}
	slices.Reverse(kept)
	l.checks = kept
}

// farthest returns the two marks within reach that are farthest apart.
func (l *checkList) farthest() (a, b int, ok bool) {
	most := 0.0
	for i := range l.Marks {
		for j := i + 1; j < len(l.Marks); j++ {
			if d := l.apart(i, j); d > most && l.open(i, j) {
				a, b, most, ok = i, j, d, true
			}
		}
	}
	return a, b, ok
}
