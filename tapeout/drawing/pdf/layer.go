package pdf

import (
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/drawing/pdf/internal/syntax"
)

// layersIn returns the document's optional content groups with the state in which it
// opens (PDF reference 1.7, 4.10.3). Objects name their layer only, so groups of one
// name count as one, which is off when all of them are.
func layersIn(file *syntax.File) []linework.Layer {
	if file == nil {
		return nil
	}
	optional := file.Dict(file.Root()["OCProperties"])
	opening := file.Dict(optional["D"])
	on, off := members(file.Array(opening["ON"])), members(file.Array(opening["OFF"]))
	usuallyOff := file.Value(opening["BaseState"]) == syntax.Name("OFF")
	var layers []linework.Layer
	byName := map[string]int{}
	for _, v := range file.Array(optional["OCGs"]) {
		name, ok := file.Value(file.Dict(v)["Name"]).(syntax.String)
		if !ok {
			continue
		}
		ref, _ := v.(syntax.Ref)
		layer := linework.Layer{Name: name.Text(), Off: off[ref] || usuallyOff && !on[ref]}
		if i, twice := byName[layer.Name]; twice {
			layers[i].Off = layers[i].Off && layer.Off
			continue
		}
		byName[layer.Name] = len(layers)
		layers = append(layers, layer)
	}
	return layers
}

// members returns the objects that an array refers to.
func members(list syntax.Array) map[syntax.Ref]bool {
	out := map[syntax.Ref]bool{}
	for _, v := range list {
		if ref, ok := v.(syntax.Ref); ok {
			out[ref] = true
		}
	}
	return out
}
