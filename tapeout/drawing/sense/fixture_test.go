package sense_test

import (
	"math"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

func pt(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

func seg(x1, y1, x2, y2 float64) plane.Edge { return plane.Edge{A: pt(x1, y1), B: pt(x2, y2)} }

// draft builds a sheet; its zero value is in metres.
type draft struct{ linework.Sheet }

func (d *draft) put(layer string, edges ...plane.Edge) int {
	d.Items = append(d.Items, linework.Item{Layer: layer, Kind: "LINE", Edges: edges})
	return len(d.Items) - 1
}

func (d *draft) rect(layer string, x1, y1, x2, y2 float64) int {
	return d.put(layer, plane.Rectangle(pt(x1, y1), pt(x2, y2)).Edges()...)
}

func (d *draft) write(text string, x, y, height float64) {
	d.Texts = append(d.Texts, linework.Text{Text: text, At: pt(x, y), Height: height})
}

func (d *draft) sheet() *linework.Sheet {
	d.Box, _ = d.Bounds((*linework.Item).Shown)
	return &d.Sheet
}

// stage is a small ground plan in metres at full size, layer by layer, with its
// origin at the lower left of the sheet and the datum at (10, 4).
func stage() *draft {
	d := &draft{}
	d.Unit = linework.Metre
	d.rect("SHEET BORDER", -1, -1, 21, 15)
	i := d.put("CENTRE LINE", seg(10, 0, 10, 14))
	d.Items[i].Dash = []float64{0.5, 0.1, 0.05, 0.1}
	d.put("0", seg(2, 4, 18, 4))
	d.write("PLASTER LINE", 2.2, 4.1, 0.2)
	d.write("CL", 10.1, 13.8, 0.2)

	d.put("WALLS", seg(6, 6, 9, 6))
	d.put("WALLS", seg(9, 6, 9, 9))
	d.put("WALLS", seg(12, 9, 14, 9))
	// A door in the second wall: the leaf stands open.
	d.put("WALLS", plane.ArcOf(pt(12, 9), 0.9, -math.Pi, math.Pi/2)...)
	d.put("WALLS", seg(12, 9, 12, 8.1))

	for k := range 6 {
		y := 6 + 0.28*float64(k)
		d.put("STAIRS", seg(15, y, 16.2, y))
	}
	d.put("STAIRS", seg(15, 6, 15, 7.4))
	d.put("STAIRS", seg(16.2, 6, 16.2, 7.4))

	for k, block := range []string{"SOFA-3SEAT", "SOFA-3SEAT"} {
		x := 7 + 2.5*float64(k)
		i := d.rect("FURN", x, 5, x+2, 5.8)
		j := d.rect("FURN", x+0.1, 5.1, x+1.9, 5.3)
		for _, n := range []int{i, j} {
			d.Items[n].Group, d.Items[n].Block = k+1, block
		}
	}
	d.put("SET", plane.Circle(pt(4, 8), 2).Edges()...)
	d.write("Carousel", 3.6, 8, 0.2)
	i = d.rect("SET", 12, 5, 12.2, 8)
	d.Items[i].Dash = []float64{0.2, 0.1}
	d.write("Header", 12.3, 6, 0.2)
	d.put("SET", seg(1, 1, 1.01, 1))
	return d
}
