package supplies

import (
	"math"
	"time"
)

// Counts are what the needs of the kit are counted from.
type Counts struct {
	People   int // people who place and tape
	Tapes    int // long tapes in use at once
	Marks    int
	StandIns int // objects that stand in for scenery
	Ballast  int // those of them that must be weighted
}

// Need is how many of one item of the kit are needed and how many must still be
// ordered.
type Need struct {
	Item    Item
	Need    int
	Shelf   int
	Coming  int // on order
	Late    int // of Coming, those expected after they are needed
	Buy     int
	Cents   int // price of Buy
	OrderBy time.Time
	Short   bool // something must still be ordered
}

// enoughHands is the number of people from which the zero ends of the tapes can
// be held by hand: common practice, no source.
const enoughHands = 4

// Needs returns the need of every item, in the items' order. Ordered counts as
// coming, as in TapeRun. OrderBy is needed less the days of delivery.
func Needs(items []Item, orders []Order, c Counts, needed time.Time) []Need {
	needs := make([]Need, len(items))
	for i, it := range items {
		n := Need{Item: it, Need: it.need(c), Shelf: it.Shelf}
		n.Coming, n.Late = coming(it.ID, orders, needed)
		n.Buy = max(0, n.Need-n.Shelf-n.Coming)
		n.Cents = n.Buy * it.Cents
		n.Short = n.Buy > 0
		n.OrderBy = before(needed, it.LeadDays)
		needs[i] = n
	}
	return needs
}

func (it Item) need(c Counts) int {
	count := 0
	switch it.Rule {
	case Fixed:
		count = 1
	case PerPerson:
		count = c.People
	case PerTape:
		count = c.Tapes
	case PerTapeFew:
		if c.People >= enoughHands {
			return max(0, it.Least)
		}
		count = c.Tapes
	case PerMark:
		count = c.Marks
	case PerStandIn:
		count = c.StandIns
	case PerBallast:
		count = c.Ballast
	}
	n := wholes(math.Abs(it.PerUnit) * float64(count))
	return max(n, it.Least, 0)
}
