package dxf

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/korean"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

// codePages are the values of $DWGCODEPAGE, in lower case.
var codePages = map[string]encoding.Encoding{
	"ansi_874": charmap.Windows874, "ansi_932": japanese.ShiftJIS, "ansi_936": simplifiedchinese.GBK,
	"ansi_949": korean.EUCKR, "ansi_950": traditionalchinese.Big5, "ansi_1250": charmap.Windows1250,
	"ansi_1251": charmap.Windows1251, "ansi_1252": charmap.Windows1252, "ansi_1253": charmap.Windows1253,
	"ansi_1254": charmap.Windows1254, "ansi_1255": charmap.Windows1255, "ansi_1256": charmap.Windows1256,
	"ansi_1257": charmap.Windows1257, "ansi_1258": charmap.Windows1258, "dos437": charmap.CodePage437,
	"dos850": charmap.CodePage850, "dos852": charmap.CodePage852, "dos855": charmap.CodePage855,
	"dos866": charmap.CodePage866, "iso8859-1": charmap.ISO8859_1,
}

// multibyte are the code pages of \M+n, by n.
var multibyte = map[byte]encoding.Encoding{
	'1': japanese.ShiftJIS, '2': traditionalchinese.Big5, '3': korean.EUCKR, '5': simplifiedchinese.GBK,
}

// decoder turns the file's bytes into text.
type decoder struct {
	utf8 bool              // the release writes UTF-8
	page encoding.Encoding // of older releases; nil: not stated
	odd  int               // texts that were not in the encoding that the file claims
}

// text decodes bytes and the escapes \U+XXXX and \M+nXXXX. UTF-8 is taken for what
// it is where no code page is stated, since many programs write it into old releases.
func (d *decoder) text(b []byte) string {
	return unescape(d.plain(b))
}

func (d *decoder) plain(b []byte) string {
	ascii := true
	for _, c := range b {
		ascii = ascii && c < utf8.RuneSelf
	}
	if ascii {
		return string(b)
	}
	if (d.utf8 || d.page == nil) && utf8.Valid(b) {
		return string(b)
	}
	page := d.page
	if page == nil {
		page = charmap.Windows1252
	}
	if d.utf8 {
		d.odd++
	}
	out, err := page.NewDecoder().Bytes(b)
	if err != nil {
		return strings.ToValidUTF8(string(b), "\uFFFD")
	}
	return string(out)
}

// unescape replaces \U+XXXX by the character, and \M+nXXXX by that of code page n.
func unescape(s string) string {
	if !strings.Contains(s, `\U+`) && !strings.Contains(s, `\M+`) {
		return s
	}
	var out strings.Builder
	for s != "" {
		if r, size := escaped(s); size > 0 {
			out.WriteString(r)
			s = s[size:]
			continue
		}
		_, size := utf8.DecodeRuneInString(s)
		out.WriteString(s[:size])
		s = s[size:]
	}
	return joinSurrogates(out.String())
}

// escaped reads an escape at the start of s; size is zero when there is none.
func escaped(s string) (r string, size int) {
	switch {
	case strings.HasPrefix(s, `\U+`) && len(s) >= 7:
		if code, err := strconv.ParseUint(s[3:7], 16, 16); err == nil {
			return encodeUnit(rune(code)), 7
		}
	case strings.HasPrefix(s, `\M+`) && len(s) >= 8:
		page, code := multibyte[s[3]], uint64(0)
		code, err := strconv.ParseUint(s[4:8], 16, 16)
		if page == nil || err != nil {
			return "", 0
		}
		if b, err := page.NewDecoder().Bytes([]byte{byte(code >> 8), byte(code)}); err == nil {
			return string(b), 8
		}
	}
	return "", 0
}

// encodeUnit writes half of a surrogate pair in the way of WTF-8, so that the two
// halves can find each other.
func encodeUnit(r rune) string {
	if r < 0xD800 || r > 0xDFFF {
		return string(r)
	}
	return string([]byte{0xE0 | byte(r>>12), 0x80 | byte(r>>6)&0x3F, 0x80 | byte(r)&0x3F})
}

func joinSurrogates(s string) string {
	if utf8.ValidString(s) {
		return s
	}
	var out strings.Builder
	for i := 0; i < len(s); {
		high, ok := surrogate(s[i:])
		low, ok2 := rune(0), false
		if ok && high < 0xDC00 {
			low, ok2 = surrogate(s[i+3:])
		}
		if ok2 && low >= 0xDC00 {
			out.WriteRune(0x10000 + (high-0xD800)<<10 + (low - 0xDC00))
			i += 6
			continue
		}
		r, size := utf8.DecodeRuneInString(s[i:])
		out.WriteRune(r)
		i += size
	}
	return out.String()
}

func surrogate(s string) (rune, bool) {
	if len(s) < 3 || s[0] != 0xED || s[1] < 0xA0 || s[1] > 0xBF || s[2]&0xC0 != 0x80 {
		return 0, false
	}
	return 0xD000 | rune(s[1]&0x3F)<<6 | rune(s[2]&0x3F), true
}
