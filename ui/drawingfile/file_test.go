package drawingfile

import (
	"context"
	"errors"
	"path/filepath"
	"strings"
	"testing"
)

func TestReadingIsCalledOff(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	src, err := Of("plan.dxf", []byte("0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nA\n10\n0\n20\n0\n11\n5\n21\n5\n0\nENDSEC\n0\nEOF\n"))
	if err != nil {
		t.Fatal(err)
	}
	file, err := Open(context.Background(), src)
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := file.Sheet(ctx, 0, nil)
	if err == nil {
		_, err = Sense(ctx, sheet)
	}
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func TestFormatIsToldByContent(t *testing.T) {
	for _, c := range []struct {
		name, content string
		want          Format
		says          string
	}{
		{"plan.dxf", "0\nSECTION\n", DXF, ""},
		{"plan.PDF", "%PDF-1.7\n", PDF, ""},
		{"mail.txt", "\n\n%PDF-1.4", PDF, ""},
		{"scan.jpg", "\x89PNG\r\n\x1a\n", PNG, ""},
		{"photo", "\xff\xd8\xff\xe0", JPEG, ""},
		{"plot.tif", "MM\x00*", TIFF, ""},
		{"plan.pdf", "<html>", "", "called a PDF but is none"},
		{"plan.dwg", "AC1032", "", "DWG"},
		{"letter.doc", "\xd0\xcf\x11\xe0", "", "none of the drawings"},
		{"nothing", "", "", "none of the drawings"},
	} {
		src, err := Of(c.name, []byte(c.content))
		if src.Format != c.want || (err == nil) != (c.says == "") || (err != nil && !strings.Contains(err.Error(), c.says)) {
			t.Errorf("%s: %q, %v; want %q, %q", c.name, src.Format, err, c.want, c.says)
		}
	}
}

func TestFilesThatCannotBeOpened(t *testing.T) {
	dir := t.TempDir()
	for path, says := range map[string]string{filepath.Join(dir, "no.dxf"): "cannot be opened", dir: "is a folder"} {
		if _, err := Read(path); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want %q", path, err, says)
		}
	}
}
