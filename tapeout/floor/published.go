package floor

import "groundrow/tapeout/length"

// Published is a minimum width that somebody has published, shown for comparison
// beside the user's own requirement and never put in its place.
type Published struct {
	Width  float64 // metres
	What   string
	Source string
}

// PublishedWidths are common published minimums. The figures of the 2010 ADA Standards
// for Accessible Design were looked up in the sections named; those of the International
// Building Code are from memory.
var PublishedWidths = []Published{
	{32 * length.Inch, "clear at a door, its leaf at 90°", "2010 ADA Standards 404.2.3"},
	{36 * length.Inch, "an accessible way", "2010 ADA Standards 403.5.1"},
	{36 * length.Inch, "a corridor that serves fewer than 50 people", "International Building Code, chapter 10, 2021 section 1020.3, from memory"},
	{44 * length.Inch, "a corridor that serves 50 or more", "International Building Code, chapter 10, 2021 section 1020.3, from memory"},
}

// WidthCaution is what is said beside every published width.
const WidthCaution = "What holds here is what the local code, the room's owner and the fire authority say: measure it and ask them."
