package prep

import (
	"time"

	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

// daysToPrepare is how long before the first rehearsal prep week starts, until
// somebody says otherwise; startOfDay is the hour of that rehearsal.
const (
	daysToPrepare = 6
	startOfDay    = 10 * time.Hour
)

// New returns a production to start from: an empty plan, a room to be measured,
// the stage to hand on to, the usual tapes and the usual kit. first is the day of
// the first rehearsal, at any hour; zero leaves it open. newID makes identifiers
// that are never used again.
func New(title string, unit length.Unit, first time.Time, newID func() string) *Production {
	p := &Production{Settings: DefaultSettings()}
	p.Settings.Title = title
	p.Settings.Unit = string(unit)
	p.Settings.Step = length.DefaultStep(unit)
	if unit.Metric() {
		p.Settings.Paper, p.Settings.Currency, p.Settings.TapeLength = "A4", "€", 30
		p.Settings.Rules.Row, p.Settings.Rules.Chord = 0.15, 0.025 // not six inches and one
	}
	if !first.IsZero() {
		first = dayOf(first, 0)
		p.Settings.FirstRehearsal = first.Add(startOfDay)
		p.Settings.PrepStart = first.AddDate(0, 0, -daysToPrepare)
	}
	p.Plan.Title = title + ", ground plan"
	p.Plan.Scale = float64(length.UsualScale(unit))
	p.Plan.Baseline = plan.PlasterLine
	p.Floors = []floor.Floor{firstFloor(floor.ID(newID()), floor.Room), firstFloor(floor.ID(newID()), floor.Stage)}
	p.Stocks = supplies.StandardStocks(unit, newID)
	p.Items = supplies.StandardKit(unit, newID)
	return p
}

// firstFloor is a floor with which a production begins: of it nothing is known yet.
func firstFloor(id floor.ID, kind floor.Kind) floor.Floor {
	name := "Rehearsal room"
	if kind == floor.Stage {
		name = "Stage"
	}
	return floor.Floor{ID: id, Name: name, Kind: kind, Rule: floor.AskFirst, Side: floor.Outside}
}
