package drawingin

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// candidate is one element that the lines taken would make.
type candidate struct {
	plan.Element        // in plan axes, with an identifier of its own
	items        []int  // the lines of the drawing that it is made of
	why          string // a sentence on why it was taken for what it is
	leave        bool   // it does not come in
}

// decision is what a person said about a candidate. It holds for the same lines
// when they are put together anew.
type decision struct {
	name  string
	kind  plan.Kind
	level plan.LevelID
	stock plan.StockID
	use   plan.Use
	in    []plan.SceneID
	role  plan.Role // of all its lines; empty: as proposed
	leave bool
	set   map[string]bool // which of them somebody has said
}

// coming is what will come in, with what people have said about it.
type coming struct {
	list    []candidate
	decided map[string]decision
	ids     map[string]plan.ElementID // given once for the same lines
}

// key names a candidate by its lines, whatever their order.
func (c *candidate) key() string {
	items := slices.Clone(c.items)
	slices.Sort(items)
	return fmt.Sprint(items)
}

// take shows candidates that were worked out anew, with what was decided about
// those that are made of the same lines.
func (c *coming) take(list []candidate) {
	c.list = list
	if c.ids == nil {
		c.ids = map[string]plan.ElementID{}
	}
	for i := range c.list {
		key := c.list[i].key()
		if c.ids[key] == "" {
			c.ids[key] = plan.ElementID(uuid.NewString())
		}
		c.list[i].ID = c.ids[key]
		if d, ok := c.decided[key]; ok {
			d.onto(&c.list[i])
		}
	}
}

func (d decision) onto(c *candidate) {
	if d.set["name"] {
		c.Name = d.name
	}
	if d.set["kind"] {
		c.Kind = d.kind
	}
	if d.set["level"] {
		c.Level = d.level
	}
	if d.set["stock"] {
		c.Stock = d.stock
	}
	if d.set["use"] {
		c.Use = d.use
	}
	if d.set["scenes"] {
		c.InScenes(d.in)
	}
	if d.set["role"] {
		for i := range c.Paths {
			c.Paths[i].Role = d.role
		}
	}
	if d.set["leave"] {
		c.leave = d.leave
	}
}

// decide notes something about several candidates.
func (c *coming) decide(ids []plan.ElementID, what string, say func(*decision)) {
	if c.decided == nil {
		c.decided = map[string]decision{}
	}
	for i := range c.list {
		if !slices.Contains(ids, c.list[i].ID) {
			continue
		}
		key := c.list[i].key()
		d := c.decided[key]
		if d.set == nil {
			d.set = map[string]bool{}
		}
		d.set[what] = true
		say(&d)
		c.decided[key] = d
		d.onto(&c.list[i])
	}
}

// elements are those that come in.
func (c *coming) elements() []plan.Element {
	var out []plan.Element
	for i := range c.list {
		if !c.list[i].leave {
			out = append(out, c.list[i].Element)
		}
	}
	return out
}

// problem tells what is wrong with what comes in; empty: nothing.
func (c *coming) problem() string {
	for i := range c.list {
		if !c.list[i].leave && strings.TrimSpace(c.list[i].Name) == "" {
			return "One of the elements has no name: every element needs one, so that a crew can call it something."
		}
	}
	if err := prep.FitForFloors(c.elements()); err != nil {
		return spoken(err)
	}
	return ""
}

// counted says how much comes in.
func (c *coming) counted(p *prep.Production) string {
	n, length := 0, 0.0
	for i := range c.list {
		if c.list[i].leave {
			continue
		}
		n++
		for _, path := range c.list[i].Paths {
			length += path.Length()
		}
	}
	if len(c.list) == 0 {
		return "Nothing yet"
	}
	return fmt.Sprintf("%s of %d, %s of line", prep.Counted(n, "element"), len(c.list), p.Style().Format(length))
}

var errNothing = errors.New("nothing is ticked: tick at least one element that is to come in")

// bring puts the elements that come in onto the plan.
func (c *coming) bring(p *prep.Production) ([]plan.ElementID, error) {
	elements := c.elements()
	if len(elements) == 0 {
		return nil, errNothing
	}
	return p.AddElements(elements, uuid.NewString), nil
}

// rolesOf says what the lines of an element show: "outline, 5 inner".
func rolesOf(e *plan.Element) string {
	counts := map[plan.Role]int{}
	for _, path := range e.Paths {
		counts[path.Role]++
	}
	var parts []string
	for _, r := range plan.Roles {
		switch n := counts[r]; {
		case n == 1:
			parts = append(parts, string(r))
		case n > 1:
			parts = append(parts, fmt.Sprintf("%d %s", n, r))
		}
	}
	return strings.Join(parts, ", ")
}
