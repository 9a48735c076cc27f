package sheets

import (
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// floorPlan is the floor with everything on it at a true scale.
func floorPlan(j Job) content {
	d := drawFloor(j)
	return content{blocks: []block{d}, wide: d.lies(j.size())}
}

// drawFloor gathers the drawing of the job's floor and scene.
func drawFloor(j Job) drawing {
	p, w := j.production(), j.work()
	d := drawing{
		Baseline: or(string(p.Plan.Baseline), "baseline"),
		Unit:     p.Unit(),
		Empty:    "There is nothing on this floor yet: measure the room, and put a plan on it.",
	}
	if f := w.Floor; f != nil {
		d.room(f)
		d.features(f)
	}
	d.tape(p, w)
	d.pieces(w)
	d.names(p, w)
	d.guides(w)
	d.marks(p, w)
	d.asides(p, w)
	d.ways(p, w)
	d.entry(entry{Pen: centrePen, Text: "centre line"}, len(d.Strokes)+len(d.Points) > 0 || len(d.Walls.Vertices) > 0)
	d.entry(entry{Pen: baselinePen, Text: d.Baseline}, len(d.Strokes)+len(d.Points) > 0 || len(d.Walls.Vertices) > 0)
	return d
}

// entry adds a line to the key when what it explains is on the drawing.
func (d *drawing) entry(e entry, used bool) {
	if used {
		d.Entries = append(d.Entries, e)
	}
}

// room adds walls, obstacles, keep-clear areas and pivots.
func (d *drawing) room(f *floor.Floor) {
	m := f.FloorToDatum()
	d.Walls = f.Outline.Moved(m)
	for _, o := range f.Obstacles {
		d.Areas = append(d.Areas, area{o.Shape.Moved(m), or(o.Name, o.Kind), true})
	}
	for _, k := range f.KeepClears {
		d.Areas = append(d.Areas, area{k.Shape.Moved(m), or(k.Name, k.Kind), false})
	}
	for _, a := range d.Areas {
		if box, ok := a.Shape.Bounds(); ok {
			d.Names = append(d.Names, spot{At: box.Centre(), Text: a.Name, Kind: naming, Half: halfOf(box)})
		}
	}
	for _, s := range f.Steps {
		line := s.Line.Moved(m)
		d.Strokes = append(d.Strokes, stroke{line.Edges(), stepPen})
		if box, ok := line.Bounds(); ok {
			d.Names = append(d.Names, spot{At: box.Centre(), Text: s.Name, Kind: naming, Half: box.Width()/2 + box.Height()/2})
		}
	}
	for i, pv := range f.Pivots {
		d.Pivots = append(d.Pivots, spot{At: m.Apply(pv.At), Text: pivotName(i), Kind: pivot})
	}
	d.entry(entry{Pen: wallPen, Text: "wall of the room"}, len(d.Walls.Vertices) > 0)
	d.entry(entry{Pen: stepPen, Text: "step in the floor"}, len(f.Steps) > 0)
	d.entry(entry{Sign: solidSign, Text: "stands in the room"}, len(f.Obstacles) > 0)
	d.entry(entry{Sign: clearSign, Text: "keep clear"}, len(f.Clears()) > 0)
	d.entry(entry{Sign: spotSign, Spot: pivot, Text: "pivot, to hook a tape on"}, len(f.Pivots) > 0)
}

// halfOf is half of the smaller side of the box.
func halfOf(b plane.Box) float64 { return min(b.Width(), b.Height()) / 2 }

// pivotName is how a pivot is called on plans and lists: the first two serve the
// two-tape method.
func pivotName(i int) string {
	return "Pivot " + string(rune('1'+min(i, 8)))
}

// tape adds the lines that are laid, each stock with a pen of its own, in the
// order in which the production lists its stocks.
func (d *drawing) tape(p *prep.Production, w *prep.FloorWork) {
	used := stocksOf(p, w.Lines)
	broken := false
	for i, id := range used {
		n := stockPen(i)
		for _, chain := range chains(w.Lines, id) {
			ink := n
			if chain[0].Role.Dashed() {
				ink, broken = brokenPen, true
			}
			d.Strokes = append(d.Strokes, stroke{edgesOf(chain), ink})
		}
		d.entry(entry{Pen: n, Text: stockName(p, id)}, true)
	}
	d.entry(entry{Pen: brokenPen, Text: "laid as a broken line: swing, overhead, way"}, broken)
}

// stocksOf returns the stocks that lines name, in the production's order, those
// that it does not list after them.
func stocksOf(p *prep.Production, lines []floor.Line) []plan.StockID {
	named := map[plan.StockID]bool{}
	for _, l := range lines {
		named[l.Stock] = true
	}
	var out []plan.StockID
	for _, s := range p.Stocks {
		if named[s.ID] {
			out = append(out, s.ID)
			delete(named, s.ID)
		}
	}
	var rest []plan.StockID
	for id := range named {
		rest = append(rest, id)
	}
	slices.Sort(rest)
	return append(out, rest...)
}

// stockName names a stock with its colour, which its name need not hold.
func stockName(p *prep.Production, id plan.StockID) string {
	if id == "" {
		return "tape not decided"
	}
	s := p.Stock(id)
	if s == nil {
		return "unknown tape " + string(id)
	}
	return nameAndColour(*s)
}

func nameAndColour(s supplies.Stock) string {
	name := or(s.Name, string(s.ID))
	if s.Colour == "" || strings.Contains(strings.ToLower(name), strings.ToLower(s.Colour)) {
		return name
	}
	return name + " (" + s.Colour + ")"
}

// chains returns the lines of a stock, those that follow each other along one
// path together.
func chains(lines []floor.Line, id plan.StockID) [][]floor.Line {
	var out [][]floor.Line
	for _, l := range lines {
		if l.Stock != id {
			continue
		}
		if n := len(out) - 1; n >= 0 {
			last := out[n][len(out[n])-1]
			if last.Path == l.Path && last.Role == l.Role && last.B == l.A {
				out[n] = append(out[n], l)
				continue
			}
		}
		out = append(out, []floor.Line{l})
	}
	return out
}

func edgesOf(chain []floor.Line) []plane.Edge {
	out := make([]plane.Edge, len(chain))
	for i, l := range chain {
		out[i] = l.Edge
	}
	return out
}

// guides adds the guide lines and the second baseline, where marks need them.
func (d *drawing) guides(w *prep.FloorWork) {
	_, lines := w.GuideLines()
	for _, l := range lines {
		d.Strokes = append(d.Strokes, stroke{[]plane.Edge{l.Edge}, guidePen})
	}
	d.entry(entry{Pen: guidePen, Text: "guide line or second baseline, chalked"}, len(lines) > 0)
}

// pieces adds what is set on spikes, thin and broken: it is not taped.
func (d *drawing) pieces(w *prep.FloorWork) {
	for _, pc := range w.Pieces {
		for _, path := range pc.Paths {
			d.Strokes = append(d.Strokes, stroke{path.Edges(), spikedPen})
		}
	}
	d.entry(entry{Pen: spikedPen, Text: "set on spikes, not taped"}, len(w.Pieces) > 0)
}

// kindOf is the sign of a mark.
func kindOf(m prep.MeasuredMark) spotKind {
	switch {
	case m.Kind == marks.Spike:
		return ring
	case m.Cut:
		return broken
	case m.Kind == marks.OwnDatum:
		return target
	case m.Station != nil:
		return stopping
	case m.Weak:
		return weak
	}
	return dot
}

// markEntries explain the signs of marks in the key.
var markEntries = []struct {
	kind spotKind
	text string
}{
	{dot, "mark"}, {weak, "mark that two tapes find badly"}, {ring, "spike"},
	{broken, "cut short at the room: the scenery goes on"}, {stopping, "stop of what turns or runs"}, {target, "datum of what is moved aside"},
}

// marks adds the marks and the figures of the dance lines.
func (d *drawing) marks(p *prep.Production, w *prep.FloorWork) {
	seen := map[spotKind]bool{}
	for _, m := range w.Marks {
		k := kindOf(m)
		seen[k] = true
		d.Points = append(d.Points, spot{At: m.At, Text: m.Label, Kind: k})
		for _, e := range m.Tape(p.Settings.Allowances.SpikeLeg) {
			d.Strokes = append(d.Strokes, stroke{[]plane.Edge{e}, spikePen})
		}
	}
	for _, n := range w.Dance {
		d.Numbers = append(d.Numbers, spot{At: n.At, Text: n.Text, Kind: number})
	}
	for _, e := range markEntries {
		d.entry(entry{Sign: spotSign, Spot: e.kind, Text: e.text}, seen[e.kind])
	}
	d.entry(entry{Sign: spotSign, Spot: number, Text: "number of a dance line"}, len(w.Dance) > 0)
}

// asides adds the offsets that are written on the floor beside what is moved.
func (d *drawing) asides(p *prep.Production, w *prep.FloorWork) {
	if w.Floor == nil {
		return
	}
	for _, n := range w.AsideNotes(p) {
		d.Points = append(d.Points, spot{At: n.Sign, Text: n.Text, Kind: written})
	}
}

// picture returns the drawing without marks and figures: the set in the room, for
// those who look at it and lay nothing.
func (d drawing) picture() drawing {
	d.Points, d.Numbers, d.Pivots = nil, nil, nil
	var kept []entry
	for _, e := range d.Entries {
		if e.Sign != spotSign {
			kept = append(kept, e)
		}
	}
	d.Entries = kept
	return d
}
