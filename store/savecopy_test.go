package store

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"

	"groundrow/prep"
)

func TestSaveCopyIsOneCompleteFile(t *testing.T) {
	f := mustCreate(t, randomProduction(3))
	drawing := bytes.Repeat([]byte("0\nLINE\n"), 5000)
	if err := f.AddDrawing(context.Background(), f.Now(), prep.Drawing{ID: "d", Name: "plan.dxf", Format: "DXF"}, drawing); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	to := filepath.Join(dir, "copy.groundrow")
	for range 2 { // the second over the first
		if err := f.SaveCopy(context.Background(), to); err != nil {
			t.Fatal(err)
		}
	}
	if files, _ := os.ReadDir(dir); len(files) != 1 {
		t.Errorf("%d files, want one: %v", len(files), files)
	}
	g := mustOpen(t, to, "Ada")
	if d := alike(f.Now().P, g.Now().P); d != "" {
		t.Error(d)
	}
	if b, err := g.Drawing(context.Background(), "d"); err != nil || !bytes.Equal(b, drawing) {
		t.Errorf("the drawing in the copy has %d bytes (%v)", len(b), err)
	}
	mustUndo(t, g, "Add drawing plan.dxf")

	wantError(t, f.SaveCopy(context.Background(), to), InUse, "another window")
	wantError(t, f.SaveCopy(context.Background(), f.Path()), Invalid, "the open production itself")
	wantError(t, f.SaveCopy(context.Background(), filepath.Join(dir, "no", "copy")), Disk, "folder")
}

func TestDrawings(t *testing.T) {
	ctx := context.Background()
	f := mustCreate(t, kitchen())
	d := prep.Drawing{ID: "d", Name: "plan.pdf", Format: "PDF"}
	want := []byte{0, 1, 0xff, '%'}
	if err := f.AddDrawing(ctx, f.Now(), d, want); err != nil {
		t.Fatal(err)
	}
	if got := f.Now().P.Drawings; len(got) != 1 || got[0].Bytes != 4 {
		t.Errorf("got %+v", got)
	}
	mustUndo(t, f, "Add drawing plan.pdf")
	mustRedo(t, f, "Add drawing plan.pdf")
	if b, err := f.Drawing(ctx, "d"); err != nil || !bytes.Equal(b, want) {
		t.Errorf("got %v, %v after undo and redo", b, err)
	}
	wantError(t, f.AddDrawing(ctx, f.Now(), d, nil), Invalid, "taken")
	if err := f.AddDrawing(ctx, f.Now(), prep.Drawing{ID: "empty"}, nil); err != nil {
		t.Errorf("a drawing without bytes: %v", err)
	}
	_, err := f.Drawing(ctx, "none")
	wantError(t, err, NotFound, "no drawing")
}
