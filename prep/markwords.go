package prep

import (
	"fmt"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
)

// whatOf says what a mark is, with all that somebody on the floor must know of it:
// the leg of a piece, where a revolve or a wagon stops, that a line goes on, and
// up and over from the datum of what is moved aside.
func whatOf(p *Production, m marks.Mark) string {
	if m.Kind == marks.OwnDatum {
		return "datum of " + asideName(p, m.Elements)
	}
	parts := []string{m.What}
	if m.Leg != "" {
		parts = append(parts, m.Leg)
	}
	if m.Station != nil {
		parts = append(parts, StopWords(p, *m.Station))
	}
	if m.Cut && m.Kind != marks.CutEnd {
		parts = append(parts, string(marks.CutEnd))
	}
	if own := m.TrueAt(); m.Aside.Len() > 0 {
		style := p.Style()
		parts = append(parts, "from its own datum "+style.FormatUp(own.Y)+", "+style.FormatOver(own.X))
	}
	return strings.Join(parts, ", ")
}

// StopWords says where a revolve or what runs on a track stands: "turned to 90°",
// "12' 0\" from its start".
func StopWords(p *Production, s plan.Station) string {
	if s.Turns {
		if s.Start {
			return "as drawn"
		}
		return fmt.Sprintf("turned to %s° counter-clockwise", figure(s.Travel))
	}
	switch {
	case s.Start:
		return "start"
	case s.Stop:
		return "stop, " + p.Style().Format(s.Travel) + " from its start"
	}
	return p.Style().Format(s.Travel) + " from its start"
}

// figure writes a number of degrees to a tenth without a trailing zero.
func figure(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }

// asideName names what is moved aside together: its level, when all of it is of
// one, else its elements.
func asideName(p *Production, ids []plan.ElementID) string {
	level, one := plan.LevelID(""), true
	var names []string
	for i, id := range ids {
		e := p.Plan.Element(id)
		if e == nil {
			continue
		}
		names = append(names, e.Name)
		one = one && (i == 0 || e.Level == level)
		level = e.Level
	}
	if l := p.Plan.Level(level); one && l != nil {
		return l.Name
	}
	if len(names) > labelsShown {
		names = append(names[:labelsShown-1], Counted(len(names)-labelsShown+1, "other"))
	}
	return Listed(names)
}

// AsideNote is what is written on the floor beside what is moved aside.
type AsideNote struct {
	floor.Aside
	Name string // the level, or the elements
	Text string // "Upper storey: moved 22' 6\" to stage left and 8' 0\" downstage"
	Mark string // the label of its own datum; empty: that cannot be marked
}

// AsideNotes returns what must be written on the floor, in plan order.
func (w *FloorWork) AsideNotes(p *Production) []AsideNote {
	var out []AsideNote
	for _, a := range w.Floor.Asides(&p.Plan) {
		n := AsideNote{Aside: a, Name: asideName(p, a.Elements)}
		n.Text = n.Name + ": moved " + offset(p.Style(), a.Over, a.Up)
		for _, m := range w.Marks {
			if a.OnFloor && m.At.To(a.Datum) <= p.Settings.Rules.Weld {
				n.Mark = m.Label
			}
		}
		out = append(out, n)
	}
	return out
}
