package sense

import (
	"strings"
	"unicode"

	"groundrow/tapeout/plan"
)

// tokens splits a name of a layer or block, or a text, into lower-case words:
// S-WALL_New reads s, wall, new, and StageLeft reads stage, left.
func tokens(text string) []string {
	var out []string
	var word []rune
	flush := func() {
		if len(word) > 0 {
			out = append(out, strings.ToLower(string(word)))
			word = word[:0]
		}
	}
	var last rune
	for _, r := range text {
		switch {
		case !unicode.IsLetter(r):
			flush()
		case unicode.IsUpper(r) && unicode.IsLower(last):
			flush()
			word = append(word, r)
		default:
			word = append(word, r)
		}
		last = r
	}
	flush()
	return out
}

// hasWord tells whether any of the words is among the tokens, in the singular or
// plural.
func hasWord(ts []string, words ...string) bool {
	for _, t := range ts {
		for _, w := range words {
			if t == w || t == w+"s" || t == w+"es" {
				return true
			}
		}
	}
	return false
}

// hasPhrase tells whether the words of the phrase follow each other in the tokens.
func hasPhrase(ts []string, phrase string) bool {
	return strings.Contains(" "+strings.Join(ts, " ")+" ", " "+phrase+" ")
}

// kindWords are the words by which drawings name what an element is, the more
// telling kinds first: an escape stair is a stair too, and a door stands in a wall.
var kindWords = []struct {
	kind  plan.Kind
	words []string
}{
	{plan.EscapeStair, []string{"escape"}},
	{plan.Stair, []string{"stair", "step", "tread", "staircase", "stairway"}},
	{plan.Door, []string{"door", "doorway"}},
	{plan.Window, []string{"window", "win"}},
	{plan.Opening, []string{"opening", "arch", "archway"}},
	{plan.Proscenium, []string{"proscenium", "pros"}},
	{plan.ApronEdge, []string{"apron"}},
	{plan.Revolve, []string{"revolve", "turntable"}},
	{plan.Wagon, []string{"wagon", "truck", "palette", "pallet"}},
	{plan.Track, []string{"track"}},
	{plan.Trap, []string{"trap"}},
	{plan.Ramp, []string{"ramp"}},
	{plan.Platform, []string{"platform", "plat", "riser", "deck", "rostrum", "rostra", "dais"}},
	{plan.Masking, []string{"masking", "leg", "tormentor", "black", "traveller", "traveler", "drape", "curtain", "drop", "scrim", "cyc", "cyclorama"}},
	{plan.Furniture, []string{"furniture", "furn", "prop", "chair", "armchair", "sofa", "settee", "couch", "table", "bed", "desk", "bench", "stool", "lamp", "piano", "dresser", "wardrobe", "bookcase", "cabinet"}},
	{plan.SideWall, []string{"house", "building", "architecture", "theatre", "theater", "auditorium"}},
	{plan.Wall, []string{"wall", "flat", "return"}},
}

// kindOf returns the kind that the words of a name tell, and the word.
func kindOf(name string) (kind plan.Kind, word string, ok bool) {
	ts := tokens(name)
	for _, k := range kindWords {
		for _, w := range k.words {
			if hasWord(ts, w) {
				return k.kind, w, true
			}
		}
	}
	return "", "", false
}
