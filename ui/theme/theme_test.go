package theme

import (
	"fmt"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"
)

var variants = map[string]fyne.ThemeVariant{"light": base.VariantLight, "dark": base.VariantDark}

// WCAG 2.2, success criterion 1.4.3; disabled controls are exempt from it.
const enough = 4.5

func TestWordsStandOutFromEverySurfaceTheyAreOn(t *testing.T) {
	surfaces := []fyne.ThemeColorName{
		base.ColorNameBackground, base.ColorNameInputBackground, base.ColorNameMenuBackground,
		base.ColorNameOverlayBackground, base.ColorNameHeaderBackground, base.ColorNameButton,
	}
	words := []fyne.ThemeColorName{
		base.ColorNameForeground, base.ColorNamePlaceHolder, base.ColorNamePrimary, base.ColorNameHyperlink,
		base.ColorNameError, base.ColorNameWarning, base.ColorNameSuccess,
	}
	for _, s := range surfaces {
		for _, w := range words {
			expectContrast(t, w, s)
		}
	}
	expectContrast(t, base.ColorNameForegroundOnPrimary, base.ColorNamePrimary)
	expectContrast(t, base.ColorNameForegroundOnError, base.ColorNameError)
	expectContrast(t, base.ColorNameForegroundOnWarning, base.ColorNameWarning)
	expectContrast(t, base.ColorNameForegroundOnSuccess, base.ColorNameSuccess)
	expectContrast(t, base.ColorNameForeground, base.ColorNameSelection)
}

func expectContrast(t *testing.T, words, surface fyne.ThemeColorName) {
	t.Helper()
	for name, v := range variants {
		th := New(System)
		if got := Contrast(th.Color(words, v), th.Color(surface, v)); got < enough {
			t.Errorf("%s: %s on %s has contrast %.2f, want %.1f", name, words, surface, got, enough)
		}
	}
}

func TestInksStandOutFromThePaper(t *testing.T) {
	// Words need 4.5:1; lines that carry meaning 3:1 (success criterion 1.4.11).
	pairs := []struct {
		ink, on Ink
		want    float64
	}{
		{Label, Paper, enough}, {FaintLabel, Paper, enough}, {RulerText, Ruler, enough}, {Label, AudienceBand, enough},
		{Selection, Paper, enough}, {Care, Paper, enough}, {Wrong, Paper, enough}, {Done, Paper, enough},
		{Datum, Paper, enough}, {Label, SelectionWash, enough},
		{Line, Paper, 3}, {Wall, Paper, 3}, {Obstacle, Paper, 3}, {KeepClear, Paper, 3}, {Outside, Paper, 3}, {Hover, Paper, 3},
		{Line, SelectionWash, 3}, {Selection, SelectionWash, 3},
	}
	for name, v := range variants {
		s := InksFor(v)
		for _, p := range pairs {
			if got := Contrast(s.Colour(p.ink), s.Colour(p.on)); got < p.want {
				t.Errorf("%s: ink %d on %d has contrast %.2f, want %.1f", name, p.ink, p.on, got, p.want)
			}
		}
	}
}

func TestEveryInkIsOpaque(t *testing.T) {
	for name, v := range variants {
		for i := range inkCount {
			if c := InksFor(v).Colour(i); c.A != 0xFF {
				t.Errorf("%s: ink %d is %v", name, i, c)
			}
		}
	}
}

func TestContrastAgreesWithItsDefinition(t *testing.T) {
	for _, c := range []struct {
		a, b color.Color
		want float64
	}{
		{color.Black, color.White, 21},
		{color.White, color.White, 1},
		// relative luminance of pure red is its coefficient, 0.2126
		{color.NRGBA{R: 0xFF, A: 0xFF}, color.Black, (0.2126 + 0.05) / 0.05},
	} {
		t.Run(fmt.Sprint(c.a, c.b), func(t *testing.T) {
			if got := Contrast(c.a, c.b); math.Abs(got-c.want) > 1e-3 {
				t.Errorf("got %.4f, want %.4f", got, c.want)
			}
			if Contrast(c.a, c.b) != Contrast(c.b, c.a) {
				t.Error("the order of the colours matters")
			}
		})
	}
}

func TestAChoiceOverridesTheSystem(t *testing.T) {
	name := base.ColorNameBackground
	if New(Dark).Color(name, base.VariantLight) != New(System).Color(name, base.VariantDark) {
		t.Error("dark is not dark on a light system")
	}
	if New(Light).Color(name, base.VariantDark) != New(System).Color(name, base.VariantLight) {
		t.Error("light is not light on a dark system")
	}
}
