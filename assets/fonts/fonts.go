// Package fonts holds the typefaces of the window and of the paper, so that a
// length reads the same on both.
//
// DejaVu Sans Condensed is narrow enough for tables and has every sign that the
// program writes: fractions, primes, arrows, ticks, and the comparison signs.
// Its licence is in LICENSE-DejaVu.txt beside the files.
package fonts

import _ "embed"

// TrueType files, whole. Callers must not change them.
var (
	//go:embed DejaVuSansCondensed.ttf
	Regular []byte
	//go:embed DejaVuSansCondensed-Bold.ttf
	Bold []byte
	//go:embed DejaVuSansMono.ttf
	Mono []byte
)

// Licence is the text under which the fonts may be passed on.
//
//go:embed LICENSE-DejaVu.txt
var Licence string
