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

func TestTwoSmallLengthsInAClashAreToldApart(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	for _, c := range []struct {
		mine, theirs any
		want         [2]string
	}{
		{0.001, 0.0015, [2]string{"1 mm", "1.5 mm"}}, // both 0' 0" to an eighth of an inch
		{0.3048, 0.6096, [2]string{`1' 0"`, `2' 0"`}},
		{0.3048, nil, [2]string{`1' 0"`, "nothing, or not there any more"}},
	} {
		mine, theirs := bothWords(p, store.Cell{Column: "tape_sigma_m", Mine: c.mine, Theirs: c.theirs})
		if mine != c.want[0] || theirs != c.want[1] {
			t.Errorf("%v and %v read %q and %q, want %q", c.mine, c.theirs, mine, theirs, c.want)
		}
	}
}
