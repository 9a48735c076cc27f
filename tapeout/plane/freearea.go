package plane

// FreeArea returns how much of a closed region, in square metres, lies within
// another and in none of the blocked ones, arcs exact. The blocked regions may
// overlap each other and reach beyond the others; no outline may cross itself. It
// is found as Overlap is.
func FreeArea(a, within Path, blocked []Path) float64 {
	box, ok := a.Bounds()
	if !ok || !a.Closed || !within.Closed || len(within.Edges()) == 0 {
		return 0
	}
	regions := []outline{wholeOutline(a), wholeOutline(within)}
	for _, b := range blocked {
		if o := wholeOutline(b); b.Closed && len(o.edges) > 0 && o.box.Meets(box) {
			regions = append(regions, o)
		}
	}
	if len(regions) == 2 {
		return Overlap(a, within)
	}
	return max(0, free(regions))
}

func wholeOutline(p Path) outline {
	o := outlineOf(p)
	o.area = p.SignedArea()
	return o
}

// free integrates along the pieces of all outlines: the area that is in the first
// two regions and in none of the others.
func free(regions []outline) float64 {
	var all []Edge
	var owner []int
	for i, r := range regions {
		for range r.edges {
			owner = append(owner, i)
		}
		all = append(all, r.edges...)
	}
	origin := Motion{Shift: all[0].A.Times(-1)}
	sum := 0.0
	for _, l := range Arrange(all, overlapTolerance).Links {
		runs := make([]int, len(regions))
		for _, i := range l.Sources {
			runs[owner[i]] += l.runs(all[i])
		}
		left, right := freeSides(l.At(0.5), regions, runs)
		if left == right {
			continue
		}
		area := l.Moved(origin).under()
		if right {
			area = -area
		}
		sum += area
	}
	return sum
}

// freeSides tells whether the floor left and right of a piece with the given
// middle is in the first two regions and in none of the others.
func freeSides(middle Point, regions []outline, runs []int) (left, right bool) {
	left, right = true, true
	for i := range regions {
		l, r := regions[i].sides(middle, runs[i])
		if i > 1 {
			l, r = !l, !r
		}
		left, right = left && l, right && r
	}
	return left, right
}
