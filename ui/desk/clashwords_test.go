package desk

import (
	"math"
	"testing"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

func TestAClashReadsLikeTheScreens(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings(), Floors: []floor.Floor{{ID: "f-1", Name: "Tannery Hall"}}}
	for _, c := range []struct {
		column string
		value  any
		want   string
	}{
		{"height_m", 3.6576, `12' 0"`},
		{"turn_deg", 45.0, "45°"},
		{"turn_rad", math.Pi / 2, "90.00°"},
		{"budget_cents", int64(12345), "$123.45"},
		{"hands", int64(2), "2"},
		{"floor", "f-1", "Tannery Hall"},
		{"name", "Porch", "“Porch”"},
		{"note", "", "nothing"},
		{"name", nil, "nothing, or not there any more"},
		{"corners", []plane.Vertex{{}, {}}, "a shape of 2 corners"},
	} {
		if got := cellWords(p, store.Cell{Column: c.column}, c.value); got != c.want {
			t.Errorf("%s %v reads %q, want %q", c.column, c.value, got, c.want)
		}
	}
}
