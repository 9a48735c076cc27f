package planplace

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// undecided is how a tape is called that nobody has chosen.
const undecided = "Not decided"

// nothingCarries is the choice for an element that rides on nothing.
const nothingCarries = "Nothing: it stands by itself"

// sentence writes a text with a capital.
func sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}

// spoken writes an error as a sentence of its own.
func spoken(err error) string { return strings.TrimSuffix(sentence(err.Error()), ".") + "." }

func levelName(p *prep.Production, id plan.LevelID) string {
	if l := p.Plan.Level(id); l != nil {
		return l.Name
	}
	return stageFloor
}

// stockName is the tape with its colour, which a swatch alone must never stand
// for.
func stockName(p *prep.Production, id plan.StockID) string {
	s := p.Stock(id)
	if s == nil {
		return undecided
	}
	if strings.Contains(strings.ToLower(s.Name), strings.ToLower(s.Colour)) {
		return s.Name
	}
	return s.Name + " (" + s.Colour + ")"
}

// nameOf is what an element is called in the name of a change.
func nameOf(p *prep.Production, id plan.ElementID) string {
	if e := p.Plan.Element(id); e != nil && e.Name != "" {
		return e.Name
	}
	return "an element"
}

// named is what several elements are called in the name of a change.
func named(p *prep.Production, ids []plan.ElementID) string {
	if len(ids) == 1 {
		return nameOf(p, ids[0])
	}
	return prep.Counted(len(ids), "element")
}

// freshName is a name for a new element that no other one has: "Door 3".
func freshName(p *prep.Production, kind plan.Kind) string {
	base := sentence(string(kind))
	taken := map[string]bool{}
	for _, e := range p.Plan.Elements {
		taken[e.Name] = true
	}
	for n := 1; ; n++ {
		if name := fmt.Sprintf("%s %d", base, n); !taken[name] {
			return name
		}
	}
}

// dragRule says what dragging on the canvas changes, for what is selected.
func dragRule(p *prep.Production, scene plan.SceneID, ids []plan.ElementID) string {
	if scene == "" {
		return "All scenes: elements show as drawn. Dragging one changes the drawing."
	}
	name := p.Plan.SceneName(scene)
	placed, drawn := 0, 0
	for _, id := range ids {
		switch e := p.Plan.Element(id); {
		case e == nil:
		case len(e.Stands) > 0:
			placed++
		default:
			drawn++
		}
	}
	switch {
	case placed > 0 && drawn > 0:
		return fmt.Sprintf("%s: what is placed by scene moves in this scene only; what stands in every scene moves in all of them.", name)
	case placed > 0:
		return fmt.Sprintf("%s: dragging moves %s in this scene only. The drawing stays as it is.", name, them(placed))
	case drawn > 1:
		return fmt.Sprintf("%s: they stand in every scene, so dragging changes the drawing and moves them in all of them.", name)
	case drawn > 0:
		return fmt.Sprintf("%s: it stands in every scene, so dragging changes the drawing and moves it in all of them.", name)
	}
	return fmt.Sprintf("%s: elements show where they stand in this scene.", name)
}

// bareWords says what a figure without a unit counts as.
func bareWords(p *prep.Production) string {
	unit := p.Unit().Name()
	if !p.Unit().Metric() {
		unit = "feet"
	}
	return "A figure without a unit counts in " + unit + "."
}

func them(n int) string {
	if n == 1 {
		return "it"
	}
	return "them"
}

// facts says in a line how large an element is.
func facts(p *prep.Production, e *plan.Element) string {
	if len(e.Paths) == 0 {
		return "It has no lines yet."
	}
	length := 0.0
	box, _ := plan.BoundsOf(e.Paths, plane.Motion{})
	for _, path := range e.Paths {
		length += path.Length()
	}
	style := p.Style()
	return fmt.Sprintf("%s across, %s deep; %s of line.", style.Format(box.Width()), style.Format(box.Height()), style.Format(length))
}

// pathTitle names a line of an element in a choice; its number makes it unique.
func pathTitle(i int, path *plan.Path) string {
	form := "open"
	if path.Closed {
		form = "closed"
	}
	return fmt.Sprintf("%d: %s, %s, %s", i+1, path.Role, form, prep.Counted(len(path.Vertices), "corner"))
}
