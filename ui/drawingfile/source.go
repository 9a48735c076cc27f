// Package drawingfile opens drawing files of every format that the program reads:
// the one way in for the window and for commands. It shows nothing.
package drawingfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// Extensions are the endings of files that are drawings.
var Extensions = []string{".pdf", ".dxf", ".png", ".jpg", ".jpeg", ".tif", ".tiff"}

// most bounds the size of a drawing in bytes.
const most = 256 << 20

// Format is what a file is, as its first bytes say.
type Format string

// The formats.
const (
	PDF  Format = "PDF"
	DXF  Format = "DXF"
	PNG  Format = "PNG"
	JPEG Format = "JPEG"
	TIFF Format = "TIFF"
)

// Picture tells whether the format has dots and no lines.
func (f Format) Picture() bool { return f == PNG || f == JPEG || f == TIFF }

// Source is a drawing as it came.
type Source struct {
	Name    string
	Format  Format
	Content []byte
}

// Of tells the format of a content.
func Of(name string, content []byte) (Source, error) {
	f, err := formatOf(content, name)
	return Source{name, f, content}, err
}

// Read reads a file whole.
func Read(path string) (Source, error) {
	s := Source{Name: filepath.Base(path)}
	f, err := os.Open(path)
	if err != nil {
		return s, fmt.Errorf("%s cannot be opened: %w", s.Name, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return s, fmt.Errorf("%s is a folder: choose a drawing in it", s.Name)
	}
	s.Content, err = io.ReadAll(io.LimitReader(f, most+1))
	switch {
	case err != nil:
		return s, fmt.Errorf("%s cannot be read: %w", s.Name, err)
	case len(s.Content) > most:
		return s, fmt.Errorf("%s is larger than %d MB: export only the sheet that the plan is on", s.Name, most>>20)
	case len(s.Content) == 0:
		return s, fmt.Errorf("%s is empty: ask for it again", s.Name)
	}
	s.Format, err = formatOf(s.Content, s.Name)
	return s, err
}

// errFormat is what is said of a file that is none of the formats.
var errFormat = errors.New("it is none of the drawings that can be read: PDF, DXF, PNG, JPEG, TIFF or a table (CSV)")

// signatures are the first bytes of the formats.
var signatures = []struct {
	start  string
	format Format
}{
	{"\x89PNG\r\n\x1a\n", PNG}, {"\xff\xd8\xff", JPEG}, {"II*\x00", TIFF}, {"MM\x00*", TIFF},
	{"AutoCAD Binary DXF", DXF},
}

// formatOf tells the format by content; the name's ending decides only where the
// content could be anything.
func formatOf(content []byte, name string) (Format, error) {
	for _, s := range signatures {
		if bytes.HasPrefix(content, []byte(s.start)) {
			return s.format, nil
		}
	}
	head := content[:min(len(content), 1024)]
	if bytes.Contains(head, []byte("%PDF-")) { // readers allow something before it
		return PDF, nil
	}
	ext := strings.ToLower(filepath.Ext(name))
	switch {
	case ext == ".dxf":
		return DXF, nil
	case ext == ".pdf":
		return "", fmt.Errorf("%s is called a PDF but is none: it may have been cut short on its way, so ask for it again", name)
	case ext == ".dwg" || bytes.HasPrefix(content, []byte("AC10")):
		return "", fmt.Errorf("%s is a DWG, which only drawing programs read: ask the drawing office for DXF or PDF", name)
	}
	return "", fmt.Errorf("%s: %w", name, errFormat)
}
