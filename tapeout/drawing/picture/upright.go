package picture

import (
	"bytes"
	"encoding/binary"
	"image"
)

// The orientation of a photograph (Exif 2.32, tag 0x0112) says which side of the
// recorded picture is the top of what was seen: 1 as recorded, 3 upside down, 6 and
// 8 turned a quarter, the others mirrored as well.
const (
	asRecorded      = 1
	orientationTag  = 0x0112
	shortType       = 3
	directoryHead   = 2
	directoryEntry  = 12
	startOfScan     = 0xda
	applicationOne  = 0xe1
	exifHead        = "Exif\x00\x00"
	littleEndianTag = "II"
)

// orientation returns the orientation that a JPEG file records, from 1 to 8;
// asRecorded where it says nothing that can be understood.
func orientation(jpeg []byte) int {
	for rest := jpeg[min(2, len(jpeg)):]; len(rest) >= 4 && rest[0] == 0xff && rest[1] != startOfScan; {
		n := 2 + int(binary.BigEndian.Uint16(rest[2:])) // the marker, then a length that counts itself
		if n < 4 || n > len(rest) {
			break
		}
		if exif, ok := bytes.CutPrefix(rest[4:n], []byte(exifHead)); ok && rest[1] == applicationOne {
			return exifOrientation(exif)
		}
		rest = rest[n:]
	}
	return asRecorded
}

// exifOrientation looks through the first directory of what is laid out as a TIFF
// file.
func exifOrientation(exif []byte) int {
	if len(exif) < 8 {
		return asRecorded
	}
	var order binary.ByteOrder = binary.BigEndian
	if bytes.HasPrefix(exif, []byte(littleEndianTag)) {
		order = binary.LittleEndian
	}
	at := int64(order.Uint32(exif[4:]))
	if at+directoryHead > int64(len(exif)) {
		return asRecorded
	}
	entries := exif[at+directoryHead:]
	for range order.Uint16(exif[at:]) {
		if len(entries) < directoryEntry {
			break
		}
		if order.Uint16(entries) == orientationTag && order.Uint16(entries[2:]) == shortType {
			if o := int(order.Uint16(entries[8:])); o >= 1 && o <= 8 {
				return o
			}
		}
		entries = entries[directoryEntry:]
	}
	return asRecorded
}

// upright returns the picture as it was seen by a camera that recorded it with the
// orientation.
func upright(img image.Image, orientation int) image.Image {
	if orientation == asRecorded {
		return img
	}
	src, b := reader(img), img.Bounds()
	w, h := b.Dx(), b.Dy()
	if orientation >= 5 {
		w, h = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			i, j := recordedAt(orientation, x, y, image.Pt(w, h))
			c := src.RGBA64At(b.Min.X+i, b.Min.Y+j)
			p := out.Pix[y*out.Stride+4*x:]
			p[0], p[1], p[2], p[3] = byte(c.R>>8), byte(c.G>>8), byte(c.B>>8), byte(c.A>>8)
		}
	}
	return out
}

// recordedAt returns the column and row of the recorded picture that is seen at
// column x and row y of an upright picture of the given size.
func recordedAt(orientation, x, y int, size image.Point) (i, j int) {
	right, bottom := size.X-1-x, size.Y-1-y
	switch orientation {
	case 2:
		return right, y
	case 3:
		return right, bottom
	case 4:
		return x, bottom
	case 5:
		return y, x
	case 6:
		return y, right
	case 7:
		return bottom, right
	case 8:
		return bottom, x
	}
	return x, y
}
