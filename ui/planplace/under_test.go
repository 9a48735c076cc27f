package planplace

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"testing"

	"groundrow/assets/demo"
	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/plane"
)

// lined is a white picture of 200 by 100 dots with one black column at 50.
func lined(t testing.TB) []byte {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, 200, 100))
	for y := range 100 {
		for x := range 200 {
			if x < 49 || x > 51 {
				img.SetGray(x, y, color.Gray{Y: 255})
			}
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestAScanLiesUnderThePlanUntilItIsRemoved(t *testing.T) {
	b := open(t, demo.Production(today))
	b.desk.Still()
	kept := store.Brought{Label: "Lay plot.png under the plan", Bytes: lined(t), Drawing: prep.Drawing{ID: "plot", Name: "plot.png", Format: "PNG"}}
	if !b.desk.BringIn(kept, func(p *prep.Production) error {
		p.LayDrawing("plot", []prep.KnownPoint{
			{ID: "1", Pixel: plane.Point{X: 0, Y: 100}, Floor: plane.Point{X: -5}},
			{ID: "2", Pixel: plane.Point{X: 200, Y: 100}, Floor: plane.Point{X: 5}},
		})
		return nil
	}) {
		t.Fatal("it could not be laid")
	}
	b.desk.Settle()
	u := b.place.board.under
	if u.scan == nil || !u.shown.Visible() {
		t.Fatal("nothing lies under the plan")
	}
	// The column is a quarter of the way across, from 5 m stage right to 5 m stage left.
	if got, ok := u.scan.Snap(plane.Point{X: -2.4, Y: 2}, 0.3); !ok || got.To(plane.Point{X: -2.475, Y: 2}) > 0.05 {
		t.Errorf("the dark line is at %v (%v)", got, ok)
	}
	if err := u.shown.OnCommit(false); err != nil {
		t.Error(err)
	}
	u.shown.Set(false)
	if u.backdrop(b.desk.View()) != nil {
		t.Error("it is seen although it is not to be")
	}
	u.shown.Set(true)
	b.desk.Edit("Remove the drawing", func(p *prep.Production) error {
		p.RemoveDrawing("plot")
		return nil
	})
	if u.scan != nil || u.shown.Visible() {
		t.Error("it is still there")
	}
	if _, err := b.desk.File().Drawing(context.Background(), "plot"); err != nil {
		t.Errorf("undo would not find it: %v", err)
	}
}

func TestTheDrawingPageOpensFromThePlan(t *testing.T) {
	b := open(t, demo.Production(today))
	b.place.openPage()
	if b.place.whole.Objects[0] != b.place.page.Content() {
		t.Fatal("the page is not open")
	}
	b.place.Fit()
	b.place.Find()
	if b.place.reading() {
		t.Error("looking for an element does not go back to the plan")
	}
}
