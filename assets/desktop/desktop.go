// Package desktop holds what a desktop needs to know of the program: its icon,
// its entry in the menu, and the type of its files.
package desktop

import _ "embed"

var (
	// Icon is the program's icon, SVG: a spike mark and a strip of tape across a
	// centre line.
	//go:embed groundrow.svg
	Icon []byte

	// Entry is the desktop entry (freedesktop.org). Its Exec line has to name the
	// program where it lies.
	//go:embed groundrow.desktop
	Entry string

	// Mime declares *.groundrow as a type (freedesktop.org, shared MIME info).
	//go:embed groundrow.xml
	Mime []byte
)
