package marks

import (
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// opening is a line drawn only above the floor.
func opening(id string, path plane.Path) plan.Element {
	e := element(id, path)
	e.Kind = plan.Opening
	e.Paths[0].Role = plan.Hidden
	return e
}

func inStock(e plan.Element, s plan.StockID) plan.Element { e.Stock = s; return e }

func inScenes(e plan.Element, scenes ...plan.SceneID) plan.Element {
	for _, s := range scenes {
		e.Stands = append(e.Stands, plan.Stand{Scene: s})
	}
	return e
}

// Where the tape changes the crew must know: common practice, no source.
func TestMarksWhereTheTapeChangesInAStraightLine(t *testing.T) {
	left, right := plane.Open(p(0, 0), p(2, 0)), plane.Open(p(2, 0), p(5, 0))
	for _, c := range []struct {
		name     string
		elements []plan.Element
		want     map[Kind]int
	}{
		{"only the element changes", []plan.Element{element("a", left), element("b", right)}, map[Kind]int{End: 2}},
		{"another tape", []plan.Element{element("a", left), inStock(element("b", right), "blue")}, map[Kind]int{End: 2, Change: 1}},
		{"a hidden line after a solid one", []plan.Element{element("a", left), opening("b", right)}, map[Kind]int{End: 2, Change: 1}},
		{"an arch between two walls", []plan.Element{
			element("a", left), opening("arch", plane.Open(p(2, 0), p(3, 0))), element("b", plane.Open(p(3, 0), p(5, 0))),
		}, map[Kind]int{End: 2, Change: 2}},
		{"a second tape that begins beside the first", []plan.Element{
			element("a", plane.Open(p(0, 0), p(5, 0))), inStock(element("b", right), "blue"),
		}, map[Kind]int{End: 2, Change: 1}},
		{"the same tape twice over half the line", []plan.Element{
			element("a", plane.Open(p(0, 0), p(5, 0))), element("b", right),
		}, map[Kind]int{End: 2}},
		{"a wall that goes on in one scene only", []plan.Element{
			element("a", left), inScenes(element("b", right), "2"),
		}, map[Kind]int{End: 3}},
		{"two walls of the same scenes", []plan.Element{
			inScenes(element("a", left), "1", "2"), inScenes(element("b", right), "2", "1"),
		}, map[Kind]int{End: 2}},
		{"a corner where the tape changes too", []plan.Element{
			element("a", left), inStock(element("b", plane.Open(p(2, 0), p(2, 3))), "blue"),
		}, map[Kind]int{End: 2, Corner: 1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			pl := plan.Plan{Elements: c.elements, Scenes: []plan.Scene{{ID: "1"}, {ID: "2"}}}
			ms := Of(&pl, &floor.Floor{}, nil, DefaultRules, 0)
			total := 0
			for kind, n := range c.want {
				total += n
				if got := count(ms, kind); got != n {
					t.Errorf("%d marks of the kind %q, want %d", got, kind, n)
				}
			}
			if len(ms) != total {
				t.Errorf("%d marks in all, want %d", len(ms), total)
			}
		})
	}
}
