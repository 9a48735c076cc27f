package prep

import (
	"fmt"
	"math"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Comparison is what differs between two floors on which the same plan is laid.
type Comparison struct {
	A, B  *floor.Floor
	Datum string     // how B's datum lies from A's, in words; empty: at the same place of the plan
	Rows  []Compared // every element that either floor lays, in plan order
	Tape  []ComparedTape
}

// Compared is one element on two floors.
type Compared struct {
	Element plan.ElementID
	Name    string
	Kind    plan.Kind
	A, B    OnFloor
	Differs []string // what is not the same, in words; empty: laid alike
}

// OnFloor is one element on one floor.
type OnFloor struct {
	Treatment floor.Treatment
	Laid      float64     // metres of lines that the floor lays
	Cut       float64     // metres of lines that cutting short takes away
	At        plane.Point // its first drawn corner in its first position, datum axes
	Placed    bool        // it is on the floor at all, so that At means something
	Marks     []MeasuredMark
}

// ComparedTape is what one stock takes on both floors, in metres with what wears
// and is wasted.
type ComparedTape struct {
	Stock plan.StockID
	A, B  float64
}

// Compare compares two floors element by element and tape by tape; the works are
// those over all scenes.
func Compare(p *Production, a, b *FloorWork) Comparison {
	c := Comparison{A: a.Floor, B: b.Floor, Tape: comparedTape(a.Tape, b.Tape)}
	there := a.Floor.PlanToDatum().Inverse().Then(b.Floor.PlanToDatum())
	c.Datum = datumWords(p, there)
	left, right := onFloor(p, a), onFloor(p, b)
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		row := Compared{Element: e.ID, Name: e.Name, Kind: e.Kind, A: left(e), B: right(e)}
		if !row.A.Placed && !row.B.Placed {
			continue
		}
		row.Differs = differences(p, row.A, row.B, there)
		c.Rows = append(c.Rows, row)
	}
	return c
}

// onFloor returns what tells of an element how it lies on the floor.
func onFloor(p *Production, w *FloorWork) func(*plan.Element) OnFloor {
	laid := map[plan.ElementID]float64{}
	for _, l := range w.Lines {
		laid[l.Element] += l.Length()
	}
	at := map[plan.ElementID][]MeasuredMark{}
	for _, m := range w.Marks {
		for _, e := range m.Elements {
			at[e] = append(at[e], m)
		}
	}
	cut := map[plan.ElementID]float64{}
	for _, o := range w.Overhangs {
		cut[o.Element] = o.Length
	}
	return func(e *plan.Element) OnFloor {
		x := OnFloor{Treatment: w.Floor.Decide(e), Laid: laid[e.ID], Marks: at[e.ID]}
		if x.Treatment.How == floor.CutShort {
			x.Cut = cut[e.ID]
		}
		x.At, x.Placed = w.Floor.FirstCorner(&p.Plan, e)
		return x
	}
}

// datumWords says what the datum of the second floor adds to every figure of the first.
func datumWords(p *Production, there plane.Motion) string {
	style := p.Style()
	grain := style.Grain() / 2
	turn := math.Remainder(there.Turn, 2*math.Pi) * 180 / math.Pi
	shifted := math.Abs(there.Shift.X) >= grain || math.Abs(there.Shift.Y) >= grain
	var words []string
	if shifted {
		words = append(words, "all of it reads "+offset(style, there.Shift.X, there.Shift.Y)+" there")
	}
	if math.Abs(turn) >= 0.05 {
		words = append(words, fmt.Sprintf("the plan is turned by %s° against the datum there", figure(turn)))
	}
	return Listed(words)
}

// differences names what is not the same on both floors, beyond what a person can
// read off a tape. A place differs when it is not the one to which the datum alone,
// there, takes it.
func differences(p *Production, a, b OnFloor, there plane.Motion) []string {
	style := p.Style()
	same := func(x, y float64) bool { return math.Abs(x-y) < style.Grain()/2 }
	var out []string
	add := func(form string, args ...any) { out = append(out, fmt.Sprintf(form, args...)) }
	if a.Treatment.How != b.Treatment.How {
		add("%s here, %s there", a.Treatment.How, b.Treatment.How)
	}
	if !a.Placed || !b.Placed {
		return out
	}
	if !same(a.Cut, b.Cut) {
		add("%s cut away here, %s there", style.Format(a.Cut), style.Format(b.Cut))
	}
	if d := b.At.Sub(there.Apply(a.At)); !same(d.X, 0) || !same(d.Y, 0) {
		add("lies %s there", offset(style, d.X, d.Y))
	}
	if !same(a.Laid, b.Laid) {
		add("%s of lines here, %s there", style.Format(a.Laid), style.Format(b.Laid))
	}
	if len(a.Marks) != len(b.Marks) {
		add("%s here, %d there", Counted(len(a.Marks), "mark"), len(b.Marks))
	}
	return out
}

// comparedTape lists every stock that either floor takes, in the stocks' order.
func comparedTape(a, b []supplies.Run) []ComparedTape {
	var out []ComparedTape
	add := func(runs []supplies.Run, into func(*ComparedTape) *float64) {
		for _, r := range runs {
			if !(r.Total > 0) {
				continue
			}
			k := -1
			for i := range out {
				if out[i].Stock == r.Stock {
					k = i
				}
			}
			if k < 0 {
				k = len(out)
				out = append(out, ComparedTape{Stock: r.Stock})
			}
			*into(&out[k]) = r.Total
		}
	}
	add(a, func(c *ComparedTape) *float64 { return &c.A })
	add(b, func(c *ComparedTape) *float64 { return &c.B })
	return out
}

// Different counts the rows that are not laid alike.
func (c Comparison) Different() int {
	n := 0
	for _, r := range c.Rows {
		if len(r.Differs) > 0 {
			n++
		}
	}
	return n
}
