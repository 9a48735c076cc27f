package pdf_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/tetratelabs/wazero"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf"
)

// small is an engine with limits of its own, on the cache of the others.
func small(t *testing.T, limits pdf.Limits) *pdf.Engine {
	t.Helper()
	e, err := pdf.Start(cache, limits)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := e.Close(); err != nil {
			t.Error(err)
		}
	})
	return e
}

func limits(change func(*pdf.Limits)) pdf.Limits {
	l := pdf.DefaultLimits
	change(&l)
	return l
}

func TestReadingStopsAtSoManyObjects(t *testing.T) {
	e := small(t, limits(func(l *pdf.Limits) { l.Objects = 50 }))
	p := page{drawing: strings.Repeat(oneLine+"\n", 40) + "/F5 Do", forms: []string{form("1 0 0 1 0 0", "", strings.Repeat(oneLine+"\n", 40))}}
	sheet, err := e.Read(t.Context(), p.file(), 1, tolerance, nil)
	if err != nil || len(sheet.Items) != 49 || !leftAside(sheet, "only 50") {
		t.Errorf("%+v, %v", sheet, err)
	}
	pages, err := e.Pages(t.Context(), p.file())
	if err != nil || pages[0].Counted || pages[0].Width == 0 {
		t.Errorf("%+v, %v", pages, err)
	}
}

func TestFileThatIsTooLargeIsRefused(t *testing.T) {
	e := small(t, limits(func(l *pdf.Limits) { l.Bytes = 100 }))
	if _, err := e.Read(t.Context(), page{drawing: oneLine}.file(), 1, tolerance, nil); !errors.Is(err, linework.ErrTooLarge) {
		t.Errorf("it says %v", err)
	}
}

// doubling is a form that places another twice, and so on for depth forms: 2^depth
// lines in a file of a few kilobytes.
func doubling(depth int) page {
	p := page{drawing: "/F5 Do"}
	for i := range depth {
		p.forms = append(p.forms, form("1 0 0 1 0 0", fmt.Sprintf("/XObject << /N %d 0 R >>", i+6), "/N Do /N Do"))
	}
	p.forms = append(p.forms, form("1 0 0 1 0 0", "", oneLine))
	return p
}

func TestFormsThatDoubleAreGivenUp(t *testing.T) {
	e := small(t, limits(func(l *pdf.Limits) { l.Time, l.Memory = 5*time.Second, 64<<20 }))
	_, err := e.Read(t.Context(), doubling(28).file(), 1, tolerance, nil)
	var fault *linework.Fault
	if !errors.As(err, &fault) || fault.Do == "" {
		t.Errorf("it says %v", err)
	}
	if _, err := e.Read(t.Context(), page{drawing: oneLine}.file(), 1, tolerance, nil); err != nil {
		t.Errorf("afterwards a good file is refused: %v", err)
	}
}

func TestReadingThatTakesTooLongSaysSo(t *testing.T) {
	e := small(t, limits(func(l *pdf.Limits) { l.Time = time.Nanosecond }))
	if _, err := e.Read(t.Context(), page{drawing: oneLine}.file(), 1, tolerance, nil); !errors.Is(err, pdf.ErrSlow) || !errors.Is(err, linework.ErrTooLarge) {
		t.Errorf("it says %v", err)
	}
}

func TestFileWithoutPagesIsRefused(t *testing.T) {
	for name, pages := range map[string]string{
		"none":             "<< /Type /Pages /Kids [] /Count 0 >>",
		"only said to be":  "<< /Type /Pages /Kids [] /Count 3 >>",
		"leading in rings": "<< /Type /Pages /Kids [2 0 R 2 0 R] /Count 2 >>",
		"not even a list":  "(pages)",
	} {
		_, err := engine.Read(t.Context(), fileOf("<< /Type /Catalog /Pages 2 0 R >>", pages), 1, tolerance, nil)
		var fault *linework.Fault
		if !errors.Is(err, linework.ErrDamaged) || !errors.As(err, &fault) {
			t.Errorf("%s: it says %v", name, err)
		}
	}
}

func TestFileThatClaimsAMillionPagesIsListedInPart(t *testing.T) {
	pages, err := engine.Pages(t.Context(), fileOf("<< /Type /Catalog /Pages 2 0 R >>", "<< /Type /Pages /Kids [3 0 R] /Count 1000000 >>",
		leaf(4, ""), stream("", oneLine)))
	if err != nil || len(pages) > pdf.MostPages || pages[0].Paths != 1 {
		t.Errorf("%d pages, %v", len(pages), err)
	}
}

func TestHugePictureDoesNoHarm(t *testing.T) {
	const huge = 60_000
	p := page{drawing: oneLine + " q 600 0 0 700 0 0 cm /F5 Do Q", forms: []string{
		stream(fmt.Sprintf("/Type /XObject /Subtype /Image /Width %d /Height %d /ColorSpace /DeviceRGB /BitsPerComponent 8", huge, huge), "short")}}
	sheet, err := engine.Read(t.Context(), p.file(), 1, tolerance, nil)
	if err != nil || len(sheet.Items) != 1 || !leftAside(sheet, "may be a scan") {
		t.Errorf("%+v, %v", sheet, err)
	}
	if _, err := engine.Render(t.Context(), p.file(), 1, 50); err != nil && !errors.Is(err, linework.ErrDamaged) {
		t.Errorf("drawing it: %v", err)
	}
}

// Reading is given up between two objects, from the callback that tells progress.
func TestReadingIsGivenUpOnTheWay(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	calls := 0
	_, err := engine.Read(ctx, page{drawing: strings.Repeat(oneLine+"\n", 500)}.file(), 1, tolerance, func(part float64) {
		if calls++; part > 0.1 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) || calls > 60 {
		t.Errorf("after %d objects: %v", calls, err)
	}
}

func TestProgressGoesFromNothingToAll(t *testing.T) {
	var told []float64
	p := page{drawing: strings.Repeat(oneLine+"\n", 10)}
	if _, err := engine.Read(t.Context(), p.file(), 1, tolerance, func(part float64) { told = append(told, part) }); err != nil {
		t.Fatal(err)
	}
	for i, part := range told {
		if i > 0 && part < told[i-1] {
			t.Errorf("it goes back: %v", told)
		}
	}
	if told[0] != 0 || told[len(told)-1] != 1 {
		t.Errorf("told %v", told)
	}
}

func TestSeveralReadAtOnce(t *testing.T) {
	var all sync.WaitGroup
	for i := range 6 {
		all.Go(func() {
			sheet, err := engine.Read(t.Context(), page{drawing: strings.Repeat(oneLine+"\n", i+1)}.file(), 1, tolerance, nil)
			if err != nil || len(sheet.Items) != i+1 {
				t.Errorf("%d lines: %v", i+1, err)
			}
		})
	}
	all.Wait()
}

func TestClosedEngineRefusesAndClosesAgain(t *testing.T) {
	e, err := pdf.Start(cache, pdf.DefaultLimits)
	if err != nil {
		t.Fatal(err)
	}
	reading := make(chan error, 1)
	begun := make(chan struct{})
	go func() {
		once := sync.OnceFunc(func() { close(begun) })
		_, err := e.Read(t.Context(), page{drawing: strings.Repeat(oneLine+"\n", 20_000)}.file(), 1, tolerance, func(float64) { once() })
		reading <- err
	}()
	<-begun
	for range 2 {
		if err := e.Close(); err != nil {
			t.Error(err)
		}
	}
	if err := <-reading; err == nil || !strings.Contains(err.Error(), "closed") {
		t.Errorf("what was being read ends with %v", err)
	}
	if _, err := e.Pages(t.Context(), page{drawing: oneLine}.file()); err == nil || !strings.Contains(err.Error(), "closed") {
		t.Errorf("a closed engine says %v", err)
	}
}

// The caller throws a damaged cache away; to know that it is, it needs the error.
func TestDamagedCacheIsAnError(t *testing.T) {
	dir := t.TempDir()
	damaged := 0
	err := filepath.WalkDir(cacheDir(), func(path string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		from, err := filepath.Rel(cacheDir(), path)
		if err != nil {
			return err
		}
		damaged++
		if err := os.MkdirAll(filepath.Join(dir, filepath.Dir(from)), 0o700); err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(dir, from), []byte("spoilt"), 0o600)
	})
	if err != nil || damaged == 0 {
		t.Fatalf("%d files: %v", damaged, err)
	}
	spoilt, err := wazero.NewCompilationCacheWithDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer spoilt.Close(t.Context())
	if e, err := pdf.Start(spoilt, pdf.DefaultLimits); err == nil {
		e.Close()
		t.Error("it is accepted")
	}
}

// Damaged copies of the plans of three programs read, or are refused in words.
func TestDamagedPlansDoNoHarm(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for _, name := range []string{"plan.pdf", "plan-cairo.pdf", "plan-mupdf.pdf"} {
		good := example(t, name)
		for i := range 60 {
			bad := damage(r, good)
			_, err := engine.Read(t.Context(), bad, 1, tolerance, nil)
			var fault *linework.Fault
			if err != nil && (!errors.As(err, &fault) || fault.What == "") {
				t.Fatalf("%s, copy %d: it is refused without a sentence: %v", name, i, err)
			}
			if _, err := engine.Pages(t.Context(), bad); err != nil && !errors.As(err, &fault) {
				t.Fatalf("%s, copy %d: its pages are refused without a sentence: %v", name, i, err)
			}
		}
	}
}

// damage cuts a file short, changes bytes, repeats a part or makes numbers absurd.
func damage(r *rand.Rand, good []byte) []byte {
	bad := bytes.Clone(good)
	at := r.IntN(len(bad))
	switch r.IntN(4) {
	case 0:
		return bad[:at]
	case 1:
		for range 1 + r.IntN(60) {
			bad[r.IntN(len(bad))] = byte(r.IntN(256))
		}
	case 2:
		return append(bad[:at], good[r.IntN(len(good)):]...)
	case 3:
		for i := range bad {
			if bad[i] >= '0' && bad[i] <= '9' && r.IntN(50) == 0 {
				bad[i] = "0123456789-."[r.IntN(12)]
			}
		}
	}
	return bad
}
