package syntax

import (
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// escapes of a string (PDF reference 1.7, table 3.2).
var escapes = map[byte]byte{'n': '\n', 'r': '\r', 't': '\t', 'b': '\b', 'f': '\f'}

// text reads a string in brackets, the opening one being passed.
func (s *scanner) text() String {
	var out []byte
	for open := 1; s.at < len(s.data); {
		c := s.data[s.at]
		s.at++
		switch c {
		case '\\':
			out = s.escape(out)
			continue
		case '(':
			open++
		case ')':
			open--
			if open == 0 {
				return String(out)
			}
		}
		out = append(out, c)
	}
	return String(out)
}

// escape adds what an escape stands for, the backslash being passed.
func (s *scanner) escape(out []byte) []byte {
	if s.at >= len(s.data) {
		return out
	}
	c := s.data[s.at]
	if isOctal(c) {
		n := 0
		for range 3 {
			if s.at < len(s.data) && isOctal(s.data[s.at]) {
				n = n*8 + int(s.data[s.at]-'0')
				s.at++
			}
		}
		return append(out, byte(n))
	}
	s.at++
	if c == '\r' && s.at < len(s.data) && s.data[s.at] == '\n' {
		s.at++
	}
	if c == '\r' || c == '\n' { // the line goes on
		return out
	}
	if e, ok := escapes[c]; ok {
		return append(out, e)
	}
	return append(out, c)
}

func isOctal(c byte) bool { return c >= '0' && c <= '7' }

// hexText reads a string in angle brackets, the opening one being passed.
func (s *scanner) hexText() String {
	var out []byte
	high, half := byte(0), false
	for s.at < len(s.data) {
		c := s.data[s.at]
		s.at++
		if c == '>' {
			break
		}
		digit := strings.IndexByte("0123456789abcdef", c|0x20)
		if digit < 0 {
			continue
		}
		if half {
			out = append(out, high<<4|byte(digit))
		}
		high, half = byte(digit), !half
	}
	if half {
		out = append(out, high<<4)
	}
	return String(out)
}

// docEncoding is PDFDocEncoding from 0x18 to 0x1F and from 0x80 to 0xA0, where it
// differs from Latin 1 (PDF reference 1.7, appendix D.2).
var docEncoding = map[byte]rune{}

func init() {
	for from, runes := range map[byte]string{0x18: "˘ˇˆ˙˝˛˚˜", 0x80: "•†‡…—–ƒ⁄‹›−‰„“”‘’‚™ﬁﬂŁŒŠŸŽıłœšž", 0xA0: "€"} {
		for _, r := range runes {
			docEncoding[from] = r
			from++
		}
	}
}

// Text returns what the string says: UTF-16 or UTF-8 after its mark, else
// PDFDocEncoding (PDF reference 1.7, 3.8.1).
func (s String) Text() string {
	if rest, ok := strings.CutPrefix(string(s), "\xFE\xFF"); ok {
		var units []uint16
		for i := 0; i+1 < len(rest); i += 2 {
			units = append(units, uint16(rest[i])<<8|uint16(rest[i+1]))
		}
		return string(utf16.Decode(units))
	}
	if rest, ok := strings.CutPrefix(string(s), "\xEF\xBB\xBF"); ok && utf8.ValidString(rest) {
		return rest
	}
	var out strings.Builder
	for i := range len(s) {
		r, ok := docEncoding[s[i]]
		if !ok {
			r = rune(s[i])
		}
		out.WriteRune(r)
	}
	return out.String()
}
