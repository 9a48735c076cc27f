package dxf

import (
	"math"

	"groundrow/tapeout/drawing/linework"
)

// Special colour numbers.
const (
	byBlock = 0
	byLayer = 256
)

// foreground is colour 7: white on a dark screen, black on paper.
const foreground = 7

var namedColours = [10]uint32{0, 0xFF0000, 0xFFFF00, 0x00FF00, 0x00FFFF, 0x0000FF, 0xFF00FF, 0, 0x808080, 0xC0C0C0}

var greys = [6]uint32{0x000000, 0x656565, 0x666666, 0x999999, 0xCCCCCC, 0xFFFFFF}

// indexed returns the colour of a number from 1 to 255. From 10 to 249 the tens go
// around the colour circle in steps of 15°, the units are five brightnesses, each
// pure and half faded.
func indexed(n int) linework.Colour {
	switch {
	case n < 1 || n > 255:
		return linework.RGB(0)
	case n < 10:
		return linework.RGB(namedColours[n])
	case n >= 250:
		return linework.RGB(greys[n-250])
	}
	bright := [5]float64{255, 165, 127, 76, 38}[n%10/2]
	faded := 0.0
	if n%2 == 1 {
		faded = 0.5
	}
	hue := float64(n/10-1) * 15 / 60 // in sixths of the circle
	channel := func(shift float64) uint32 {
		d := math.Abs(math.Mod(hue+shift, 6) - 3) // 3 at the channel's own hue, 0 opposite
		pure := min(1, max(0, d-1))
		return uint32(bright * (pure*(1-faded) + faded))
	}
	return linework.RGB(channel(0)<<16 | channel(4)<<8 | channel(2))
}

// ink is a colour as an entity states it.
type ink struct {
	number int
	rgb    linework.Colour // known: a true colour, which wins
}

// readInk reads codes 62 and 420.
func (e *record) ink() ink {
	i := ink{number: e.whole(62, byLayer)}
	if e.has(420) {
		i.rgb = linework.RGB(uint32(e.whole(420, 0)))
	}
	return i
}

// colour resolves the ink on a layer, inside a block of the given colour.
func (i ink) colour(layer, block linework.Colour) linework.Colour {
	switch {
	case i.rgb.Known:
		return i.rgb
	case i.number == byLayer:
		return layer
	case i.number == byBlock:
		return block
	}
	return indexed(i.number)
}
