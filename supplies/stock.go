// Package supplies counts what a floor needs: tape by stock, rolls, the kit, the
// shelf, and what must be ordered by when.
package supplies

import (
	"time"

	"groundrow/tapeout/plan"
)

// Stock is one tape that can be bought: a material in a width and a colour.
type Stock struct {
	ID       plan.StockID
	Name     string // "Red, 1 in cloth"
	Material string // "cloth", "vinyl", "paper"
	Colour   string // always written beside the swatch
	Swatch   string // "#rrggbb"
	Width    float64
	Roll     float64 // metres on one roll
	Cents    int     // price of one roll, in hundredths of the currency
	Shelf    float64 // rolls on the shelf; part rolls count
	LeadDays int     // days from order to delivery
	Supplier string
	Duty     Duty
}

// Duty is what a stock is for, besides the elements that name it.
type Duty string

// Duties of a stock.
const (
	Lines   Duty = "lines"   // laid for the elements that name it
	Patches Duty = "patches" // protection over corners and busy places
	Tabs    Duty = "tabs"    // the small labelled pieces that hold marks
	Spikes  Duty = "spikes"  // places of movable pieces
	Figures Duty = "figures" // dance-line numbers
)

// Duties in the order offered.
var Duties = []Duty{Lines, Patches, Tabs, Spikes, Figures}

// Item is one thing of the kit that is not tape.
type Item struct {
	ID       string
	Name     string
	Group    string // "measuring", "protection", "drawing"
	Rule     Rule   // how the need is counted
	PerUnit  float64
	Least    int
	Shelf    int
	Cents    int
	LeadDays int
	Supplier string
	Note     string
	Out      int // counted out to the room
	Back     int // counted back in
}

// Rule says what an item's need is counted from: the need is PerUnit times the
// count, rounded up, and at least Least.
type Rule string

// Rules of need.
const (
	Fixed      Rule = "fixed number"
	PerPerson  Rule = "per person placing"
	PerTape    Rule = "per long tape in use"
	PerTapeFew Rule = "per long tape, when fewer than four place"
	PerMark    Rule = "per mark"
	PerStandIn Rule = "per stand-in"
	PerBallast Rule = "per stand-in that must be weighted"
)

// ItemRules in the order offered.
var ItemRules = []Rule{Fixed, PerPerson, PerTape, PerTapeFew, PerMark, PerStandIn, PerBallast}

// Order is something asked of a supplier.
type Order struct {
	ID       string
	For      string // a stock's or an item's identifier
	Quantity int    // rolls or pieces
	State    OrderState
	Placed   time.Time // zero: not yet
	Expected time.Time
	Supplier string
	Note     string
}

// OrderState is how far an order has got.
type OrderState string

// States of an order.
const (
	Planned  OrderState = "planned"
	Ordered  OrderState = "ordered"
	Received OrderState = "received"
)

// OrderStates in the order offered.
var OrderStates = []OrderState{Planned, Ordered, Received}

// Allowances are what is added to the true lines. All are settings.
type Allowances struct {
	Overlap  float64 // metres added where one strip meets the next
	Patch    float64 // metres of protection over one corner
	Tab      float64 // metres of tape in one tab
	SpikeLeg float64 // metres of one leg of a spike's L
	Figure   float64 // metres of tape per dance-line number
	DashOn   float64 // metres laid of each dash
	DashOff  float64 // metres left free between dashes
	Waste    float64 // fraction of everything, lost to tears and ends
	WearWeek float64 // fraction of the lines laid again each week of rehearsal
	Weeks    float64 // weeks in the room
}

// DefaultAllowances are common practice, no source.
var DefaultAllowances = Allowances{
	Overlap: 0.05, Patch: 0.30, Tab: 0.10, SpikeLeg: 0.15, Figure: 0.60,
	DashOn: 0.15, DashOff: 0.15, Waste: 0.10, WearWeek: 0.03, Weeks: 4,
}
