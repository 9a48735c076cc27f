package floorcanvas

import (
	"image"
	"maps"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// Mode is what the primary button does.
type Mode uint8

// The modes. In each of them the middle button and the wheel pan and zoom.
const (
	Select  Mode = iota // click to select, drag to move, drag the ground to pan
	Draw                // click to set points
	Measure             // click twice to measure
	Pan                 // drag to pan, whatever is under the pointer
)

// Canvas shows a picture. All methods belong on the toolkit's own goroutine, and
// every callback comes on it; a callback that is nil is left out.
type Canvas struct {
	widget.BaseWidget

	// OnSelect asks for a selection: no ids for nothing; additive to add to what
	// is selected, or to take away from it. The owner answers with SetSelected.
	OnSelect func(ids []string, additive bool)
	// OnHover follows the pointer; id is empty over nothing.
	OnHover func(p plane.Point, id string)
	// OnLeave tells that the pointer has left.
	OnLeave func()
	// OnTap tells of every click in mode Select, after OnSelect.
	OnTap func(p plane.Point, snapped Snap)
	// OnDragShape tells by how far something has been dragged since its start, and
	// with it the selection that it is part of. The canvas shows them where they
	// would come to lie: leave the picture as it is until done. A drag that is
	// called off ends with a zero delta. While it is nil nothing can be dragged.
	OnDragShape func(id string, delta plane.Point, done bool)
	// CanDrag limits what can be dragged; nil: everything with an identifier.
	CanDrag func(id string) bool
	// OnDragHandle tells where a handle is dragged to. A drag that is called off
	// ends where it began.
	OnDragHandle func(id string, p plane.Point, done bool)
	// OnMenu is the secondary button; at is a place of the window.
	OnMenu func(p plane.Point, id string, at fyne.Position)
	// OnKey is offered every key before the canvas uses it, except those of a
	// tool under way; true takes it.
	OnKey func(key *fyne.KeyEvent) bool
	// OnNudge asks to move the selection by arrow key.
	OnNudge func(ids []string, delta plane.Point)
	// OnDrawing tells the points set so far, OnDraw those of a finished line.
	OnDrawing func(points []plane.Point)
	OnDraw    func(points []plane.Point, closed bool)
	// OnMeasure tells of two points measured.
	OnMeasure func(a, b plane.Point)
	// OnView tells that a person has panned or zoomed.
	OnView func(View)

	// Step is how far an arrow key moves the selection, in metres; 0 is a
	// centimetre, or half an inch in feet. With Shift it is ten times that.
	Step float64

	sc       *scene
	selected map[string]bool
	order    []string // selected, as set
	view     View
	fitting  bool // fit again when the size changes: nobody has chosen a view
	mode     Mode
	noSnap   bool

	painter *painter
	img     *image.RGBA
	raster  *canvas.Raster
	over    *overlay
	focused bool
	byKeys  bool // the keyboard is in use: show where its focus is

	hover   hover
	press   *press
	drawn   []plane.Point
	measure []plane.Point
	last    click
}

var (
	_ fyne.Widget        = (*Canvas)(nil)
	_ fyne.Draggable     = (*Canvas)(nil)
	_ fyne.Scrollable    = (*Canvas)(nil)
	_ fyne.Focusable     = (*Canvas)(nil)
	_ fyne.Tabbable      = (*Canvas)(nil)
	_ desktop.Mouseable  = (*Canvas)(nil)
	_ desktop.Hoverable  = (*Canvas)(nil)
	_ desktop.Cursorable = (*Canvas)(nil)
)

// New returns an empty canvas in mode Select.
func New() *Canvas {
	c := &Canvas{sc: prepare(Picture{}), fitting: true, painter: newPainter(), over: newOverlay()}
	c.raster = canvas.NewRaster(c.generate)
	c.ExtendBaseWidget(c)
	return c
}

// Set shows another picture in the same view; the first one with anything in it is
// fitted.
func (c *Canvas) Set(p Picture) {
	first := !c.sc.any
	c.sc = prepare(p)
	if first && c.fitting {
		c.Fit()
	}
	c.Refresh()
}

// SetSelected marks what is selected.
func (c *Canvas) SetSelected(ids []string) {
	next := setOf(ids)
	if maps.Equal(next, c.selected) {
		return
	}
	c.selected, c.order = next, append([]string(nil), ids...)
	c.Refresh()
}

// Selected returns what was last given to SetSelected.
func (c *Canvas) Selected() []string { return append([]string(nil), c.order...) }

// SetMode changes what the primary button does and drops what is half done.
func (c *Canvas) SetMode(m Mode) {
	c.mode = m
	c.drawn, c.measure = nil, nil
	c.cancelDrag()
	c.showOverlay()
}

// Mode returns what the primary button does.
func (c *Canvas) Mode() Mode { return c.mode }

// SetSnapping turns snapping on or off; it is on at first. Holding Alt lifts it
// for a moment.
func (c *Canvas) SetSnapping(on bool) { c.noSnap = !on }

// CreateRenderer implements the toolkit's widget.
func (c *Canvas) CreateRenderer() fyne.WidgetRenderer {
	clip := container.NewClip(c.over.root)
	return &renderer{c: c, clip: clip, objects: []fyne.CanvasObject{c.raster, clip, c.over.alongTop, c.over.alongLeft, c.over.ring}}
}

type renderer struct {
	c       *Canvas
	clip    *container.Clip
	objects []fyne.CanvasObject
}

func (r *renderer) Layout(s fyne.Size) {
	r.c.raster.Resize(s)
	r.clip.Move(fyne.NewPos(rulerLeft, rulerTop))
	r.clip.Resize(fyne.NewSize(max(s.Width-rulerLeft, 1), max(s.Height-rulerTop, 1)))
	r.c.over.ring.Resize(s)
	if r.c.fitting {
		r.c.Fit()
	}
	r.c.showOverlay()
}

func (r *renderer) MinSize() fyne.Size           { return fyne.NewSize(160, 120) }
func (r *renderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *renderer) Destroy()                     {}

func (r *renderer) Refresh() {
	r.c.raster.Refresh()
	r.c.showOverlay()
}

// generate paints the picture in w by h device pixels.
func (c *Canvas) generate(w, h int) image.Image {
	w, h = max(w, 1), max(h, 1)
	if c.img == nil || c.img.Rect.Dx() != w || c.img.Rect.Dy() != h {
		c.img = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	k := float64(w) / max(float64(c.Size().Width), 1)
	f := frame{painter: c.painter, sc: c.sc, inks: theme.CurrentInks(), k: k, marks: c.selected}
	f.img = c.img
	f.aim(c.view)
	f.paint()
	return c.img
}
