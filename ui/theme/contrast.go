package theme

import (
	"image/color"
	"math"
)

// Contrast returns the contrast ratio of two opaque colours, from 1 to 21.
//
// Source: WCAG 2.2, definitions of contrast ratio and relative luminance, with
// the threshold 0.04045 of sRGB.
func Contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

func linear(channel uint32) float64 {
	c := float64(channel) / 0xFFFF
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}
