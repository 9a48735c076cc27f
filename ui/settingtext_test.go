package ui

import (
	"testing"

	"groundrow/prep"
)

func TestALengthOfTheSettingsIsNotRoundedAway(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings()} // feet and inches, to an eighth
	p.KeepTyped("settings", "typed", "1/16\"")
	for _, c := range []struct {
		column string
		value  float64
		want   string
	}{
		{"sigma", 0.002, "2 mm"}, {"weld", 0.006, "6 mm"}, {"row", 0.1524, p.Style().Bare(0.1524)},
		{"nothing", 0, p.Style().Bare(0)}, {"typed", 0.0254 / 16, "1/16\""},
	} {
		if got := settingText(p, c.column, c.value); got != c.want {
			t.Errorf("%s of %v m shows as %q, want %q", c.column, c.value, got, c.want)
		}
	}
}
