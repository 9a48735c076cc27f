package sheets

import "strings"

// PageSize is a paper, upright: the short side is its width. Millimetres.
type PageSize struct {
	Name          string
	Width, Height float64
}

// The papers offered. A4 and A3 are those of ISO 216; letter and tabloid are
// 8½ × 11 and 11 × 17 inches, sizes A and B of ASME Y14.1.
var (
	Letter  = PageSize{"Letter", 8.5 * 25.4, 11 * 25.4}
	A4      = PageSize{"A4", 210, 297}
	Tabloid = PageSize{"Tabloid", 11 * 25.4, 17 * 25.4}
	A3      = PageSize{"A3", 297, 420}
)

// PageSizes in the order offered.
var PageSizes = []PageSize{Letter, A4, Tabloid, A3}

// Paper returns the page size of that name, whatever its case; ok is false when
// there is none.
func Paper(name string) (size PageSize, ok bool) {
	for _, s := range PageSizes {
		if strings.EqualFold(s.Name, strings.TrimSpace(name)) {
			return s, true
		}
	}
	return PageSize{}, false
}

// turned returns the size lying on its long side.
func (s PageSize) turned() PageSize { return PageSize{s.Name, s.Height, s.Width} }

// inset is an upright rectangle on a page in millimetres from its top left
// corner, y downwards.
type inset struct{ x, y, w, h float64 }

func (r inset) right() float64  { return r.x + r.w }
func (r inset) bottom() float64 { return r.y + r.h }

func (r inset) meets(s inset) bool {
	return r.x < s.right() && s.x < r.right() && r.y < s.bottom() && s.y < r.bottom()
}

// The margins and the bands of the common head and foot, in millimetres. A
// margin of 12 mm is inside what every office printer can reach, and leaves room
// for a clip or a punched edge.
const (
	margin     = 12.0
	headHeight = 23.0
	footHeight = 13.0
)

// body is the part of a page between head and foot.
func (s PageSize) body() inset {
	return inset{margin, margin + headHeight, s.Width - 2*margin, s.Height - 2*margin - headHeight - footHeight}
}
