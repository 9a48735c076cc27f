package planplace

import (
	"fmt"
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// stageFloor is how the level is called that no level row stands for.
const stageFloor = "Stage floor"

// line is one line of the list of elements: a level, a kind within it, or an
// element.
type line struct {
	ID      string // of the row: a group's own, or the element's
	Text    string
	Scenes  string
	Members []plan.ElementID // of a group; an element has itself
	Group   bool
	Level   bool // a group that is a whole level
	Seen    bool // of a group: all of its members are
	Absent  bool // not in the chosen scene
	Problem string
	Swatch  string // "#rrggbb"
}

// listing is what the list of elements shows.
type listing struct {
	Lines []line
	Found int // elements that pass the search
	All   int
}

// search is what the list is limited to and which elements are hidden.
type search struct {
	words  string
	scene  plan.SceneID
	hidden map[plan.ElementID]bool
}

// list gathers the elements by level and kind. An element passes the search when
// every word is in its name, kind, level, use, tape or scenes.
func list(p *prep.Production, s search) listing {
	out := listing{All: len(p.Plan.Elements)}
	words := strings.Fields(strings.ToLower(s.words))
	byLevel := map[plan.LevelID]map[plan.Kind][]line{}
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		if !passes(p, e, words) {
			continue
		}
		out.Found++
		kinds := byLevel[e.Level]
		if kinds == nil {
			kinds = map[plan.Kind][]line{}
			byLevel[e.Level] = kinds
		}
		kinds[e.Kind] = append(kinds[e.Kind], elementLine(p, e, s))
	}
	for _, level := range levelsFromTheFloor(p) {
		out.Lines = append(out.Lines, levelLines(level, byLevel[level.ID])...)
	}
	return out
}

// levelsFromTheFloor returns the stage floor and then the levels in their order.
func levelsFromTheFloor(p *prep.Production) []plan.Level {
	return append([]plan.Level{{Name: stageFloor}}, p.Plan.Levels...)
}

func levelLines(level plan.Level, kinds map[plan.Kind][]line) []line {
	var under []line
	head := line{ID: "level:" + string(level.ID), Group: true, Level: true, Seen: true}
	for _, kind := range kindsInUse(kinds) {
		of := kinds[kind]
		group := line{ID: fmt.Sprintf("kind:%s:%s", level.ID, kind), Group: true, Seen: true}
		for _, l := range of {
			group.Members = append(group.Members, l.Members...)
			group.Seen = group.Seen && l.Seen
		}
		group.Text = fmt.Sprintf("%s (%d)", sentence(string(kind)), len(of))
		head.Members = append(head.Members, group.Members...)
		head.Seen = head.Seen && group.Seen
		under = append(append(under, group), of...)
	}
	if len(under) == 0 {
		return nil
	}
	head.Text = fmt.Sprintf("%s (%d)", level.Name, len(head.Members))
	return append([]line{head}, under...)
}

// kindsInUse keeps the order offered; kinds that this program does not know, as a
// newer one may have written them, follow.
func kindsInUse(kinds map[plan.Kind][]line) []plan.Kind {
	var known, others []plan.Kind
	for _, k := range plan.Kinds {
		if len(kinds[k]) > 0 {
			known = append(known, k)
		}
	}
	for k := range kinds {
		if !slices.Contains(plan.Kinds, k) {
			others = append(others, k)
		}
	}
	slices.Sort(others)
	return append(known, others...)
}

func elementLine(p *prep.Production, e *plan.Element, s search) line {
	l := line{
		ID: string(e.ID), Text: e.Name, Scenes: scenesInShort(p, e),
		Members: []plan.ElementID{e.ID}, Seen: !s.hidden[e.ID],
	}
	if len(e.Paths) == 0 {
		l.Problem = "It has no lines yet: draw them, or read them off the paper."
	}
	if _, in := p.Plan.Where(e, s.scene); !in {
		l.Absent = true
	}
	if stock := p.Stock(e.Stock); stock != nil {
		l.Swatch = stock.Swatch
	}
	return l
}

// scenesInShort says in how many scenes an element stands.
func scenesInShort(p *prep.Production, e *plan.Element) string {
	if len(e.Stands) == 0 || len(p.Plan.Scenes) == 0 {
		return "all"
	}
	return fmt.Sprintf("%d of %d", len(e.Stands), len(p.Plan.Scenes))
}

func passes(p *prep.Production, e *plan.Element, words []string) bool {
	if len(words) == 0 {
		return true
	}
	text := strings.ToLower(strings.Join([]string{
		e.Name, string(e.Kind), levelName(p, e.Level), string(e.Use), stockName(p, e.Stock), e.Note, sceneNames(p, e),
	}, "\n"))
	return !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(text, w) })
}

func sceneNames(p *prep.Production, e *plan.Element) string {
	var names []string
	for _, s := range e.Stands {
		names = append(names, p.Plan.SceneName(s.Scene))
	}
	return strings.Join(names, "\n")
}

// counted says how many elements the list shows.
func (l listing) counted() string {
	if l.Found == l.All {
		return prep.Counted(l.All, "element")
	}
	return fmt.Sprintf("%d of %s", l.Found, prep.Counted(l.All, "element"))
}
