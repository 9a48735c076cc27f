package drawingin

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"groundrow/tapeout/drawing/linework"
)

// sorting is by what lines are put together in the list.
type sorting string

// The ways to put lines together.
const (
	byLayer  sorting = "layer"
	byColour sorting = "colour"
	byWidth  sorting = "line width"
)

var sortings = []sorting{byLayer, byColour, byWidth}

// group is lines that are taken or left together.
type group struct {
	key    string
	name   string
	colour linework.Colour // that all of them have, if they do
	items  []int
	length float64 // drawing units
	taken  int     // how many of them come in
	why    string  // why most of the others are left aside; empty: somebody chose it
	hidden bool    // none of them is seen in the drawing
}

// groups puts the lines of the sheet together, the longest first.
func (d *drawn) groups(by sorting) []group {
	at := map[string]int{}
	var all []group
	for i := range d.sheet.Items {
		item := &d.sheet.Items[i]
		key, name := groupOf(item, by)
		n, ok := at[key]
		if !ok {
			n = len(all)
			at[key] = n
			all = append(all, group{key: key, name: name, colour: item.Colour, hidden: true})
		}
		g := &all[n]
		g.items = append(g.items, i)
		g.length += item.Length()
		g.hidden = g.hidden && item.Hidden
		if item.Colour != g.colour {
			g.colour = linework.Colour{}
		}
		if d.take[i] {
			g.taken++
		}
	}
	for i := range all {
		all[i].why = d.mostly(all[i].items)
	}
	slices.SortStableFunc(all, func(a, b group) int { return cmp.Compare(b.length, a.length) })
	return all
}

// mostly returns the commonest reason for leaving the items aside that are left.
func (d *drawn) mostly(items []int) string {
	counts := map[string]int{}
	best := ""
	for _, i := range items {
		if d.take[i] || d.why[i] == "" {
			continue
		}
		counts[d.why[i]]++
		if n := counts[d.why[i]]; n > counts[best] || best == "" {
			best = d.why[i]
		}
	}
	return best
}

func groupOf(item *linework.Item, by sorting) (key, name string) {
	switch by {
	case byColour:
		if !item.Colour.Known {
			return "none", "no colour said"
		}
		return strconv.FormatUint(uint64(item.Colour.RGB), 16), colourName(item.Colour.RGB)
	case byWidth:
		// Widths that differ by less than a hundredth of a millimetre are the same pen.
		hundredths := int(item.Width*1e5 + 0.5)
		if hundredths == 0 {
			return "0", "as thin as can be"
		}
		return strconv.Itoa(hundredths), fmt.Sprintf("%.2f mm", float64(hundredths)/100)
	}
	if item.Layer == "" {
		return "", "no layer"
	}
	return item.Layer, item.Layer
}

// named colours, with which others are compared.
var namedColours = []struct {
	rgb  uint32
	name string
}{
	{0x000000, "black"}, {0x808080, "grey"}, {0xC8C8C8, "light grey"}, {0xFFFFFF, "white"}, {0xFF0000, "red"},
	{0x800000, "dark red"}, {0xFF8000, "orange"}, {0x804000, "brown"}, {0xFFFF00, "yellow"}, {0x00C000, "green"},
	{0x006000, "dark green"}, {0x00C0C0, "turquoise"}, {0x0000FF, "blue"}, {0x000080, "dark blue"},
	{0x60A0FF, "light blue"}, {0x8000C0, "violet"}, {0xFF00FF, "magenta"}, {0xFF90C0, "pink"},
}

// colourName returns what a person would call a colour.
func colourName(rgb uint32) string {
	best, off := "", 1<<30
	for _, c := range namedColours {
		if d := apart(c.rgb, rgb); d < off {
			best, off = c.name, d
		}
	}
	if off > 0 {
		return fmt.Sprintf("%s (%06X)", best, rgb)
	}
	return best
}

func apart(a, b uint32) int {
	sum := 0
	for shift := 0; shift <= 16; shift += 8 {
		d := int(a>>shift&0xFF) - int(b>>shift&0xFF)
		sum += d * d
	}
	return sum
}
