package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"
)

// palette is the set of colours of one variant of the window.
type palette struct {
	desk, sheet, field, button, head color.NRGBA // surfaces
	text, quiet, faint               color.NRGBA // words: plain, hints, switched off
	accent, onAccent                 color.NRGBA
	wrong, care, done, onSignal      color.NRGBA
	rule, edge                       color.NRGBA // hairlines, borders of fields
	hover, pressed, picked, focus    color.NRGBA
	bar, shadow                      color.NRGBA
}

var day = palette{
	desk: rgb(0xEFECE4), sheet: rgb(0xF8F6F0), field: rgb(0xFCFBF7), button: rgb(0xE1DCCF), head: rgb(0xE3DED2),
	text: rgb(0x22272B), quiet: rgb(0x5C5F5E), faint: rgb(0x7A7B75),
	accent: rgb(0x0F625E), onAccent: rgb(0xFFFFFF),
	wrong: rgb(0xA32626), care: rgb(0x855000), done: rgb(0x3B661B), onSignal: rgb(0xFFFFFF),
	rule: rgb(0xCFC9BA), edge: rgb(0x8C887C),
	hover: rgba(0x0F625E, 0x16), pressed: rgba(0x0F625E, 0x2E), picked: rgb(0xC5DEDA), focus: rgba(0x0F625E, 0x66),
	bar: rgba(0x22272B, 0x70), shadow: rgba(0x000000, 0x33),
}

var night = palette{
	desk: rgb(0x1D2122), sheet: rgb(0x282D2E), field: rgb(0x262B2C), button: rgb(0x353B3C), head: rgb(0x2E3435),
	text: rgb(0xE8E4DA), quiet: rgb(0xA5A79F), faint: rgb(0x858983),
	accent: rgb(0x6CC7BB), onAccent: rgb(0x0D2220),
	wrong: rgb(0xF08A7C), care: rgb(0xE3B04B), done: rgb(0x9CC76B), onSignal: rgb(0x1D1410),
	rule: rgb(0x3C4344), edge: rgb(0x787E7B),
	hover: rgba(0x6CC7BB, 0x1C), pressed: rgba(0x6CC7BB, 0x38), picked: rgb(0x254A47), focus: rgba(0x6CC7BB, 0x70),
	bar: rgba(0xE8E4DA, 0x60), shadow: rgba(0x000000, 0x80),
}

func paletteFor(v fyne.ThemeVariant) *palette {
	if v == base.VariantDark {
		return &night
	}
	return &day
}

func (p *palette) colour(name fyne.ThemeColorName) (color.Color, bool) {
	for _, of := range []func(fyne.ThemeColorName) (color.NRGBA, bool){p.surface, p.words, p.state} {
		if c, ok := of(name); ok {
			return c, true
		}
	}
	return nil, false
}

func (p *palette) surface(name fyne.ThemeColorName) (color.NRGBA, bool) {
	switch name {
	case base.ColorNameBackground:
		return p.desk, true
	case base.ColorNameOverlayBackground, base.ColorNameMenuBackground:
		return p.sheet, true
	case base.ColorNameInputBackground:
		return p.field, true
	case base.ColorNameButton:
		return p.button, true
	case base.ColorNameDisabledButton, base.ColorNameHeaderBackground:
		return p.head, true
	case base.ColorNameSeparator:
		return p.rule, true
	case base.ColorNameInputBorder:
		return p.edge, true
	case base.ColorNameShadow:
		return p.shadow, true
	}
	return color.NRGBA{}, false
}

func (p *palette) words(name fyne.ThemeColorName) (color.NRGBA, bool) {
	switch name {
	case base.ColorNameForeground:
		return p.text, true
	case base.ColorNamePlaceHolder:
		return p.quiet, true
	case base.ColorNameDisabled:
		return p.faint, true
	case base.ColorNameHyperlink, base.ColorNamePrimary:
		return p.accent, true
	case base.ColorNameForegroundOnPrimary:
		return p.onAccent, true
	case base.ColorNameError:
		return p.wrong, true
	case base.ColorNameWarning:
		return p.care, true
	case base.ColorNameSuccess:
		return p.done, true
	case base.ColorNameForegroundOnError, base.ColorNameForegroundOnWarning, base.ColorNameForegroundOnSuccess:
		return p.onSignal, true
	}
	return color.NRGBA{}, false
}

func (p *palette) state(name fyne.ThemeColorName) (color.NRGBA, bool) {
	switch name {
	case base.ColorNameHover:
		return p.hover, true
	case base.ColorNamePressed:
		return p.pressed, true
	case base.ColorNameSelection:
		return p.picked, true
	case base.ColorNameFocus:
		return p.focus, true
	case base.ColorNameScrollBar:
		return p.bar, true
	}
	return color.NRGBA{}, false
}

func rgb(hex uint32) color.NRGBA { return rgba(hex, 0xFF) }

func rgba(hex uint32, alpha uint8) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: alpha}
}
