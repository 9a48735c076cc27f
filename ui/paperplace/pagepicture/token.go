package pagepicture

import "strconv"

// token is one piece of a page's content.
type token struct {
	kind tokenKind
	text string
	num  float64
}

type tokenKind uint8

const (
	operator tokenKind = iota
	number
	name // without its slash
	text // unescaped
	open // of an array
	shut
)

// reader takes a page's content apart.
type reader struct {
	b  []byte
	at int
}

// next returns the next token; ok is false at the end.
func (r *reader) next() (t token, ok bool) {
	for r.at < len(r.b) && space(r.b[r.at]) {
		r.at++
	}
	if r.at >= len(r.b) {
		return token{}, false
	}
	switch c := r.b[r.at]; c {
	case '[':
		r.at++
		return token{kind: open}, true
	case ']':
		r.at++
		return token{kind: shut}, true
	case '(':
		return token{kind: text, text: r.string()}, true
	case '/':
		r.at++
		return token{kind: name, text: r.word()}, true
	}
	w := r.word()
	if v, err := strconv.ParseFloat(w, 64); err == nil {
		return token{kind: number, num: v}, true
	}
	return token{kind: operator, text: w}, true
}

func space(c byte) bool { return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == 0 }

// word reads up to the next separator, at least one byte.
func (r *reader) word() string {
	from := r.at
	for r.at < len(r.b) {
		c := r.b[r.at]
		if space(c) || c == '[' || c == ']' || c == '(' || c == '/' && r.at > from {
			break
		}
		r.at++
	}
	if r.at == from && r.at < len(r.b) {
		r.at++
	}
	return string(r.b[from:r.at])
}

// string reads a string in brackets, which may hold brackets in pairs.
func (r *reader) string() string {
	var out []byte
	depth := 0
	for ; r.at < len(r.b); r.at++ {
		c := r.b[r.at]
		switch {
		case c == '\\' && r.at+1 < len(r.b):
			r.at++
			c = r.b[r.at]
			if c == 'r' {
				c = '\r'
			}
			out = append(out, c)
			continue
		case c == '(':
			depth++
			if depth == 1 {
				continue
			}
		case c == ')':
			depth--
			if depth == 0 {
				r.at++
				return string(out)
			}
		}
		out = append(out, c)
	}
	return string(out)
}
