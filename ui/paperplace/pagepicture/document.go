// Package pagepicture draws small pictures of the sheets that the program has
// set itself, from the very pages that will be printed. It reads the part of PDF
// that package sheets writes: straight and curved paths, strokes, fills, dashes,
// clips and text in the program's two typefaces. It is no reader for other
// files; what it does not know it leaves out.
package pagepicture

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
)

// Document is a sheet as it was written, ready to be drawn.
type Document struct {
	width, height float64 // of a page, in points
	pages         [][]byte
	bold          map[string]bool // by the name of the font in the pages
}

var (
	boxForm    = regexp.MustCompile(`/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]`)
	pageForm   = regexp.MustCompile(`<</Type /Page\s`)
	streamForm = regexp.MustCompile(`/Length (\d+)>>\s*stream\n`)
	fontForm   = regexp.MustCompile(`/(F[0-9A-Za-z]+) (\d+) 0 R`)
)

// maxContent bounds what one page may unfold to, so that a damaged length or a
// crafted stream cannot fill the memory.
const maxContent = 32 << 20

// maxSide bounds the sides of a page in points: a little over PDF's own limit
// would be a slip, and nothing that a printer takes is larger.
const maxSide = 14_400

// Read takes a sheet as sheets.Write wrote it.
func Read(pdf []byte) (*Document, error) {
	m := boxForm.FindSubmatch(pdf)
	if m == nil {
		return nil, errors.New("reading the pages: their size is not given")
	}
	d := &Document{bold: map[string]bool{}}
	d.width, _ = strconv.ParseFloat(string(m[1]), 64) // the form admits figures and points only;
	d.height, _ = strconv.ParseFloat(string(m[2]), 64)
	if !(d.width >= 1 && d.height >= 1 && d.width <= maxSide && d.height <= maxSide) { // what is still no number fails here
		return nil, fmt.Errorf("reading the pages: %s by %s is no size of a page", m[1], m[2])
	}
	for _, at := range pageForm.FindAllIndex(pdf, -1) {
		content, err := stream(pdf[at[1]:])
		if err != nil {
			return nil, fmt.Errorf("reading page %d: %w", len(d.pages)+1, err)
		}
		d.pages = append(d.pages, content)
	}
	if len(d.pages) == 0 {
		return nil, errors.New("reading the pages: there are none")
	}
	d.findFonts(pdf)
	return d, nil
}

// stream unfolds the first stream in the bytes.
func stream(pdf []byte) ([]byte, error) {
	m := streamForm.FindSubmatchIndex(pdf)
	if m == nil {
		return nil, errors.New("it has no content")
	}
	n, err := strconv.Atoi(string(pdf[m[2]:m[3]]))
	if err != nil || n > len(pdf)-m[1] {
		return nil, errors.New("its content is cut off")
	}
	z, err := zlib.NewReader(bytes.NewReader(pdf[m[1] : m[1]+n]))
	if err != nil {
		return nil, fmt.Errorf("unfolding it: %w", err)
	}
	defer z.Close()
	content, err := io.ReadAll(io.LimitReader(z, maxContent))
	if err != nil {
		return nil, fmt.Errorf("unfolding it: %w", err)
	}
	return content, nil
}

// findFonts tells the bold face from the plain one by the name that the file
// gives it.
func (d *Document) findFonts(pdf []byte) {
	for _, m := range fontForm.FindAllSubmatch(pdf, -1) {
		head := append([]byte("\n"), m[2]...)
		at := bytes.Index(pdf, append(head, " 0 obj"...))
		if at < 0 {
			continue
		}
		object, _, _ := bytes.Cut(pdf[at:], []byte("endobj"))
		_, name, _ := bytes.Cut(object, []byte("/BaseFont /"))
		name, _, _ = bytes.Cut(name, []byte("\n"))
		d.bold[string(m[1])] = bytes.HasSuffix(bytes.TrimSpace(name), []byte("B"))
	}
}

// Pages is how many pages the sheet has.
func (d *Document) Pages() int { return len(d.pages) }

// Size is the size of a page in points, of which there are 72 to an inch.
func (d *Document) Size() (width, height float64) { return d.width, d.height }
