package dxf_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
)

func TestFilesThatAreRefused(t *testing.T) {
	line := drawing("0 LINE|8 A|11 5")
	for _, c := range []struct {
		name, file string
		reason     error
		words      string
	}{
		{"empty", "", linework.ErrNotThatFormat, "empty"},
		{"blank", " \n\n", linework.ErrNotThatFormat, "empty"},
		{"binary", "AutoCAD Binary DXF\r\n\x1a\x00\x00SECTION", linework.ErrUnsupported, "binary DXF"},
		{"a DWG", "AC1032\x00\x00\x00", linework.ErrNotThatFormat, "DWG"},
		{"a PDF", "%PDF-1.7\n", linework.ErrNotThatFormat, "PDF"},
		{"UTF-16", "\xff\xfe0\x00\n\x00", linework.ErrUnsupported, "UTF-16"},
		{"no text", "0\nSECTION\x00", linework.ErrNotThatFormat, "not text"},
		{"prose", "Dear stage manager,\nhere is the plan.\n", linework.ErrNotThatFormat, "does not begin"},
		{"numbers", "1\n2\n3\n4\n", linework.ErrNotThatFormat, "does not begin"},
		{"cut in a section", line[:len(line)-20], linework.ErrDamaged, "cut short"},
		{"cut in a pair", section("ENTITIES", "") + "0\nSECTION\n2", linework.ErrDamaged, "pair"},
		{"cut in the header", "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n", linework.ErrDamaged, "cut short"},
		{"a lost line", section("ENTITIES", "0 LINE") + "SECTION\n0\n", linework.ErrDamaged, "group code"},
		{"a section that is not closed", "0\nSECTION\n2\nENTITIES\n0\nSECTION\n2\nOBJECTS\n0\nENDSEC\n0\nEOF\n", linework.ErrDamaged, "not closed"},
		{"a section without a name", "0\nSECTION\n0\nENDSEC\n0\nEOF\n", linework.ErrDamaged, ""},
		{"an endless line", section("ENTITIES", "0 TEXT|1 "+strings.Repeat("x", 300<<10)), linework.ErrDamaged, "longer than any"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := dxf.Read(context.Background(), strings.NewReader(c.file), 0.001, nil)
			var fault *linework.Fault
			if !errors.As(err, &fault) {
				t.Fatalf("got %v", err)
			}
			if c.name == "a section without a name" {
				return // which of the reasons does not matter
			}
			if !errors.Is(err, c.reason) || !strings.Contains(err.Error(), c.words) || fault.Do == "" {
				t.Errorf("got %v (%v)", err, fault.Reason)
			}
		})
	}
}

func TestFilesThatAreOddButRead(t *testing.T) {
	for _, c := range []struct{ name, file string }{
		{"UNIX line ends", drawing("0 LINE|8 A|11 5")},
		{"DOS line ends", strings.ReplaceAll(drawing("0 LINE|8 A|11 5"), "\n", "\r\n")},
		{"blanks around codes", strings.ReplaceAll(drawing("0 LINE|8 A|11 5"), "\n11\n", "\n  11 \n")},
		{"a byte order mark", "\xef\xbb\xbf" + drawing("0 LINE|8 A|11 5")},
		{"a comment first", "999\nmade by hand\n" + drawing("0 LINE|8 A|11 5")},
		{"comments in an entity", drawing("0 LINE|999 note|8 A|999 note|11 5")},
		{"no end mark", section("ENTITIES", "0 LINE|8 A|11 5")},
		{"blank lines at the end", drawing("0 LINE|8 A|11 5") + "\n\n\n"},
		{"no line end at the end", strings.TrimSpace(drawing("0 LINE|8 A|11 5"))},
		{"a blank line instead of the end mark", section("ENTITIES", "0 LINE|8 A|11 5") + "\n  \n"},
		{"blocks after entities", drawingThenBlocks("0 INSERT|2 B|8 A", "0 BLOCK|2 B|0 LINE|8 0|11 5|0 ENDBLK")},
		{"extended data with the same codes", drawing("0 LINE|8 A|11 5|1001 APP|1010 99|102 {APP|11 77|102 }")},
		{"whole numbers with a point", drawing("0 LWPOLYLINE|8 A|70 0.0|90 2|10 0|20 0|10 5|20 0")},
	} {
		t.Run(c.name, func(t *testing.T) {
			wantLength(t, mustRead(t, c.file), "A", 5)
		})
	}
}

func drawingThenBlocks(entities, blocks string) string {
	return section("ENTITIES", entities) + section("BLOCKS", blocks) + end
}

func TestReadStopsWhenCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for name, file := range map[string]string{
		"reading": drawing(strings.Repeat("0 LINE|11 1|", 5000) + "0 LINE|11 1"),
		"placing": withBlocks("0 BLOCK|2 B|"+strings.Repeat("0 LINE|11 1|", 100)+"0 ENDBLK", "0 INSERT|2 B|70 10|71 10"),
	} {
		if _, err := dxf.Read(ctx, strings.NewReader(file), 0.001, nil); !errors.Is(err, context.Canceled) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func TestReadPassesOnWhatTheReaderSays(t *testing.T) {
	broken := errors.New("the stick was pulled out")
	for name, r := range map[string]io.Reader{
		"at once": iotest.ErrReader(broken),
		"later":   io.MultiReader(strings.NewReader(section("HEADER", "9 $ACADVER|1 AC1009")), iotest.ErrReader(broken)),
	} {
		if _, err := dxf.Read(context.Background(), r, 0.001, nil); !errors.Is(err, broken) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func TestProgressGrowsToOne(t *testing.T) {
	file := drawing(strings.Repeat("0 LINE|11 1|", 30_000) + "0 LINE|11 1")
	f, err := os.Create(filepath.Join(t.TempDir(), "long.dxf"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := f.WriteString(file); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		t.Fatal(err)
	}
	for name, r := range map[string]io.Reader{"a file": f, "memory": strings.NewReader(file)} {
		last, calls := 0.0, 0
		_, err := dxf.Read(context.Background(), r, 0.001, func(done float64) {
			if done < last || done > 1 {
				t.Errorf("%s: %v after %v", name, done, last)
			}
			last = done
			calls++
		})
		if err != nil || last != 1 || calls < 10 {
			t.Errorf("%s: ended at %v after %d calls, %v", name, last, calls, err)
		}
	}
}

// chain is n blocks, each of which places the next one several times.
func chain(n, times int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "0 BLOCK|2 B%d|", i)
		for range times {
			fmt.Fprintf(&b, "0 INSERT|2 B%d|", i+1)
		}
		b.WriteString("0 ENDBLK|")
	}
	fmt.Fprintf(&b, "0 BLOCK|2 B%d|0 LINE|8 A|11 1|0 ENDBLK", n)
	return b.String()
}

func TestBlocksWithoutEnd(t *testing.T) {
	for _, c := range []struct {
		name, blocks string
		what, why    string
	}{
		{"ten times ten times ten", chain(20, 10), "INSERT B0", "more than"},
		{"deep", chain(100, 1), "INSERT", "nested more than"},
		{"very deep", chain(20_000, 1), "INSERT", "nested more than"},
		{"a ring", chain(3, 1) + "|0 BLOCK|2 B3|0 INSERT|2 B0|0 ENDBLK", "INSERT", "contains itself"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustRead(t, withBlocks(c.blocks, "0 INSERT|2 B0|0 LINE|8 GOOD|11 3"))
			if left(s, c.what, c.why) == 0 {
				t.Errorf("left aside: %v", s.Left)
			}
			wantLength(t, s, "GOOD", 3)
		})
	}
}

func TestNestedAsDeepAsAnyoneDraws(t *testing.T) {
	s := mustRead(t, withBlocks(chain(30, 1), "0 INSERT|2 B0"))
	wantLength(t, s, "A", 1)
}

// Many inserts, each of which is allowed, do not add up to more than memory or time.
func TestDrawingsThatAreTooLarge(t *testing.T) {
	block := "0 BLOCK|2 B|" + strings.Repeat("0 LINE|11 1|", 400) + "0 ENDBLK"
	nothing := "0 BLOCK|2 B|" + strings.Repeat("0 LINE|11 0|", 400) + "0 ENDBLK"
	many := strings.Repeat("0 INSERT|2 B|70 30|71 30|", 60) + "0 INSERT|2 B"
	for name, file := range map[string]string{
		"lines":   withBlocks(block, many),
		"nothing": withBlocks(nothing, many),
	} {
		_, err := dxf.Read(context.Background(), strings.NewReader(file), 0.001, nil)
		if !errors.Is(err, linework.ErrTooLarge) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func TestAMillionLines(t *testing.T) {
	if testing.Short() {
		t.Skip("it takes a while")
	}
	one := []byte(pairs("0 LINE|8 A|10 0|20 0|11 1|21 0"))
	body := bytes.Repeat(one, 1_000_000)
	file := io.MultiReader(strings.NewReader("0\nSECTION\n2\nENTITIES\n"), bytes.NewReader(body), strings.NewReader("0\nENDSEC\n"+end))
	s, err := dxf.Read(context.Background(), file, 0.001, nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Items) != 1_000_000 {
		t.Errorf("got %d items", len(s.Items))
	}
}

func TestOneEntityLargerThanAnyIsLeftAside(t *testing.T) {
	if testing.Short() {
		t.Skip("it takes a while")
	}
	vertex := strings.NewReader(strings.Repeat("10\n0\n20\n0\n", 2_100_000))
	file := io.MultiReader(strings.NewReader("0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n"), vertex, strings.NewReader(pairs("0 LINE|8 A|11 5")+"0\nENDSEC\n"+end))
	s, err := dxf.Read(context.Background(), file, 0.001, nil)
	if err != nil {
		t.Fatal(err)
	}
	if left(s, "LWPOLYLINE", "larger") != 1 {
		t.Errorf("left aside: %v", s.Left)
	}
	wantLength(t, s, "A", 5)
}
