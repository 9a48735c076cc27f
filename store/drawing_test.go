package store

import (
	"bytes"
	"context"
	"errors"
	"testing"

	"groundrow/prep"
)

func TestADrawingAndWhatWasReadFromItAreOneChange(t *testing.T) {
	ctx := context.Background()
	f := mustCreate(t, kitchen())
	before := f.Now()
	b := Brought{Label: "Bring in plan.dxf", Drawing: prep.Drawing{ID: "d", Name: "plan.dxf", Format: "DXF"}, Bytes: []byte("0\nEOF")}
	err := f.EditWith(ctx, before, b, func(p *prep.Production) error {
		p.Plan.Title = "Kitchen, second state"
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if p := f.Now().P; p.Plan.Title != "Kitchen, second state" || len(p.Drawings) != 1 || p.Drawings[0].Bytes != 5 {
		t.Errorf("the plan is called %q and %d drawings are kept", p.Plan.Title, len(p.Drawings))
	}
	mustUndo(t, f, "Bring in plan.dxf")
	if d := alike(before.P, f.Now().P); d != "" {
		t.Errorf("undo left something: %s", d)
	}
	mustRedo(t, f, "Bring in plan.dxf")
	if got, err := f.Drawing(ctx, "d"); err != nil || !bytes.Equal(got, b.Bytes) {
		t.Errorf("the drawing reads %q (%v)", got, err)
	}
}

func TestADrawingThatCannotBeTakenLeavesNothing(t *testing.T) {
	ctx := context.Background()
	f := mustCreate(t, kitchen())
	before := f.Now()
	spoilt := errors.New("no lines in it")
	b := Brought{Label: "Bring in plan.dxf", Drawing: prep.Drawing{ID: "d"}, Bytes: []byte{1}}
	if err := f.EditWith(ctx, before, b, func(*prep.Production) error { return spoilt }); !errors.Is(err, spoilt) {
		t.Errorf("got %v, want what was wrong", err)
	}
	if f.Now().Seq != before.Seq {
		t.Error("something was written")
	}
	_, err := f.Drawing(ctx, "d")
	wantError(t, err, NotFound, "no drawing")
}
