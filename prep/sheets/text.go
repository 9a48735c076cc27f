package sheets

import (
	"strings"
	"unicode/utf8"
)

// wrap breaks text into lines no wider than w millimetres. Newlines are kept; a
// word that is wider than a line is broken anywhere. There is at least one line.
func wrap(s string, t type_, w float64) []string {
	var lines []string
	for _, part := range strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n") {
		for _, line := range wrapLine(settable(part), t, w) {
			lines = append(lines, ordered(line))
		}
	}
	return lines
}

func wrapLine(s string, t type_, w float64) []string {
	var lines []string
	line, width := "", 0.0
	gap := t.width(" ")
	for _, word := range strings.Fields(s) {
		ww := t.width(word)
		if line != "" && width+gap+ww <= w {
			line, width = line+" "+word, width+gap+ww
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for ww > w && utf8.RuneCountInString(word) > 1 {
			n := breakAt(word, t, w)
			lines = append(lines, word[:n])
			word = word[n:]
			ww = t.width(word)
		}
		line, width = word, ww
	}
	return append(lines, line)
}

// breakAt returns how many bytes of the word fit in w, at least one character.
func breakAt(word string, t type_, w float64) int {
	widths := advances()
	room := w / (t.size * ptMM) * 1000
	used := 0.0
	for i, r := range word {
		used += float64(widths.of(r, t.bold))
		if used > room && i > 0 {
			return i
		}
	}
	return len(word)
}

// heading is a line that starts a part of a sheet.
type heading struct{ Text string }

func (b heading) set(p *press) {
	lines := wrap(b.Text, headingType, p.body.w)
	p.need(headingType.line()*float64(len(lines)) + 3 + 3*bodyType.line())
	p.y += 3
	p.lines(lines, headingType, p.body.x)
	p.y += 1
}

// paragraph is running text.
type paragraph struct {
	Text   string
	Strong bool
}

func (b paragraph) set(p *press) {
	t := bodyType
	if b.Strong {
		t = strongType
	}
	p.lines(wrap(b.Text, t, p.body.w), t, p.body.x)
	p.y += 1.5
}

// bullets are sentences of which each stands for itself.
type bullets struct {
	Items []string
	Tick  bool // a box to tick before each
}

func (b bullets) set(p *press) {
	const indent = 6.5
	for _, item := range b.Items {
		lines := wrap(item, bodyType, p.body.w-indent)
		p.need(min(float64(len(lines))*bodyType.line(), p.body.h))
		if b.Tick {
			p.tickBox(p.body.x+0.5, p.y+0.4, 3.6, false)
		} else {
			p.disc(p.body.x+2, p.y+bodyType.line()/2, 0.7)
		}
		p.lines(lines, bodyType, p.body.x+indent)
		p.y += 1.2
	}
}

// pageBreak starts a new page unless the cursor is at the top of one.
type pageBreak struct{}

func (pageBreak) set(p *press) {
	if p.y > p.body.y+0.01 {
		p.newPage()
	}
}
