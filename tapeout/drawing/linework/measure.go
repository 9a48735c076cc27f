package linework

import "groundrow/tapeout/plane"

// Bounds returns the smallest box around the items that count says, in drawing
// units; nil counts all. ok is false when there are none.
func (s *Sheet) Bounds(count func(*Item) bool) (b plane.Box, ok bool) {
	for i := range s.Items {
		item := &s.Items[i]
		if count != nil && !count(item) {
			continue
		}
		for _, e := range item.Edges {
			if !ok {
				b, ok = e.Bounds(), true
				continue
			}
			b = b.Union(e.Bounds())
		}
	}
	return b, ok
}

// Scaled returns the sheet with every length in metres, one drawing unit being
// that many, and its Unit the metre. Width of pens stays: it is on paper. A factor
// that is not above zero returns the sheet as it is.
func (s *Sheet) Scaled(metresPerUnit float64) *Sheet {
	out := *s
	if !(metresPerUnit > 0) {
		return &out
	}
	k := metresPerUnit
	out.Unit, out.UnitHint = Metre, Unknown
	out.Box = plane.Box{Min: s.Box.Min.Times(k), Max: s.Box.Max.Times(k)}
	out.Items = make([]Item, len(s.Items))
	for i, item := range s.Items {
		item.Edges = make([]plane.Edge, len(item.Edges))
		for j, e := range s.Items[i].Edges {
			item.Edges[j] = plane.Edge{A: e.A.Times(k), B: e.B.Times(k), Bulge: e.Bulge}
		}
		item.Dash = times(item.Dash, k)
		out.Items[i] = item
	}
	out.Texts = make([]Text, len(s.Texts))
	for i, t := range s.Texts {
		t.At, t.Height = t.At.Times(k), t.Height*k
		out.Texts[i] = t
	}
	out.Measures = make([]Measure, len(s.Measures))
	for i, m := range s.Measures {
		out.Measures[i] = m.scaled(k)
	}
	return &out
}

func (m Measure) scaled(k float64) Measure {
	m.From, m.To = m.From.Times(k), m.To.Times(k)
	if !m.Angular {
		m.Measured *= k
	}
	return m
}

func times(lengths []float64, k float64) []float64 {
	if lengths == nil {
		return nil
	}
	out := make([]float64, len(lengths))
	for i, l := range lengths {
		out[i] = l * k
	}
	return out
}
