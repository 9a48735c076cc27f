package sense_test

import (
	"math"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// A damaged file gives coordinates that are no places; nothing may come of them.
func TestCoordinatesThatAreNoPlacesDoNoHarm(t *testing.T) {
	for _, odd := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 5e-324} {
		for _, unit := range []linework.Unit{0, linework.Point, linework.Metre} {
			d := stage()
			d.Unit = unit
			d.put("WALLS", seg(0, 0, odd, 1))
			d.put("WALLS", seg(odd, odd, odd, odd))
			d.put("DOORS", plane.Edge{A: pt(0, 0), B: pt(1, 0), Bulge: odd})
			d.put("DOORS")
			d.write("12 m", odd, 0, 0.2)
			d.write("CL", 0, 0, odd)
			d.Measures = append(d.Measures, linework.Measure{Says: "3 m", Measured: odd})
			s := d.sheet()
			for _, g := range sense.ProposeScale(s) {
				if !(g.PerUnit > 0) || math.IsInf(g.PerUnit, 0) {
					t.Errorf("%v: the scale %+v", odd, g)
				}
			}
			sense.ProposeDatum(s)
			sense.ProposeAside(s)
			sense.CheckKnown(odd, pt(0, 0), pt(odd, 0), odd, length.Style{})
			for _, c := range sense.ProposeElements(s, sense.Options{PerUnit: 1}).Candidates {
				for _, p := range c.Paths {
					for _, v := range p.Vertices {
						if !v.Finite() {
							t.Errorf("%v: %s has a corner at %v", odd, c.Name, v.Point)
						}
					}
				}
			}
		}
	}
}
