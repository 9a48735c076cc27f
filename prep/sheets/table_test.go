package sheets

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
	"testing"

	"groundrow/tapeout/floor"
)

func TestRowHigherThanAPageRunsOnAndLosesNothing(t *testing.T) {
	var words []string
	for i := range 3000 {
		words = append(words, fmt.Sprintf("word%04d", i))
	}
	j := richJob(Letter)
	j.P.Notes[0].Text = strings.Join(words, " ")
	count := wordsOf(t, pdf(t, Questions, j))
	for _, w := range words {
		if count[w] == 0 {
			t.Fatalf("the sheet lost %s", w)
		}
	}
	if n := Pages(Questions, j); n < 3 || n > 60 {
		t.Errorf("%d pages", n)
	}
}

func TestTitlesAreRepeatedOnEachPage(t *testing.T) {
	j := richJob(Letter)
	n := Pages(UpOver, j)
	if n < 2 {
		t.Fatalf("%d pages, want several", n)
	}
	if got := strings.Count(textOf(t, pdf(t, UpOver, j)), "what it is"); got != n {
		t.Errorf("titles on %d of %d pages", got, n)
	}
}

// The placing of rows is followed with a press whose page breaks can be seen.
func TestRowsAreNotSplitAndGroupsKeepTheirTitle(t *testing.T) {
	tb := table{Columns: []column{{Title: "a", Flex: true}, {Title: "b", Kind: tick}}}
	for i := range 60 {
		if i%4 == 0 {
			tb.Rows = append(tb.Rows, span(fmt.Sprintf("group %d", i/4)))
		}
		tb.Rows = append(tb.Rows, cells(strings.Repeat(fmt.Sprintf("row%02d ", i), 40), ""))
	}
	p := newPress(A4, printed)
	tb.set(p)
	if p.pdf.PageCount() < 3 {
		t.Fatalf("%d pages, want several", p.pdf.PageCount())
	}
	var b bytes.Buffer
	if err := p.pdf.Output(&b); err != nil {
		t.Fatal(err)
	}
	for i, page := range strings.Split(textOf(t, b.Bytes()), "\f") {
		lines := strings.Split(strings.TrimSpace(page), "\n")
		if last := strings.TrimSpace(lines[len(lines)-1]); strings.HasPrefix(last, "group") {
			t.Errorf("page %d ends with the title %q", i+1, last)
		}
		for r := range 60 {
			if got := strings.Count(page, fmt.Sprintf("row%02d", r)); got != 0 && got != 40 {
				t.Errorf("page %d holds %d of 40 words of row %d", i+1, got, r)
			}
		}
	}
}

func TestAGroupThatGoesOnSaysItsTitleOnEveryPage(t *testing.T) {
	tb := table{Columns: []column{{Title: "a", Flex: true}}, Rows: []row{span("Ines Holt")}}
	for range 150 {
		tb.Rows = append(tb.Rows, cells("called"))
	}
	p := newPress(A4, printed)
	tb.set(p)
	var b bytes.Buffer
	if err := p.pdf.Output(&b); err != nil {
		t.Fatal(err)
	}
	pages := p.pdf.PageCount()
	if got := strings.Count(textOf(t, b.Bytes()), "Ines Holt, continued"); pages < 3 || got != pages-1 {
		t.Errorf("the title is said again %d times on %d pages", got, pages)
	}
}

func TestColumnsFillThePageAndKeepFiguresWhole(t *testing.T) {
	tests := []struct {
		name string
		t    table
	}{
		{"few figures", table{Columns: []column{{Title: "a", Align: right}, {Title: "b", Align: right}}, Rows: []row{cells("1", "2")}}},
		{"long text", table{Columns: []column{{Title: "figure", Align: right, Type: floorType}, {Title: "text", Flex: true}}, Rows: []row{cells(`12' 10 15/16"`, strings.Repeat("long ", 200))}}},
		{"many columns", purchaseTable(rich(), richJob(A4).work().Tape)},
		{"placing list", upOverTable(rich(), richJob(A4).work())},
	}
	const page = 186.0
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			widths := tt.t.widths(page)
			sum := 0.0
			for i, w := range widths {
				sum += w
				for _, r := range tt.t.Rows {
					c := tt.t.Columns[i]
					if c.Align == right && !r.Span && len(wrap(r.cell(i), c.type_(r), w-2*cellPad)) > 1 {
						t.Errorf("the figure %q is broken over lines", r.cell(i))
					}
				}
			}
			if sum > page+1e-6 {
				t.Errorf("columns are %.2f mm wide together, the page has %.2f", sum, page)
			}
		})
	}
}

func TestWrapKeepsEveryWordWithinTheWidth(t *testing.T) {
	text := "A few plain words, one Donaudampfschifffahrtsgesellschaft,\nand a line\n\nof its own " + strings.Repeat("x", 300)
	for _, w := range []float64{5, 20, 60, 500} {
		lines := wrap(text, bodyType, w)
		for _, l := range lines {
			if len([]rune(l)) > 1 && bodyType.width(l) > w+1e-9 {
				t.Errorf("at %g mm a line is %.2f mm wide: %q", w, bodyType.width(l), l)
			}
		}
		if got, want := strings.Join(strings.Fields(strings.Join(lines, "")), ""), strings.Join(strings.Fields(text), ""); got != want {
			t.Errorf("at %g mm text was lost: %q", w, got)
		}
	}
	if got := wrap("", bodyType, 50); len(got) != 1 {
		t.Errorf("empty text has %d lines, want one", len(got))
	}
}

func TestCleanLeavesATraceOfWhatCannotBeShown(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "Kitchen wall", "Kitchen wall"},
		{"fractions and primes", `12′ 6½″`, `12′ 6½″`},
		{"controls become spaces", "a\tb\x00c", "a b c"},
		{"emoji becomes a box", "a🎭b", "a□b"},
		{"joiners go", "a\u200db\ufe0f", "ab"},
		{"broken encoding becomes a box", "a\xffb", "a□b"},
		{"right to left is set in the order of drawing", "ab אבג", "ab גבא"},
		{"right to left first, with a space", "אבג ab", "גבא ab"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := clean(tt.in); got != tt.want {
				t.Errorf("clean(%q) = %q, want %q", tt.in, got, tt.want)
			}
		})
	}
}

func FuzzCleanedTextCanBeSet(f *testing.F) {
	for _, s := range []string{"", "Kitchen wall", "קיר 12 two", "🎭", "\x00\xff", "á\u0301", "\u202e\u2066x", "½″\r\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		have := advances()
		for _, r := range clean(s) {
			if r >= 1<<16 || !have.has(r) {
				t.Errorf("clean(%q) holds %q, which the typeface lacks", s, r)
			}
		}
		if lines := wrap(s, floorType, 30); len(lines) == 0 {
			t.Error("no line")
		}
	})
}

// RFC 4180: records end with CRLF; a field with a comma, a quote or a line break
// is quoted, and its quotes are doubled.
func TestCSVIsReadBackWhole(t *testing.T) {
	for _, s := range All() {
		if !s.Table {
			continue
		}
		t.Run(string(s.Kind), func(t *testing.T) {
			j := richJob(A4)
			j.P.Plan.Elements[0].Name = "Wall, \"kitchen\"\nupper"
			var b bytes.Buffer
			if err := WriteCSV(&b, s.Kind, j); err != nil {
				t.Fatal(err)
			}
			if strings.Contains(strings.ReplaceAll(b.String(), "\r\n", ""), "\r") {
				t.Error("a line ends with CR alone")
			}
			r := csv.NewReader(&b)
			r.FieldsPerRecord = -1
			records, err := r.ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			if len(records) < 2 {
				t.Errorf("only %d records", len(records))
			}
		})
	}
}

func TestCSVOfThePlacingListHoldsEveryMark(t *testing.T) {
	j := richJob(A4)
	var b bytes.Buffer
	if err := WriteCSV(&b, UpOver, j); err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got, want := strings.Join(records[0], ","), "group,mark,up,side,over,what it is,within,use,placed,checked"; got != want {
		t.Errorf("titles %q, want %q", got, want)
	}
	if got, want := len(records)-1, len(j.work().Marks); got != want {
		t.Errorf("%d records, want %d", got, want)
	}
	if got := records[1]; got[1] != "A" || got[8] != "yes" || got[9] != "yes" {
		t.Errorf("the placed and checked mark A reads %q", got)
	}
}

func TestSpreadsheetFormulasAreMadeHarmless(t *testing.T) {
	tests := []struct{ in, want string }{
		{`=HYPERLINK("x")`, `'=HYPERLINK("x")`},
		{"+1+1", "'+1+1"},
		{"-2+3", "'-2+3"},
		{"@SUM(A1)", "'@SUM(A1)"},
		{"\t=1", "'\t=1"},
		{"  =1", "'  =1"},
		{"-12.5", "-12.5"},
		{"Wall = north", "Wall = north"},
		{"", ""},
	}
	for _, tt := range tests {
		t.Run(tt.in, func(t *testing.T) {
			if got := harmless([]string{tt.in})[0]; got != tt.want {
				t.Errorf("harmless(%q) = %q, want %q", tt.in, got, tt.want)
			}
		})
	}
}

func TestCareNamesWhatAppliesAndNothingElse(t *testing.T) {
	j := richJob(A4)
	text := fmt.Sprint(care(j).blocks)
	for _, want := range []string{"North exit", "Only tapes that the owner has agreed", "Landing", "Revolve", "Cellar trap", "Flat on a rack", "knee pads"} {
		if !strings.Contains(text, want) {
			t.Errorf("care lacks %q", want)
		}
	}
	if strings.Contains(text, "Escape stair") {
		t.Error("care speaks of what is left out")
	}
	j.P.Floors[0].Rule = floor.NoTape
	if text := fmt.Sprint(care(j).blocks); !strings.Contains(text, "allows no tape") || strings.Contains(text, "hidden patch") {
		t.Error("a floor that takes no tape is to be tested with tape")
	}
}
