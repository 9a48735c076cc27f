package room

import (
	"strings"
	"testing"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
)

func TestTheRoomIsSaidInSentences(t *testing.T) {
	feet, metres := length.Style{Unit: length.FeetInches, Step: length.Inch / 8}, length.Style{Unit: length.Metres, Step: 0.005}
	four := func() floor.Measured { return walked([]float64{8, 6, 8, 6}, 90, 90, 90, 90) }
	tests := map[string]struct {
		m     floor.Measured
		style length.Style
		want  []string
	}{
		"open":    {four(), metres, []string{"not fixed", "Measure A–C to fix it."}},
		"fixed":   {across(four(), "A", "C", 10), metres, []string{"nothing checks it", "Measure B–D next"}},
		"checked": {across(across(four(), "A", "C", 10), "B", "D", 10), metres, []string{"all 6 measurements agree"}},
		"not told apart": {across(across(four(), "A", "C", 10), "B", "D", 10.3048), feet,
			[]string{"One measurement is wrong, and which of these 6", "a whole foot"}},
		"no right angle": {square(across(across(four(), "A", "C", 10.4), "B", "D", 9.583), 1), metres, []string{"Corner C is no right angle: the others make it"}},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			got := strings.Join(mustSolve(t, tt.m).Say(tt.style), "\n")
			for _, w := range tt.want {
				if !strings.Contains(got, w) {
					t.Errorf("lacks %q:\n%s", w, got)
				}
			}
		})
	}
	_, err := Solve(across(four(), "A", "C", 14.5), tape)
	if got := Why(err, feet); !strings.Contains(got, "No room has these lengths: A–C is 47'") || !strings.HasSuffix(got, "others.") {
		t.Errorf("got %q", got)
	}
}

func TestHowWellAMeasureIsChecked(t *testing.T) {
	style := length.Style{Unit: length.Millimetres, Step: 0.001}
	alone := mustSolve(t, across(walked([]float64{8, 6, 8, 6}), "A", "C", 10)).Measures[0]
	if got := alone.Checked(style) + alone.SayResidual(style); got != "not checked" {
		t.Errorf("got %q", got)
	}
	// Four walls and both diagonals of a rectangle share one redundancy among six
	// lengths, in proportion to the square of how the closure depends on each.
	both := mustSolve(t, across(across(walked([]float64{8, 6, 8, 6}), "A", "C", 10.01), "B", "D", 10)).Measures
	sum := 0.0
	for _, m := range both {
		sum += m.Redundancy
	}
	if sum < 1-1e-9 || sum > 1+1e-9 {
		t.Errorf("the redundancies add up to %v", sum)
	}
	if got := both[4].Checked(style); !strings.HasPrefix(got, "from ") {
		t.Errorf("got %q", got)
	}
	if got := both[4].SayResidual(style); got != "−3 mm" {
		t.Errorf("the residual reads %q", got)
	}
}

func TestADoubtfulReadingIsSaidAsItWasRead(t *testing.T) {
	s := Solution{Measures: []Measure{{Kind: Across, Name: "A–C", Read: 14.197}}}
	said := s.sayFault(Fault{Measure: 0, Expected: 13.892}, length.Style{Unit: length.Metres, Step: 0.005})
	if want := "A–C: 14.197 m was read, the others make it 13.892 m; 0.305 m too long."; said != want {
		t.Errorf("said %q, want %q", said, want)
	}
}
