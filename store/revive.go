package store

// revive puts back what forced rows need and somebody else has removed: the rows
// that they refer to, as mine had them, and all that lay inside each of those.
func (m *merging) revive(changes []change, mine rows, refs []reference) {
	for _, c := range changes {
		if c.After != nil {
			m.reviveFor(tableNamed[c.Table], joined(c.Key), mine, refs)
		}
	}
}

// reviveFor does it for one row. It ends, since every step puts a row back.
func (m *merging) reviveFor(t *shape, key string, mine rows, refs []reference) {
	rec := m.merged[t.name].at(key)
	for _, ref := range refs {
		if rec == nil || ref.from != t || rec.cells[ref.column] == nil {
			continue
		}
		wanted := keyText(rec.cells[ref.column])
		lost := mine[ref.to.name].at(wanted)
		if lost == nil || m.merged[ref.to.name].at(wanted) != nil {
			continue
		}
		m.set(ref.to, wanted, *lost)
		m.reviveFor(ref.to, wanted, mine, refs)
		m.reviveInside(ref.to, wanted, mine, refs)
	}
}

// reviveInside puts back the lists inside a row that has been put back.
func (m *merging) reviveInside(owner *shape, key string, mine rows, refs []reference) {
	for _, t := range tables {
		if !t.nested || t.owner != owner.name {
			continue
		}
		for k, rec := range mine[t.name] {
			if keyText(rec.cells[0]) == key && m.merged[t.name].at(k) == nil {
				m.set(t, k, rec)
				m.reviveFor(t, k, mine, refs)
			}
		}
	}
}
