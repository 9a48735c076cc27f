// Package theme is how Groundrow looks: a prep desk of warm paper and dark ink,
// with the green of a cutting mat as its one accent; by day and by work light.
package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"

	"groundrow/assets/fonts"
)

// Choice is which variant a person wants to look at.
type Choice string

// The choices.
const (
	System Choice = "as the system"
	Light  Choice = "light"
	Dark   Choice = "dark"
)

// Choices in the order offered.
var Choices = []Choice{System, Light, Dark}

// Theme is the program's look. It is a value: to change the choice, set a new
// one in the settings of the toolkit.
type Theme struct{ choice Choice }

var _ fyne.Theme = Theme{}

// New returns the theme with a fixed choice of variant; anything but Light and
// Dark follows the system.
func New(choice Choice) Theme { return Theme{choice} }

// Variant returns the variant to show where the system has the given one.
func (t Theme) Variant(system fyne.ThemeVariant) fyne.ThemeVariant {
	switch t.choice {
	case Light:
		return base.VariantLight
	case Dark:
		return base.VariantDark
	}
	return system
}

// Color returns the named colour of the toolkit.
func (t Theme) Color(name fyne.ThemeColorName, system fyne.ThemeVariant) color.Color {
	v := t.Variant(system)
	p := paletteFor(v)
	if c, ok := p.colour(name); ok {
		return c
	}
	return base.DefaultTheme().Color(name, v)
}

// sizes make tables of some twenty rows fit beside everything else on a screen
// of 1366 by 768.
var sizes = map[fyne.ThemeSizeName]float32{
	base.SizeNameText:            13,
	base.SizeNameCaptionText:     11,
	base.SizeNameSubHeadingText:  15,
	base.SizeNameHeadingText:     19,
	base.SizeNamePadding:         3,
	base.SizeNameInnerPadding:    5,
	base.SizeNameInlineIcon:      17,
	base.SizeNameLineSpacing:     3,
	base.SizeNameInputRadius:     3,
	base.SizeNameSelectionRadius: 2,
}

// Size returns the named size of the toolkit in its own pixels.
func (t Theme) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := sizes[name]; ok {
		return s
	}
	return base.DefaultTheme().Size(name)
}

var (
	regular = fyne.NewStaticResource("DejaVuSansCondensed.ttf", fonts.Regular)
	bold    = fyne.NewStaticResource("DejaVuSansCondensed-Bold.ttf", fonts.Bold)
	mono    = fyne.NewStaticResource("DejaVuSansMono.ttf", fonts.Mono)
)

// Font returns the face for a style. There is no italic: the program does not
// write any, since slanted figures are hard to tell apart.
func (t Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol:
		return base.DefaultTheme().Font(style)
	case style.Monospace:
		return mono
	case style.Bold:
		return bold
	}
	return regular
}

// Icon returns the toolkit's own icons.
func (t Theme) Icon(name fyne.ThemeIconName) fyne.Resource {
	return base.DefaultTheme().Icon(name)
}
