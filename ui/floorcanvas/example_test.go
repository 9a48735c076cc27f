package floorcanvas_test

import (
	"fmt"

	"groundrow/tapeout/plane"
	"groundrow/ui/floorcanvas"
)

func ExampleRender() {
	platform := plane.Rectangle(plane.Point{X: -1, Y: 2}, plane.Point{X: 1, Y: 4})
	img := floorcanvas.Render(floorcanvas.Picture{
		Shapes: []floorcanvas.Shape{{ID: "platform", Edges: platform.Edges()}},
	}, 320, 200, floorcanvas.Look{})
	fmt.Println(img.Bounds().Size())
	// Output: (320,200)
}
