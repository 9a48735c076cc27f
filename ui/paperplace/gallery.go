package paperplace

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// gallery shows the cards side by side; one of them is chosen, by click or by the
// arrow keys and the space bar.
type gallery struct {
	cards  []*card
	grid   *widget.GridWrap
	choose func(i int)
	quiet  bool // the choice is set, not made
}

func newGallery(choose func(i int)) *gallery {
	g := &gallery{choose: choose}
	g.grid = widget.NewGridWrap(
		func() int { return len(g.cards) },
		func() fyne.CanvasObject { return newCardView() },
		func(i widget.GridWrapItemID, o fyne.CanvasObject) {
			if i < len(g.cards) {
				o.(*cardView).show(g.cards[i])
			}
		},
	)
	g.grid.OnSelected = func(i widget.GridWrapItemID) {
		if !g.quiet {
			g.choose(i)
		}
	}
	return g
}

// show sets the cards and the chosen one.
func (g *gallery) show(cards []*card, chosen int) {
	g.cards = cards
	g.grid.Refresh()
	g.quiet = true
	g.grid.Select(chosen)
	g.quiet = false
}

// cardSize is the room that one card takes.
var cardSize = fyne.NewSize(smallWidth+14, smallHeight+52)

// cardView is what a card looks like.
type cardView struct {
	widget.BaseWidget
	picture    *canvas.Image
	wait       *widget.Label
	name, said *widget.Label
	sign       *widget.Icon
	box        *fyne.Container
}

func newCardView() *cardView {
	v := &cardView{
		picture: canvas.NewImageFromImage(nil), wait: widget.NewLabelWithStyle("", fyne.TextAlignCenter, fyne.TextStyle{}),
		name: widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true}), said: widget.NewLabel(""), sign: widget.NewIcon(nil),
	}
	v.picture.FillMode = canvas.ImageFillContain
	v.wait.Wrapping = fyne.TextWrapWord
	v.name.Truncation, v.said.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	words := container.NewVBox(container.New(shorter(6), v.name), container.NewBorder(nil, nil, v.sign, nil, v.said))
	v.box = container.New(fixed(cardSize), container.NewPadded(
		container.NewBorder(nil, words, nil, nil, container.NewStack(v.wait, v.picture))))
	v.ExtendBaseWidget(v)
	return v
}

// CreateRenderer implements fyne.Widget.
func (v *cardView) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(v.box) }

// show sets the card.
func (v *cardView) show(c *card) {
	v.name.SetText(c.sheet.Name)
	v.said.SetText(c.said())
	v.sign.SetResource(signOf(c.record.standing))
	v.wait.SetText(c.wait())
	if v.picture.Image != c.small {
		v.picture.Image = c.small
		v.picture.Refresh()
	}
}

// said is the line under the name: how many pages, and how what was printed
// stands.
func (c *card) said() string {
	if c.doc == nil {
		return ""
	}
	if c.doc.Pages() == 1 {
		return "1 page, " + c.record.short()
	}
	return strconv.Itoa(c.doc.Pages()) + " pages, " + c.record.short()
}

// wait is what stands where there is no picture.
func (c *card) wait() string {
	switch {
	case c.err != nil:
		return "This sheet cannot be set: " + c.err.Error()
	case c.doc == nil:
		return "being set…"
	}
	return ""
}

// shorter takes some of its object's height away, so that two lines stand
// together.
type shorter float32

func (s shorter) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().SubtractWidthHeight(0, float32(s))
}

func (s shorter) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Resize(size.AddWidthHeight(0, float32(s)))
}

// fixed gives its object this size.
type fixed fyne.Size

func (f fixed) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size(f) }

func (f fixed) Layout(o []fyne.CanvasObject, size fyne.Size) { o[0].Resize(size) }

// signOf is the shape beside the words of a standing.
func signOf(s standing) fyne.Resource {
	switch s {
	case stillRight:
		return theme.NewSuccessThemedResource(theme.ConfirmIcon())
	case outOfDate:
		return theme.NewWarningThemedResource(theme.WarningIcon())
	}
	return theme.RadioButtonIcon()
}
