package store

import "slices"

// tables are all tables of a production, each after those that it refers to.
// The journal and the bytes of drawings are not among them: they are not part of
// the value that is edited.
var tables = slices.Concat(settingTables, planTables, floorTables, markTables, supplyTables, weekTables, recordTables)

// tableNamed finds the description of a table.
var tableNamed = func() map[string]*shape {
	m := make(map[string]*shape, len(tables))
	for _, t := range tables {
		m[t.name] = t
	}
	return m
}()
