package sense_test

import (
	"math"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

func TestProposeDatum(t *testing.T) {
	// turned is the stage turned on its sheet.
	turned := func(d *draft, angle float64) *draft {
		m := plane.About(pt(10, 4), angle)
		for i := range d.Items {
			for k, e := range d.Items[i].Edges {
				d.Items[i].Edges[k] = e.Moved(m)
			}
		}
		for i := range d.Texts {
			d.Texts[i].At = m.Apply(d.Texts[i].At)
			d.Texts[i].Turn += angle
		}
		return d
	}
	for _, c := range []struct {
		name  string
		draft *draft
		at    plane.Point
		turn  float64
		is    plan.Baseline
		why   string
	}{
		{"both are labelled", stage(), pt(10, 4), 0, plan.PlasterLine, "“PLASTER LINE” stands at the plaster line."},
		{"setting line", func() *draft { d := stage(); d.Texts[0].Text = "Setting Line"; return d }(), pt(10, 4), 0, plan.SettingLine, "The centre line is on the layer “CENTRE LINE”."},
		{"the audience is above", func() *draft { d := stage(); d.write("AUDIENCE", 10, 14, 0.3); return d }(), pt(10, 4), math.Pi, plan.PlasterLine, "“AUDIENCE” tells which way"},
		{"upstage is written", func() *draft { d := stage(); d.write("US", 10, 0.5, 0.3); return d }(), pt(10, 4), math.Pi, plan.PlasterLine, "“US” tells"},
		{"a sheet drawn askew", turned(stage(), 0.3), pt(10, 4), 0.3, plan.PlasterLine, "“CL” stands at the centre line."},
		{"no baseline", func() *draft { d := stage(); d.Texts = d.Texts[1:]; return d }(), pt(10, 0), 0, plan.PlasterLine, "No baseline was found"},
		{"no centre line", func() *draft {
			d := stage()
			d.Items[1].Layer, d.Items[1].Dash = "0", nil
			d.Texts[1].Text = "x"
			return d
		}(), pt(10, 4), 0, plan.PlasterLine, "the middle of that line is proposed"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := sense.ProposeDatum(c.draft.sheet())
			if len(got) == 0 {
				t.Fatal("nothing is proposed")
			}
			g := got[0]
			if g.Origin.To(c.at) > 1e-9 || math.Abs(math.Remainder(g.Turn-c.turn, 2*math.Pi)) > 1e-9 || g.Is != c.is || !strings.Contains(g.Why, c.why) {
				t.Errorf("got %+v", g)
			}
			m := sense.Axes(g.Origin, g.Turn, 0.5).Inverse()
			if p := m.Apply(c.at.Times(0.5)); p.Len() > 1e-9 {
				t.Errorf("the origin goes to %v", p)
			}
			left := c.at.Add(plane.Polar(2, c.turn))
			if p := m.Apply(left.Times(0.5)); p.To(pt(1, 0)) > 1e-9 {
				t.Errorf("what lies 1 m to stage left goes to %v", p)
			}
		})
	}
}

func TestNoDatumInADrawingWithoutSigns(t *testing.T) {
	d := &draft{}
	d.rect("0", 0, 0, 10, 8)
	for _, s := range []*linework.Sheet{d.sheet(), {}} {
		if got := sense.ProposeDatum(s); len(got) != 0 {
			t.Errorf("%+v", got)
		}
	}
}

// A centre line drawn in two pieces, one over the other, is one proposal.
func TestADatumIsProposedOnce(t *testing.T) {
	s := &linework.Sheet{Box: plane.Box{Min: pt(-10, -5), Max: pt(10, 15)}}
	for _, e := range []plane.Edge{{A: pt(0, -5), B: pt(0, 10)}, {A: pt(0, 2), B: pt(0, 15)}, {A: pt(-10, 0), B: pt(10, 0)}} {
		layer := "CENTRE LINE"
		if e.A.X != 0 {
			layer = "PLASTER LINE"
		}
		s.Items = append(s.Items, linework.Item{Edges: []plane.Edge{e}, Layer: layer})
	}
	got := sense.ProposeDatum(s)
	for i, g := range got {
		for _, o := range got[:i] {
			if o.Origin.To(g.Origin) < 1e-9 && o.Turn == g.Turn && o.Is == g.Is {
				t.Errorf("it is proposed twice: %+v", got)
			}
		}
	}
	if len(got) == 0 || got[0].Origin.To(pt(0, 0)) > 1e-9 {
		t.Errorf("got %+v, want the crossing", got)
	}
}
