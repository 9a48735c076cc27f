package supplies

import (
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

// inch and foot in metres, exact.
const (
	inch = 0.0254
	foot = 0.3048
)

// StandardKit returns a list to start from: what a tape-out usually takes along.
// Common practice, no source; prices are round and invented. The measuring tapes
// are those of people who measure in the unit. Each item gets an identifier from
// newID.
func StandardKit(unit length.Unit, newID func() string) []Item {
	long, short := "100 ft", "25 ft"
	if unit.Metric() {
		long, short = "30 m", "8 m"
	}
	kit := []Item{
		{Name: "Long tape, " + long + " with a ring", Group: "measuring", Rule: Fixed, PerUnit: 2, Cents: 3500},
		{Name: "Short tape, " + short, Group: "measuring", Rule: PerPerson, PerUnit: 0.5, Least: 1, Cents: 1500},
		{Name: "Scale rule", Group: "measuring", Rule: Fixed, PerUnit: 1, Cents: 1200},
		{Name: "Framing square", Group: "measuring", Rule: Fixed, PerUnit: 1, Cents: 1500},
		{Name: "Weighted stand for a zero end", Group: "measuring", Rule: PerTapeFew, PerUnit: 1, Cents: 2500,
			Note: "Only when fewer than four people place"},
		{Name: "Chalk line", Group: "drawing", Rule: Fixed, PerUnit: 1, Cents: 1200},
		{Name: "Chalk, box", Group: "drawing", Rule: Fixed, PerUnit: 1, Cents: 400,
			Note: "Try it on the floor first; some surfaces keep the colour"},
		{Name: "Marker, black, fine", Group: "drawing", Rule: PerPerson, PerUnit: 1, Least: 2, Cents: 200},
		{Name: "Pencil", Group: "drawing", Rule: PerPerson, PerUnit: 1, Least: 2, Cents: 100},
		{Name: "Clipboard", Group: "drawing", Rule: PerPerson, PerUnit: 0.5, Least: 2, Cents: 500},
		{Name: "Sheet of printed tab labels", Group: "drawing", Rule: PerMark, PerUnit: 1.0 / 24, Least: 1, Cents: 50},
		{Name: "Scissors", Group: "cutting", Rule: PerPerson, PerUnit: 1, Least: 2, Cents: 800},
		{Name: "Utility knife", Group: "cutting", Rule: Fixed, PerUnit: 1, Cents: 700},
		{Name: "Plastic scraper", Group: "cutting", Rule: Fixed, PerUnit: 2, Cents: 300},
		{Name: "Knee pads, pair", Group: "protection", Rule: PerPerson, PerUnit: 1, Cents: 1800},
		{Name: "Sandbag for a stand-in", Group: "protection", Rule: PerBallast, PerUnit: 1, Cents: 1500,
			Note: "So that nothing leaned on can tip"},
		{Name: "First-aid box", Group: "protection", Rule: Fixed, PerUnit: 1, Cents: 2500},
		{Name: "Broom", Group: "cleaning", Rule: Fixed, PerUnit: 1, Cents: 1500},
		{Name: "Mop and bucket", Group: "cleaning", Rule: Fixed, PerUnit: 1, Cents: 3000},
		{Name: "Floor cleaner that leaves no film", Group: "cleaning", Rule: Fixed, PerUnit: 1, Cents: 900},
		{Name: "Lint-free cloths, pack", Group: "cleaning", Rule: Fixed, PerUnit: 1, Cents: 600},
	}
	for i := range kit {
		kit[i].ID, kit[i].LeadDays = newID(), 3
	}
	return kit
}

// StandardStocks returns tapes to start from: cloth in several colours, clear
// vinyl for protection, and narrow cloth for spikes and tabs, in the widths and
// rolls that are sold where people measure in the unit. Common practice, no source;
// prices are round and invented. Each stock gets an identifier from newID.
func StandardStocks(unit length.Unit, newID func() string) []Stock {
	sold := byTheYard
	if unit.Metric() {
		sold = byTheMetre
	}
	colours := []struct{ name, swatch string }{
		{"Red", "#c62828"}, {"Blue", "#1565c0"}, {"Green", "#2e7d32"}, {"Yellow", "#f9a825"},
		{"White", "#f5f5f5"}, {"Orange", "#ef6c00"}, {"Purple", "#6a1b9a"}, {"Brown", "#6d4c41"},
	}
	var stocks []Stock
	for _, c := range colours {
		stocks = append(stocks, sold.wide.stock(c.name, c.swatch, "cloth", 1400, Lines))
	}
	stocks = append(stocks,
		sold.narrow.stock("Red", "#c62828", "cloth", 900, Lines),
		sold.narrow.stock("Blue", "#1565c0", "cloth", 900, Lines),
		sold.broad.stock("Clear", "#cfd8dc", "vinyl", 2600, Patches),
		sold.wide.stock("White", "#ffffff", "paper", 700, Tabs),
		sold.narrow.stock("Pink", "#d81b60", "cloth", 900, Spikes),
		sold.narrow.stock("Black", "#212121", "cloth", 900, Figures),
	)
	for i := range stocks {
		stocks[i].ID, stocks[i].LeadDays = plan.StockID(newID()), 4
	}
	return stocks
}

// yard in metres; tape is sold by it.
const yard = 3 * foot

// cut is a width of tape and how much of it is on a roll, in metres.
type cut struct {
	size        string
	width, roll float64
}

// widths are those that a dealer keeps.
type widths struct{ narrow, wide, broad cut }

var (
	byTheYard = widths{
		narrow: cut{"1/2 in", inch / 2, 50 * yard}, wide: cut{"1 in", inch, 60 * yard}, broad: cut{"2 in", 2 * inch, 36 * yard},
	}
	byTheMetre = widths{
		narrow: cut{"12 mm", 0.012, 50}, wide: cut{"25 mm", 0.025, 50}, broad: cut{"50 mm", 0.050, 33},
	}
)

func (c cut) stock(colour, swatch, material string, cents int, d Duty) Stock {
	return Stock{
		Name: colour + ", " + c.size + " " + material, Material: material, Colour: colour, Swatch: swatch,
		Width: c.width, Roll: c.roll, Cents: cents, Duty: d,
	}
}
