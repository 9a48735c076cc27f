package layout

import (
	"io"

	"groundrow/tapeout/drawing/dxf"
	"groundrow/tapeout/drawing/linework"
)

// WriteDXF writes the layout as a DXF file in the drawing unit, which the file
// states; see Sheet for what is on which layer. Marks and control points are POINT.
// A layout with a coordinate that is no number is refused.
func (l *Layout) WriteDXF(w io.Writer, unit linework.Unit) error {
	return dxf.Write(w, l.Sheet(unit))
}
