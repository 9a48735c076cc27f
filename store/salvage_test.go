package store

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"groundrow/prep"
)

func mustSalvage(t *testing.T, path string) (*File, Report) {
	t.Helper()
	to := filepath.Join(t.TempDir(), "saved.groundrow")
	before := mustRead(t, path)
	report, err := Salvage(context.Background(), path, to, "Ada")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(before, mustRead(t, path)) {
		t.Error("the damaged file has been written to")
	}
	if files, _ := os.ReadDir(filepath.Dir(to)); len(files) != 1 {
		t.Errorf("left beside the new file: %v", files)
	}
	return mustOpen(t, to, "Ada"), report
}

func TestSalvageOfAWholeFile(t *testing.T) {
	f := mustCreate(t, randomProduction(5))
	if err := f.AddDrawing(context.Background(), f.Now(), prep.Drawing{ID: "d"}, []byte{1, 0, 0xff}); err != nil {
		t.Fatal(err)
	}
	f.Close()
	g, report := mustSalvage(t, f.Path())
	if !report.Complete() {
		t.Errorf("got %+v", report)
	}
	if d := alike(f.Now().P, g.Now().P); d != "" {
		t.Error(d)
	}
	if b, err := g.Drawing(context.Background(), "d"); err != nil || !bytes.Equal(b, []byte{1, 0, 0xff}) {
		t.Errorf("the drawing is %v, %v", b, err)
	}
	if label, ok := g.UndoLabel(); ok {
		t.Errorf("offers to undo %q", label)
	}
}

// A file of an earlier version has lost nothing by not having the later tables and
// columns.
func TestSalvageOfAnEarlierVersion(t *testing.T) {
	for version := 1; version <= Version; version++ {
		path := filepath.Join(t.TempDir(), "old.groundrow")
		mustWrite(t, path, mustRead(t, filepath.Join("testdata", fmt.Sprintf("version%d.groundrow", version))))
		f, report := mustSalvage(t, path)
		if !report.Complete() {
			t.Errorf("version %d: got %+v", version, report)
		}
		want := golden(version)
		if version < 7 { // no errors of placing: the program takes the usual ones
			want.Settings.Errors = prep.Errors{}
		}
		if d := alike(want, f.Now().P); d != "" {
			t.Errorf("version %d\n%s", version, d)
		}
	}
}

// A floor that was removed before floors had boards comes back without any.
func TestRowFromBeforeItsLatestColumnComesBack(t *testing.T) {
	floors := tableNamed["floor"]
	p := kitchen()
	all, err := rowsFrom(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	values := map[string]any{}
	for i, c := range floors.columns {
		if since["floor."+c] == 0 {
			values[c] = all["floor"]["studio"].cells[i]
		}
	}
	back, err := floors.record(values)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(back.cells, all["floor"]["studio"].cells) {
		t.Errorf("came back as %v", back.cells)
	}
	delete(values, "name")
	if _, err := floors.record(values); err == nil {
		t.Error("a floor without a name is taken")
	}
}

// One page after another is lost. Whatever is read must open and take an edit, and
// the report must not claim that all is there when it is not. Only the few pages
// that hold the names of the tables take everything with them.
func TestSalvageWithAnyPageLost(t *testing.T) {
	want := sized(40, 1600)
	path := finished(t, want)
	whole := mustRead(t, path)
	rich, schema := 0, 0
	pages := int64(len(whole)) / 4096
	for page := int64(1); page < pages; page += pages/24 + 1 {
		broken := filepath.Join(t.TempDir(), "broken.groundrow")
		mustWrite(t, broken, whole)
		hole(t, broken, page)
		if f, err := Open(context.Background(), broken, "Ada"); err == nil {
			f.Close() // a page of an index, or a free one
			continue
		}
		if _, err := Salvage(context.Background(), broken, broken+"-try", "Ada"); CodeOf(err) == Damaged {
			schema++
			continue
		}
		g, report := mustSalvage(t, broken)
		got := g.Now().P
		if len(got.Plan.Elements) == len(want.Plan.Elements) {
			rich++
		}
		if report.Complete() && alike(want, got) != "" {
			t.Errorf("page %d: the report says nothing was lost", page)
		}
		mustEdit(t, g, "Go on", setTitle("on"))
		g.Close()
	}
	if schema > 10 {
		t.Errorf("%d pages take everything with them", schema)
	}
	if rich == 0 {
		t.Error("no lost page left all elements: reading goes no further than the damage")
	}
}

func TestSalvageDropsWhatBelongsToNothing(t *testing.T) {
	path := finished(t, kitchen())
	mustExec(t, path, `DELETE FROM scene WHERE id = 'one'; DELETE FROM level;
		UPDATE element SET name = CAST(x'ff' AS TEXT) WHERE id = 'wall'`)
	g, report := mustSalvage(t, path)
	p := g.Now().P
	if len(p.Plan.Elements) != 1 || len(p.Plan.Elements[0].Stands) != 0 || p.Plan.Elements[0].Level != "" {
		t.Errorf("got %+v", p.Plan.Elements)
	}
	if len(report.Left) < 3 || report.Complete() {
		t.Errorf("left out: %q", report.Left)
	}
}

func TestSalvageLeavesOutWhatTheFileRefuses(t *testing.T) {
	path := finished(t, kitchen())
	mustExec(t, path, "PRAGMA ignore_check_constraints = ON; UPDATE production SET budget_cents = -5")
	g, report := mustSalvage(t, path)
	if len(report.Left) != 1 || len(g.Now().P.Plan.Elements) != 2 {
		t.Errorf("left out %q", report.Left)
	}
}

func TestSalvageThatCannotBe(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	path := finished(t, kitchen())
	text := filepath.Join(dir, "letter.txt")
	mustWrite(t, text, []byte("Dear all,\n"))
	_, err := Salvage(ctx, text, filepath.Join(dir, "a"), "Ada")
	wantError(t, err, Foreign, "not a production file")
	_, err = Salvage(ctx, path, text, "Ada")
	wantError(t, err, InUse, "already something named")
	hole(t, path, 0)
	_, err = Salvage(ctx, path, filepath.Join(dir, "b"), "Ada")
	wantError(t, err, Damaged, "Nothing in")
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("left behind: %v", files)
	}
}

func TestPathsMayBeRelative(t *testing.T) {
	t.Chdir(t.TempDir())
	mustCreateAt(t, "play.groundrow", "Ada", kitchen()).Close()
	f := mustOpen(t, "play.groundrow", "Ada")
	if err := f.SaveCopy(context.Background(), "copy.groundrow"); err != nil {
		t.Error(err)
	}
	if _, err := Salvage(context.Background(), "copy.groundrow", "saved.groundrow", "Ada"); err != nil {
		t.Error(err)
	}
	if d := alike(kitchen(), mustOpen(t, "saved.groundrow", "Ada").Now().P); d != "" {
		t.Error(d)
	}
}

// A file that was cut off, as by a copy that stopped half way, still gives what
// lies in the part that is there.
func TestSalvageOfAFileThatWasCutOff(t *testing.T) {
	want := sized(40, 1600)
	whole := mustRead(t, finished(t, want))
	rich := 0
	for part := 3; part < 10; part++ {
		broken := filepath.Join(t.TempDir(), "broken.groundrow")
		mustWrite(t, broken, whole[:len(whole)*part/10])
		if _, err := Salvage(context.Background(), broken, broken+"-try", "Ada"); err != nil {
			if CodeOf(err) != Damaged {
				t.Errorf("%d tenths: %v", part, err)
			}
			continue
		}
		g, report := mustSalvage(t, broken)
		if report.Complete() {
			t.Errorf("%d tenths: the report says nothing was lost", part)
		}
		if g.Now().P.Settings.Title == want.Settings.Title {
			rich++
		}
		mustEdit(t, g, "Go on", setTitle("on"))
		g.Close()
	}
	if rich == 0 {
		t.Error("nothing came out of any part of the file")
	}
}
