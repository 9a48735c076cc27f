package dxf

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// plainText returns the words of a TEXT or ATTRIB: %%d, %%p and %%c are signs,
// %%nnn a character by number, and %%u, %%o and %%k switch lines over and under the
// words. Control characters stand behind a caret.
func plainText(s string) string {
	if !strings.Contains(s, "%%") {
		return carets(s)
	}
	var out strings.Builder
	for s != "" {
		before, after, found := strings.Cut(s, "%%")
		out.WriteString(before)
		if !found {
			break
		}
		sign, size := percentSign(after)
		out.WriteString(sign)
		s = after[size:]
	}
	return carets(out.String())
}

func percentSign(s string) (sign string, size int) {
	if s == "" {
		return "", 0
	}
	switch s[0] {
	case 'd', 'D':
		return "°", 1
	case 'p', 'P':
		return "±", 1
	case 'c', 'C':
		return "⌀", 1
	case '%':
		return "%", 1
	case 'u', 'U', 'o', 'O', 'k', 'K':
		return "", 1
	}
	if len(s) >= 3 {
		if n, err := strconv.ParseUint(s[:3], 10, 8); err == nil {
			return string(rune(n)), 3
		}
	}
	return "%%", 0
}

// carets replaces ^I by a tab, ^J by a new line, ^M by nothing and "^ " by a caret.
func carets(s string) string {
	if !strings.Contains(s, "^") {
		return s
	}
	return strings.NewReplacer("^I", "\t", "^J", "\n", "^M", "", "^ ", "^").Replace(s)
}

// plainMText returns the words of an MTEXT without its formatting codes.
func plainMText(s string) string {
	var out strings.Builder
	s = carets(s)
	for s != "" {
		switch {
		case s[0] == '{' || s[0] == '}':
			s = s[1:]
		case s[0] == '\\' && len(s) > 1:
			words, size := formatCode(s)
			out.WriteString(words)
			s = s[size:]
		case strings.HasPrefix(s, "%%"):
			sign, size := percentSign(s[2:])
			out.WriteString(sign)
			s = s[2+size:]
		default:
			_, size := utf8.DecodeRuneInString(s)
			out.WriteString(s[:size])
			s = s[size:]
		}
	}
	return out.String()
}

// formatCode reads the code at the start of s: what it writes, and how long it is.
func formatCode(s string) (words string, size int) {
	switch s[1] {
	case 'P', 'N', 'X':
		return "\n", 2
	case '~':
		return "\u00A0", 2
	case '\\', '{', '}':
		return s[1:2], 2
	case 'L', 'l', 'O', 'o', 'K', 'k':
		return "", 2
	case 'A', 'C', 'c', 'f', 'F', 'H', 'Q', 'T', 'W', 'p':
		argument, _, found := strings.Cut(s[2:], ";")
		if !found {
			return "", 2
		}
		return "", 2 + len(argument) + 1
	case 'S':
		stack, _, found := strings.Cut(s[2:], ";")
		size = 2 + len(stack)
		if found {
			size++
		}
		return stacked(stack), size
	}
	_, width := utf8.DecodeRuneInString(s[1:])
	return s[1 : 1+width], 1 + width
}

// stacked writes a fraction in one line: 1/2 for 1^2, 1#2 and 1/2.
func stacked(s string) string {
	for i, r := range s {
		if strings.ContainsRune("^#/", r) {
			over, under := strings.TrimSpace(s[:i]), strings.TrimSpace(s[i+1:])
			switch {
			case under == "":
				return over
			case over == "":
				return under
			}
			return over + "/" + under
		}
	}
	return s
}
