package drawing

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"groundrow/tapeout/plan"
)

// offered joins the words of a list as a message names them.
func offered[W ~string](words []W) string {
	all := make([]string, len(words))
	for i, w := range words {
		all[i] = string(w)
	}
	return strings.Join(all, ", ")
}

// word finds the one of words that text means: it, or one of the names that it
// joins with "or", as wall or flat does.
func word[W ~string](text string, words []W) (W, bool) {
	text = key(text)
	for _, w := range words {
		if text == string(w) {
			return w, true
		}
	}
	for _, w := range words {
		for _, name := range strings.Split(string(w), " or ") {
			if text == name {
				return w, true
			}
		}
	}
	return "", false
}

// yes reads whether a path is closed.
func yes(text string) (closed, ok bool) {
	switch key(text) {
	case "yes", "y", "true", "1", "x", "closed":
		return true, true
	case "no", "n", "false", "0", "open":
		return false, true
	}
	return false, false
}

// decimal reads a plain number, with a point or a comma for the decimals.
func decimal(text string) (float64, bool) {
	text = strings.ReplaceAll(strings.TrimSpace(text), ",", ".")
	v, err := strconv.ParseFloat(strings.Replace(text, "−", "-", 1), 64)
	return v, err == nil && !math.IsInf(v, 0) && !math.IsNaN(v)
}

// curveKind is how a line goes on from a point.
type curveKind int

// Kinds of curve, as the package comment has them.
const (
	straight curveKind = iota
	through
	bulged
	circle
)

// curve is a cell of the column curve.
type curve struct {
	kind  curveKind
	bulge float64
	size  string // the radius of a circle, not read yet
}

// maxBulge bounds an arc: beyond it the arc is a full circle but for the 50th
// part of a degree or so, and a circle is meant.
const maxBulge = 10_000

const curveWanted = "nothing, through, bulge 0.4142, or circle with its radius"

// readCurve reads a cell of the column curve; why is empty when it can be used.
func readCurve(text string) (c curve, why string) {
	first, rest, _ := strings.Cut(tidy(text), " ")
	switch key(first) {
	case "", "straight":
		return c, ""
	case "through":
		return curve{kind: through}, ""
	case "circle":
		return curve{kind: circle, size: rest}, ""
	case "bulge":
		b, ok := decimal(rest)
		switch {
		case !ok:
			return c, "the number after bulge is not one"
		case math.Abs(b) > maxBulge:
			return c, fmt.Sprintf("a bulge goes up to %d", maxBulge)
		}
		return curve{kind: bulged, bulge: b}, ""
	}
	return c, "the word is not known"
}

// kindOf returns the kind that a row states.
func kindOf(text string) (plan.Kind, bool) { return word(text, plan.Kinds) }
