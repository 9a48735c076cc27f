package prep

import (
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/survey"
)

// FloorWork is everything computed for one floor and one choice of scene.
type FloorWork struct {
	Floor     *floor.Floor
	Scene     plan.SceneID // empty: all scenes
	Lines     []floor.Line // datum axes
	Overhangs []floor.Overhang
	Marks     []MeasuredMark
	Dance     []marks.Numbered
	Tape      []supplies.Run
	Problems  []Problem
}

// MeasuredMark is a mark with its measurements by both methods. Up and over are
// in the mark itself.
type MeasuredMark struct {
	marks.Mark
	Tapes    survey.Reading // from the floor's first two pivots
	HasTapes bool           // false: no usable pair of pivots
	Weak     bool           // the tapes meet too flat
	Progress marks.Progress
}

// Problem is something that a person must look at. It is turned into a sentence
// by its Sentence method alone.
type Problem struct {
	Rule  string // what is broken; one of the Rule constants
	Where string // the name of the thing
	Place string // the place in the window where it can be cured
	ID    string // the identifier of the row to select there
	Got   string
	Limit string
}
