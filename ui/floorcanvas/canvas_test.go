package floorcanvas

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"groundrow/tapeout/plane"
	"groundrow/ui/theme"
)

// bench is a canvas in a window, and what it has told.
type bench struct {
	*Canvas
	window fyne.Window
	told   []string
}

func newBench(t testing.TB, p Picture) *bench {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(theme.New(theme.Light))
	b := &bench{Canvas: New(), window: a.NewWindow("floor")}
	b.window.SetPadded(false)
	b.window.SetContent(b.Canvas)
	b.window.Resize(fyne.NewSize(900, 600))
	b.Set(p)
	b.SetView(View{Scale: 0.02, Centre: plane.Point{Y: 4}})
	b.OnSelect = func(ids []string, additive bool) { b.tell("select %v %v", ids, additive) }
	b.OnDragShape = func(id string, d plane.Point, done bool) { b.tell("shape %s %.2f %.2f %v", id, d.X, d.Y, done) }
	b.OnDragHandle = func(id string, p plane.Point, done bool) { b.tell("handle %s %.2f %.2f %v", id, p.X, p.Y, done) }
	b.OnDraw = func(ps []plane.Point, closed bool) { b.tell("draw %d %v", len(ps), closed) }
	b.OnNudge = func(ids []string, d plane.Point) { b.tell("nudge %v %.3f %.3f", ids, d.X, d.Y) }
	b.OnMenu = func(p plane.Point, id string, at fyne.Position) { b.tell("menu %s", id) }
	b.OnMeasure = func(a, c plane.Point) { b.tell("measure %.2f", a.To(c)) }
	return b
}

func (b *bench) tell(format string, args ...any) {
	b.told = append(b.told, fmt.Sprintf(format, args...))
}

func (b *bench) expect(t *testing.T, want ...string) {
	t.Helper()
	if !slices.Equal(b.told, want) {
		t.Errorf("told %q, want %q", b.told, want)
	}
	b.told = nil
}

func mouse(pos fyne.Position, button desktop.MouseButton, mods fyne.KeyModifier) *desktop.MouseEvent {
	e := &desktop.MouseEvent{Button: button, Modifier: mods}
	e.Position, e.AbsolutePosition = pos, pos
	return e
}

func (b *bench) press(p plane.Point, mods fyne.KeyModifier) {
	pos := b.PositionOf(p)
	b.MouseMoved(mouse(pos, 0, 0))
	b.MouseDown(mouse(pos, desktop.MouseButtonPrimary, mods))
}

func (b *bench) click(x, y float64, mods fyne.KeyModifier) {
	p := plane.Point{X: x, Y: y}
	b.press(p, mods)
	b.MouseUp(mouse(b.PositionOf(p), desktop.MouseButtonPrimary, mods))
}

func (b *bench) dragTo(x, y float64) {
	e := &fyne.DragEvent{}
	e.Position = b.PositionOf(plane.Point{X: x, Y: y})
	b.Dragged(e)
}

// letGo tells of the end as the toolkit does: by the button, then by the drag.
func (b *bench) letGo() {
	b.MouseUp(mouse(fyne.Position{}, desktop.MouseButtonPrimary, 0))
	b.DragEnd()
}

func (b *bench) keys(names ...fyne.KeyName) {
	for _, n := range names {
		b.TypedKey(&fyne.KeyEvent{Name: n})
	}
}

func TestAClickSelectsWhatIsNearest(t *testing.T) {
	b := newBench(t, specimen())
	for _, c := range []struct {
		what string
		x, y float64
		mods fyne.KeyModifier
		want string
	}{
		{"a line", -2.5, 3.02, 0, "select [platform] false"},
		{"a line to add", -2.5, 3, fyne.KeyModifierShift, "select [platform] true"},
		{"a mark on a line", -3.95, 3.05, 0, "select [mA] false"},
		{"an arc", 1.6, 4.8, 0, "select [revolve] false"},
		{"inside a filled area", 6.5, -1, 0, "select [exit] false"},
		{"inside an empty outline", 6.5, 5, 0, "select [] false"},
		{"nothing, to add", 6.5, 5, fyne.KeyModifierShift, ""},
	} {
		t.Run(c.what, func(t *testing.T) {
			b.OnDragShape = nil
			b.click(c.x, c.y, c.mods)
			if c.want == "" {
				b.expect(t)
				return
			}
			b.expect(t, c.want)
		})
	}
}

func TestALabelSelectsWhatItBelongsTo(t *testing.T) {
	b := newBench(t, specimen())
	b.window.Canvas().Capture()
	i := slices.IndexFunc(b.painter.labels, func(l placed) bool { return l.ID == "mE" })
	l := b.lens()
	ox, oy := l.px(plane.Point{})
	p := l.point(ox+b.painter.labels[i].box.x1-4, oy+b.painter.labels[i].box.y0+4)
	b.click(p.X, p.Y, 0)
	b.expect(t, "select [mE] false")
}

func TestTheWheelZoomsToThePointer(t *testing.T) {
	b := newBench(t, specimen())
	at := plane.Point{X: 3, Y: 6}
	pos := b.PositionOf(at)
	e := &fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 25)}
	e.Position = pos
	b.Scrolled(e)
	if b.GetView().Scale >= 0.02 {
		t.Error("not larger")
	}
	if moved := b.PositionOf(at).Subtract(pos); math.Hypot(float64(moved.X), float64(moved.Y)) > 0.01 {
		t.Errorf("the point under the pointer moved by %v", moved)
	}
}

func TestDraggingTheGroundPans(t *testing.T) {
	b := newBench(t, specimen())
	seen := 0
	b.OnView = func(View) { seen++ }
	b.press(plane.Point{X: 6, Y: 3}, 0)
	start := b.PositionOf(plane.Point{})
	e := &fyne.DragEvent{}
	e.Position = b.PositionOf(plane.Point{X: 6, Y: 3}).AddXY(40, -25)
	b.Dragged(e)
	b.letGo()
	if got := b.PositionOf(plane.Point{}).Subtract(start); math.Abs(float64(got.X)-40) > 0.01 || math.Abs(float64(got.Y)+25) > 0.01 {
		t.Errorf("panned by %v", got)
	}
	if seen == 0 {
		t.Error("the owner was not told")
	}
	b.expect(t)
}

func TestTheOwnerFollowsThePointerWhileItDrags(t *testing.T) {
	b := newBench(t, specimen())
	b.SetSnapping(false)
	var at plane.Point
	b.OnHover = func(p plane.Point, _ string) { at = p }
	b.press(plane.Point{X: -2.5, Y: 3}, 0)
	b.dragTo(-2, 3.5)
	if at.To(plane.Point{X: -2, Y: 3.5}) > 1e-4 {
		t.Errorf("last heard of %v", at)
	}
}

func TestDraggingAShapeTellsTheWayFromItsStart(t *testing.T) {
	b := newBench(t, specimen())
	b.SetSnapping(false)
	b.press(plane.Point{X: -2.5, Y: 3}, 0)
	b.dragTo(-2, 3.5)
	b.dragTo(-1.5, 4)
	b.letGo()
	b.expect(t, "shape platform 0.50 0.50 false", "shape platform 1.00 1.00 false", "shape platform 1.00 1.00 true")
}

func TestACornerIsDraggedOntoACorner(t *testing.T) {
	p := specimen()
	p.Dots, p.Handles = nil, nil
	b := newBench(t, p)
	b.press(plane.Point{X: -1.02, Y: 2.98}, 0)
	b.dragTo(3.04, 5.95) // near the corner of the wall at 3, 6
	b.letGo()
	b.expect(t, "shape platform 4.00 3.00 false", "shape platform 4.00 3.00 true")
}

func TestEscapeCallsADragOff(t *testing.T) {
	b := newBench(t, specimen())
	b.SetSnapping(false)
	b.press(plane.Point{X: -2.5, Y: 3}, 0)
	b.dragTo(-2, 3.5)
	b.keys(fyne.KeyEscape)
	b.letGo()
	b.expect(t, "shape platform 0.50 0.50 false", "shape platform 0.00 0.00 true")
	b.press(plane.Point{X: -7}, 0)
	b.dragTo(-6, 0.7)
	b.keys(fyne.KeyEscape)
	b.letGo()
	b.expect(t, "handle p1 -6.00 0.70 false", "handle p1 -7.00 0.00 true")
}

func TestWhatMayNotBeDraggedPans(t *testing.T) {
	b := newBench(t, specimen())
	b.CanDrag = func(id string) bool { return id != "platform" }
	before := b.GetView()
	b.press(plane.Point{X: -2.5, Y: 3}, 0)
	b.dragTo(-2, 3.5)
	b.letGo()
	b.expect(t)
	if b.GetView() == before {
		t.Error("the view did not move")
	}
}

func TestAHandleIsDraggedBeforeWhatLiesUnderIt(t *testing.T) {
	b := newBench(t, specimen())
	b.press(plane.Point{X: -7}, 0)
	b.dragTo(-4.03, 2.97) // near mark A
	b.letGo()
	b.expect(t, "handle p1 -4.00 3.00 false", "handle p1 -4.00 3.00 true")
}

func TestShiftAndDragSelectsWhatLiesInTheBox(t *testing.T) {
	b := newBench(t, specimen())
	b.press(plane.Point{X: -4.5, Y: 2.5}, fyne.KeyModifierShift)
	b.dragTo(-0.6, 5.5)
	b.letGo()
	b.expect(t, "select [platform mA mB mC mD] true")
}

func TestTheSecondaryButtonAsksForAMenu(t *testing.T) {
	b := newBench(t, specimen())
	pos := b.PositionOf(plane.Point{X: -2.5, Y: 3})
	b.MouseDown(mouse(pos, desktop.MouseButtonSecondary, 0))
	b.MouseUp(mouse(pos, desktop.MouseButtonSecondary, 0))
	b.expect(t, "menu platform")
}

func TestASecondButtonDoesNotDisturbADrag(t *testing.T) {
	b := newBench(t, specimen())
	b.SetSnapping(false)
	b.press(plane.Point{X: -2.5, Y: 3}, 0)
	b.dragTo(-2, 3.5)
	b.MouseDown(mouse(fyne.NewPos(100, 100), desktop.MouseButtonSecondary, 0))
	b.MouseUp(mouse(fyne.NewPos(100, 100), desktop.MouseButtonSecondary, 0))
	b.letGo()
	b.expect(t, "shape platform 0.50 0.50 false", "shape platform 0.50 0.50 true")
}

func TestKeysMoveTheSelectionAndTheView(t *testing.T) {
	b := newBench(t, specimen())
	before := b.GetView()
	b.keys(fyne.KeyRight)
	if b.GetView().Centre.X <= before.Centre.X {
		t.Error("with nothing selected the view did not move")
	}
	b.SetSelected([]string{"platform"})
	b.Step = 0.1
	b.keys(fyne.KeyUp, fyne.KeyLeft)
	b.expect(t, "nudge [platform] 0.000 0.100", "nudge [platform] -0.100 0.000")
	b.SetView(View{Scale: 0.02, Turn: math.Pi / 2})
	b.keys(fyne.KeyUp)
	b.expect(t, "nudge [platform] 0.100 0.000")
	b.TypedRune('+')
	if b.GetView().Scale >= 0.02 {
		t.Error("+ did not magnify")
	}
	b.keys(fyne.KeyEscape)
	b.expect(t, "select [] false")
}

func TestTabGoesThroughEverythingAndThenOn(t *testing.T) {
	b := newBench(t, specimen())
	b.OnSelect = func(ids []string, _ bool) { b.SetSelected(ids) }
	b.window.Canvas().Focus(b.Canvas)
	var seen []string
	for range b.sc.selectable() {
		b.keys(fyne.KeyTab)
		seen = append(seen, b.Selected()...)
	}
	if !slices.Equal(seen, b.sc.selectable()) {
		t.Errorf("went through %v", seen)
	}
	last := b.Selected()
	b.keys(fyne.KeyTab)
	if !slices.Equal(b.Selected(), last) {
		t.Errorf("past the end %v is selected", b.Selected())
	}
}

func TestRevealBringsIntoSight(t *testing.T) {
	b := newBench(t, specimen())
	b.SetView(View{Scale: 0.001, Centre: plane.Point{X: 50}})
	b.Reveal("unknown")
	b.Reveal("mE")
	if got := b.GetView(); got.Centre.To(plane.Point{X: 3, Y: 6}) > 1e-9 || got.Scale != 0.001 {
		t.Errorf("looks at %+v", got)
	}
}

func TestTheFirstPictureIsFittedAndTheNextKeepsTheView(t *testing.T) {
	b := newBench(t, Picture{})
	b.SetView(View{})
	b.Set(specimen())
	b.Fit()
	fit := b.GetView()
	b.SetView(View{Scale: 0.5})
	b.Set(crowded(10, 10))
	if b.GetView().Scale != 0.5 {
		t.Error("another picture changed the view")
	}
	if fit.Scale <= 0.01 || fit.Scale > 0.05 {
		t.Errorf("fitted to %+v", fit)
	}
}

func TestTheWindowIsPaintedInEveryMode(t *testing.T) {
	b := newBench(t, specimen())
	for _, m := range []Mode{Select, Draw, Measure, Pan} {
		b.SetMode(m)
		b.click(1, 1, 0)
		b.MouseMoved(mouse(fyne.NewPos(300, 300), 0, 0))
		if img := b.window.Canvas().Capture(); img.Bounds().Dx() != 900 {
			t.Errorf("mode %d: %v", m, img.Bounds())
		}
		b.MouseOut()
	}
}
