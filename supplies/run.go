package supplies

import (
	"time"

	"groundrow/tapeout/plan"
)

// Run is the tape that one stock needs on one floor, in metres, and what must be
// bought for it.
type Run struct {
	Stock    plan.StockID
	Lines    float64 // union length of the lines, dashes counted as laid
	Strips   int     // straight or swung pieces
	Overlaps float64
	Patches  float64
	Tabs     float64
	Spikes   float64
	Figures  float64
	Wear     float64 // laid again over the weeks
	Waste    float64
	Total    float64
	Need     float64 // rolls, before rounding up
	Rolls    int     // whole rolls needed
	Shelf    float64 // rolls on the shelf
	Coming   int     // rolls on order
	Buy      int     // rolls still to order
	Cents    int     // price of Buy
	OrderBy  time.Time
}
