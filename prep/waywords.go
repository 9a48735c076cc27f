package prep

import (
	"fmt"
	"math"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/passage"
)

// Breadth words how wide the way is: "2' 6\"", "as wide as one likes", "no way". A
// width is rounded down, so that nothing narrower reads as what is required.
func (w *WayWork) Breadth(p *Production) string {
	switch {
	case w.None():
		return "no way"
	case w.Found.Limit == passage.ByNothing:
		return "as wide as one likes"
	}
	width := w.Found.Width
	if step := p.Settings.Step; step > 0 {
		width = step * math.Floor(width/step+1e-6)
	}
	return p.Style().Format(width)
}

// Narrowest words where the way is narrowest, or why there is none: "between Back wall
// and the wall of the room, in 1.2". It is empty where nothing limits it.
func (w *WayWork) Narrowest(p *Production) string {
	words := w.narrow()
	if words != "" && w.Scene != "" {
		words += ", in " + p.Plan.SceneName(w.Scene)
	}
	return words
}

func (w *WayWork) narrow() string {
	a, b := w.Between[0], w.Between[1]
	switch {
	case w.From.Gone:
		return "it begins at " + gone(w.From)
	case w.To.Gone:
		return "it ends at " + gone(w.To)
	}
	switch w.Found.Limit {
	case passage.ByNothing:
		return ""
	case passage.StartIn:
		return "it begins in or beyond " + a
	case passage.EndIn:
		return "it ends in or beyond " + a
	case passage.ByStart, passage.ByEnd:
		return w.atEnd(a)
	}
	if a == b {
		return "past " + a
	}
	return "between " + a + " and " + b
}

// atEnd words a way that is narrowest where it begins or ends, beside something.
func (w *WayWork) atEnd(beside string) string {
	end, words := w.From, "where it begins, beside "
	if w.Found.Limit == passage.ByEnd {
		end, words = w.To, "where it ends, beside "
	}
	if end.Door && beside == wallWords {
		return "through " + end.Name
	}
	return words + beside
}

func gone(e WayEnd) string { return e.Name + ", where there is no place to stand" }

// Course words a way from its beginning to its end.
func (w *WayWork) Course() string { return "from " + w.From.Name + " to " + w.To.Name }

// Sentence says of the way what there is to say, for paper and for the terminal.
func (w *WayWork) Sentence(p *Production) string {
	said := fmt.Sprintf("%s, %s: ", w.Way.Name, w.Course())
	if w.None() {
		return said + "nobody gets through; " + w.Narrowest(p) + "."
	}
	said += w.Breadth(p)
	if where := w.Narrowest(p); where != "" {
		said += " at its narrowest, " + where
	}
	switch {
	case w.Way.Width <= 0:
		said += "; no width is required yet"
	case w.Short():
		said += fmt.Sprintf("; TOO NARROW, %s is required", p.Style().Format(w.Way.Width))
	default:
		said += fmt.Sprintf("; %s is required", p.Style().Format(w.Way.Width))
	}
	return said + "."
}

// NarrowWords names the ways that are narrower than required, with what is left of
// each: "Way out: 1' 6\" of 3' 0\", between Porch and the wall of the room"; empty when
// all are wide enough.
func NarrowWords(p *Production, ways []*WayWork) string {
	var parts []string
	for _, w := range ways {
		if !w.TooNarrow() {
			continue
		}
		said := fmt.Sprintf("%s: %s of %s", w.Way.Name, w.Breadth(p), p.Style().Format(w.Way.Width))
		if where := w.Narrowest(p); where != "" {
			said += ", " + where
		}
		parts = append(parts, said)
	}
	return strings.Join(parts, "; ")
}

// Published words the published minimum widths, for comparison only.
func (p *Production) Published() []string {
	var out []string
	for _, w := range floor.PublishedWidths {
		out = append(out, fmt.Sprintf("%s: %s (%s)", p.Style().Format(w.Width), w.What, w.Source))
	}
	return out
}
