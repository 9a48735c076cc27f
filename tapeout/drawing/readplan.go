package drawing

import (
	"errors"
	"io"
	"math"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// planColumns are the columns of a plan, in the order in which they are written.
var planColumns = []string{
	"element", "kind", "level", "height", "use", "note", "path", "role", "close", "up", "over", "curve",
}

// PlanOptions say how a table of a plan is to be read.
type PlanOptions struct {
	Unit   length.Unit   // of bare numbers
	Scale  length.Scale  // lengths are those on paper at this scale; zero: those on the floor
	Levels []plan.Level  // those that the plan has; rows name them, and their height stays
	NewID  func() string // makes identifiers that are never used again
}

// PlanTable is what a table of a plan holds.
type PlanTable struct {
	Elements []plan.Element // in the order of their first rows, each with at least one path
	Levels   []plan.Level   // those that the rows name and the options do not have
	Unused   []string       // columns that were not looked at, as the header spells them
	Problems []RowProblem   // in the order of the rows within each element; all of them
}

// ReadPlan reads elements from a table as the package comment describes it. What
// cannot be used is left out and listed in Problems, so the result is whole only
// when that is empty; the error says why it is no such table at all.
func ReadPlan(r io.Reader, o PlanOptions) (PlanTable, error) {
	t, err := readTable(r, planColumns, maxRows)
	if err != nil {
		return PlanTable{}, err
	}
	if err := errors.Join(t.need("element", "up", "over"), checkScale(o.Scale)); err != nil {
		return PlanTable{}, err
	}
	p := planReader{options: o, elements: map[string]*draft{}, levels: newLevelBook(o)}
	p.problems = t.problems
	for _, r := range t.rows {
		p.row(r)
	}
	return PlanTable{Elements: p.finish(), Levels: p.levels.added, Unused: t.unused, Problems: p.problems}, nil
}

// planReader gathers rows into elements.
type planReader struct {
	options  PlanOptions
	elements map[string]*draft
	order    []*draft
	levels   *levelBook
	last     *draft // the element of the row above
	problems []RowProblem
}

// draft is an element while its rows are read.
type draft struct {
	plan.Element
	stated map[string]stated
	paths  map[string]*trace
	order  []*trace
	last   string // the path of its latest row
}

func (p *planReader) problem(found RowProblem) { p.problems = append(p.problems, found) }

// row takes one row.
func (p *planReader) row(r row) {
	d := p.draft(r)
	if d == nil {
		return
	}
	p.describe(d, r)
	c, ok := p.corner(r)
	t := d.trace(r, c.curve.kind == circle)
	p.describePath(t, r)
	if !ok {
		return
	}
	if c.curve.kind == circle {
		radius, err := length.Parse(c.curve.size, p.options.Unit)
		radius = p.onFloor(radius)
		if err != nil || !(radius > 0) || radius > length.Limit {
			p.problem(RowProblem{Row: r.number, Column: "curve", Got: r.cell("curve"),
				Why: "the radius cannot be read, or is not above zero", Want: curveWanted})
			return
		}
		t.radius = radius
	}
	t.corners = append(t.corners, c)
}

// draft returns the element that the row belongs to.
func (p *planReader) draft(r row) *draft {
	name := tidy(r.cell("element"))
	if name == "" {
		if p.last == nil {
			p.problem(RowProblem{Row: r.number, Column: "element", Want: "what the element is called"})
		}
		return p.last
	}
	d := p.elements[key(name)]
	if d == nil {
		d = &draft{stated: map[string]stated{}, paths: map[string]*trace{}}
		d.Name, d.Kind, d.Use = name, plan.Other, plan.Useful
		p.elements[key(name)] = d
		p.order = append(p.order, d)
	}
	p.last = d
	return d
}

// trace returns the path that the row belongs to. A circle is one by itself.
func (d *draft) trace(r row, alone bool) *trace {
	name := key(r.cell("path"))
	if name == "" {
		name = d.last
	}
	t := d.paths[name]
	if t == nil || alone {
		t = &trace{role: plan.Outline, stated: map[string]stated{}}
		d.order = append(d.order, t)
	}
	if !alone {
		d.paths[name], d.last = t, name
	}
	return t
}

// corner reads where the row's point is and how the line goes on from it.
func (p *planReader) corner(r row) (c corner, ok bool) {
	c.row = r.number
	up, okUp := p.coordinate(r, "up", length.ParseUp)
	over, okOver := p.coordinate(r, "over", length.ParseOver)
	c.at = plane.Point{X: over, Y: up}
	curve, why := readCurve(r.cell("curve"))
	if why != "" {
		p.problem(RowProblem{Row: r.number, Column: "curve", Got: r.cell("curve"), Why: why, Want: curveWanted})
	}
	c.curve = curve
	return c, okUp && okOver && why == ""
}

func (p *planReader) coordinate(r row, column string, parse func(string, length.Unit) (float64, error)) (float64, bool) {
	text := r.cell(column)
	v, err := parse(text, p.options.Unit)
	if err != nil {
		p.problem(lengthProblem(r.number, column, text, err))
		return 0, false
	}
	if v = p.onFloor(v); math.Abs(v) > length.Limit {
		p.problem(RowProblem{Row: r.number, Column: column, Got: text, Why: "at this scale it is beyond 10 km"})
		return 0, false
	}
	return v, true
}

func (p *planReader) onFloor(v float64) float64 { return onFloor(v, p.options.Scale) }

// finish makes the elements of the drafts.
func (p *planReader) finish() []plan.Element {
	var out []plan.Element
	for _, d := range p.order {
		for _, t := range d.order {
			if len(t.corners) == 0 {
				continue // its only rows are problems already
			}
			path, problem := t.path()
			if problem != nil {
				p.problem(*problem)
				continue
			}
			d.Paths = append(d.Paths, plan.Path{ID: plan.PathID(p.options.NewID()), Role: t.role, Path: path})
		}
		if len(d.Paths) > 0 {
			d.ID = plan.ElementID(p.options.NewID())
			out = append(out, d.Element)
		}
	}
	return out
}
