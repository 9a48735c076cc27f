package pdf_test

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// lettering is a page with a line, so that there is something to read, and words.
func lettering(words string, forms ...string) page {
	return page{resources: "/Font << " + fonts + ">>", drawing: oneLine + " " + words, forms: forms}
}

// fonts: F in its own encoding, whose ' is a quotation mark, and W in that of Windows.
const fonts = "/F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> " +
	"/W << /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >> "

func text(words string, x, y, size, turn float64) linework.Text {
	return linework.Text{Text: words, At: plane.Point{X: x, Y: y}, Height: size * 0.718, Turn: turn}
}

func TestWordsStandWhereTheyAreOnThePage(t *testing.T) {
	close := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < near })
	turned := math.Pi / 6
	for _, c := range []struct {
		name string
		page page
		want linework.Text
	}{
		{"as they are written", lettering("BT /F 10 Tf 100 700 Td (DOOR) Tj ET"), text("DOOR", 100, 700, 10, 0)},
		{"enlarged by their matrix", lettering("BT /F 1 Tf 12 0 0 12 100 700 Tm (DOOR) Tj ET"), text("DOOR", 100, 700, 12, 0)},
		{"turned", lettering("BT /F 10 Tf 0.8660254 0.5 -0.5 0.8660254 100 200 Tm (DOOR) Tj ET"), text("DOOR", 100, 200, 10, turned)},
		{"in a form", lettering("q 2 0 0 2 50 60 cm /F5 Do Q",
			form("1 0 0 1 10 10", "/Font << "+fonts+">>", "BT /F 10 Tf 40 50 Td (DOOR) Tj ET")), text("DOOR", 150, 180, 20, 0)},
		{"on a turned page", page{resources: "/Font << " + fonts + ">>", entries: "/Rotate 90",
			drawing: oneLine + " BT /F 10 Tf 0 1 -1 0 100 200 Tm (DOOR) Tj ET"}, text("DOOR", 200, 512, 10, 0)},
		{"letter by letter", lettering("BT /F 10 Tf 100 700 Td (D) Tj 7.22 0 Td (O) Tj 7.78 0 Td (O) Tj 7.78 0 Td (R) Tj ET"), text("DOOR", 100, 700, 10, 0)},
		{"word by word", lettering("BT /F 10 Tf 100 700 Td (STAGE) Tj 39 0 Td (DOOR) Tj ET"), text("STAGE DOOR", 100, 700, 10, 0)},
		{"with feet in the font's own encoding", lettering("BT /F 10 Tf 100 700 Td (1/4\" = 1'-0\") Tj ET"), text(`1/4" = 1'-0"`, 100, 700, 10, 0)},
		{"with feet in typesetter's quotation marks", lettering("BT /W 10 Tf 100 700 Td (1/4\x94 = 1\x92-0\x94) Tj ET"), text(`1/4" = 1'-0"`, 100, 700, 10, 0)},
		{"with quotation marks", lettering("BT /W 10 Tf 100 700 Td (\x93PILOT\x92S DOOR\x94) Tj ET"), text("“PILOT’S DOOR”", 100, 700, 10, 0)},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.want.Group = 0
			got := read(t, c.page.file()).Texts
			for i := range got {
				got[i].Group = 0
			}
			if diff := cmp.Diff([]linework.Text{c.want}, got, close); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestWordsThatDoNotGoOnStayApart(t *testing.T) {
	sheet := read(t, lettering("BT /F 10 Tf 100 700 Td (UP) Tj 80 0 Td (3) Tj 0 -12 Td (LEFT) Tj ET BT /F 6 Tf 100 650 Td (A) Tj ET").file())
	var got []string
	for _, w := range sheet.Texts {
		got = append(got, w.Text)
	}
	if want := []string{"UP", "3", "LEFT", "A"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestInvisibleWordsAreLeftAside(t *testing.T) {
	sheet := read(t, lettering("BT 3 Tr /F 10 Tf 100 700 Td (GUESSED) Tj ET").file())
	if len(sheet.Texts) != 0 || !leftAside(sheet, "invisible") {
		t.Errorf("got %v, left %v", sheet.Texts, sheet.Left)
	}
}
