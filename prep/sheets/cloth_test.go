package sheets

import (
	"fmt"
	"strings"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// A cloth of 16 by 12 ft, whose diagonals are 20 ft, with the centre line across it or
// beside it.
func TestLayingAClothBeginsAtTheCentreLineIfThatCrossesIt(t *testing.T) {
	p := &prep.Production{Settings: prep.DefaultSettings()}
	for _, c := range []struct {
		left  float64
		lines bool
	}{{-8, true}, {2, false}} {
		f := &floor.Floor{Kind: floor.Cloth, Outline: box(c.left, -2, 16, 12)}
		text := fmt.Sprint(layingCloth(p, f))
		for _, want := range []string{`16' 0" across and 12' 0" from front to back`, `R1 R3 20' 0"`, `R2 R4 20' 0"`, "only then weight the edges"} {
			if !strings.Contains(text, want) {
				t.Errorf("from %v ft over it lacks %q: %s", c.left, want, text)
			}
		}
		if got := strings.Contains(text, "C1"); got != c.lines {
			t.Errorf("from %v ft over the centre line is spoken of: %v", c.left, got)
		}
	}
}
