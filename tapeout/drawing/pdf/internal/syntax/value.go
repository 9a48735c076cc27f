// Package syntax reads the objects of a PDF file that has been written plainly: no
// compressed object streams, every object once. PDFium writes so when it saves a
// copy. It is for the few facts that PDFium itself does not tell: user units, and
// which layers are off. Streams are passed over.
package syntax

// A value of the file is one of nil, bool, float64, Name, String, Ref, Dict and
// Array (PDF reference 1.7, 3.2).
type (
	Name   string       // without the slash, escapes resolved
	String string       // the bytes between the brackets, escapes resolved
	Ref    int          // the number of another object
	Dict   map[Name]any // a key whose value is null may be in it or not
	Array  []any
)

// File is the objects of a file by their numbers.
type File struct {
	objects map[Ref]any
	root    Ref
}

// Root returns the catalogue; empty when there is none.
func (f *File) Root() Dict { return f.Dict(f.root) }

// Value follows references to what they stand for; nil when that is missing or when
// they run in a ring.
func (f *File) Value(v any) any {
	for range maxDepth {
		ref, ok := v.(Ref)
		if !ok {
			return v
		}
		v = f.objects[ref]
	}
	return nil
}

// Dict returns the dictionary that v is or refers to; empty when it is none.
func (f *File) Dict(v any) Dict {
	d, _ := f.Value(v).(Dict)
	return d
}

// Array returns the array that v is or refers to; empty when it is none.
func (f *File) Array(v any) Array {
	a, _ := f.Value(v).(Array)
	return a
}

// Number returns the number that v is or refers to.
func (f *File) Number(v any) (x float64, ok bool) {
	x, ok = f.Value(v).(float64)
	return x, ok
}

// Pages returns the page dictionaries in the order of the document, at most limit.
// What is not a page, and branches that lead back to themselves, are left out.
func (f *File) Pages(limit int) []Dict {
	w := walk{file: f, limit: limit, seen: map[Ref]bool{}}
	w.visit(f.Root()["Pages"], 0)
	return w.pages
}

type walk struct {
	file  *File
	limit int
	seen  map[Ref]bool
	pages []Dict
}

func (w *walk) visit(v any, depth int) {
	if ref, ok := v.(Ref); ok {
		if w.seen[ref] {
			return
		}
		w.seen[ref] = true
	}
	node := w.file.Dict(v)
	if node == nil || depth > maxDepth || len(w.pages) >= w.limit {
		return
	}
	kids := w.file.Array(node["Kids"])
	if kids == nil {
		w.pages = append(w.pages, node)
		return
	}
	for _, kid := range kids {
		w.visit(kid, depth+1)
	}
}
