package floorcanvas

import (
	"image"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"groundrow/assets/fonts"
	"groundrow/ui/theme"
)

// typesetter turns words into masks and keeps them: the same few hundred labels
// are stamped at every frame.
type typesetter struct {
	faces map[faceKey]font.Face
	words map[wordKey]*word
	wide  map[wordKey]float64
}

type faceKey struct {
	size int // quarters of a device pixel
	bold bool
}

type wordKey struct {
	faceKey
	text string
}

// word is a text ready to be stamped. The corner of both masks is at the upper
// left of the text's box, less the pad.
type word struct {
	ink, halo *image.Alpha
}

const (
	haloPad  = 3
	maxWords = 20000 // about 60 MB of masks; after that the store is emptied
)

func newTypesetter() *typesetter {
	return &typesetter{faces: map[faceKey]font.Face{}, words: map[wordKey]*word{}, wide: map[wordKey]float64{}}
}

var regularFont, boldFont = mustParse(fonts.Regular), mustParse(fonts.Bold)

// mustParse reads an embedded font, which a test proves readable.
func mustParse(file []byte) *sfnt.Font {
	f, err := opentype.Parse(file)
	if err != nil {
		panic("the embedded font cannot be read: " + err.Error())
	}
	return f
}

func keyOf(text string, size float64, bold bool) wordKey {
	return wordKey{faceKey{int(math.Round(size * 4)), bold}, text}
}

func (t *typesetter) face(k faceKey) font.Face {
	if f, ok := t.faces[k]; ok {
		return f
	}
	of := regularFont
	if k.bold {
		of = boldFont
	}
	// At 72 dots to the inch a point is a pixel. The only way to fail is a size
	// out of range, which callers do not ask for.
	f, err := opentype.NewFace(of, &opentype.FaceOptions{Size: float64(max(k.size, 4)) / 4, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		panic("the embedded font cannot be set: " + err.Error())
	}
	t.faces[k] = kerned{Face: f, of: of, size: fixed.Int26_6(max(k.size, 4) * 16)}
	return t.faces[k]
}

// kerned is a face that draws pairs such as T and a together by what its own size
// asks for: the library's face answers for 32 pixels at every size.
type kerned struct {
	font.Face
	of   *sfnt.Font
	size fixed.Int26_6
}

// Kern implements font.Face.
func (f kerned) Kern(left, right rune) fixed.Int26_6 {
	var buf sfnt.Buffer
	a, errA := f.of.GlyphIndex(&buf, left)
	b, errB := f.of.GlyphIndex(&buf, right)
	if errA != nil || errB != nil {
		return 0
	}
	by, err := f.of.Kern(&buf, a, b, f.size, font.HintingNone)
	if err != nil {
		return 0 // the pair has no entry in the font
	}
	return by
}

// width returns the advance of a text in device pixels.
func (t *typesetter) width(k wordKey) float64 {
	if w, ok := t.wide[k]; ok {
		return w
	}
	if len(t.wide) > maxWords {
		clear(t.wide)
	}
	w := float64(font.MeasureString(t.face(k.faceKey), k.text)) / 64
	t.wide[k] = w
	return w
}

// Heights of the box of one line of text, as parts of the size: measured from the
// font's capitals and descenders, tighter than its line gap.
const (
	ascent  = 0.80
	descent = 0.24
)

func height(k faceKey) float64 { return float64(k.size) / 4 * (ascent + descent) }

// word returns the masks of a text.
func (t *typesetter) word(k wordKey) *word {
	if w, ok := t.words[k]; ok {
		return w
	}
	if len(t.words) > maxWords {
		clear(t.words)
	}
	wide := int(math.Ceil(t.width(k))) + 2*haloPad
	high := int(math.Ceil(height(k.faceKey))) + 2*haloPad
	ink := image.NewAlpha(image.Rect(0, 0, wide, high))
	base := haloPad + math.Round(float64(k.size)/4*ascent)
	d := font.Drawer{Dst: ink, Src: image.Opaque, Face: t.face(k.faceKey), Dot: fixed.P(haloPad, int(base))}
	d.DrawString(k.text)
	w := &word{ink: ink, halo: widened(widened(ink))}
	t.words[k] = w
	return w
}

// widened returns a mask grown by one pixel to every side.
func widened(m *image.Alpha) *image.Alpha {
	out := image.NewAlpha(m.Rect)
	w, h := m.Rect.Dx(), m.Rect.Dy()
	for y := range h {
		for x := range w {
			var most uint8
			for yy := max(y-1, 0); yy <= min(y+1, h-1); yy++ {
				for xx := max(x-1, 0); xx <= min(x+1, w-1); xx++ {
					most = max(most, m.Pix[yy*m.Stride+xx])
				}
			}
			out.Pix[y*out.Stride+x] = most
		}
	}
	return out
}

// write stamps a text with the upper left corner of its box at (x, y).
func (f *frame) write(k wordKey, x, y float64, ink paint) {
	if w, px, py, ok := f.wordAt(k, x, y); ok {
		f.stamp(w.ink, px, py, ink)
	}
}

// writeClear is write with a halo of paper, so that lines behind the text do not
// run into its letters.
func (f *frame) writeClear(k wordKey, x, y float64, ink paint) {
	if w, px, py, ok := f.wordAt(k, x, y); ok {
		f.stamp(w.halo, px, py, f.ink(theme.Paper))
		f.stamp(w.ink, px, py, ink)
	}
}

// wordAt returns the masks of a text and where they go; ok is false when they are
// out of sight.
func (f *frame) wordAt(k wordKey, x, y float64) (w *word, px, py int, ok bool) {
	const far = 1 << 20
	if !(math.Abs(x) < far && math.Abs(y) < far) {
		return nil, 0, 0, false
	}
	px, py = int(math.Round(x))-haloPad, int(math.Round(y))-haloPad
	if right := px + int(f.words.width(k)) + 2*haloPad; right < f.clip.Min.X || px > f.clip.Max.X {
		return nil, 0, 0, false
	}
	w = f.words.word(k)
	return w, px, py, w.ink.Rect.Add(image.Pt(px, py)).Overlaps(f.clip)
}
