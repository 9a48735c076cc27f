package dxf

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/text/encoding/charmap"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// writtenLayer is a layer under the name that it has in the file.
type writtenLayer struct {
	linework.Layer
	name string
}

func (l *writtenLayer) hides() bool { return l.Off || l.Frozen }

type writtenLine struct {
	name string
	dash []float64
}

// names gathers the layers and linetypes that the sheet needs.
func (o *writer) names(s *linework.Sheet) {
	o.byName, o.byDash = map[string]int{}, map[string]string{}
	taken := map[string]bool{}
	o.layer(linework.Layer{Name: "0", Colour: indexed(foreground)}, taken)
	for _, l := range s.Layers {
		o.layer(l, taken)
	}
	for _, i := range s.Items {
		o.layer(linework.Layer{Name: i.Layer, Colour: indexed(foreground)}, taken)
		if key := dashKey(i.Dash); len(i.Dash) > 0 && o.byDash[key] == "" {
			o.byDash[key] = fmt.Sprintf("DASH%d", len(o.byDash)+1)
			o.linetypes = append(o.linetypes, writtenLine{o.byDash[key], i.Dash})
		}
	}
	for _, t := range s.Texts {
		o.layer(linework.Layer{Name: t.Layer, Colour: indexed(foreground)}, taken)
	}
}

// layer adds a layer unless one of its name is there. Layer 0 is always there; the
// sheet's own one says how it looks.
func (o *writer) layer(l linework.Layer, taken map[string]bool) {
	if i, ok := o.byName[l.Name]; ok {
		if l.Name == "0" && i == 0 && l.Colour.Known {
			o.layers[0].Layer = l
		}
		return
	}
	if !l.Colour.Known {
		l.Colour = indexed(foreground)
	}
	base := layerName(l.Name)
	name := base
	for n := 2; taken[capitals(name)]; n++ {
		name = fmt.Sprintf("%s_%d", base, n)
	}
	taken[capitals(name)] = true
	o.byName[l.Name] = len(o.layers)
	o.layers = append(o.layers, writtenLayer{l, name})
}

// layerName replaces what may not be in a layer's name.
func layerName(name string) string {
	name = strings.TrimSpace(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || strings.ContainsRune("<>/\\\":;?*|=,`'", r) {
			return '_'
		}
		return r
	}, name))
	if name == "" {
		return "0"
	}
	return latin(name)
}

// tables writes linetypes, layers and the one text style.
func (o *writer) tables() {
	o.section("TABLES")
	o.table("LTYPE", len(o.linetypes)+1)
	o.linetype("CONTINUOUS", nil)
	for _, l := range o.linetypes {
		o.linetype(l.name, l.dash)
	}
	o.str(0, "ENDTAB")
	o.table("LAYER", len(o.layers))
	for i := range o.layers {
		o.layerEntry(&o.layers[i])
	}
	o.str(0, "ENDTAB")
	o.table("STYLE", 1)
	o.str(0, "STYLE")
	o.str(2, "STANDARD")
	o.whole(70, 0)
	o.num(40, 0)
	o.num(41, 1)
	o.num(50, 0)
	o.whole(71, 0)
	o.num(42, 1)
	o.str(3, "txt")
	o.str(4, "")
	o.str(0, "ENDTAB")
	o.str(0, "ENDSEC")
}

func (o *writer) table(name string, entries int) {
	o.str(0, "TABLE")
	o.str(2, name)
	o.whole(70, entries)
}

func (o *writer) linetype(name string, dash []float64) {
	total := 0.0
	for _, d := range dash {
		total += math.Abs(d)
	}
	o.str(0, "LTYPE")
	o.str(2, name)
	o.whole(70, 0)
	o.str(3, "")
	o.whole(72, 'A')
	o.whole(73, len(dash))
	o.num(40, total)
	for i, d := range dash {
		if i%2 == 1 {
			d = -d
		}
		o.num(49, d)
	}
}

func (o *writer) layerEntry(l *writtenLayer) {
	const frozen = 1
	flags, colour := 0, nearestIndex(l.Colour.RGB)
	if l.Frozen {
		flags = frozen
	}
	if l.Off {
		colour = -colour
	}
	o.str(0, "LAYER")
	o.str(2, l.name)
	o.whole(70, flags)
	o.whole(62, colour)
	o.str(6, "CONTINUOUS")
}

// nearestIndex returns the number of the colour nearest to rgb.
func nearestIndex(rgb uint32) int {
	best, least := foreground, math.MaxInt
	for n := 1; n <= 255; n++ {
		c := indexed(n).RGB
		distance := 0
		for shift := 0; shift < 24; shift += 8 {
			d := int(rgb>>shift&0xFF) - int(c>>shift&0xFF)
			distance += d * d
		}
		if distance < least {
			best, least = n, distance
		}
	}
	return best
}

// words writes each line as a TEXT, the next one below it.
func (o *writer) words(t *linework.Text) {
	l := &o.layers[o.byName[t.Layer]]
	if t.Hidden && !l.hides() {
		return
	}
	const spacing = 5.0 / 3 // of lines, in heights of capitals: that of MTEXT
	down := plane.Polar(t.Height*spacing, t.Turn-math.Pi/2)
	at := t.At
	for line := range strings.SplitSeq(t.Text, "\n") {
		if strings.TrimSpace(line) != "" {
			o.str(0, "TEXT")
			o.str(8, l.name)
			o.point(10, at)
			o.num(40, t.Height)
			o.str(1, textValue(line))
			o.num(50, degrees(t.Turn))
		}
		at = at.Add(down)
	}
}

// textValue escapes what means something else in a TEXT.
func textValue(s string) string {
	s = strings.NewReplacer("%%", "%%%%%%", "^", "^ ", "\t", "^I").Replace(s)
	return latin(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return -1
		}
		return r
	}, s))
}

// latin encodes text in the file's code page; other characters become \U+XXXX.
func latin(s string) string {
	var out strings.Builder
	for _, r := range s {
		if b, ok := charmap.Windows1252.EncodeRune(r); ok {
			out.WriteByte(b)
			continue
		}
		if r > 0xFFFF {
			r -= 0x10000
			fmt.Fprintf(&out, `\U+%04X\U+%04X`, 0xD800+r>>10, 0xDC00+r&0x3FF)
			continue
		}
		fmt.Fprintf(&out, `\U+%04X`, r)
	}
	return out.String()
}

func number(x float64) string {
	s := strconv.FormatFloat(x, 'f', -1, 64)
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}

func dashKey(dash []float64) string { return fmt.Sprint(dash) }
