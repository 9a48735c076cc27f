package pdf_test

import (
	"context"
	"errors"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf"
)

const oneLine = "100 200 m 400 250 l S"

func TestWhatIsNoPlanIsRefusedInWords(t *testing.T) {
	for _, c := range []struct {
		name   string
		data   []byte
		reason error
		says   string
	}{
		{"nothing", nil, linework.ErrNotThatFormat, "empty"},
		{"a letter", []byte("Dear designer, where is the plan?"), linework.ErrNotThatFormat, "not a PDF"},
		{"a zip renamed", []byte("PK\x03\x04 and so on"), linework.ErrNotThatFormat, "ZIP"},
		{"a header alone", []byte("%PDF-1.7\n"), linework.ErrDamaged, "damaged"},
		{"a page without lines", page{drawing: ""}.file(), pdf.ErrBlank, "nothing is drawn"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := engine.Read(context.Background(), c.data, 1, tolerance, nil)
			var fault *linework.Fault
			if !errors.As(err, &fault) || !errors.Is(err, c.reason) {
				t.Fatalf("it says %v", err)
			}
			if !strings.Contains(strings.ToLower(fault.Error()), strings.ToLower(c.says)) || fault.Do == "" {
				t.Errorf("it says %q", fault.Error())
			}
		})
	}
}

func TestPageThatIsNotThere(t *testing.T) {
	for _, n := range []int{0, -1, 2} {
		if _, err := engine.Read(context.Background(), page{drawing: oneLine}.file(), n, tolerance, nil); !errors.Is(err, pdf.ErrNoPage) {
			t.Errorf("page %d of one: %v", n, err)
		}
	}
}

func TestCancelledReadingStops(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := engine.Read(ctx, page{drawing: oneLine}.file(), 1, tolerance, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("it says %v", err)
	}
}

// qpdf locks the file as a careful sender would.
func TestLockedFileSaysSo(t *testing.T) {
	if _, err := exec.LookPath("qpdf"); err != nil {
		t.Skip("qpdf, which locks the file, is not installed; the check installs it")
	}
	plain, locked := filepath.Join(t.TempDir(), "plain.pdf"), filepath.Join(t.TempDir(), "locked.pdf")
	if err := os.WriteFile(plain, page{drawing: oneLine}.file(), 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("qpdf", "--encrypt", "secret", "owner", "256", "--", plain, locked).CombinedOutput(); err != nil {
		t.Fatalf("qpdf: %v\n%s", err, out)
	}
	data, err := os.ReadFile(locked)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := engine.Read(context.Background(), data, 1, tolerance, nil); !errors.Is(err, pdf.ErrLocked) {
		t.Errorf("it says %v", err)
	}
}

// A form that places itself must not hang the reader.
func TestFormThatPlacesItselfEnds(t *testing.T) {
	p := page{drawing: "/F5 Do " + oneLine, forms: []string{form("1 0 0 1 0 0", "/XObject << /F5 5 0 R >>", "10 10 m 20 20 l S /F5 Do")}}
	sheet := read(t, p.file())
	if len(sheet.Items) == 0 {
		t.Error("nothing of the page was read")
	}
}

// Damaged copies of a good file either read or are refused with a sentence; none
// crashes or hangs the reader.
func TestDamagedCopiesDoNoHarm(t *testing.T) {
	good, err := os.ReadFile("../../../testdata/pdf/cairo.pdf")
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(7, 11))
	refusals := 0
	for range 120 {
		bad := append([]byte(nil), good...)
		if r.IntN(2) == 0 {
			bad = bad[:r.IntN(len(bad))]
		}
		for range r.IntN(40) {
			if len(bad) > 0 {
				bad[r.IntN(len(bad))] = byte(r.IntN(256))
			}
		}
		if _, err := engine.Read(context.Background(), bad, 1, tolerance, nil); err != nil {
			refusals++
			var fault *linework.Fault
			if !errors.As(err, &fault) || fault.What == "" {
				t.Fatalf("it is refused without a sentence: %v", err)
			}
		}
	}
	if refusals == 0 {
		t.Error("no damaged copy was refused: the damage does not reach anything")
	}
	if len(read(t, good).Items) == 0 {
		t.Error("after the damaged copies the good file reads as empty")
	}
}
