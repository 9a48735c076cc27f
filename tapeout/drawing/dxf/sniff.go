package dxf

import (
	"bytes"
	"errors"
	"io"

	"groundrow/tapeout/drawing/linework"
)

// checkStart refuses files that are no ASCII DXF by their first bytes, and skips
// the byte order mark of UTF-8.
func (s *scanner) checkStart() error {
	head, err := s.in.Peek(64)
	if err != nil && !errors.Is(err, io.EOF) {
		return err
	}
	if bytes.HasPrefix(head, []byte("\xEF\xBB\xBF")) {
		_, err := s.in.Discard(3)
		return err
	}
	const export = "Export the drawing as ASCII DXF"
	switch {
	case len(bytes.TrimSpace(head)) == 0:
		return refuse(linework.ErrNotThatFormat, "The file is empty", export)
	case bytes.Contains(head[:min(len(head), 22)], []byte("Binary DXF")):
		return refuse(linework.ErrUnsupported, "This is a binary DXF, which is not read", export)
	case bytes.HasPrefix(head, []byte("AC10")):
		return refuse(linework.ErrNotThatFormat, "This is a DWG drawing, not a DXF", export)
	case bytes.HasPrefix(head, []byte("%PDF")):
		return refuse(linework.ErrNotThatFormat, "This is a PDF, not a DXF", "Import it as a PDF")
	case bytes.HasPrefix(head, []byte("\xFF\xFE")), bytes.HasPrefix(head, []byte("\xFE\xFF")):
		return refuse(linework.ErrUnsupported, "The file is text in UTF-16, which no DXF may be", "Save it as UTF-8, or export the drawing again")
	case bytes.IndexByte(head, 0) >= 0:
		return refuse(linework.ErrNotThatFormat, "The file is not text, so it is no ASCII DXF", export)
	}
	return nil
}

func refuse(reason error, what, do string) error {
	return &linework.Fault{Reason: reason, What: what, Do: do}
}
