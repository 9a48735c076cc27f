package demo

import (
	"groundrow/supplies"
	"groundrow/tapeout/plan"
)

// Names of the tape stocks, by what they are laid for.
const (
	red    = "red"
	blue   = "blue"
	yellow = "yellow"
	white  = "white"
	green  = "green"
)

func stockID(name string) plan.StockID {
	if name == "" {
		return ""
	}
	return plan.StockID(id("stock " + name))
}

func (b *builder) stocks() {
	inch := ft(1) / 12
	cloth := func(name, label, colour, swatch string, cents int, shelf float64) supplies.Stock {
		return supplies.Stock{
			ID: stockID(name), Name: label, Material: "cloth", Colour: colour, Swatch: swatch,
			Width: inch, Roll: ft(180), Cents: cents, Shelf: shelf, LeadDays: 2,
			Supplier: "Harbour Theatrical Supply", Duty: supplies.Lines,
		}
	}
	narrow := func(name, label, colour, swatch string, duty supplies.Duty, shelf float64) supplies.Stock {
		s := cloth(name, label, colour, swatch, 9_50, shelf)
		s.Width, s.Roll, s.Duty = inch/2, ft(150), duty
		return s
	}
	clear := cloth("clear", "Clear protective vinyl, 2 in", "clear", "#d8dde0", 38_00, 0.25)
	clear.Material, clear.Width, clear.Roll, clear.Duty, clear.LeadDays = "vinyl", 2*inch, ft(108), supplies.Patches, 4
	paper := cloth("paper", "White paper, 1 in", "white", "#f4f2ea", 6_00, 1)
	paper.Material, paper.Duty = "paper", supplies.Tabs
	b.p.Stocks = []supplies.Stock{
		cloth(red, "Red cloth, 1 in", "red", "#c62828", 16_50, 1),
		cloth(blue, "Blue cloth, 1 in", "blue", "#1e5aa8", 16_50, 0.5),
		cloth(yellow, "Yellow cloth, 1 in", "yellow", "#e3b505", 16_50, 0),
		cloth(white, "White cloth, 1 in", "white", "#f4f4f4", 16_50, 1.5),
		cloth(green, "Green cloth, 1 in", "green", "#2e7d32", 16_50, 0),
		narrow("pink", "Pink spike, 1/2 in", "pink", "#e85d9e", supplies.Spikes, 1),
		narrow("figures", "Black spike, 1/2 in", "black", "#202020", supplies.Figures, 0),
		paper, clear,
	}
}
