package syntax

import (
	"bytes"
	"errors"
	"strconv"
)

// maxDepth bounds how deeply values, references and pages are nested.
const maxDepth = 60

// ErrNoRoot says that the file names no catalogue.
var ErrNoRoot = errors.New("the PDF file has no catalogue")

// Parse reads a plainly written file. What cannot be read is left out, since the
// rest may still tell what is looked for.
func Parse(data []byte) (*File, error) {
	f := &File{objects: map[Ref]any{}}
	s := &scanner{data: data}
	for s.seek() {
		if bytes.HasPrefix(s.data[s.at:], trailer) {
			s.at += len(trailer)
			f.take(s.value(0))
			continue
		}
		number, ok := s.header()
		if !ok {
			s.line()
			continue
		}
		v := s.value(0)
		s.passStream(v)
		f.take(v)
		if _, twice := f.objects[number]; !twice {
			f.objects[number] = v
		}
	}
	if f.Root() == nil {
		return nil, ErrNoRoot
	}
	return f, nil
}

// take notes the catalogue where v is a trailer; the last one in the file counts.
func (f *File) take(v any) {
	d, _ := v.(Dict)
	if root, ok := d["Root"].(Ref); ok {
		f.root = root
	}
}

var trailer = []byte("trailer")

// seek goes to the next line that starts an object or a trailer.
func (s *scanner) seek() bool {
	for {
		s.space()
		if s.at >= len(s.data) {
			return false
		}
		if c := s.data[s.at]; isDigit(c) || c == 't' {
			return true
		}
		s.line()
	}
}

// line goes to the end of the line.
func (s *scanner) line() {
	if n := bytes.IndexAny(s.data[s.at:], "\r\n"); n >= 0 {
		s.at += n + 1
		return
	}
	s.at = len(s.data)
}

// header reads “12 0 obj”.
func (s *scanner) header() (number Ref, ok bool) {
	n, isNumber := s.integer()
	_, isGeneration := s.integer()
	s.space()
	if !isNumber || !isGeneration || !bytes.HasPrefix(s.data[s.at:], []byte("obj")) {
		return 0, false
	}
	s.at += len("obj")
	return Ref(n), true
}

func (s *scanner) integer() (n int, ok bool) {
	s.space()
	from := s.at
	for s.at < len(s.data) && isDigit(s.data[s.at]) {
		s.at++
	}
	n, err := strconv.Atoi(string(s.data[from:s.at]))
	return n, err == nil
}

// passStream goes past the stream that follows its dictionary v, if one does.
func (s *scanner) passStream(v any) {
	d, isDict := v.(Dict)
	s.space()
	if !isDict || !bytes.HasPrefix(s.data[s.at:], []byte("stream")) {
		return
	}
	if length, ok := d["Length"].(float64); ok && length > 0 && length < float64(len(s.data)-s.at) {
		s.at += int(length)
	}
	if n := bytes.Index(s.data[s.at:], []byte("endstream")); n >= 0 {
		s.at += n + len("endstream")
	}
}
