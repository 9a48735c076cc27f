package marks

import "groundrow/tapeout/plane"

// Numbered is one figure of a dance line.
type Numbered struct {
	Line   string      // the dance line's identifier
	Text   string      // "0", "2", "4", or "¼"
	At     plane.Point // datum axes
	OnEdge bool        // false: no curved edge was given, or it does not reach this far over
	Edge   float64     // metres up at which the edge crosses this over
	Slip   float64     // metres by which the figure would slip if measured along the edge
}
