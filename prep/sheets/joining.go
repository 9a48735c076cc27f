package sheets

import (
	"cmp"
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// joining lists every strip of tape, stock by stock: from which mark to which,
// through which others, and how.
func joining(j Job) content {
	p, w := j.production(), j.work()
	f := figuresOf(p)
	t := table{
		Columns: []column{
			{Title: "from", Type: labelType},
			{Title: "to", Type: labelType},
			{Title: "through", Flex: true, Type: strongType},
			{Title: "how", Flex: true},
			{Title: "length", Type: floorType, Align: right},
			{Title: "laid", Kind: tick},
		},
		Empty: "There is no line to lay on this floor in this scene yet.",
	}
	l := joiner{newFinder(w.Marks), f, p.Settings.Rules, cutEnds(w.Lines)}
	strips := supplies.Strips(w.Lines)
	for _, id := range stocksOf(p, w.Lines) {
		t.Rows = append(t.Rows, span(capitalise(stockName(p, id))))
		start := len(t.Rows)
		for _, c := range l.runs(strips, id) {
			t.Rows = append(t.Rows, l.runRow(c))
		}
		slices.SortStableFunc(t.Rows[start:], func(a, b row) int { return compareLabels(a.Cells[0], b.Cells[0]) })
	}
	blocks := []block{}
	if len(t.Rows) > 0 {
		blocks = append(blocks, paragraph{Text: "Join only what has been checked. Where a curve is laid by chord and offset, stretch a line between its ends: the first figure is along it, or where it says so beyond an end of it with the line drawn on, the second square off it. A patch goes over each corner and where feet turn."})
	}
	return content{blocks: append(blocks, t)}
}

// joiner words strips of one floor.
type joiner struct {
	near  finder
	f     figures
	rules marks.Rules
	cuts  []cutEnd
}

func (l joiner) row(s supplies.Strip) row {
	on := l.passes(s)
	from, to := "", ""
	if len(on) > 0 && on[0].t == 0 {
		from, on = on[0].label, on[1:]
	}
	if n := len(on); n > 0 && on[n-1].t == 1 {
		to, on = on[n-1].label, on[:n-1]
	}
	var between []string
	for _, o := range on {
		between = append(between, o.label)
	}
	how := l.laidHow(s, between)
	if from == "" && !s.Whole {
		how += "; begins at " + l.f.place(s.A)
	}
	if to == "" && !s.Whole {
		how += "; ends at " + l.f.place(s.B)
	}
	how += cutWords(s, from, to, l.cuts)
	return cells(or(from, "–"), or(to, "–"), strings.Join(between, ", "), how, l.f.length(s.Length()), "")
}

// passes returns the marks on a strip in their order, over a whole circle once round.
func (l joiner) passes(s supplies.Strip) []passed {
	on := l.near.along(s.Edge, l.rules.Weld)
	if s.Whole {
		// The other half of a circle goes back from its end to its beginning.
		back := l.near.along(plane.Edge{A: s.B, B: s.A, Bulge: s.Bulge}, l.rules.Weld)
		if len(on) > 0 && on[len(on)-1].t == 1 && len(back) > 0 && back[0].t == 0 {
			back = back[1:]
		}
		for i := range on {
			on[i].t /= 2
		}
		for _, b := range back {
			on = append(on, passed{b.label, 0.5 + b.t/2})
		}
	}
	return on
}

// laidHow says how a strip is laid that passes the marks between.
func (l joiner) laidHow(s supplies.Strip, between []string) string {
	how := "straight"
	if centre, radius, ok := s.Circle(); ok {
		how = "curved, radius " + l.f.length(radius)
		if label, ok := l.near.at(centre, 0.01); ok {
			how = "swung from " + label + ", radius " + l.f.length(radius)
		} else if len(between) > 0 {
			how += ", point by point"
			if !s.Whole {
				how += l.byChord(s.Edge, between)
			}
		}
	}
	if s.Whole {
		how = "full circle, " + strings.TrimPrefix(how, "curved, ")
	}
	if s.Dashed {
		how += ", broken line"
	}
	return how
}

// compareLabels orders labels as they are given out: shorter first.
func compareLabels(a, b string) int {
	return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b))
}

// cutEnd is an end that the room has made by cutting a line short.
type cutEnd struct {
	stock plan.StockID
	at    plane.Point
	ahead plane.Point // unit vector from the cut into the line
}

func cutEnds(lines []floor.Line) []cutEnd {
	var out []cutEnd
	for _, l := range lines {
		for _, end := range []struct {
			cut  bool
			edge plane.Edge
		}{{l.Cut.A, l.Edge}, {l.Cut.B, l.Edge.Reversed()}} {
			if u, ok := end.edge.Tangent(0).Unit(); ok && end.cut {
				out = append(out, cutEnd{l.Stock, end.edge.A, u})
			}
		}
	}
	return out
}

// cutWords say which ends of a strip are cuts and not the end of the scenery.
func cutWords(s supplies.Strip, from, to string, cuts []cutEnd) string {
	cut := func(e plane.Edge) bool {
		u, _ := e.Tangent(0).Unit()
		return !s.Whole && slices.ContainsFunc(cuts, func(c cutEnd) bool {
			return c.stock == s.Stock && c.at.To(e.A) <= cutReach && c.ahead.Dot(u) > 0.99
		})
	}
	var at []string
	if cut(s.Edge) {
		at = append(at, or(from, "its beginning"))
	}
	if cut(s.Edge.Reversed()) {
		at = append(at, or(to, "its end"))
	}
	if len(at) == 0 {
		return ""
	}
	return "; cut short at " + prep.Listed(at) + ", where the scenery goes on: put the sign // there"
}

// cutReach is how far the end of a strip may lie from the end of a line in it, in
// metres: the usual weld of marks.
const cutReach = 0.01

// finder finds marks by where they are, over cells of half a metre.
type finder map[cellAt][]prep.MeasuredMark

const findCell = 0.5

func newFinder(all []prep.MeasuredMark) finder {
	fd := finder{}
	for _, m := range all {
		if drawable(m.At) {
			c := findCellOf(m.At)
			fd[c] = append(fd[c], m)
		}
	}
	return fd
}

func findCellOf(p plane.Point) cellAt {
	return cellAt{int(p.X/findCell + farthest), int(p.Y/findCell + farthest)}
}

// at returns the label of the mark nearest to p within reach metres.
func (fd finder) at(p plane.Point, reach float64) (label string, ok bool) {
	if !drawable(p) {
		return "", false
	}
	c := findCellOf(p)
	for x := -1; x <= 1; x++ {
		for y := -1; y <= 1; y++ {
			for _, m := range fd[cellAt{c.x + x, c.y + y}] {
				if d := m.At.To(p); d <= reach {
					label, reach, ok = m.Label, d, true
				}
			}
		}
	}
	return label, ok
}

// passed is a mark on a strip at fraction t of its length.
type passed struct {
	label string
	t     float64
}

// along returns the marks within weld metres of the edge in the order in which
// they lie on it; those within weld of an end are at that end.
func (fd finder) along(e plane.Edge, weld float64) []passed {
	if !drawableEdge(e) {
		return nil
	}
	weld = max(weld, 1e-6)
	seen := map[string]bool{}
	var out []passed
	box := e.Bounds().Grow(weld)
	low, high := findCellOf(box.Min), findCellOf(box.Max)
	for x := low.x; x <= high.x; x++ {
		for y := low.y; y <= high.y; y++ {
			for _, m := range fd[cellAt{x, y}] {
				if t, ok := onEdge(e, m.At, weld); ok && !seen[m.Label] {
					seen[m.Label] = true
					out = append(out, passed{m.Label, t})
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b passed) int {
		return cmp.Or(cmp.Compare(a.t, b.t), compareLabels(a.label, b.label))
	})
	return out
}

// onEdge returns the fraction of the edge's length at which p lies, within tol
// metres; ok is false when it lies off the edge. Near an end it is exactly 0 or 1.
func onEdge(e plane.Edge, p plane.Point, tol float64) (t float64, ok bool) {
	switch {
	case p.To(e.A) <= tol:
		return 0, true
	case p.To(e.B) <= tol:
		return 1, true
	}
	if centre, _, arc := e.Circle(); arc {
		turn := p.Sub(centre).Angle() - e.A.Sub(centre).Angle()
		t = unwound(turn, e.Sweep()) / e.Sweep()
	} else {
		along := e.B.Sub(e.A)
		t = p.Sub(e.A).Dot(along) / along.Dot(along)
	}
	return t, t >= 0 && t <= 1 && e.At(t).To(p) <= tol
}
