package floor

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Line is one edge that a floor lays in tape, in datum axes.
type Line struct {
	plane.Edge
	Element plan.ElementID
	Path    plan.PathID
	Role    plan.Role
	Stock   plan.StockID
	Scenes  []plan.SceneID // the scenes that need it; empty: all
	Cut     CutEnds        // ends made by cutting short at the room
}

// CutEnds tells which ends of a line are cuts and not ends of the scenery.
type CutEnds struct{ A, B bool }
