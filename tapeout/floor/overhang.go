package floor

import "groundrow/tapeout/plan"

// Overhang is what of one element lies off the floor or on an obstacle, as
// placed and before it is cut short.
type Overhang struct {
	Element plan.ElementID
	Length  float64 // metres of line work outside
	Of      float64 // metres of line work in all
}
