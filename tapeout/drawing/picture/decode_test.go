package picture_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"
	"testing/iotest"

	"golang.org/x/image/tiff"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/picture"
)

// corner is a picture of 24 by 16 pixels whose upper left quarter is dark.
func corner() image.Image {
	img := image.NewGray(image.Rect(0, 0, 24, 16))
	for i := range img.Pix {
		img.Pix[i] = 230
		if i%24 < 12 && i/24 < 8 {
			img.Pix[i] = 20
		}
	}
	return img
}

func encoded(t testing.TB, format string) []byte {
	t.Helper()
	var b bytes.Buffer
	var err error
	switch format {
	case "PNG":
		err = png.Encode(&b, corner())
	case "JPEG":
		err = jpeg.Encode(&b, corner(), &jpeg.Options{Quality: 95})
	case "TIFF":
		err = tiff.Encode(&b, corner(), &tiff.Options{Compression: tiff.Deflate})
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func decode(content []byte) (image.Image, string, error) {
	return picture.Decode(bytes.NewReader(content), int64(len(content)))
}

func dark(img image.Image, x, y int) bool {
	return color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y < 128
}

func TestDecodeReadsEveryFormat(t *testing.T) {
	for _, format := range picture.Formats() {
		img, got, err := decode(encoded(t, format))
		if err != nil || got != format {
			t.Fatalf("%s: read as %q: %v", format, got, err)
		}
		if img.Bounds() != image.Rect(0, 0, 24, 16) || !dark(img, 5, 3) || dark(img, 18, 3) || dark(img, 5, 12) {
			t.Errorf("%s: the picture is not what was written", format)
		}
	}
}

func TestDecodeRefusesAFileThatIsCutShort(t *testing.T) {
	for _, format := range picture.Formats() {
		whole := encoded(t, format)
		for _, part := range []int{10, len(whole) / 3, len(whole) * 2 / 3} {
			_, _, err := decode(whole[:part])
			if !errors.Is(err, linework.ErrDamaged) {
				t.Errorf("%s, the first %d of %d bytes: got %v", format, part, len(whole), err)
			}
		}
		if _, _, err := picture.Decode(bytes.NewReader(whole), int64(len(whole))+1); !errors.Is(err, linework.ErrDamaged) {
			t.Errorf("%s, shorter than its folder says: got %v", format, err)
		}
	}
}

func TestDecodeRefusesHugePicturesByTheirHeader(t *testing.T) {
	for name, content := range map[string][]byte{
		"PNG":             hugePNG(30_000, 20_000),
		"PNG, overflow":   hugePNG(0x7fffffff, 0x7fffffff),
		"JPEG":            hugeJPEG(30_000, 20_000),
		"TIFF":            hugeTIFF(30_000, 20_000),
		"just over 64 MP": hugePNG(8_000, 8_001),
	} {
		_, _, err := decode(content)
		if name == "PNG, overflow" && errors.Is(err, linework.ErrUnsupported) {
			continue // the decoder itself refuses a size that overflows
		}
		if !errors.Is(err, linework.ErrTooLarge) || !strings.Contains(err.Error(), "million") {
			t.Errorf("%s: got %v", name, err)
		}
	}
	if _, _, err := decode(hugeJPEG(30_000, 20_000)); !strings.Contains(err.Error(), "30000 by 20000 pixels, 600 million") {
		t.Errorf("the size is not told: %v", err)
	}
}

// hugePNG is the head of a PNG file.
func hugePNG(w, h uint32) []byte {
	ihdr := binary.BigEndian.AppendUint32([]byte("IHDR"), w)
	ihdr = append(binary.BigEndian.AppendUint32(ihdr, h), 8, 0, 0, 0, 0)
	out := append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d"), ihdr...)
	out = binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(ihdr))
	return append(out, "\x00\x00\x00\x00IDAT"...)
}

// hugeJPEG is the head of a grey JPEG file.
func hugeJPEG(w, h uint16) []byte {
	out := []byte("\xff\xd8\xff\xc0\x00\x0b\x08")
	out = binary.BigEndian.AppendUint16(out, h)
	out = binary.BigEndian.AppendUint16(out, w)
	return append(out, "\x01\x01\x11\x00\xff\xda\x00\x08"...)
}

// hugeTIFF is a TIFF file with a directory and no pixels.
func hugeTIFF(w, h uint32) []byte {
	le := binary.LittleEndian
	out := []byte("II*\x00\x08\x00\x00\x00\x05\x00")
	for _, e := range [][2]uint32{{256, w}, {257, h}, {258, 8}, {259, 1}, {262, 1}} {
		out = le.AppendUint16(out, uint16(e[0]))
		out = le.AppendUint16(out, 4)
		out = le.AppendUint32(out, 1)
		out = le.AppendUint32(out, e[1])
	}
	return le.AppendUint32(out, 0)
}

func TestDecodeRefusesWhatIsNoPicture(t *testing.T) {
	for name, content := range map[string]string{"empty": "", "text": "element,kind,up,over\n", "GIF": "GIF89a\x01\x00\x01\x00"} {
		if _, _, err := decode([]byte(content)); !errors.Is(err, linework.ErrNotThatFormat) {
			t.Errorf("%s: got %v", name, err)
		}
	}
	if _, _, err := picture.Decode(strings.NewReader(""), picture.MaxBytes+1); !errors.Is(err, linework.ErrTooLarge) {
		t.Errorf("a file that is too long: got %v", err)
	}
	broken := errors.New("the stick was pulled out")
	if _, _, err := picture.Decode(iotest.ErrReader(broken), 10); !errors.Is(err, broken) {
		t.Errorf("a reader that fails: got %v", err)
	}
}

// photographed is the JPEG picture with an Exif segment that records the
// orientation.
func photographed(t testing.TB, order binary.AppendByteOrder, head string, orientation uint16) []byte {
	exif := order.AppendUint32([]byte(head), 8)
	exif = order.AppendUint16(exif, 1)
	exif = order.AppendUint16(exif, 0x0112)
	exif = order.AppendUint16(exif, 3)
	exif = order.AppendUint32(exif, 1)
	exif = order.AppendUint16(exif, orientation)
	exif = append(exif, 0, 0, 0, 0, 0, 0)
	segment := append([]byte("Exif\x00\x00"), exif...)
	whole := encoded(t, "JPEG")
	out := append([]byte("\xff\xd8\xff\xe1"), byte((len(segment)+2)>>8), byte(len(segment)+2))
	return append(append(out, segment...), whole[2:]...)
}

// TestPhotographsAreTurnedUpright checks the eight orientations of Exif 2.32
// (from memory): where the recorded upper left quarter is seen.
func TestPhotographsAreTurnedUpright(t *testing.T) {
	for o, seen := range []string{"left top", "left top", "right top", "right bottom", "left bottom",
		"left top", "right top", "right bottom", "left bottom", "left top"} {
		for _, order := range []struct {
			binary.AppendByteOrder
			head string
		}{{binary.BigEndian, "MM\x00*"}, {binary.LittleEndian, "II*\x00"}} {
			img, _, err := decode(photographed(t, order.AppendByteOrder, order.head, uint16(o)))
			if err != nil {
				t.Fatalf("orientation %d: %v", o, err)
			}
			size := image.Pt(24, 16)
			if o >= 5 && o <= 8 {
				size = image.Pt(16, 24)
			}
			if img.Bounds().Size() != size {
				t.Fatalf("orientation %d: it has %v", o, img.Bounds())
			}
			for _, x := range []string{"left", "right"} {
				for _, y := range []string{"top", "bottom"} {
					at := image.Pt(3, 3)
					if x == "right" {
						at.X = size.X - 4
					}
					if y == "bottom" {
						at.Y = size.Y - 4
					}
					if got, want := dark(img, at.X, at.Y), x+" "+y == seen; got != want {
						t.Errorf("orientation %d: dark at the %s %s: %v, want %v", o, x, y, got, want)
					}
				}
			}
		}
	}
}

func FuzzDecode(f *testing.F) {
	for _, format := range picture.Formats() {
		f.Add(encoded(f, format))
	}
	f.Add(photographed(f, binary.BigEndian, "MM\x00*", 6))
	f.Add(hugePNG(3, 2))
	f.Add(hugeJPEG(3, 2))
	f.Add(hugeTIFF(3, 2))
	f.Fuzz(func(t *testing.T, content []byte) {
		if c, _, err := image.DecodeConfig(bytes.NewReader(content)); err == nil && c.Width*c.Height > 1_000_000 {
			t.Skip("a large picture takes long and tells nothing new")
		}
		img, _, err := decode(content)
		var fault *linework.Fault
		if err != nil && !errors.As(err, &fault) {
			t.Errorf("an error without a reason: %v", err)
		}
		if err == nil && img.Bounds().Empty() {
			t.Error("a picture without pixels")
		}
	})
}
