package route

// stop returns the stop at a position on the walk, which goes round.
func (s *search) stop(at int) int { return s.order[at%len(s.order)] }

func (s *search) after(stop int) int  { return s.stop(s.position[stop] + 1) }
func (s *search) before(stop int) int { return s.stop(s.position[stop] + len(s.order) - 1) }

// touch notes that the surroundings of a stop have changed.
func (s *search) touch(stop int) {
	if !s.isDirty[stop] {
		s.isDirty[stop] = true
		s.dirty = append(s.dirty, stop)
	}
}

// settle improves the walk around every touched stop until nothing helps, and
// returns the change of its length.
func (s *search) settle() (change float64) {
	for len(s.dirty) > 0 {
		last := len(s.dirty) - 1
		stop := s.dirty[last]
		s.dirty, s.isDirty[stop] = s.dirty[:last], false
		for {
			gain := s.turnPiece(stop)
			if gain == 0 {
				gain = s.movePiece(stop)
			}
			if gain == 0 {
				break
			}
			change -= gain
		}
	}
	return change
}

// reverse turns round the length stops from position at on.
func (s *search) reverse(at, length int) {
	n := len(s.order)
	i, j := at%n, (at+length-1)%n
	for range length / 2 {
		a, b := s.order[i], s.order[j]
		s.order[i], s.order[j] = b, a
		s.position[b], s.position[a] = i, j
		if i++; i == n {
			i = 0
		}
		if j--; j < 0 {
			j = n - 1
		}
	}
}

// turn turns round a piece or all the rest, whichever is shorter: going round,
// the two are the same walk.
func (s *search) turn(at, length int) {
	if n := len(s.order); 2*length > n {
		at, length = at+length, n-length
	}
	s.reverse(at, length)
}

// turnPiece tries 2-opt at a: the legs a–b and c–d become a–c and b–d, with b
// after a and d after c, or both before. It returns the metres gained.
func (s *search) turnPiece(a int) float64 {
	n := len(s.order)
	for _, next := range []func(int) int{s.after, s.before} {
		b := next(a)
		ab := s.distance(a, b)
		for _, c := range s.neighbour[a] {
			ac := s.distance(a, c)
			if ac >= ab {
				break
			}
			d := next(c)
			gain := ab + s.distance(c, d) - ac - s.distance(b, d)
			if !(gain > s.least) {
				continue
			}
			from, to := b, c // a b … c d
			if s.after(b) == a && b != s.after(a) {
				from, to = a, d // b a … d c
			}
			s.turn(s.position[from], (s.position[to]-s.position[from]+n)%n+1)
			for _, stop := range [...]int{a, b, c, d} {
				s.touch(stop)
			}
			return gain
		}
	}
	return 0
}

// movePiece tries Or-opt at a: a piece of up to longestPiece stops that begins or
// ends with a is put beside a near stop. It returns the metres gained.
func (s *search) movePiece(a int) float64 {
	n := len(s.order)
	for length := 1; length <= longestPiece && length < n-2; length++ {
		for _, back := range [...]int{0, length - 1} {
			at := (s.position[a] - back + n) % n
			if gain := s.moveTo(a, at, length); gain > 0 {
				return gain
			}
			if length == 1 {
				break
			}
		}
	}
	return 0
}

// moveTo tries to put the piece at position at beside a near stop of its end a.
func (s *search) moveTo(a, at, length int) float64 {
	n := len(s.order)
	first, last := s.stop(at), s.stop(at+length-1)
	z := first
	if a == first {
		z = last
	}
	p, q := s.stop(at+n-1), s.stop(at+length)
	freed := s.distance(p, first) + s.distance(last, q) - s.distance(p, q)
	inPiece := func(stop int) bool { return (s.position[stop]-at+n)%n < length }
	for _, c := range s.neighbour[a] {
		ac := s.distance(a, c)
		if ac >= freed {
			break
		}
		if inPiece(c) {
			continue
		}
		for _, e := range [...]int{s.after(c), s.before(c)} {
			if inPiece(e) {
				continue
			}
			gain := freed - ac - s.distance(z, e) + s.distance(c, e)
			if !(gain > s.least) {
				continue
			}
			s.insert(at, length, a, c, e)
			for _, stop := range [...]int{a, z, p, q, c, e} {
				s.touch(stop)
			}
			return gain
		}
	}
	return 0
}

// insert moves the piece at position at between the neighbours c and e, with its
// end a beside c.
func (s *search) insert(at, length, a, c, e int) {
	n := len(s.order)
	u := c
	if s.after(c) != e {
		u = e
	}
	between := (s.position[u]-(at+length)+2*n)%n + 1
	s.swap(at, length, between)
	piece := at + between
	if (u == c) != (s.stop(piece) == a) {
		s.reverse(piece, length)
	}
}

// swap exchanges two neighbouring pieces of the walk, each keeping its direction.
func (s *search) swap(at, left, right int) {
	s.reverse(at, left+right)
	s.reverse(at, right)
	s.reverse(at+right, left)
}

// exchange swaps the pieces of left and right stops that follow position at,
// touches what changed and returns the change of length.
func (s *search) exchange(at, left, right int) (change float64) {
	p, q := s.stop(at), s.stop(at+left+right+1)
	a, b := s.stop(at+1), s.stop(at+left)
	c, d := s.stop(at+left+1), s.stop(at+left+right)
	s.swap(at+1, left, right)
	for _, stop := range [...]int{p, a, b, c, d, q} {
		s.touch(stop)
	}
	return s.distance(p, c) + s.distance(d, a) + s.distance(b, q) -
		s.distance(p, a) - s.distance(b, c) - s.distance(d, q)
}
