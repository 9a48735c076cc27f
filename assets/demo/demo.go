// Package demo is the production that shows the program: an invented musical at
// an invented playhouse. Its plan is written in feet, as it would be read off
// the designer's drawing with a scale rule; every figure in it is invented.
package demo

import (
	"time"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/marks"
)

// Name is the file name under which the demo is written.
const Name = "The Lantern House.groundrow"

// Production returns the demo with its first rehearsal six days after today, so
// that it always shows a prep week under way.
func Production(today time.Time) *prep.Production {
	day := time.Date(today.Year(), today.Month(), today.Day(), 0, 0, 0, 0, today.Location())
	s := prep.DefaultSettings()
	s.Title = "The Lantern House"
	s.Company = "Tidewrack Playhouse"
	s.Contact = "Ines Marlowe, production stage manager, extension 214"
	s.PrepStart = day.AddDate(0, 0, -1)
	s.FirstRehearsal = day.AddDate(0, 0, 6).Add(10 * time.Hour)
	s.BudgetCents = 450_00
	s.Rules.SkipIO = true
	s.Unit = string(length.FeetInches)

	b := &builder{p: &prep.Production{Settings: s}, first: s.FirstRehearsal, start: s.PrepStart}
	b.scenes()
	b.stocks()
	b.house()
	b.set()
	b.quay()
	b.upstairs()
	b.furniture()
	b.floors()
	b.measureHall()
	b.team()
	b.standIns()
	b.shelf()
	b.p.DanceLines = []marks.DanceLine{
		{
			ID: id("dance line room"), Floor: roomID, Name: "Stage edge", Up: ft(-4),
			Step: ft(2), Unit: ft(1), Reach: ft(18), Habit: marks.Numbers,
		},
		{
			ID: id("dance line stage"), Floor: stageID, Name: "Stage edge", Up: ft(1),
			Step: ft(2), Unit: ft(1), Reach: ft(18), Habit: marks.Numbers,
		},
	}
	b.begun()
	return b.p
}
