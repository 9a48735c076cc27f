package grid

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
)

func TestCellsReadsWhatSpreadsheetsCopy(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want [][]string
	}{
		"nothing":                {"", nil},
		"one cell":               {"7", [][]string{{"7"}}},
		"a block":                {"a\tb\r\nc\td\r\n", [][]string{{"a", "b"}, {"c", "d"}}},
		"an empty cell":          {"a\t\tc", [][]string{{"a", "", "c"}}},
		"a line break in quotes": {"\"two\nlines\"\tb\n", [][]string{{"two\nlines", "b"}}},
		"quotes doubled":         {"a\t\"say \"\"go\"\"\"", [][]string{{"a", `say "go"`}}},
		"feet and inches":        {"12' 6\"\t3'-0\"", [][]string{{`12' 6"`, `3'-0"`}}},
		"a blank line":           {"a\n\nb\n", [][]string{{"a"}, {""}, {"b"}}},
		"quotes on a later line": {"a\tb\n\"c\nd\"\te", [][]string{{"a", "b"}, {"c\nd", "e"}}},
		"a quote never closed":   {"\"a\tb\nc", [][]string{{"\"a", "b"}, {"c"}}},
		"inches only":            {"6 1/2\"", [][]string{{`6 1/2"`}}},
	} {
		t.Run(name, func(t *testing.T) {
			if got := Cells(c.text); !reflect.DeepEqual(got, c.want) {
				t.Errorf("Cells(%q) = %q, want %q", c.text, got, c.want)
			}
		})
	}
}

func FuzzCellsReadsWhatTextWrote(f *testing.F) {
	for _, s := range []string{"a", "12' 6\"", "two\nlines", "\"", "a\tb", "\r\n", "“½”"} {
		f.Add(s, "x")
		f.Add("x", s)
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		if strings.ContainsRune(a+b, '\r') {
			t.Skip("line ends are made alike on purpose")
		}
		want := [][]string{{a, b}, {b}, {"", a}, {"end", "."}}
		if got := Cells(Text(want)); !reflect.DeepEqual(got, want) {
			t.Errorf("read back %q, want %q", got, want)
		}
	})
}

func TestCopyTakesTheCellOrTheSelectedRows(t *testing.T) {
	s := newSheet(t, "A", "B", "C")
	s.click("rB", 1, 0)
	s.g.body.TypedShortcut(&fyne.ShortcutCopy{})
	if got := fyne.CurrentApp().Clipboard().Content(); got != "20" {
		t.Errorf("copied %q", got)
	}
	s.click("rC", 1, fyne.KeyModifierShift)
	s.g.body.TypedShortcut(&fyne.ShortcutCopy{})
	if got := fyne.CurrentApp().Clipboard().Content(); got != "B\t20\twall\t\t1\nC\t30\twall\t\t1\n" {
		t.Errorf("copied %q", got)
	}
}

func TestPasteWritesCellsAndSaysWhatItCouldNot(t *testing.T) {
	s := newSheet(t, "A", "B")
	s.refuse = func(text string) error {
		if text == "many" {
			return errors.New("“many” is not a number")
		}
		return nil
	}
	s.g.Sort(1, true) // B, A: each edit may sort the rows anew
	s.click("rB", 1, 0)
	fyne.CurrentApp().Clipboard().SetContent("1\tdoor\tx\nmany\twall\t\n5\twall\t\n")
	s.g.body.TypedShortcut(&fyne.ShortcutPaste{})
	if s.cell("rB", 1) != "1" || s.cell("rB", 2) != "door" || s.cell("rB", 3) != On {
		t.Errorf("row B is %v", s.g.rows[s.g.byID["rB"]].Cells)
	}
	want := "5 of 9 cells pasted. Count, row 2: “many” is not a number. 3 fell outside the table: add rows first."
	if got := s.g.Said(); got != want {
		t.Errorf("said %q, want %q", got, want)
	}
}

func TestWordsThatTheToolRowCannotHoldAreShownWhole(t *testing.T) {
	s := newSheet(t, "A")
	s.click("rA", 0, 0)
	long := strings.Repeat("Many things went wrong. ", 10)
	s.g.Say(long)
	if !s.g.note.box.Visible() || s.g.note.words.Text != long {
		t.Errorf("the note says %q, visible %v", s.g.note.words.Text, s.g.note.box.Visible())
	}
	s.g.Say("")
	if s.g.note.box.Visible() {
		t.Error("the note outlived the words")
	}
}

func TestOneValueFillsTheSelectedRows(t *testing.T) {
	s := newSheet(t, "A", "B", "C")
	s.click("rA", 1, 0)
	s.click("rB", 1, fyne.KeyModifierShift)
	s.g.paste("4")
	if s.cell("rA", 1) != "4" || s.cell("rB", 1) != "4" || s.cell("rC", 1) != "30" {
		t.Errorf("cells %q %q %q", s.cell("rA", 1), s.cell("rB", 1), s.cell("rC", 1))
	}
}

func TestPasteIsHandedOverWhole(t *testing.T) {
	s := newSheet(t, "A")
	var got [][]string
	s.g.OnPaste = func(cells [][]string, row string, col int) { got = cells }
	s.click("rA", 1, 0)
	s.g.paste("1\t2")
	if !reflect.DeepEqual(got, [][]string{{"1", "2"}}) || len(s.edits) != 0 {
		t.Errorf("got %v, edits %v", got, s.edits)
	}
}
