package drawing

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// maxBytes bounds what is read of one table.
const maxBytes = 32 << 20

// readText returns all of r as text: UTF-8 with or without a byte order mark, or
// what older spreadsheets write, Windows code page 1252.
func readText(r io.Reader) (string, error) {
	b, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return "", fmt.Errorf("reading the table: %w", err)
	}
	if len(b) > maxBytes {
		return "", fmt.Errorf("the table is larger than %d MB; split it into several files", maxBytes>>20)
	}
	if bytes.HasPrefix(b, []byte{0xFF, 0xFE}) || bytes.HasPrefix(b, []byte{0xFE, 0xFF}) {
		return "", errors.New("the table is saved as UTF-16; save it as CSV in UTF-8")
	}
	if bytes.IndexByte(b, 0) >= 0 {
		return "", errors.New("this is not a table in text; save the spreadsheet as CSV")
	}
	b = bytes.TrimPrefix(b, []byte("\uFEFF"))
	if utf8.Valid(b) {
		return string(b), nil
	}
	return fromWindows(b), nil
}

// windows are the characters of code page 1252 from 0x80 to 0x9F; from 0xA0 on it
// is Unicode. Five places have none.
var windows = []rune("€\uFFFD‚ƒ„…†‡ˆ‰Š‹Œ\uFFFDŽ\uFFFD\uFFFD‘’“”•–—˜™š›œ\uFFFDžŸ")

func fromWindows(b []byte) string {
	var out strings.Builder
	for _, c := range b {
		if c >= 0x80 && c < 0xA0 {
			out.WriteRune(windows[c-0x80])
			continue
		}
		out.WriteRune(rune(c))
	}
	return out.String()
}

// separator returns what stands between the cells of a table, from its first row:
// comma, semicolon (where the comma is the decimal sign) or tab.
func separator(text string) rune {
	first, _, _ := strings.Cut(strings.TrimLeft(text, "\r\n"), "\n")
	best, most := ',', 0
	for _, c := range []rune{',', ';', '\t'} {
		if n := strings.Count(first, string(c)); n > most {
			best, most = c, n
		}
	}
	return best
}
