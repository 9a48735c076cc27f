package survey

import (
	"math"
	"slices"

	"groundrow/tapeout/plane"
)

const (
	sampled  = 0.5  // metres between the places tried first along a site
	mostTry  = 320  // places tried first, at most: every two of them are a pair
	starts   = 24   // pairs that are slid along their sites
	slide    = 0.25 // metres of the first step
	fineStep = 0.01 // metres of the last step
	apart    = 1.0  // metres by which two proposals differ in one pivot at least
)

// search is one choice of pivots on its way.
type search struct {
	sites  []Site
	points []plane.Point
	limits Limits
	posts  []post
}

// sample lays out the places that are tried first, farther apart where there
// would be too many of them.
func (s *search) sample() {
	total := 0.0
	for _, site := range s.sites {
		total += site.Length()
	}
	step := max(sampled, total/float64(mostTry))
	for i, site := range s.sites {
		n := int(math.Ceil(site.Length() / step))
		for k := range n + 1 {
			s.posts = append(s.posts, s.at(i, float64(k)/float64(max(n, 1))))
		}
	}
}

// at returns the place at a fraction of a site's length.
func (s *search) at(site int, along float64) post {
	p := s.place(Stand{Site: site, At: s.sites[site].At(along)})
	p.along = along
	return p
}

// couple is a pair of posts and what it is worth.
type couple struct {
	a, b post
	Choice
}

// coarse judges every two of the places tried first and returns the best, no two
// of them next to each other.
func (s *search) coarse() []couple {
	var best []couple
	for i, a := range s.posts {
		for _, b := range s.posts[i+1:] {
			if a.At.To(b.At) < Near {
				continue
			}
			if len(best) == starts && s.unseen(a, b) > best[starts-1].Unserved() {
				continue
			}
			best = keep(best, couple{a, b, s.judge(a, b)}, starts, sampled)
		}
	}
	return best
}

// unseen counts the marks that one of two places does not see: no pair of them is
// out of reach of fewer.
func (s *search) unseen(a, b post) int {
	n := 0
	for i, u := range a.sights {
		v := b.sights[i]
		if (!u.clear || !v.clear) && u.distance >= Near && v.distance >= Near {
			n++
		}
	}
	return n
}

// keep puts a couple into a list of at most n, the best first, in which no two are
// within reach metres of each other.
func keep(list []couple, c couple, n int, reach float64) []couple {
	for i, k := range list {
		if !k.alike(c.Choice, reach) {
			continue
		}
		if c.Compare(k.Choice) >= 0 {
			return list
		}
		list = slices.Delete(list, i, i+1)
		break
	}
	at, _ := slices.BinarySearchFunc(list, c, func(k, c couple) int { return k.Compare(c.Choice) })
	if at >= n {
		return list
	}
	list = slices.Insert(list, at, c)
	return list[:min(n, len(list))]
}

// alike tells whether both pivots of two choices are within reach of each other,
// either way round.
func (c Choice) alike(d Choice, reach float64) bool {
	same := c.A.At.To(d.A.At) < reach && c.B.At.To(d.B.At) < reach
	return same || c.A.At.To(d.B.At) < reach && c.B.At.To(d.A.At) < reach
}

// refined slides the best couples along their sites and returns those to propose.
func (s *search) refined(found []couple) []Choice {
	var best []couple
	for _, c := range found {
		best = keep(best, s.slide(c), s.limits.Keep, apart)
	}
	out := make([]Choice, len(best))
	for i, c := range best {
		out[i] = c.Choice
	}
	return out
}

// slide moves both pivots, alone and together, by steps that grow smaller as no
// step of the size makes the pair better.
func (s *search) slide(c couple) couple {
	for step := slide; step >= fineStep; step /= 2 {
		for range mostRounds {
			next, moved := s.step(c, step)
			if !moved {
				break
			}
			c = next
		}
	}
	return c
}

// step tries the neighbours of a couple; moved is false when none is better.
func (s *search) step(c couple, step float64) (best couple, moved bool) {
	as, bs := s.neighbours(c.a, step), s.neighbours(c.b, step)
	best = c
	for _, a := range as {
		for _, b := range bs {
			if a.At.To(b.At) < Near {
				continue
			}
			if next := (couple{a, b, s.judge(a, b)}); next.Compare(best.Choice) < 0 {
				best, moved = next, true
			}
		}
	}
	return best, moved
}

// neighbours returns a post and those a step to either side of it on its site.
func (s *search) neighbours(p post, step float64) []post {
	out := []post{p}
	long := s.sites[p.Site].Length()
	if long < Near {
		return out
	}
	for _, along := range []float64{max(0, p.along-step/long), min(1, p.along+step/long)} {
		if along != p.along {
			out = append(out, s.at(p.Site, along))
		}
	}
	return out
}
