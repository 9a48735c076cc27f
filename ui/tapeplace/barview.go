package tapeplace

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	base "fyne.io/fyne/v2/theme"

	"groundrow/ui/poster"
	"groundrow/ui/theme"
)

// barView is the picture of the bars: words and zones from a poster, the hatches
// from a raster above it.
type barView struct {
	chart  chart
	picked string // the row that is selected; empty for none
	pick   func(row string)

	poster  *poster.Poster
	raster  *canvas.Raster
	content fyne.CanvasObject
}

func newBarView(pick func(row string)) *barView {
	b := &barView{pick: pick}
	b.poster = poster.New(b.draw)
	b.poster.Need = func(width float32) float32 { return b.chart.lay(width, words().Measure).height }
	b.raster = canvas.NewRaster(b.hatch)
	b.content = container.NewStack(b.poster, b.raster)
	return b
}

func words() poster.Style { return poster.Style{Size: base.TextSize()} }

// show sets the picture.
func (b *barView) show(c chart, picked string) {
	b.chart, b.picked = c, picked
	b.poster.Refresh()
	b.raster.Refresh()
}

func (b *barView) hatch(w, h int) image.Image {
	size := b.raster.Size()
	if size.Width <= 0 {
		return image.NewNRGBA(image.Rect(0, 0, w, h))
	}
	d := b.chart.lay(size.Width, words().Measure)
	inks := theme.CurrentInks()
	return paint(d.pieces, w, h, float64(w)/float64(size.Width), inks.Colour(theme.Label), inks.Colour(theme.Paper))
}

func (b *barView) draw(p *poster.Pen) {
	style := words()
	d := b.chart.lay(p.Width(), style.Measure)
	drop := (barRow - style.Line()) / 2
	for u, k := range d.keys {
		if k.w > 0 {
			name := limitName
			if use(u) < uses {
				name = useNames[u]
			}
			p.Text(k.x, k.y+(keyRow-style.Line())/2-1, k.w+1, name, style)
		}
	}
	upright := func(l box) {
		if l.h > 0 {
			p.Line(l.x, l.y, l.x, l.y+l.h, l.w, base.ColorNamePrimary)
		}
	}
	upright(d.limit)
	for i, one := range b.chart.bars {
		r := d.rows[i]
		if one.row == b.picked {
			p.Ground(r.x, r.y, r.w, r.h, base.ColorNameSelection)
		}
		x := float32(chartMargin)
		b.swatch(p, one, x, r.y+(barRow-swatchSide)/2)
		p.Text(x+swatchSide+6, r.y+drop, nameWidth-swatchSide-12, one.name, style)
		p.Text(r.w-saidWidth, r.y+drop, saidWidth-chartMargin, one.said, style)
		upright(d.limits[i])
		p.Zone(r.x, r.y, r.w, r.h, "Show the lines and the sum of "+one.name, func() { b.pick(one.row) })
	}
}

// swatch draws the colour of the tape in a frame; what has none is crossed out.
func (b *barView) swatch(p *poster.Pen, one bar, x, y float32) {
	if one.swatch == nil {
		p.Line(x, y, x+swatchSide, y+swatchSide, 1.5, base.ColorNameWarning)
		p.Line(x, y+swatchSide, x+swatchSide, y, 1.5, base.ColorNameWarning)
		return
	}
	r := p.Bar(x, y, swatchSide, swatchSide, base.ColorNameForeground)
	r.FillColor, r.StrokeColor, r.StrokeWidth = color.Color(one.swatch), p.Colour(base.ColorNameForeground), 1
}
