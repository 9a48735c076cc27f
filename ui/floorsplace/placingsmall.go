package floorsplace

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/floorpicture"
	"groundrow/ui/theme"
)

// thumbnails are the proposals in small, each with what is said of its ways.
type thumbnails struct {
	list   []image.Image
	narrow []string
}

func (t *thumbnails) clear() { t.list, t.narrow = nil, nil }

// smallSize is how large a proposal is shown, in the toolkit's pixels; it is painted
// twice as fine.
var smallSize = fyne.NewSize(210, 130)

func (t *thumbnails) add(pr *prep.Production, w *prep.FloorWork, scene plan.SceneID) {
	pic := floorpicture.OfFloor(pr, w, scene, floorpicture.Options{FloorAxes: true, Spikes: true})
	pic.Labels = nil
	for i := range pic.Areas {
		pic.Areas[i].Label = ""
	}
	look := floorcanvas.Look{Inks: theme.CurrentInks(), Density: 2}
	var narrow []string
	for _, way := range w.Ways {
		if way.TooNarrow() {
			narrow = append(narrow, way.Way.Name)
		}
	}
	t.narrow = append(t.narrow, prep.Listed(narrow))
	t.list = append(t.list, floorcanvas.Render(pic, int(2*smallSize.Width), int(2*smallSize.Height), look))
}

func (p *placingPage) buildSmall() {
	g := widget.NewGridWrap(func() int { return len(p.proposals.Proposals) }, newSmall, p.updateSmall)
	g.OnSelected = func(n widget.GridWrapItemID) {
		g.UnselectAll() // so that it can be picked again
		if n >= 0 && n < len(p.proposals.Proposals) {
			p.try(p.proposals.Proposals[n].Placement)
			p.canvas.Fit() // the room lies elsewhere about the plan
		}
	}
	p.small = g
}

// newSmall is room for one proposal.
func newSmall() fyne.CanvasObject {
	img := canvas.NewImageFromImage(nil)
	img.FillMode = canvas.ImageFillContain
	img.SetMinSize(smallSize)
	title := widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	title.Truncation = fyne.TextTruncateEllipsis
	loses := widget.NewLabel("\n\n\n") // room for as many lines
	loses.Wrapping = fyne.TextWrapWord
	return container.NewBorder(title, nil, nil, nil, container.NewBorder(img, nil, nil, nil, loses))
}

func (p *placingPage) updateSmall(n widget.GridWrapItemID, o fyne.CanvasObject) {
	if n >= len(p.proposals.Proposals) {
		return
	}
	k := p.proposals.Proposals[n]
	outer := o.(*fyne.Container).Objects
	inner := outer[0].(*fyne.Container).Objects
	outer[1].(*widget.Label).SetText(fmt.Sprintf("%d: %s, turned %.1f°", n+1, prep.KeptPart(k), degrees(k.Placement.Turn)))
	loses := prep.LostWords(p.view.P, k, 1)
	if loses == "" {
		loses = "nothing"
	}
	loses = "Loses " + loses
	img := inner[1].(*canvas.Image)
	img.Image = nil
	if n < len(p.images.list) {
		img.Image = p.images.list[n]
		if narrow := p.images.narrow[n]; narrow != "" {
			loses = "Too narrow: " + narrow + "\n" + loses
		}
	}
	inner[0].(*widget.Label).SetText(loses)
	img.Refresh()
}
