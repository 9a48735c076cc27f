package pdf

import (
	"context"
	"fmt"
	"image"
	"image/draw"
	"math"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/requests"

	"groundrow/tapeout/drawing/linework"
)

// mostPixels of a picture of a page, at four bytes each.
const mostPixels = 40_000_000

// Render draws a page, the first one being page 1, at dpi dots to an inch of paper,
// as it is shown: cropped, turned, on white. A page too large for that is drawn more
// coarsely, and one at no sensible dpi at 72. It takes seconds on a dense page.
func (e *Engine) Render(ctx context.Context, data []byte, number int, dpi float64) (image.Image, error) {
	var out image.Image
	err := e.open(ctx, data, func(s *session) error {
		p, err := s.page(number)
		if err != nil {
			return err
		}
		w, h := pixels(p.visible.Width(), p.visible.Height(), dpi)
		drawn, err := s.lib.RenderPageInPixels(&requests.RenderPageInPixels{
			Page: s.at(p.index), Width: w, Height: h, RenderFlags: enums.FPDF_RENDER_FLAG_ANNOT,
		})
		if err != nil {
			return damaged(page(number), "the page cannot be drawn, or needs more memory than there is", err)
		}
		defer drawn.CleanupFunc()
		out = onWhite(drawn.Result.RenderedImage)
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("draw a page of the PDF file: %w", err)
	}
	return out, nil
}

// pixels returns the size of a picture of a page of so many points.
func pixels(width, height, dpi float64) (w, h int) {
	k := float64(linework.Point/linework.Inch) * dpi
	if !(k > 0) {
		k = 1
	}
	k = min(k, math.Sqrt(mostPixels/(width*height)), mostPixels/1000/max(width, height))
	return max(1, int(math.Round(width*k))), max(1, int(math.Round(height*k)))
}

// onWhite copies a picture out of the sandbox, whose memory goes with it.
func onWhite(from image.Image) image.Image {
	out := image.NewRGBA(image.Rectangle{Max: from.Bounds().Size()})
	draw.Draw(out, out.Bounds(), image.White, image.Point{}, draw.Src)
	draw.Draw(out, out.Bounds(), from, from.Bounds().Min, draw.Over)
	return out
}
