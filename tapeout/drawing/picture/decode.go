package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io"
	"strings"

	"golang.org/x/image/tiff"

	"groundrow/tapeout/drawing/linework"
)

// MaxPixels is how many pixels a picture may have: a plot of A0 scanned at 200 dots
// to the inch has 62 million. In memory that is up to 0.5 GB.
const MaxPixels = 64_000_000

// MaxBytes is how long the file of a picture may be.
const MaxBytes = 512 << 20

// kind is one format of pictures.
type kind struct {
	name   string
	begins []string // the first bytes of such a file, in one of these ways
	config func(io.Reader) (image.Config, error)
	decode func(io.Reader) (image.Image, error)
}

var kinds = []kind{
	{"PNG", []string{"\x89PNG\r\n\x1a\n"}, png.DecodeConfig, png.Decode},
	{"JPEG", []string{"\xff\xd8\xff"}, jpeg.DecodeConfig, jpeg.Decode},
	{"TIFF", []string{"II*\x00", "MM\x00*"}, tiff.DecodeConfig, tiff.Decode},
}

// Formats are the names of the formats that Decode reads.
func Formats() []string {
	var names []string
	for _, k := range kinds {
		names = append(names, k.name)
	}
	return names
}

// Decode reads a PNG, JPEG or TIFF picture and returns it with the name of its
// format. size is the length of the file in bytes, zero when it is not known. A
// photograph is turned upright as its camera recorded it. The size in pixels is
// read first, and a picture of more than MaxPixels is refused without unpacking it.
// The error is a *linework.Fault unless r itself failed.
func Decode(r io.Reader, size int64) (img image.Image, format string, err error) {
	if size > MaxBytes {
		return nil, "", tooLong(size)
	}
	content, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	switch {
	case err != nil:
		return nil, "", fmt.Errorf("reading the picture: %w", err)
	case len(content) > MaxBytes:
		return nil, "", tooLong(int64(len(content)))
	}
	k, ok := kindOf(content)
	if !ok {
		return nil, "", unknownFormat(content)
	}
	if err := k.check(content); err != nil {
		return nil, k.name, err
	}
	if int64(len(content)) < size {
		return nil, k.name, k.damaged(io.ErrUnexpectedEOF)
	}
	img, err = k.decode(bytes.NewReader(content))
	if err != nil {
		return nil, k.name, k.refused(err)
	}
	if k.name == "JPEG" {
		img = upright(img, orientation(content))
	}
	return img, k.name, nil
}

func kindOf(content []byte) (kind, bool) {
	for _, k := range kinds {
		for _, b := range k.begins {
			if bytes.HasPrefix(content, []byte(b)) {
				return k, true
			}
		}
	}
	return kind{}, false
}

// check reads what the file says of the picture's size and refuses what is too
// large to unpack.
func (k kind) check(content []byte) error {
	c, err := k.config(bytes.NewReader(content))
	if err != nil {
		return k.refused(err)
	}
	switch {
	case c.Width <= 0 || c.Height <= 0:
		return k.damaged(errors.New("it has no size"))
	case c.Width > MaxPixels/c.Height: // the product itself can overflow
		return &linework.Fault{
			Reason: linework.ErrTooLarge,
			What: fmt.Sprintf("the picture has %d by %d pixels, %.0f million; at most %d million can be shown",
				c.Width, c.Height, float64(c.Width)*float64(c.Height)/1e6, MaxPixels/1_000_000),
			Do: "Scan it at 150 or 200 dots to the inch, or make the picture smaller",
		}
	}
	return nil
}

// refused words the error of a decoder. What the format allows and the decoder
// does not know is told apart from what is broken.
func (k kind) refused(err error) error {
	var p png.UnsupportedError
	var j jpeg.UnsupportedError
	var t tiff.UnsupportedError
	if errors.As(err, &p) || errors.As(err, &j) || errors.As(err, &t) {
		return &linework.Fault{
			Reason: linework.ErrUnsupported,
			What:   fmt.Sprintf("this variety of %s cannot be read (%v)", k.name, err),
			Do:     "Save the picture again as PNG",
		}
	}
	return k.damaged(err)
}

func (k kind) damaged(err error) error {
	what := fmt.Sprintf("the %s picture is damaged (%v)", k.name, err)
	if errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) {
		what = fmt.Sprintf("the %s picture is cut short: its file ends too early", k.name)
	}
	return &linework.Fault{Reason: linework.ErrDamaged, What: what, Do: "Copy or send the file again"}
}

func unknownFormat(content []byte) error {
	what := "this is no picture that can be read"
	if len(content) == 0 {
		what = "the file is empty"
	}
	return &linework.Fault{
		Reason: linework.ErrNotThatFormat,
		What:   what,
		Do:     "Pictures are read as " + strings.Join(Formats(), ", "),
	}
}

func tooLong(size int64) error {
	return &linework.Fault{
		Reason: linework.ErrTooLarge,
		What:   fmt.Sprintf("the file of the picture has %d MB or more; at most %d can be read", size>>20, MaxBytes>>20),
		Do:     "Make the picture smaller",
	}
}
