package drawingin

import (
	"math"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// crowded is a page of n lines on forty layers.
func crowded(n int) *drawn {
	s := &linework.Sheet{Format: "PDF", Unit: linework.Point, Box: plane.Box{Max: plane.Point{X: 2000, Y: 1400}}}
	for i := range n {
		a := plane.Point{X: math.Mod(float64(i)*7.3, 2000), Y: math.Mod(float64(i)*3.1, 1400)}
		s.Items = append(s.Items, linework.Item{Layer: string(rune('A' + i%40)), Edges: []plane.Edge{{A: a, B: a.Add(plane.Point{X: 12, Y: 5})}}})
	}
	d := newDrawn(s)
	d.scale.perUnit = 48 * length.Inch / 72
	return d
}

// BenchmarkPicture is what a click on a line costs before the canvas paints.
func BenchmarkPicture(b *testing.B) {
	d := crowded(20_000)
	for b.Loop() {
		d.take[5] = !d.take[5]
		d.picture(look{style: length.Style{Unit: length.FeetInches}})
	}
}

func BenchmarkPictureAndPaint(b *testing.B) {
	d := crowded(20_000)
	for b.Loop() {
		floorcanvas.Render(d.picture(look{style: length.Style{Unit: length.FeetInches}}), 740, 600, floorcanvas.Look{Inks: theme.CurrentInks(), Full: true})
	}
}

func BenchmarkGroups(b *testing.B) {
	d := crowded(20_000)
	for b.Loop() {
		d.groups(byLayer)
	}
}
