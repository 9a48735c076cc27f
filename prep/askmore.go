package prep

import (
	"math"

	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey"
)

// Reasons to measure once more.
const (
	askAgain  = "again, to tell a slip of reading from a wrong mark"
	askApart  = "to tell which of the doubtful marks is wrong"
	askOther  = "the other way across the mark"
	askUsable = 0.5 // the least share of a shift that a measure must show
)

// ask wants the doubtful distances read once more, and one measure from a
// doubtful mark to a place that is not in doubt, along the way in which the mark
// may be off.
func (c *court) ask(suspects []survey.Suspicion) {
	doubtful := map[int]bool{}
	for _, s := range suspects {
		if s.Place >= 0 {
			doubtful[s.Place] = true
		}
	}
	for _, s := range suspects {
		if s.Reading < 0 {
			continue
		}
		if r := c.v.Readings[c.active[s.Reading]]; c.times[pairOf(c.placeOf[r.From], c.placeOf[r.To])] < 2 {
			c.want(&c.v.Ask, r.From, r.To, askAgain)
		}
	}
	for _, s := range suspects {
		if s.Place < 0 {
			continue
		}
		way, ok := s.Shift.Unit()
		if !ok {
			continue
		}
		if to, ok := c.partner(s.Place, way, func(i int) bool { return !doubtful[i] && !c.suspected(c.names[i]) }); ok {
			c.want(&c.v.Ask, c.names[s.Place], c.names[to], askApart)
			return
		}
	}
}

// cross wants the marks that are checked in one direction only measured in the
// other one too.
func (c *court) cross() {
	done := map[string]bool{}
	oneWay := map[string]bool{}
	for _, name := range c.v.OneWay {
		oneWay[name] = true
	}
	for _, name := range c.v.OneWay {
		place := c.placeOf[name]
		way, ok := c.weighed.Weakest(place)
		if done[name] || !ok {
			continue
		}
		to, ok := c.partner(place, way, func(i int) bool { return !c.suspected(c.names[i]) })
		if !ok {
			continue
		}
		c.want(&c.v.Cross, name, c.names[to], askOther)
		done[name] = true
		if weak, ok := c.weighed.Weakest(to); ok && oneWay[c.names[to]] {
			u, _ := c.places[to].At.Sub(c.places[place].At).Unit()
			done[c.names[to]] = math.Abs(u.Dot(weak)) > 0.8
		}
	}
}

// partner returns the place from which a measure shows best how far the other
// one is off along way: in line with it, near, and not joined to it yet.
func (c *court) partner(place int, way plane.Point, wanted func(int) bool) (best int, ok bool) {
	const handy = 12 // metres beyond which a tape is a burden; common practice, no source
	from, most := c.places[place].At, 0.0
	for i, other := range c.places {
		d := from.To(other.At)
		if i == place || d < 0.3 || d > c.reach() || !wanted(i) || c.times[pairOf(place, i)] > 0 {
			continue
		}
		shows := math.Abs(other.At.Sub(from).Dot(way)) / d
		if value := shows / (1 + d/handy); shows >= askUsable && value > most {
			best, most, ok = i, value, true
		}
	}
	return best, ok
}

func (c *court) reach() float64 {
	if l := c.p.Settings.TapeLength; l > 0 {
		return l
	}
	return math.Inf(1)
}

// want adds a measure unless it is wanted already.
func (c *court) want(list *[]Ask, from, to, why string) {
	for _, a := range *list {
		if (Reading{From: a.From, To: a.To}).Joins(from, to) {
			return
		}
	}
	expected := c.places[c.placeOf[from]].At.To(c.places[c.placeOf[to]].At)
	*list = append(*list, Ask{From: from, To: to, Expected: expected, Why: why})
}
