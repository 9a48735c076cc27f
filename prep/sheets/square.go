package sheets

import (
	"fmt"

	"groundrow/prep"
)

// squareRecipe says how the baseline is laid square to the centre line with the
// largest 3-4-5 triangle that fits the room; nothing where none does.
func squareRecipe(p *prep.Production, w *prep.FloorWork) []block {
	if w.Floor == nil {
		return nil
	}
	a, ok := prep.SquareOn(p, w)
	if !ok {
		return nil
	}
	f := figuresOf(p)
	return []block{heading{"The right angle first"}, bullets{Tick: true, Items: []string{
		fmt.Sprintf("From the datum measure %s up along the centre line and mark it.", f.length(a.Up)),
		fmt.Sprintf("To each side find the place that is %s from the datum and %s from that mark: both are on the baseline.", f.length(a.Over), f.length(a.Slope)),
		fmt.Sprintf("Check: the two places are %s apart, in one line with the datum.", f.length(a.Between)),
	}}}
}
