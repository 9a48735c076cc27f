package drawingin

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2/test"
)

// openSet opens testdata/pdf/set.pdf: a scan, the same plan as lines, and another
// drawing. What the reader compiles is kept from one run of the tests to the next.
func openSet(t *testing.T) *bench {
	t.Helper()
	t.Setenv("XDG_CACHE_HOME", filepath.Join(os.TempDir(), "groundrow-tests"))
	b := open(t, empty())
	content, err := os.ReadFile("../../testdata/pdf/set.pdf")
	if err != nil {
		t.Fatal(err)
	}
	b.read("set.pdf", content)
	if b.refusal() != "" {
		t.Fatal(b.refusal())
	}
	t.Cleanup(b.page.file.Close)
	return b
}

func TestOneOfSeveralPagesIsPicked(t *testing.T) {
	b := openSet(t)
	p := b.page
	if len(p.file.Pages) != 3 || p.d != nil || p.content.Objects[0] != p.picker.content {
		t.Fatalf("%d pages, and lines were read before one was picked: %v", len(p.file.Pages), p.d)
	}
	b.desk.Settle()
	for n := range 3 {
		if p.picker.small.picture(n) == nil {
			t.Errorf("page %d is not shown in small", n+1)
		}
	}
	p.picker.grid.Select(1)
	b.desk.Settle()
	if p.at != 1 || p.d == nil || p.d.taken() == 0 || len(p.coming.list) == 0 {
		t.Fatalf("page %d was opened: %v", p.at+1, p.d)
	}
	// Another one instead.
	b.ask(whichPage)
	test.Tap(p.pages.other)
	p.picker.grid.Select(2)
	b.desk.Settle()
	if p.at != 2 || p.d == nil {
		t.Errorf("page %d was opened: %v", p.at+1, p.d)
	}
}

// A page that is a scan is traced, and so is one with lines when that is wanted; the
// file is kept as it came, with the page that lies under the plan.
func TestAPageIsLaidUnderThePlan(t *testing.T) {
	for name, c := range map[string]struct {
		page int
		pick func(*bench)
	}{
		"a scan": {0, func(b *bench) { b.page.picker.grid.Select(0) }},
		"lines": {1, func(b *bench) {
			b.page.picker.grid.Select(1)
			b.desk.Settle()
			b.ask(whichPage)
			test.Tap(b.page.pages.trace)
		}},
	} {
		t.Run(name, func(t *testing.T) {
			b := openSet(t)
			c.pick(b)
			b.desk.Settle()
			s := b.page.scans
			if s.scan == nil || b.page.content.Objects[0] != s.content {
				t.Fatal("it is not there to be traced")
			}
			content := b.page.file.Content
			// Ten inches of paper apart at 1:48 are forty feet on the floor.
			const dots, feet = 10 * scanDPI, 40 * 0.3048
			for i := range s.scan.known {
				x := float64(i)
				s.scan.known[i] = knownPoint{set: true, up: "0", over: "x"}
				s.scan.known[i].pixel.X, s.scan.known[i].floor.X = 1000+x*dots, x*feet
			}
			s.show(b.desk.View())
			test.Tap(s.lay)
			b.desk.Settle()
			d, points, ok := b.desk.View().P.UnderPlan()
			if !ok || d.Page() != c.page+1 || d.Bytes != len(content) {
				t.Fatalf("%+v lies under the plan (%v)", d, ok)
			}
			kept, err := b.desk.File().Drawing(context.Background(), d.ID)
			if err != nil || string(kept) != string(content) {
				t.Errorf("the file was not kept as it came (%v)", err)
			}
			laid, err := Under(context.Background(), d, kept, points)
			if err != nil {
				t.Fatal(err)
			}
			if want := 48 * 0.0254 / scanDPI; laid.PerPixel < want*0.9999 || laid.PerPixel > want*1.0001 {
				t.Errorf("a dot is %v m on the floor, want %v", laid.PerPixel, want)
			}
		})
	}
}
