package sense

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"unicode/utf8"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// decide settles the kind by the name of the block, of the layer, or by shape, in
// this order; where shape agrees with words it adds to the confidence.
func (c *Candidate) decide(g group) {
	shape, sure, why := c.shapeKind()
	byBlock, _, block := kindOf(g.block)
	byLayer, word, layer := kindOf(g.layer)
	switch {
	case block:
		c.Kind, c.Confidence = byBlock, 0.9
	case g.door:
		c.Kind, c.Confidence = plan.Door, sure
		c.say(why)
		return
	case layer:
		c.Kind, c.Confidence = byLayer, 0.8
		c.say(fmt.Sprintf("Its layer is called “%s”.", g.layer))
		// What stands on a layer of walls as a matter of course may be a door.
		if word == "wall" && shape == plan.Door && len(c.Paths) <= 6 {
			c.Kind = plan.Door
		}
	default:
		c.Kind, c.Confidence = shape, sure
		c.say(why)
		return
	}
	if shape == c.Kind {
		c.Confidence = 1 - (1-c.Confidence)*(1-sure)
		c.say(why)
	}
}

var levelName = regexp.MustCompile(`(?i)(?:^|[^a-z])((?:level|lvl|storey|story)[ _-]*[0-9a-z]{1,8}|upper(?: level)?|balcony|gallery|basement|first floor|second floor)(?:[^a-z]|$)`)

// levelOf returns the level that the name of a layer tells; empty for none.
func levelOf(layer string) string {
	m := levelName.FindStringSubmatch(layer)
	if m == nil {
		return ""
	}
	words := strings.Fields(strings.NewReplacer("_", " ", "-", " ").Replace(strings.ToLower(m[1])))
	return sentenceCase(strings.Join(words, " "))
}

func sentenceCase(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return strings.ToUpper(string(r)) + s[n:]
}

// label is a text that may name an element, in plan axes.
type label struct {
	text   string
	at     plane.Point // about its middle
	height float64
	group  int
}

// labelsOf returns the texts that could be names: with letters, not about scale or
// datum, and no lengths.
func labelsOf(s *linework.Sheet, o Options) []label {
	var out []label
	for _, t := range s.Texts {
		text := strings.Join(strings.Fields(t.Text), " ")
		letters := strings.Join(tokens(text), "")
		_, _, isLength := statedLength(text)
		scales, _ := ScalesIn(text)
		_, isBase := baseText(text)
		if t.Hidden || len(letters) < 2 || utf8.RuneCountInString(text) > 40 || isLength || len(scales) > 0 || isBase || centreText(text) {
			continue
		}
		half := plane.Polar(0.3*t.Height*float64(utf8.RuneCountInString(text)), t.Turn)
		out = append(out, label{text, o.point(t.At.Add(half)), t.Height * o.PerUnit, t.Group})
	}
	return out
}

// nameAll gives every candidate a name: what is written on or beside it, the name
// of its block, or its kind; with a number where the name is not its own.
func nameAll(s *linework.Sheet, cs []Candidate, o Options) {
	boxes := make([]plane.Box, len(cs))
	blocks := map[int]int{}
	for i := range cs {
		boxes[i], _ = cs[i].bounds()
		if g := s.Items[cs[i].Items[0]].Group; g > 0 {
			blocks[g] = i
		}
	}
	for _, l := range labelsOf(s, o) {
		i, ok := blocks[l.group]
		if !ok || l.group == 0 {
			i, ok = labelled(l, boxes)
		}
		if ok && cs[i].Name == "" {
			cs[i].called(l.text)
		}
	}
	number := map[string]int{}
	for i := range cs {
		c := &cs[i]
		if c.Name == "" {
			c.Name = c.commonName(s)
		}
		number[c.Name]++
	}
	next := map[string]int{}
	for i := range cs {
		if name := cs[i].Name; number[name] > 1 {
			next[name]++
			cs[i].Name = fmt.Sprintf("%s %d", name, next[name])
		}
	}
}

// called takes a name that is written beside the candidate, and the kind that the
// name tells where nothing better does.
func (c *Candidate) called(text string) {
	c.Name = text
	c.say(fmt.Sprintf("“%s” is written on it.", text))
	if kind, _, ok := kindOf(text); ok && (c.Confidence < 0.7 || kind == plan.EscapeStair) {
		c.Kind, c.Confidence = kind, 0.75
	}
}

// labelled returns the candidate that a text names: the smallest one whose box
// holds it, or else the nearest within three heights of it.
func labelled(l label, boxes []plane.Box) (best int, ok bool) {
	area := math.Inf(1)
	for i, b := range boxes {
		if a := b.Width() * b.Height(); b.Holds(l.at) && a < area {
			best, ok, area = i, true, a
		}
	}
	if ok {
		return best, true
	}
	reach := 3 * l.height
	for i, b := range boxes {
		dx := max(b.Min.X-l.at.X, l.at.X-b.Max.X, 0)
		dy := max(b.Min.Y-l.at.Y, l.at.Y-b.Max.Y, 0)
		if d := math.Hypot(dx, dy); d < reach {
			best, ok, reach = i, true, d
		}
	}
	return best, ok
}

// commonName returns the name of the block or else of the kind.
func (c *Candidate) commonName(s *linework.Sheet) string {
	if ts := tokens(s.Items[c.Items[0]].Block); s.Items[c.Items[0]].Group > 0 && len(ts) > 0 && len(strings.Join(ts, "")) > 2 {
		return sentenceCase(strings.Join(ts, " "))
	}
	name, _, _ := strings.Cut(string(c.Kind), " or ")
	if c.Kind == plan.Other {
		name = "piece"
	}
	return sentenceCase(name)
}
