package drawing

import (
	"fmt"

	"groundrow/tapeout/length"
)

// onFloor returns the length on the floor of one in a table whose lengths are
// those on paper at the scale; zero stands for a table of lengths on the floor.
func onFloor(v float64, s length.Scale) float64 {
	if s == 0 {
		return v
	}
	return s.OnFloor(v)
}

// checkScale returns an error for a scale that no plan has.
func checkScale(s length.Scale) error {
	if s == 0 || s.Valid() {
		return nil
	}
	return fmt.Errorf("the paper's scale of 1:%v is none; it lies between %s and %s",
		float64(s), length.MinScale.Ratio(), length.MaxScale.Ratio())
}
