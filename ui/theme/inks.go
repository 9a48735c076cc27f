package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"
)

// Ink names a meaning on the floor canvas. A picture is made of inks and not of
// colours, so that it is the same picture by day and by night.
type Ink uint8

// The inks.
const (
	Line          Ink = iota // set as drawn
	FaintLine                // what belongs to another scene, level or floor
	Wall                     // walls of the room or the house
	Obstacle                 // columns and whatever cannot be stood on
	KeepClear                // hatch of what must stay free
	Outside                  // hatch of what does not fit on the floor
	Label                    // words
	FaintLabel               // words of lesser rank
	Datum                    // centre line and baseline
	Grid                     // fine grid
	GridMajor                // every few lines of it
	Selection                // what is selected: the accent
	SelectionWash            // the broad band under what is selected
	Hover                    // what the pointer is over
	Paper                    // the sheet itself
	Ruler                    // the strips along the edges
	RulerText                // figures on them
	AudienceBand             // the strip that says where the audience is
	Care                     // something to look at
	Wrong                    // something that does not work
	Done                     // something settled
	inkCount
)

var dayInks = [inkCount]color.NRGBA{
	Line: rgb(0x1E2428), FaintLine: rgb(0xA29E93), Wall: rgb(0x3A332B), Obstacle: rgb(0x5E5548),
	KeepClear: rgb(0xA06A1C), Outside: rgb(0xA32626),
	Label: rgb(0x22272B), FaintLabel: rgb(0x5C5F5E), Datum: rgb(0x3C6C93),
	Grid: rgb(0xEEEADF), GridMajor: rgb(0xDDD7C8),
	Selection: day.accent, SelectionWash: rgb(0xBFDFDA), Hover: rgb(0x2F8F88),
	Paper: rgb(0xFBF9F3), Ruler: rgb(0xEFECE4), RulerText: rgb(0x4A4D4C), AudienceBand: rgb(0xE3DED2),
	Care: day.care, Wrong: day.wrong, Done: day.done,
}

var nightInks = [inkCount]color.NRGBA{
	Line: rgb(0xE6E1D6), FaintLine: rgb(0x656B6A), Wall: rgb(0xC9BCA4), Obstacle: rgb(0xA0957F),
	KeepClear: rgb(0xC9974A), Outside: rgb(0xE07A6C),
	Label: rgb(0xEDE9E0), FaintLabel: rgb(0xA5A79F), Datum: rgb(0x7FB2DC),
	Grid: rgb(0x1E2425), GridMajor: rgb(0x2C3435),
	Selection: night.accent, SelectionWash: rgb(0x24504C), Hover: rgb(0xA4E3DA),
	Paper: rgb(0x15191A), Ruler: rgb(0x1D2122), RulerText: rgb(0xB4B5AD), AudienceBand: rgb(0x2E3435),
	Care: night.care, Wrong: night.wrong, Done: night.done,
}

// Inks gives every ink its colour in one variant.
type Inks struct{ of *[inkCount]color.NRGBA }

// InksFor returns the inks of a variant.
func InksFor(v fyne.ThemeVariant) Inks {
	if v == base.VariantDark {
		return Inks{&nightInks}
	}
	return Inks{&dayInks}
}

// CurrentInks returns the inks of what the running program shows.
func CurrentInks() Inks {
	s := fyne.CurrentApp().Settings()
	v := s.ThemeVariant()
	if t, ok := s.Theme().(Theme); ok {
		v = t.Variant(v)
	}
	return InksFor(v)
}

// Colour returns the opaque colour of an ink; an unknown ink is a plain line.
// The zero Inks are those by day.
func (s Inks) Colour(i Ink) color.NRGBA {
	if s.of == nil {
		s.of = &dayInks
	}
	if i >= inkCount {
		i = Line
	}
	return s.of[i]
}
