package desk

import (
	"fmt"
	"math"
	"strings"
	"time"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/plane"
)

// clashWords says in words what two people wrote in the same place.
func clashWords(p *prep.Production, clash *store.Conflict) string {
	var lines []string
	for _, c := range clash.Cells {
		mine, theirs := bothWords(p, c)
		lines = append(lines, fmt.Sprintf("The %s of %s\n    yours: %s\n    theirs: %s", c.What, c.Name, mine, theirs))
	}
	return "Somebody else changed the same thing while you did.\n\n" + strings.Join(lines, "\n\n")
}

// bothWords writes the two values of a clash so that they can be told apart: lengths
// that the screens round to the same, in millimetres.
func bothWords(p *prep.Production, c store.Cell) (mine, theirs string) {
	mine, theirs = cellWords(p, c, c.Mine), cellWords(p, c, c.Theirs)
	a, isLength := c.Mine.(float64)
	b, both := c.Theirs.(float64)
	if mine == theirs && isLength && both && strings.HasSuffix(c.Column, "_m") {
		return fmt.Sprintf("%.6g mm", 1000*a), fmt.Sprintf("%.6g mm", 1000*b)
	}
	return mine, theirs
}

// cellWords writes a value of the production file as the screens do; the unit is in
// the column's name.
func cellWords(p *prep.Production, c store.Cell, value any) string {
	switch v := value.(type) {
	case nil:
		return "nothing, or not there any more"
	case float64:
		switch {
		case strings.HasSuffix(c.Column, "_m"):
			return p.Style().Format(v)
		case strings.HasSuffix(c.Column, "_deg"):
			return fmt.Sprintf("%g°", v)
		case strings.HasSuffix(c.Column, "_rad"):
			return fmt.Sprintf("%.2f°", v*180/math.Pi)
		}
		return fmt.Sprintf("%g", v)
	case int64:
		if strings.HasSuffix(c.Column, "_cents") {
			return p.Money(int(v))
		}
		return fmt.Sprint(v)
	case []plane.Vertex:
		return "a shape of " + prep.Counted(len(v), "corner")
	case string:
		return textWords(p, v)
	}
	return fmt.Sprint(value)
}

// textWords writes the name of what an identifier means, a day, or the text itself.
func textWords(p *prep.Production, text string) string {
	if name, ok := nameOf(p, text); ok {
		return name
	}
	if at, err := time.Parse(time.RFC3339Nano, text); err == nil {
		return at.Local().Format("Monday 2 January 2006, 15:04")
	}
	if strings.TrimSpace(text) == "" {
		return "nothing"
	}
	return "“" + text + "”"
}

// nameOf returns what the row with the identifier is called.
func nameOf(p *prep.Production, id string) (string, bool) {
	names := map[string]string{}
	for _, e := range p.Plan.Elements {
		names[string(e.ID)] = e.Name
	}
	for _, l := range p.Plan.Levels {
		names[string(l.ID)] = l.Name
	}
	for _, s := range p.Plan.Scenes {
		names[string(s.ID)] = s.Name
	}
	for _, f := range p.Floors {
		names[string(f.ID)] = f.Name
	}
	for _, s := range p.Stocks {
		names[string(s.ID)] = s.Name
	}
	for _, it := range p.Items {
		names[it.ID] = it.Name
	}
	for _, person := range p.People {
		names[person.ID] = person.Name
	}
	for _, t := range p.Tasks {
		names[t.ID] = t.Name
	}
	for _, o := range p.Objects {
		names[o.ID] = o.Name
	}
	name, ok := names[id]
	return name, ok && id != ""
}
