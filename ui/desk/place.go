// Package desk is what all places of the window share: the open production, the
// floor and scene that are looked at, what is selected, and the one way to
// change anything.
package desk

import "fyne.io/fyne/v2"

// Name is one place of the window, in plain words.
type Name string

// The places, in the order of the job.
const (
	Week     Name = "Week"
	Plan     Name = "Plan"
	Floors   Name = "Floors"
	Marks    Name = "Marks"
	Tape     Name = "Tape"
	Supplies Name = "Supplies"
	Crew     Name = "Crew"
	StandIns Name = "Stand-ins"
	Transfer Name = "Transfer"
	Paper    Name = "Paper"
)

// Names in the order of the rail.
var Names = []Name{Week, Plan, Floors, Marks, Tape, Supplies, Crew, StandIns, Transfer, Paper}

// Place is one page of the window. It builds its widgets once and sets them from
// a view; it never keeps what a view holds.
type Place interface {
	Name() Name
	Content() fyne.CanvasObject
	Show(v *View)
}

// Zoomer is a place with a picture that can be enlarged.
type Zoomer interface {
	Zoom(by float64) // above one enlarges
	Fit()
}

// Finder is a place in which something can be looked for.
type Finder interface{ Find() }

// Adder is a place to which something can be added; it opens the new row or
// starts the drawing of it.
type Adder interface{ Add() }

// Remover is a place in which what is selected can be deleted.
type Remover interface{ Remove() }

// Duplicator is a place in which what is selected can be duplicated.
type Duplicator interface{ Duplicate() }

// Copier is a place whose selection can be copied as tab-separated text.
type Copier interface{ Copy() string }
