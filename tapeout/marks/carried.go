package marks

import (
	"slices"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// addStops adds the marks at which revolves and tracks come to rest, those that lie
// on the floor. One that falls on a mark that is there anyway, as the start of a
// track on the end of its line, is that mark. Start and stop of a track are always
// down; the others are needed in the scenes that use them.
func addStops(ms []Mark, stops []floor.Stop, f *floor.Floor, rules Rules) []Mark {
	for _, s := range stops {
		if !f.Holds(s.At) {
			continue
		}
		m := Mark{
			Kind: Stop, At: s.At, Elements: []plan.ElementID{s.Carrier}, Stocks: []plan.StockID{},
			Arms: []plane.Point{s.Across}, Station: &s.Station, Scenes: s.Scenes,
		}
		if !s.Turns && (s.Start || s.Stop) {
			m.Scenes = nil
		}
		i := at(ms, m.At, rules.Weld)
		if i < 0 {
			ms = append(ms, m)
			continue
		}
		ms[i].join(m)
		ms[i].Arms, ms[i].Station = m.Arms, m.Station
		if ms[i].Kind == End || ms[i].Kind == Curve {
			ms[i].Kind = Stop
		}
	}
	return ms
}

// addDatums adds the datums of what is moved aside, where they can be marked.
func addDatums(ms []Mark, asides []floor.Aside, rules Rules) []Mark {
	for _, a := range asides {
		if a.OnFloor && at(ms, a.Datum, rules.Weld) < 0 {
			ms = append(ms, Mark{Kind: OwnDatum, At: a.Datum, Elements: a.Elements, Stocks: []plan.StockID{}, Aside: a.Datum})
		}
	}
	return ms
}

// at returns the index of the mark within weld metres of the point; −1: none.
func at(ms []Mark, p plane.Point, weld float64) int {
	return slices.IndexFunc(ms, func(m Mark) bool { return m.At.To(p) <= weld })
}

// cutEnds says of the marks at which the room cuts a line short that they are not
// the end of the scenery.
func cutEnds(ms []Mark, lines []floor.Line, weld float64) {
	var ends []plane.Point
	for _, l := range lines {
		if l.Cut.A {
			ends = append(ends, l.A)
		}
		if l.Cut.B {
			ends = append(ends, l.B)
		}
	}
	for i := range ms {
		for _, p := range ends {
			if ms[i].At.To(p) > weld {
				continue
			}
			ms[i].Cut = true
			if ms[i].Kind == End {
				ms[i].Kind = CutEnd
			}
			break
		}
	}
}

// setAside notes how far each mark lies from its true place: not at all where
// anything meets in it that is in its own.
func setAside(ms []Mark, pl *plan.Plan, f *floor.Floor) {
	for i := range ms {
		for k, id := range ms[i].Elements {
			e := pl.Element(id)
			if e == nil {
				continue
			}
			by := f.AsideBy(e)
			switch {
			case k == 0:
				ms[i].Aside = by
			case by != ms[i].Aside:
				ms[i].Aside = plane.Point{}
			}
		}
	}
}

// TrueAt is where the mark would lie if nothing were moved aside: its up and over
// from the datum of what it belongs to.
func (m Mark) TrueAt() plane.Point { return m.At.Sub(m.Aside) }
