package dxf

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"io"
	"strconv"

	"groundrow/tapeout/drawing/linework"
)

// scanner reads the pairs of group code and value.
type scanner struct {
	ctx      context.Context
	in       *bufio.Reader
	line     int   // the number of the line read last
	read     int64 // bytes
	size     int64 // bytes in all; zero: not known
	progress func(float64)
	pairs    int

	held  bool // the pair below has been put back
	code  int
	value []byte
}

func newScanner(ctx context.Context, r io.Reader, progress func(float64)) *scanner {
	s := &scanner{ctx: ctx, size: sizeOf(r), progress: progress}
	s.in = bufio.NewReaderSize(r, maxLine)
	return s
}

// sizeOf returns how many bytes are to come, zero when the reader does not tell.
func sizeOf(r io.Reader) int64 {
	switch r := r.(type) {
	case interface{ Len() int }:
		return int64(r.Len())
	case io.Seeker:
		here, err := r.Seek(0, io.SeekCurrent)
		if err != nil {
			return 0
		}
		end, err := r.Seek(0, io.SeekEnd)
		if _, back := r.Seek(here, io.SeekStart); err != nil || back != nil {
			return 0
		}
		return end - here
	}
	return 0
}

// next returns the next pair; value holds until the one after it. err is io.EOF
// when the file ends between two pairs.
func (s *scanner) next() (code int, value []byte, err error) {
	if s.held {
		s.held = false
		return s.code, s.value, nil
	}
	if s.pairs++; s.pairs%4096 == 0 {
		if err := s.tick(); err != nil {
			return 0, nil, err
		}
	}
	text, err := s.readLine()
	if err != nil {
		return 0, nil, err
	}
	code, ok := groupCode(text)
	if !ok {
		if len(bytes.TrimSpace(text)) == 0 && s.onlyBlank() {
			return 0, nil, io.EOF
		}
		return 0, nil, s.notACode(text)
	}
	value, err = s.readLine()
	if errors.Is(err, io.EOF) {
		return 0, nil, damaged(s.line, "the file ends in the middle of a pair of lines")
	}
	s.code, s.value = code, value
	return code, value, err
}

// putBack makes next return the same pair again.
func (s *scanner) putBack() { s.held = true }

func (s *scanner) tick() error {
	if err := s.ctx.Err(); err != nil {
		return err
	}
	if s.read > maxFile {
		return &linework.Fault{
			Reason: linework.ErrTooLarge, What: "The file is larger than 1 GB",
			Do: "Export only the layers of the ground plan",
		}
	}
	if s.progress != nil && s.size > 0 {
		s.progress(min(1, float64(s.read)/float64(s.size)))
	}
	return nil
}

func (s *scanner) readLine() ([]byte, error) {
	text, err := s.in.ReadSlice('\n')
	s.read += int64(len(text))
	switch {
	case errors.Is(err, bufio.ErrBufferFull):
		return nil, damaged(s.line+1, "it is longer than any line of a DXF file")
	case errors.Is(err, io.EOF) && len(text) > 0:
	case err != nil:
		return nil, err
	}
	s.line++
	return bytes.TrimRight(text, "\r\n"), nil
}

// onlyBlank tells whether nothing but a little white space follows.
func (s *scanner) onlyBlank() bool {
	rest, err := s.in.Peek(1024)
	return err != nil && len(bytes.TrimSpace(rest)) == 0
}

func (s *scanner) notACode(text []byte) error {
	const most = 40
	shown := strconv.QuoteToASCII(string(text[:min(len(text), most)]))
	return damaged(s.line, "a group code, a whole number, should stand here instead of %s", shown)
}

// groupCode reads a whole number, with white space around it.
func groupCode(text []byte) (code int, ok bool) {
	text = bytes.TrimSpace(text)
	sign := 1
	if len(text) > 1 && text[0] == '-' {
		sign, text = -1, text[1:]
	}
	if len(text) == 0 || len(text) > 5 {
		return 0, false
	}
	for _, c := range text {
		if c < '0' || c > '9' {
			return 0, false
		}
		code = code*10 + int(c-'0')
	}
	return sign * code, true
}
