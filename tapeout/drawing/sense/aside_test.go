package sense_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/sense"
	"groundrow/tapeout/plane"
)

func asideOf(s *linework.Sheet) map[sense.Category]sense.Set {
	out := map[sense.Category]sense.Set{}
	for _, a := range sense.ProposeAside(s) {
		out[a.Category] = out[a.Category].With(a.Items)
	}
	return out
}

func TestProposeAside(t *testing.T) {
	wall := func(d *draft) { d.put("0", seg(20, 20, 60, 25)) }
	for _, c := range []struct {
		name     string
		category sense.Category
		build    func(d *draft) []int // returns what is to be left aside
	}{
		{"a hidden layer", sense.NotSeen, func(d *draft) []int {
			i := d.put("OLD", seg(0, 0, 5, 5))
			d.Items[i].Hidden = true
			return []int{i}
		}},
		{"a layer for the border", sense.Border, func(d *draft) []int { return []int{d.put("G-BORDER", seg(0, 0, 5, 5))} }},
		{"a frame on paper", sense.Border, func(d *draft) []int {
			d.Unit = linework.Point
			return []int{d.rect("", 0, 0, 100, 80), d.put("", seg(1, 1, 99, 1)), d.put("", seg(99, 1, 99, 79))}
		}},
		{"a title block", sense.TitleBlock, func(d *draft) []int {
			d.put("", seg(0, 0, 100, 80))
			for i, w := range []string{"DRAWN BY", "SCALE", "DATE", "SHEET"} {
				d.write(w, 82, 4+3*float64(i), 1)
			}
			return []int{d.rect("", 80, 2, 99, 16), d.put("", seg(80, 6, 99, 6))}
		}},
		{"dimensions of the file", sense.Dimensions, func(d *draft) []int {
			i := d.put("0", seg(0, 0, 5, 0))
			d.Items[i].Kind = "DIMENSION"
			return []int{i}
		}},
		{"dimension lines with ticks", sense.Dimensions, func(d *draft) []int {
			d.put("", seg(0, 0, 100, 80))
			var out []int
			for k := range 3 {
				y, n := 10+20*float64(k), 20+10*float64(k)
				out = append(out, d.put("", seg(5, y, 5+n, y)), d.put("", seg(4.5, y-0.5, 5.5, y+0.5)), d.put("", seg(4.5+n, y-0.5, 5.5+n, y+0.5)))
				d.put("", seg(5, y+2, 4+n, y+2)) // the wall itself
				d.write(fmt.Sprintf("%.0f cm", 10*n), 12, y+0.5, 1)
			}
			return out
		}},
		{"hatching", sense.Hatching, func(d *draft) []int {
			d.put("", seg(0, 0, 100, 80))
			var out []int
			for k := range 20 {
				x := 30 + 0.8*float64(k)
				n := 2 + math.Abs(float64(k-10))
				out = append(out, d.put("", plane.Edge{A: pt(x, 10), B: pt(x+n, 10+n)}))
			}
			return out
		}},
		{"no treads", sense.Hatching, func(d *draft) []int {
			d.put("", seg(0, 0, 100, 80))
			for k := range 16 {
				d.put("", seg(10, 10+1.5*float64(k), 20, 10+1.5*float64(k)))
			}
			return nil
		}},
		{"the datum by its layers", sense.DatumLines, func(d *draft) []int {
			return []int{d.put("CENTRE LINE", seg(50, 0, 50, 80)), d.put("Plaster Line", seg(0, 10, 100, 10))}
		}},
		{"the datum by words", sense.DatumLines, func(d *draft) []int {
			d.write("CL", 51, 70, 1)
			d.write("SETTING LINE", 3, 11, 1)
			return []int{d.put("0", seg(50, 0, 50, 80)), d.put("0", seg(0, 10, 100, 10))}
		}},
		{"a stage edge is laid", sense.DatumLines, func(d *draft) []int { d.put("STAGE EDGE", seg(0, 10, 100, 10)); return nil }},
		{"no masking border", sense.Border, func(d *draft) []int { d.put("MASKING BORDER LEGS", seg(0, 0, 5, 5)); return nil }},
		{"no walls of a room", sense.Border, func(d *draft) []int { d.Unit = linework.Metre; d.rect("", 0, 0, 100, 80); return nil }},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := &draft{}
			want := c.build(d)
			wall(d)
			got := asideOf(d.sheet())
			if !slices.Equal(got[c.category], sense.NewSet(want...)) {
				t.Errorf("%s is %v, want %v", c.category, got[c.category], want)
			}
			for other, items := range got {
				if other != c.category {
					t.Errorf("%v are taken for %s", items, other)
				}
			}
		})
	}
}

func TestNothingIsLeftAsideTwice(t *testing.T) {
	seen := sense.Set{}
	for _, a := range sense.ProposeAside(stage().sheet()) {
		if len(seen.Within(a.Items)) > 0 || a.Why == "" || len(a.Items) == 0 {
			t.Errorf("%+v", a)
		}
		seen = seen.With(a.Items)
	}
}

func TestChoosing(t *testing.T) {
	d := &draft{}
	d.rect("WALLS", 0, 0, 2, 2)
	d.put("WALLS", seg(2, 1, 5, 1))
	d.put("TRIM", seg(5, 1.0005, 6, 1))
	d.put("TRIM", seg(8, 8, 9, 9))
	s := d.sheet()
	for _, c := range []struct {
		name string
		got  sense.Set
		want []int
	}{
		{"inside", sense.Inside(s, plane.Box{Min: pt(-1, -1), Max: pt(5, 3)}), []int{0, 1}},
		{"touching", sense.Touching(s, sense.NewSet(0), sense.Seen(s), 0.001), []int{0, 1, 2}},
		{"touching nothing", sense.Touching(s, sense.NewSet(3, 99), sense.Seen(s), 0.001), []int{3}},
		{"touching among others", sense.Touching(s, sense.NewSet(0), sense.NewSet(2, 3), 0.001), []int{0}},
		{"with", sense.NewSet(3, 1, 3).With(sense.NewSet(2)), []int{1, 2, 3}},
		{"without", sense.NewSet(1, 2, 3).Without(sense.NewSet(2)), []int{1, 3}},
		{"within", sense.NewSet(1, 2).Within(sense.NewSet(2, 3)), []int{2}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !slices.Equal(c.got, sense.NewSet(c.want...)) {
				t.Errorf("got %v, want %v", c.got, c.want)
			}
		})
	}
}
