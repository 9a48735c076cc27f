package supplies

import "groundrow/tapeout/plan"

// inch and foot in metres, exact.
const (
	inch = 0.0254
	foot = 0.3048
)

// StandardKit returns a list to start from: what a tape-out usually takes along.
// Common practice, no source; prices are round and invented. Each item gets an
// identifier from newID.
func StandardKit(newID func() string) []Item {
	kit := []Item{
		{Name: "Long tape, 100 ft with a ring", Group: "measuring", Rule: Fixed, PerUnit: 2, Cents: 3500},
		{Name: "Short tape, 25 ft", Group: "measuring", Rule: PerPerson, PerUnit: 0.5, Least: 1, Cents: 1500},
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
// vinyl for protection, and narrow cloth for spikes and tabs. Common practice,
// no source; prices are round and invented. Each stock gets an identifier from
// newID.
func StandardStocks(newID func() string) []Stock {
	colours := []struct{ name, swatch string }{
		{"Red", "#c62828"}, {"Blue", "#1565c0"}, {"Green", "#2e7d32"}, {"Yellow", "#f9a825"},
		{"White", "#f5f5f5"}, {"Orange", "#ef6c00"}, {"Purple", "#6a1b9a"}, {"Brown", "#6d4c41"},
	}
	var stocks []Stock
	for _, c := range colours {
		stocks = append(stocks, cloth(c.name, c.swatch, inch, 60*yard, 1400, Lines))
	}
	stocks = append(stocks,
		cloth("Red", "#c62828", inch/2, 50*yard, 900, Lines),
		cloth("Blue", "#1565c0", inch/2, 50*yard, 900, Lines),
		Stock{Name: "Clear, 2 in vinyl", Material: "vinyl", Colour: "Clear", Swatch: "#cfd8dc",
			Width: 2 * inch, Roll: 36 * yard, Cents: 2600, Duty: Patches},
		Stock{Name: "White, 1 in paper", Material: "paper", Colour: "White", Swatch: "#ffffff",
			Width: inch, Roll: 60 * yard, Cents: 700, Duty: Tabs},
		cloth("Pink", "#d81b60", inch/2, 50*yard, 900, Spikes),
		cloth("Black", "#212121", inch/2, 50*yard, 900, Figures),
	)
	for i := range stocks {
		stocks[i].ID, stocks[i].LeadDays = plan.StockID(newID()), 4
	}
	return stocks
}

// yard in metres; tape is sold by it.
const yard = 3 * foot

func cloth(colour, swatch string, width, roll float64, cents int, d Duty) Stock {
	size := "1 in"
	if width < inch {
		size = "1/2 in"
	}
	return Stock{
		Name: colour + ", " + size + " cloth", Material: "cloth", Colour: colour, Swatch: swatch,
		Width: width, Roll: roll, Cents: cents, Duty: d,
	}
}
