package prep

import (
	"slices"
	"sync"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// FloorWork is everything computed for one floor. It is a pure function of the
// production.
type FloorWork struct {
	Floor     *floor.Floor
	Scene     plan.SceneID // the scene that lines and marks are limited to; empty: all
	Lines     []floor.Line // datum axes
	Pieces    []floor.Piece
	Overhangs []floor.Overhang
	Marks     []MeasuredMark
	Frame     survey.Frame   // of guide lines and a second baseline
	Guided    bool           // a mark of the floor is placed from Frame
	Gone      []marks.Issued // printed labels that nothing needs any more
	Dance     []marks.Numbered
	Tape      []supplies.Run
	Ways      []*WayWork // where each is narrowest, or in the scene
	Problems  []Problem

	of      *Production           // what it was computed from
	checks  func() []survey.Check // computed once, when it is first asked for
	verdict func() *Verdict       // the same; on the whole floor
}

// Problem is something that a person must look at. It is turned into a sentence
// by its Sentence method alone.
type Problem struct {
	Rule  string // what is broken; one of the Rule constants
	Where string // the name of the thing
	Place string // the place in the window where it can be cured
	ID    string // the identifier of the row to select there
	Got   string
	Limit string
}

// Work computes a floor for the scene; the empty scene is all of them. It returns
// nil when there is no such floor. Labels do not depend on the scene.
func Work(p *Production, id floor.ID, scene plan.SceneID) *FloorWork {
	f := p.Floor(id)
	if f == nil {
		return nil
	}
	w := &FloorWork{
		of:        p,
		Floor:     f,
		Lines:     f.Lines(&p.Plan),
		Pieces:    f.Spiked(&p.Plan),
		Overhangs: f.Overhangs(&p.Plan),
		Dance:     danceFigures(p, f),
	}
	issued := issuedOn(p, id)
	found := marks.Of(&p.Plan, f, issued, p.Settings.Rules, p.Settings.TapeLength)
	w.Gone = marks.Gone(found, issued)
	w.measure(p, found)
	w.Tape = tapeOf(p, w)
	w.judgeLater()
	w.Ways = WaysOf(p, f)
	w.Problems = floorProblems(p, w)
	return w.In(scene)
}

// judgeLater has the check list and the verdict computed once, when they are first
// asked for.
func (w *FloorWork) judgeLater() {
	w.checks = sync.OnceValue(func() []survey.Check { return checksOf(w.of, w) })
	w.verdict = sync.OnceValue(func() *Verdict { v := VerdictOf(w.of, w); return &v })
}

// Verdict returns what the check measures that have been read say about the whole
// floor, whatever scene the work is limited to. It is computed once for what Work
// returns; nobody changes it.
func (w *FloorWork) Verdict() *Verdict { return w.verdict() }

// In returns the work with lines, pieces and marks limited to the scene, and
// the ways as they are in it; tape, labels and problems stay those of the whole floor.
func (w *FloorWork) In(scene plan.SceneID) *FloorWork {
	if scene == "" {
		return w
	}
	in := *w
	in.Scene = scene
	in.Lines = filter(w.Lines, func(l floor.Line) bool { return l.In(scene) })
	in.Marks = filter(w.Marks, func(m MeasuredMark) bool { return m.In(scene) })
	in.Pieces = filter(w.Pieces, func(p floor.Piece) bool { return floor.InScene(p.Scenes, scene) })
	in.checks = sync.OnceValue(func() []survey.Check { return checksOf(in.of, &in) })
	in.Ways = make([]*WayWork, len(w.Ways))
	for i, way := range w.Ways {
		in.Ways[i] = way.In(scene)
	}
	return &in
}

func filter[T any](list []T, keep func(T) bool) []T {
	return slices.DeleteFunc(slices.Clone(list), func(v T) bool { return !keep(v) })
}

func issuedOn(p *Production, id floor.ID) []marks.Issued {
	return filter(p.Issued, func(is marks.Issued) bool { return is.Floor == id })
}

// Pivots returns the pair of the two-tape method in datum axes; ok is false when
// the floor has fewer than two.
func Pivots(f *floor.Floor) (pair survey.TwoTape, ok bool) {
	if len(f.Pivots) < 2 {
		return survey.TwoTape{}, false
	}
	m := f.FloorToDatum()
	return survey.TwoTape{A: m.Apply(f.Pivots[0].At), B: m.Apply(f.Pivots[1].At)}, true
}

// measure measures the marks by every method.
func (w *FloorWork) measure(p *Production, found []marks.Mark) {
	progress := make(map[string]marks.Progress)
	for _, g := range p.Progress {
		if g.Floor == w.Floor.ID {
			progress[g.Label] = g
		}
	}
	pl := newPlacer(p, w.Floor, found)
	w.Marks, w.Frame, w.Guided = make([]MeasuredMark, len(found)), pl.frame, false
	for i, m := range found {
		m.What = whatOf(p, m)
		w.Marks[i] = pl.measure(m)
		w.Marks[i].Progress = progress[m.Label]
		w.Guided = w.Guided || w.Marks[i].Method == survey.WithGuideLines
	}
}

// danceFigures returns the figures of the floor's dance lines against the apron
// edge as the floor has it.
func danceFigures(p *Production, f *floor.Floor) []marks.Numbered {
	edge := apron(p, f)
	var out []marks.Numbered
	for _, d := range p.DanceLines {
		if d.Floor == f.ID {
			out = append(out, d.Figures(edge)...)
		}
	}
	return out
}

// apron returns the stage edge in datum axes; empty when the plan has none.
func apron(p *Production, f *floor.Floor) plane.Path {
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		if e.Kind == plan.ApronEdge && len(e.Paths) > 0 {
			return e.Paths[0].Path.Moved(f.PlanToDatum())
		}
	}
	return plane.Path{}
}

// tapeOf returns the tape that the floor takes, needed on the day of the first
// laying.
func tapeOf(p *Production, w *FloorWork) []supplies.Run {
	q := supplies.Quantities{Lines: w.Lines, Figures: len(w.Dance)}
	for _, m := range w.Marks {
		q.Marks = append(q.Marks, m.Mark)
	}
	return supplies.TapeRun(q, p.Stocks, p.Orders, p.Settings.Allowances, p.Needed())
}
