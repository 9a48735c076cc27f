package dxf_test

import (
	"strings"
	"testing"

	"groundrow/tapeout/drawing/linework"
)

// pairs turns "code value | code value" into the lines of a file.
func pairs(short string) string {
	var out strings.Builder
	for pair := range strings.SplitSeq(short, "|") {
		code, value, _ := strings.Cut(strings.TrimLeft(pair, " \n\t"), " ")
		out.WriteString(code + "\n" + strings.TrimRight(value, " \n\t") + "\n")
	}
	return out.String()
}

func section(name, short string) string {
	body := ""
	if short != "" {
		body = pairs(short)
	}
	return "0\nSECTION\n2\n" + name + "\n" + body + "0\nENDSEC\n"
}

const end = "0\nEOF\n"

func drawing(short string) string { return section("ENTITIES", short) + end }

func withBlocks(blocks, entities string) string {
	return section("BLOCKS", blocks) + drawing(entities)
}

// left returns how many things were left aside for a reason that holds the words.
func left(s *linework.Sheet, what, why string) int {
	n := 0
	for _, l := range s.Left {
		if strings.Contains(l.What, what) && strings.Contains(l.Why, why) {
			n += l.Count
		}
	}
	return n
}

func wantLength(t *testing.T, s *linework.Sheet, layer string, want float64) {
	t.Helper()
	compareLengths(t, map[string]float64{layer: lengthByLayer(s, every)[layer]}, map[string]float64{layer: want}, nil)
}
