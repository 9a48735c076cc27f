package revision

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Name returns what the element is called: as the team knows it, or as the new
// drawing names it.
func (c *Change) Name() string {
	for _, e := range []*plan.Element{&c.Before, &c.After} {
		if e.Name != "" {
			return e.Name
		}
	}
	if c.Outcome == New {
		return "an unnamed " + string(c.After.Kind)
	}
	return "an unnamed " + string(c.Before.Kind)
}

// Sentence says in one sentence what became of the element, lengths in the style.
func (c *Change) Sentence(style length.Style) string {
	name := capital(c.Name())
	var says string
	switch c.Outcome {
	case New:
		says = "is new"
	case Gone:
		says = "is gone"
	case Unchanged:
		says = "is unchanged"
	case Moved:
		says = "has moved " + c.how(style)
	case Reshaped:
		says = c.reshaped(style)
	}
	if c.Renamed && c.After.Name != "" {
		says += ", and is called “" + c.After.Name + "” now"
	}
	if c.Rekind {
		says += fmt.Sprintf(", drawn as %s and no longer as %s", c.After.Kind, c.Before.Kind)
	}
	return name + " " + says + "."
}

func (c *Change) reshaped(style length.Style) string {
	if c.Redrawn {
		says := "has the same lines, but some are drawn solid that were broken, or the other way round"
		if !c.Motion.IsZero() {
			says += ", and has moved " + c.how(style)
		}
		return says
	}
	says := "is reshaped"
	if before, after, ok := c.sizes(); ok {
		says += fmt.Sprintf(", from %s by %s to %s by %s",
			style.Format(before.Width()), style.Format(before.Height()), style.Format(after.Width()), style.Format(after.Height()))
		if near(before, after, style.Grain()) {
			says = "is reshaped within the same size"
		}
	}
	if !c.Motion.IsZero() {
		says += ", and has moved " + c.how(style)
	}
	return says
}

// sizes returns the boxes around the element before and after.
func (c *Change) sizes() (before, after plane.Box, ok bool) {
	before, had := boxOf(&c.Before)
	after, has := boxOf(&c.After)
	return before, after, had && has
}

func boxOf(e *plan.Element) (b plane.Box, ok bool) {
	var edges []plane.Edge
	for _, p := range e.Paths {
		edges = append(edges, p.Edges()...)
	}
	return plane.Bounds(edges)
}

func near(a, b plane.Box, grain float64) bool {
	return math.Abs(a.Width()-b.Width()) < grain && math.Abs(a.Height()-b.Height()) < grain
}

// how words the motion: so far upstage, so far to stage left, so much turned.
func (c *Change) how(style length.Style) string {
	var parts []string
	half := style.Grain() / 2
	switch {
	case c.Shift.Y >= half:
		parts = append(parts, style.Format(c.Shift.Y)+" upstage")
	case c.Shift.Y <= -half:
		parts = append(parts, style.Format(-c.Shift.Y)+" downstage")
	}
	switch {
	case c.Shift.X >= half:
		parts = append(parts, style.Format(c.Shift.X)+" to stage left")
	case c.Shift.X <= -half:
		parts = append(parts, style.Format(-c.Shift.X)+" to stage right")
	}
	if degrees := c.Turn * 180 / math.Pi; math.Abs(degrees) >= 0.05 {
		way := "counter-clockwise"
		if degrees < 0 {
			way = "clockwise"
		}
		parts = append(parts, fmt.Sprintf("%.1f° %s", math.Abs(degrees), way))
	}
	if len(parts) == 0 {
		return "by less than " + style.Format(style.Grain())
	}
	return strings.Join(parts, " and ")
}

func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}
