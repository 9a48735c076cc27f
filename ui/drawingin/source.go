package drawingin

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// Extensions are the endings of files that this page takes.
var Extensions = []string{".pdf", ".dxf", ".png", ".jpg", ".jpeg", ".tif", ".tiff"}

// most bounds the size of a drawing in bytes.
const most = 256 << 20

// format is what a file is, as its first bytes say.
type format string

// The formats.
const (
	formatPDF  format = "PDF"
	formatDXF  format = "DXF"
	formatPNG  format = "PNG"
	formatJPEG format = "JPEG"
	formatTIFF format = "TIFF"
)

// picture tells whether the format has dots and no lines.
func (f format) picture() bool { return f == formatPNG || f == formatJPEG || f == formatTIFF }

// source is a drawing as it came.
type source struct {
	name    string
	format  format
	content []byte
	kept    string // the identifier under which the production keeps it already; empty: it does not
}

// readSource reads a file whole.
func readSource(path string) (source, error) {
	s := source{name: filepath.Base(path)}
	f, err := os.Open(path)
	if err != nil {
		return s, fmt.Errorf("%s cannot be opened: %w", s.name, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return s, fmt.Errorf("%s is a folder: choose a drawing in it", s.name)
	}
	s.content, err = io.ReadAll(io.LimitReader(f, most+1))
	switch {
	case err != nil:
		return s, fmt.Errorf("%s cannot be read: %w", s.name, err)
	case len(s.content) > most:
		return s, fmt.Errorf("%s is larger than %d MB: export only the sheet that the plan is on", s.name, most>>20)
	case len(s.content) == 0:
		return s, fmt.Errorf("%s is empty: ask for it again", s.name)
	}
	s.format, err = formatOf(s.content, s.name)
	return s, err
}

// errFormat is what is said of a file that is none of the formats.
var errFormat = errors.New("it is none of the drawings that can be read: PDF, DXF, PNG, JPEG, TIFF or a table (CSV)")

// signatures are the first bytes of the formats.
var signatures = []struct {
	start  string
	format format
}{
	{"\x89PNG\r\n\x1a\n", formatPNG}, {"\xff\xd8\xff", formatJPEG}, {"II*\x00", formatTIFF}, {"MM\x00*", formatTIFF},
	{"AutoCAD Binary DXF", formatDXF},
}

// formatOf tells the format by content; the name's ending decides only where the
// content could be anything.
func formatOf(content []byte, name string) (format, error) {
	for _, s := range signatures {
		if bytes.HasPrefix(content, []byte(s.start)) {
			return s.format, nil
		}
	}
	head := content[:min(len(content), 1024)]
	if bytes.Contains(head, []byte("%PDF-")) { // readers allow something before it
		return formatPDF, nil
	}
	ext := strings.ToLower(filepath.Ext(name))
	switch {
	case ext == ".dxf":
		return formatDXF, nil
	case ext == ".pdf":
		return "", fmt.Errorf("%s is called a PDF but is none: it may have been cut short on its way, so ask for it again", name)
	case ext == ".dwg" || bytes.HasPrefix(content, []byte("AC10")):
		return "", fmt.Errorf("%s is a DWG, which only drawing programs read: ask the drawing office for DXF or PDF", name)
	}
	return "", fmt.Errorf("%s: %w", name, errFormat)
}
