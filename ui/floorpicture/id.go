// Package floorpicture turns a plan or a floor into a picture for the floor
// canvas: the same drawing in every place that shows it.
package floorpicture

import (
	"strings"

	"groundrow/ui/desk"
)

// ID is how a thing is called in a picture: its kind and its identifier.
func ID(kind desk.Kind, id string) string { return string(kind) + ":" + id }

// Parse takes an ID apart again; ok is false for what is no ID.
func Parse(id string) (kind desk.Kind, of string, ok bool) {
	k, of, ok := strings.Cut(id, ":")
	return desk.Kind(k), of, ok
}

// IDs are the picture's names of what is selected.
func IDs(s desk.Selection) []string {
	var out []string
	for _, id := range s.IDs {
		out = append(out, ID(s.Kind, id))
	}
	return out
}

// Selection is what the picture's names select: things of the kind of the first
// of them.
func Selection(ids []string) desk.Selection {
	var s desk.Selection
	for _, name := range ids {
		kind, id, ok := Parse(name)
		if !ok || (s.Kind != desk.Nothing && s.Kind != kind) {
			continue
		}
		s.Kind = kind
		s.IDs = append(s.IDs, id)
	}
	return s
}
