package syntax_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/drawing/pdf/internal/syntax"
)

const plain = "%PDF-1.5\r\n%\xE1\xE3\r\n" +
	"1 0 obj\r\n<</Type/Catalog/Pages 2 0 R /Layers[ 5 0 R ]/On true/Off false/None null>>\r\nendobj\r\n" +
	"2 0 obj\r\n<</Count 3/Kids[ 3 0 R  6 0 R  2 0 R ]/Type/Pages>>\r\nendobj\r\n" +
	"3 0 obj\r\n<</Contents 4 0 R /Type/Page/UserUnit 2.5/MediaBox[ 0 -1 .5 +792]>>\r\nendobj\r\n" +
	"4 0 obj\r\n<</Length 31>>stream\r\n7 0 obj\r\n(not an object)\r\n\x00\x01\r\nendstream\r\nendobj\r\n" +
	"5 0 obj\r\n<</Name(Walls \\(old\\)\\\r\n \\101\\n)/Hex<57 61 4>/A#20b/c#zz>>\r\nendobj\r\n" +
	"6 0 obj\r\n<</Kids[ 8 0 R ]>>\r\nendobj\r\n8 0 obj<</Type/Page>>endobj\r\n" +
	"trailer\r\n<</Root 1 0 R /Size 9>>\r\nstartxref\r\n466\r\n%%EOF\r\n"

func parse(t *testing.T, text string) *syntax.File {
	t.Helper()
	f, err := syntax.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestParse(t *testing.T) {
	f := parse(t, plain)
	want := syntax.Dict{"Type": syntax.Name("Catalog"), "Pages": syntax.Ref(2), "Layers": syntax.Array{syntax.Ref(5)},
		"On": true, "Off": false, "None": nil}
	if diff := cmp.Diff(want, f.Root()); diff != "" {
		t.Error(diff)
	}
	layer := syntax.Dict{"Name": syntax.String("Walls (old) A\n"), "Hex": syntax.String("Wa@"), "A b": syntax.Name("c#zz")}
	if diff := cmp.Diff(layer, f.Dict(syntax.Ref(5))); diff != "" {
		t.Error(diff)
	}
	if v := f.Value(syntax.Ref(7)); v != nil {
		t.Errorf("an object was found inside a stream: %v", v)
	}
}

func TestPagesAreInOrderAndRingsEnd(t *testing.T) {
	pages := parse(t, plain).Pages(10)
	if len(pages) != 2 {
		t.Fatalf("%d pages", len(pages))
	}
	f := parse(t, plain)
	if u, ok := f.Number(pages[0]["UserUnit"]); u != 2.5 || !ok {
		t.Errorf("user unit %v, %v", u, ok)
	}
	if diff := cmp.Diff(syntax.Array{0.0, -1.0, 0.5, 792.0}, f.Array(pages[0]["MediaBox"])); diff != "" {
		t.Error(diff)
	}
	if n := len(f.Pages(1)); n != 1 {
		t.Errorf("%d pages, with a limit of one", n)
	}
}

func TestRingOfReferencesIsNothing(t *testing.T) {
	f := parse(t, "1 0 obj<</Pages 2 0 R>>endobj\n2 0 obj 3 0 R endobj\n3 0 obj 2 0 R endobj\ntrailer<</Root 1 0 R>>")
	if v := f.Value(syntax.Ref(2)); v != nil {
		t.Errorf("got %v", v)
	}
	if pages := f.Pages(5); len(pages) != 0 {
		t.Errorf("got %v", pages)
	}
}

func TestFileWithoutCatalogueIsRefused(t *testing.T) {
	for _, text := range []string{"", "trailer", "trailer<</Root 1 0 R>>", "1 0 obj<<>>endobj", "1 0 obj" + strings.Repeat("[", 1e5)} {
		if _, err := syntax.Parse([]byte(text)); err == nil {
			t.Errorf("%.20q was accepted", text)
		}
	}
}

func TestTextOfStrings(t *testing.T) {
	for in, want := range map[syntax.String]string{
		"Walls":                                 "Walls",
		"\xFE\xFF\x00W\x01\x61\xD8\x3D\xDE\x00": "Wš😀",
		"\xEF\xBB\xBFDécor":                     "Décor",
		"D\xE9cor \x85 \xA0\x18":                "Décor – €˘",
		"":                                      "",
	} {
		if got := in.Text(); got != want {
			t.Errorf("%q: got %q, want %q", string(in), got, want)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(plain))
	f.Add([]byte("1 0 obj<</Length 9999999999>>stream\nendstream trailer<</Root 1 0 R>>"))
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := syntax.Parse(data)
		if err != nil {
			return
		}
		if n := len(file.Pages(100)); n > 100 {
			t.Errorf("%d pages", n)
		}
	})
}
