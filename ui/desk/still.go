package desk

// Still makes the desk keep background work for Settle instead of doing it
// elsewhere: for pictures of the window, where there is no UI goroutine that
// results could come back to.
func (d *Desk) Still() {
	d.still = true
	d.Enter = func(func()) {} // an edit shows itself before it returns
}

// Settle does the work that a still desk has kept, in the order in which it was
// asked for, and what that asks for in turn.
func (d *Desk) Settle() {
	for len(d.kept) > 0 {
		next := d.kept[0]
		d.kept = d.kept[1:]
		next()
	}
}
