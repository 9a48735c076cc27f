package prep

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plan"
)

// newLevel begins the identifier of a level that a drawing names and the plan does
// not have yet; its name follows.
const newLevel = "new: "

// ElementOf makes an element of what a drawing proposes: essential unless its kind
// is never used by an actor or is of the theatre's house, which no rehearsal room has to
// hold whole, and in no tape yet. A level that is not among those
// given gets an identifier that stands for its name until the element is taken in.
func ElementOf(c sense.Candidate, levels []plan.Level, newID func() string) plan.Element {
	e := plan.Element{
		ID: plan.ElementID(newID()), Name: c.Name, Kind: c.Kind, Level: levelNamed(c.Level, levels),
		Use: plan.Essential, Paths: slices.Clone(c.Paths),
	}
	switch {
	case c.Kind == plan.Masking || c.Kind == plan.EscapeStair:
		e.Use = plan.Seen
	case c.Kind.House():
		e.Use = plan.Useful
	}
	for i := range e.Paths {
		e.Paths[i].ID = plan.PathID(newID())
	}
	return e
}

func levelNamed(name string, levels []plan.Level) plan.LevelID {
	if strings.TrimSpace(name) == "" {
		return ""
	}
	i := slices.IndexFunc(levels, func(l plan.Level) bool { return nameKey(l.Name) == nameKey(name) })
	if i < 0 {
		return plan.LevelID(newLevel + name)
	}
	return levels[i].ID
}

// LevelToMake returns the name of the level for which the identifier of an element
// from a drawing stands; ok is false for that of a level that is there.
func LevelToMake(id plan.LevelID) (name string, ok bool) {
	return strings.CutPrefix(string(id), newLevel)
}

// SettleLevel returns the level of an element that comes in: one that the plan does
// not have yet is made, at the stage floor's height, and one that is gone is the
// stage floor.
func (p *Production) SettleLevel(id plan.LevelID, newID func() string) plan.LevelID {
	name, toMake := LevelToMake(id)
	if !toMake {
		if p.Plan.Level(id) == nil {
			return ""
		}
		return id
	}
	if known := levelNamed(name, p.Plan.Levels); known != id {
		return known
	}
	made := plan.Level{ID: plan.LevelID(newID()), Name: name}
	p.Plan.Levels = append(p.Plan.Levels, made)
	return made.ID
}

// MostLines is how many lines elements from a drawing may have together. A floor is
// worked out with every crossing of its lines; a large show has some thousands.
const MostLines = 20_000

// FitForFloors refuses more lines than floors are worked out with.
func FitForFloors(elements []plan.Element) error {
	lines := 0
	for i := range elements {
		for _, path := range elements[i].Paths {
			lines += len(path.Vertices)
		}
	}
	if lines > MostLines {
		return fmt.Errorf("these elements have %d lines, and at most %d can be laid on a floor: leave aside what is not the set", lines, MostLines)
	}
	return nil
}

// AddElements puts elements from a drawing onto the plan. A name that is taken gets
// a number behind it: they are two things until somebody says otherwise. A tape that
// is gone is undecided.
func (p *Production) AddElements(elements []plan.Element, newID func() string) []plan.ElementID {
	taken := map[string]bool{}
	for _, e := range p.Plan.Elements {
		taken[nameKey(e.Name)] = true
	}
	ids := make([]plan.ElementID, len(elements))
	for i, e := range elements {
		e.Name = free(strings.TrimSpace(e.Name), taken)
		taken[nameKey(e.Name)] = true
		e.Level = p.SettleLevel(e.Level, newID)
		if p.Stock(e.Stock) == nil {
			e.Stock = ""
		}
		ids[i] = e.ID
		p.Plan.Elements = append(p.Plan.Elements, e)
	}
	return ids
}

// RemoveDrawing takes a kept drawing off the production, with the points that lay it
// under the plan. What was read from it stays.
func (p *Production) RemoveDrawing(id string) {
	p.LayDrawing(id, nil)
	drop(&p.Drawings, func(d Drawing) bool { return d.ID == id })
}

// pageWords part a drawing's format from the page of it that lies under the plan.
const pageWords = ", page "

// FormatOfPage is the format of a drawing of which one page, from 1, lies under the
// plan: "PDF, page 3".
func FormatOfPage(format string, page int) string {
	return format + pageWords + strconv.Itoa(page)
}

// Page returns the page that the drawing's format speaks of; 0: of none.
func (d Drawing) Page() int {
	_, page, _ := strings.Cut(d.Format, pageWords)
	n, err := strconv.Atoi(page)
	if err != nil {
		return 0
	}
	return n
}

// NotePage notes which page of a drawing, from 1, lies under the plan.
func (p *Production) NotePage(id string, page int) {
	for i := range p.Drawings {
		if d := &p.Drawings[i]; d.ID == id {
			format, _, _ := strings.Cut(d.Format, pageWords)
			d.Format = FormatOfPage(format, page)
		}
	}
}

// LayDrawing lays a scanned drawing under the plan by known points, in the place of
// those that it had; none takes it away from there.
func (p *Production) LayDrawing(id string, points []KnownPoint) {
	drop(&p.KnownPoints, func(k KnownPoint) bool { return k.Drawing == id })
	for _, k := range points {
		k.Drawing = id
		p.KnownPoints = append(p.KnownPoints, k)
	}
}

// UnderPlan returns the scanned drawing that lies under the plan: of several the one
// laid last. ok is false when there is none.
func (p *Production) UnderPlan() (d Drawing, points []KnownPoint, ok bool) {
	if len(p.KnownPoints) == 0 {
		return Drawing{}, nil, false
	}
	last := p.KnownPoints[len(p.KnownPoints)-1].Drawing
	for _, k := range p.KnownPoints {
		if k.Drawing == last {
			points = append(points, k)
		}
	}
	i := slices.IndexFunc(p.Drawings, func(d Drawing) bool { return d.ID == last })
	if i < 0 {
		return Drawing{}, nil, false
	}
	return p.Drawings[i], points, true
}

// free returns the name, with a number where it is taken.
func free(name string, taken map[string]bool) string {
	unique := name
	for n := 2; taken[nameKey(unique)]; n++ {
		unique = fmt.Sprintf("%s (%d)", name, n)
	}
	return unique
}
