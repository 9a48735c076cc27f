package weekplace

import "groundrow/ui/poster"

// frames says where the parts of the page lie. All sizes follow from one unit, the height of plain words, which grows
// with the width: the page is read from across the room.
type frames struct {
	unit   float32
	pad    float32
	left   float32 // width of the countdown, beside the dangers
	side   float32 // width of today, beside the parts
	top    float32 // height of the countdown and the dangers
	days   []float32
	part   float32 // height of a part's line
	people float32 // height of one person today, beside what they do
	height float32 // of all
}

// The page is laid out for a window of 1366 by 768 and grows with the screen, up to half as much again.
const (
	plainWidth = 1240
	plainUnit  = 13
	mostDanger = 3
	mostPart   = 3.4 // units; a line of the parts any higher would fall apart
)

func unitFor(width float32) float32 {
	return plainUnit * max(0.92, min(1.5, width/plainWidth))
}

// measured lays the page out for a width, as low as its content allows.
func measured(p *page, width float32) frames {
	u := unitFor(width)
	f := frames{unit: u, pad: u, left: 0.36 * (width - 2*u), side: 22 * u, part: 2.6 * u, people: 1.55 * u}
	f.top = (1.9 + mostDanger*2.15) * u
	f.height = f.pad + f.top + f.pad
	for _, r := range weeks(p.days) {
		h := rowHeight(r, u)
		f.days = append(f.days, h)
		f.height += h + 0.5*f.pad
	}
	parts, today := float32(len(p.parts))*f.part, todayHeight(p, f)
	if today > parts && parts > 0 {
		f.part = min(f.part*today/parts, mostPart*u)
	}
	f.height += 0.5*f.pad + max(parts, today) + f.pad
	return f
}

// spread gives the lines of the parts what room is left over.
func (f *frames) spread(p *page, height float32) {
	if n := float32(len(p.parts)); n > 0 && height > f.height {
		f.part = min(f.part+(height-f.height)/n, mostPart*f.unit)
	}
}

func todayHeight(p *page, f frames) float32 {
	h := 2 * f.unit
	for _, who := range p.people {
		h += f.people * float32(1+max(1, len(who.tasks)))
	}
	return h
}

// week is one row of days: columns, or one line of words where a whole week is bare.
type week struct {
	days []dayColumn
	bare string
}

// mostColumns is how many days stand side by side; more are drawn week by week.
const mostColumns = 8

// weeks arranges the days in rows.
func weeks(days []dayColumn) []week {
	if len(days) == 0 {
		return nil
	}
	if len(days) <= mostColumns {
		return []week{{days: days}}
	}
	var out []week
	for len(days) > 0 {
		n := min(7, len(days))
		w := week{days: days[:n]}
		if allBare(w.days) {
			w.bare = w.days[0].weekday + " " + w.days[0].date + " to " + w.days[n-1].weekday + " " + w.days[n-1].date + ": no calls and no deadlines"
		}
		out = append(out, w)
		days = days[n:]
	}
	return out
}

func allBare(days []dayColumn) bool {
	for _, d := range days {
		if !d.bare() {
			return false
		}
	}
	return true
}

// Heights within a day, in units.
const (
	dayHead     = 2.3
	callLine    = 1.95
	dateLine    = 1.5
	leastDay    = 7.5
	mostDayBody = 12
)

func rowHeight(w week, u float32) float32 {
	if w.bare != "" {
		return 1.8 * u
	}
	most := float32(0)
	for _, d := range w.days {
		h := float32(len(d.calls))*callLine + float32(len(d.deadlines))*dateLine
		if d.rehearsal != "" {
			h += 2 * dateLine
		}
		most = max(most, h)
	}
	return (dayHead + min(mostDayBody, max(leastDay-dayHead, most)) + 0.6) * u
}

// style is plain words of so many units.
func (f frames) style(units float32) poster.Style { return poster.Style{Size: f.unit * units} }
