package poster

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

var plain = Style{Size: 13}

func TestWordsAreBrokenToTheWidth(t *testing.T) {
	test.NewTempApp(t)
	words := "Short of eleven rolls and thirty-two pieces of the kit, the first of them by Monday"
	for _, width := range []float32{20, 90, 200, 900} {
		for most := 1; most < 5; most++ {
			lines := Wrapped(words, width, plain, most)
			if len(lines) > most {
				t.Errorf("%d lines at %v, want %d at most", len(lines), width, most)
			}
			for _, l := range lines {
				if plain.Measure(l) > width {
					t.Errorf("%q is wider than %v", l, width)
				}
			}
		}
	}
	if got := strings.Join(Wrapped(words, 200, plain, 20), " "); got != words {
		t.Errorf("words are lost: %q", got)
	}
	if got := Wrapped("", 100, plain, 3); len(got) != 0 {
		t.Errorf("nothing gives %q", got)
	}
}

func TestShortenedWordsEndWithAnEllipsis(t *testing.T) {
	test.NewTempApp(t)
	if got := Shortened("Market day", 1000, plain); got != "Market day" {
		t.Errorf("%q", got)
	}
	if got := Shortened("Market day", 40, plain); !strings.HasSuffix(got, "…") || plain.Measure(got) > 40 {
		t.Errorf("%q", got)
	}
	if got := Shortened("Market day", 1, plain); got != "" {
		t.Errorf("%q in no room", got)
	}
}

// shown returns a poster with two zones, in a window, and what they did.
func shown(t *testing.T) (*Poster, *[]string) {
	t.Helper()
	test.NewTempApp(t)
	var did []string
	p := New(func(pen *Pen) {
		pen.Ground(0, 0, pen.Width(), 50, "background")
		for i, name := range []string{"one", "two"} {
			pen.Text(0, float32(i)*50, pen.Width(), name, plain)
			pen.Zone(0, float32(i)*50, pen.Width(), 50, name, func() { did = append(did, name) })
		}
	})
	w := test.NewTempWindow(t, p)
	w.Resize(fyne.NewSize(400, 200))
	return p, &did
}

func TestZonesAnswerTheMouse(t *testing.T) {
	p, did := shown(t)
	test.TapAt(p, fyne.NewPos(20, 70))
	test.TapAt(p, fyne.NewPos(20, 20))
	test.TapAt(p, fyne.NewPos(20, 150))
	if got := strings.Join(*did, " "); got != "two one" {
		t.Errorf("did %q", got)
	}
	hint := "unset"
	p.OnHover = func(h string) { hint = h }
	p.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(20, 70)}})
	if hint != "two" || p.Cursor() != desktop.PointerCursor {
		t.Errorf("over the second zone the hint is %q", hint)
	}
	p.MouseOut()
	if hint != "" || p.Cursor() != desktop.DefaultCursor {
		t.Errorf("away from it the hint is %q", hint)
	}
}

func TestZonesAnswerTheKeyboard(t *testing.T) {
	p, did := shown(t)
	test.WidgetRenderer(p)
	fyne.CurrentApp().Driver().CanvasForObject(p).Focus(p)
	if !p.ring.Visible() {
		t.Error("no ring shows where the keyboard is")
	}
	test.TapAt(p, fyne.NewPos(20, 150))
	if p.ring.Visible() {
		t.Error("the ring stays while the mouse is used")
	}
	for _, key := range []fyne.KeyName{fyne.KeyReturn, fyne.KeyDown, fyne.KeySpace, fyne.KeyDown, fyne.KeyReturn, fyne.KeyUp, fyne.KeyReturn} {
		p.TypedKey(&fyne.KeyEvent{Name: key})
	}
	if got := strings.Join(*did, " "); got != "one two one two" {
		t.Errorf("did %q", got)
	}
}

func TestEverySignDrawsSomething(t *testing.T) {
	test.NewTempApp(t)
	for sign := Ring; sign <= Chevron; sign++ {
		pen := &Pen{size: fyne.NewSize(100, 100)}
		pen.Shape(sign, 50, 50, 10, "")
		if len(pen.objects) == 0 {
			t.Errorf("sign %d draws nothing", sign)
		}
		for _, o := range pen.objects {
			if _, ok := o.(*canvas.Line); ok {
				continue
			}
			if o.Position().X < 40 || o.Position().X+o.Size().Width > 60 {
				t.Errorf("sign %d reaches from %v over %v", sign, o.Position(), o.Size())
			}
		}
	}
}
