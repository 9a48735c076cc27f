package syntax

import (
	"bytes"
	"strconv"
)

// scanner reads values one after the other. At anything unexpected it goes on with
// the next byte, so that it always ends.
type scanner struct {
	data []byte
	at   int
}

// endOf marks the end of an array or a dictionary, and anything that is no value.
type endOf byte

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
func isSpace(c byte) bool { return bytes.IndexByte([]byte("\x00\t\n\f\r "), c) >= 0 }
func isDelimiter(c byte) bool {
	return bytes.IndexByte([]byte("()<>[]{}/%"), c) >= 0
}

// space passes over white space and comments.
func (s *scanner) space() {
	for s.at < len(s.data) {
		switch c := s.data[s.at]; {
		case c == '%':
			s.line()
		case isSpace(c):
			s.at++
		default:
			return
		}
	}
}

// value reads one value; endOf when none stands there.
func (s *scanner) value(depth int) any {
	s.space()
	if s.at >= len(s.data) || depth > maxDepth {
		s.at = len(s.data)
		return endOf(0)
	}
	rest := s.data[s.at:]
	switch c := rest[0]; {
	case bytes.HasPrefix(rest, []byte("<<")):
		s.at += 2
		return s.dict(depth + 1)
	case bytes.HasPrefix(rest, []byte(">>")):
		s.at += 2
		return endOf('>')
	case c == '[':
		s.at++
		return s.array(depth + 1)
	case c == '(':
		s.at++
		return s.text()
	case c == '<':
		s.at++
		return s.hexText()
	case c == '/':
		s.at++
		return s.name()
	case isDelimiter(c):
		s.at++
		return endOf(c)
	}
	return s.number()
}

func (s *scanner) array(depth int) Array {
	out := Array{}
	for {
		v := s.value(depth)
		if _, ended := v.(endOf); ended {
			return out
		}
		out = append(out, v)
	}
}

func (s *scanner) dict(depth int) Dict {
	out := Dict{}
	for {
		key, isName := s.value(depth).(Name)
		if !isName {
			return out
		}
		v := s.value(depth)
		if _, ended := v.(endOf); ended {
			return out
		}
		out[key] = v
	}
}

// word reads up to the next space or delimiter.
func (s *scanner) word() []byte {
	from := s.at
	for s.at < len(s.data) && !isSpace(s.data[s.at]) && !isDelimiter(s.data[s.at]) {
		s.at++
	}
	return s.data[from:s.at]
}

// number reads a number, a reference, true, false or null.
func (s *scanner) number() any {
	w := string(s.word())
	switch w {
	case "true":
		return true
	case "false":
		return false
	case "null":
		return nil
	}
	if n, err := strconv.Atoi(w); err == nil && n >= 0 && s.refers() {
		return Ref(n)
	}
	if x, err := strconv.ParseFloat(w, 64); err == nil {
		return x
	}
	return endOf(0)
}

// refers passes over the rest of a reference, “0 R”, if it stands there.
func (s *scanner) refers() bool {
	from := s.at
	if _, ok := s.integer(); ok {
		s.space()
		if string(s.word()) == "R" {
			return true
		}
	}
	s.at = from
	return false
}

// name resolves #20 and the like.
func (s *scanner) name() Name {
	w := s.word()
	var out []byte
	for i := 0; i < len(w); i++ {
		if w[i] == '#' && i+2 < len(w) {
			if n, err := strconv.ParseUint(string(w[i+1:i+3]), 16, 8); err == nil {
				out = append(out, byte(n))
				i += 2
				continue
			}
		}
		out = append(out, w[i])
	}
	return Name(out)
}
