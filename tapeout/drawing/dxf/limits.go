package dxf

import (
	"fmt"

	"groundrow/tapeout/drawing/linework"
)

// Bounds on what a file may ask for. They lie far beyond any ground plan, and keep a
// damaged or hostile file from taking the machine's memory or time.
const (
	maxLine   = 256 << 10 // bytes in one line
	maxFile   = 1 << 30   // bytes in the file
	maxRecord = 16 << 20  // bytes in one entity's values
	maxTags   = 1_000_000 // values of one entity
	maxMemory = 200 << 20 // bytes kept, as estimated by the costs below
	maxPlaced = 500_000   // things that one insert may place, everything inside counted
	maxSteps  = 2_000_000 // things placed from blocks, or chords made, in the whole drawing; see step
	maxDepth  = 64        // blocks inside blocks
	maxCoord  = 1e10      // drawing units; 10 000 km in millimetres
	maxDegree = 15        // of a spline
	maxSpline = 2_000_000 // control points of the Bézier curves of one spline
)

// Costs in bytes of what is kept, somewhat above what it takes.
const (
	costItem   = 130
	costEdge   = 42
	costText   = 200
	costEntity = 300 // waiting in a block
	costPoint  = 40  // of a spline
	costName   = 300 // a layer, a linetype, a block
)

// budget adds up what is kept and what has been done.
type budget struct{ bytes, steps int }

// spend takes so many bytes; the error says that the drawing is too large.
func (b *budget) spend(bytes int) error {
	b.bytes += bytes
	if b.bytes <= maxMemory {
		return nil
	}
	return &linework.Fault{
		Reason: linework.ErrTooLarge,
		What:   "The drawing holds more lines and points than this program takes, about a million",
		Do:     "Export only the layers of the ground plan",
	}
}

// step counts work: one for each thing that is placed from a block, and one for
// every few chords of a curve, even of those that are then left aside.
func (b *budget) step(n int) error {
	b.steps += n
	if b.steps <= maxSteps {
		return nil
	}
	return &linework.Fault{
		Reason: linework.ErrTooLarge,
		What:   "The blocks of the drawing repeat more often, or its curves are longer, than this program follows",
		Do:     "Explode the blocks, or export only the layers of the ground plan",
	}
}

func damaged(line int, format string, args ...any) error {
	return &linework.Fault{
		Reason: linework.ErrDamaged,
		Where:  fmt.Sprintf("Line %d", line),
		What:   fmt.Sprintf(format, args...),
		Do:     "Have the drawing sent or exported again",
	}
}
