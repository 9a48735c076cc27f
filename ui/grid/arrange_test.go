package grid

import (
	"math/rand/v2"
	"slices"
	"testing"
)

func TestNaturalOrdersAsAPersonWould(t *testing.T) {
	want := []string{"-3", "2", "2.5", "10", "1,200", "12' 6\"", "A", "b", "Flat 2", "flat 9", "Flat 10", "Flat 10a", "Z"}
	got := slices.Clone(want)
	for range 20 {
		rand.Shuffle(len(got), func(i, j int) { got[i], got[j] = got[j], got[i] })
		slices.SortFunc(got, Natural)
		if !slices.Equal(got, want) {
			t.Fatalf("sorted %q, want %q", got, want)
		}
	}
}

func FuzzNaturalIsAnOrder(f *testing.F) {
	f.Add("1", "2", "10")
	f.Add("Flat 9", "Flat 10", "flat")
	f.Add("NaN", "inf", "0x10")
	f.Add("01", "1", "١")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		if Natural(a, b) != -Natural(b, a) {
			t.Errorf("%q and %q are ordered both ways", a, b)
		}
		if Natural(a, b) <= 0 && Natural(b, c) <= 0 && Natural(a, c) > 0 {
			t.Errorf("%q, %q, %q go round in a circle", a, b, c)
		}
	})
}

func TestEmptyCellsComeLastBothWays(t *testing.T) {
	for _, down := range []bool{false, true} {
		got := []string{"", "b", "", "a"}
		slices.SortStableFunc(got, func(a, b string) int { return compareCells(a, b, Natural, down) })
		if got[2] != "" || got[3] != "" {
			t.Errorf("down %v: %q", down, got)
		}
	}
}

func TestTickedReadsWhatPeopleWrite(t *testing.T) {
	for text, want := range map[string]bool{On: true, Off: false, "x": true, "TRUE": true, "1": true, "No": false, " 0 ": false, "-": false} {
		if Ticked(text) != want {
			t.Errorf("Ticked(%q) = %v", text, !want)
		}
	}
}
