package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// dxfOf is a drawing in metres with these entities, and blocks before them.
func dxfOf(blocks, entities string) string {
	return "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n6\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n" + blocks +
		"0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + entities + "0\nENDSEC\n0\nEOF\n"
}

func dxfLine(x1, y1, x2, y2 string) string {
	return "0\nLINE\n8\nA\n10\n" + x1 + "\n20\n" + y1 + "\n11\n" + x2 + "\n21\n" + y2 + "\n"
}

// pdfOf is a page of a letter with this drawn on it (PDF reference 1.7, chapter 4),
// without the table of its objects, which readers do without.
func pdfOf(drawn string) string {
	return "%PDF-1.4\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Type /Pages /Kids [3 0 R] /Count 1 >>\nendobj\n" +
		"3 0 obj\n<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R >>\nendobj\n" +
		fmt.Sprintf("4 0 obj\n<< /Length %d >>\nstream\n%s\nendstream\nendobj\ntrailer << /Root 1 0 R >>\n%%%%EOF\n", len(drawn), drawn)
}

// pngOf is the head of a picture of so many dots (PNG specification, 11.2.2).
func pngOf(wide, high uint32) string {
	var head bytes.Buffer
	head.WriteString("IHDR")
	for _, v := range []uint32{wide, high} {
		_ = binary.Write(&head, binary.BigEndian, v) // a buffer takes everything
	}
	head.Write([]byte{8, 2, 0, 0, 0})
	var out bytes.Buffer
	out.WriteString("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d")
	out.Write(head.Bytes())
	_ = binary.Write(&out, binary.BigEndian, crc32.ChecksumIEEE(head.Bytes()))
	return out.String()
}

// locked is a PDF that cannot be opened without a password.
func locked(t *testing.T) string {
	t.Helper()
	if _, err := exec.LookPath("qpdf"); err != nil {
		t.Skip("qpdf, which locks the file, is not installed; the check installs it")
	}
	dir := t.TempDir()
	plain, to := write(t, filepath.Join(dir, "plain.pdf"), pdfOf("100 100 m 500 100 l S")), filepath.Join(dir, "locked.pdf")
	// qpdf mends the missing table and warns of it, with status 3.
	if out, err := exec.Command("qpdf", "--encrypt", "secret", "owner", "256", "--", plain, to).CombinedOutput(); err != nil && !strings.Contains(string(out), "succeeded with warnings") {
		t.Fatalf("qpdf: %v\n%s", err, out)
	}
	return to
}

// Whatever comes as a drawing ends in a message that says what to do, and leaves the
// production as it is.
func TestBadDrawingsEndInAMessage(t *testing.T) {
	path, dir := emptyFile(t), t.TempDir()
	before := must(t, "history", path)
	huge := strings.Repeat(dxfLine("0", "0", "1", "1"), 80_001)
	itself := "0\nBLOCK\n2\nB\n0\nINSERT\n2\nB\n8\nA\n0\nENDBLK\n"
	odd := dxfOf("", dxfLine("NaN", "0", "1e300", "5")+dxfLine("inf", "0", "2", "-1e300"))
	for _, c := range []struct{ name, file, content, says string }{
		{"cut short", "cut.dxf", dxfOf("", dxfLine("0", "0", "5", "5"))[:120], "cut short"},
		{"cut in the middle", "cut.pdf", pdfOf("100 100 m 500 100 l S")[:60], "damaged"},
		{"binary", "binary.dxf", "AutoCAD Binary DXF\r\n\x1a\x00\x00SECTION", "binary DXF"},
		{"wrong encoding", "wide.dxf", "\xff\xfe0\x00\n\x00S\x00E\x00", "UTF-16"},
		{"a zip called PDF", "zip.pdf", "PK\x03\x04and so on", "is called a PDF but is none"},
		{"a zip called DXF", "zip.dxf", "PK\x03\x04and so on", "DXF"},
		{"a zip called PNG", "zip.png", "PK\x03\x04and so on", "none of the drawings"},
		{"a block in itself", "itself.dxf", dxfOf(itself, "0\nINSERT\n2\nB\n8\nA\n"), "no lines"},
		{"no numbers in a DXF", "nan.dxf", odd, "no lines"},
		{"no numbers in a PDF", "nan.pdf", pdfOf("nan 1e300 m 1e300 -1e300 l inf 5 l S"), "page"},
		{"too many lines", "many.dxf", dxfOf("", huge), "80001 lines"},
		{"a picture of 600 million dots", "huge.png", pngOf(30_000, 20_000), "has no lines"},
	} {
		t.Run(c.name, func(t *testing.T) {
			file := write(t, filepath.Join(dir, c.file), c.content)
			r := command(t, "import", path, file, "--take", "--origin", "0,0")
			if r.status != failed || !strings.Contains(r.messages, c.says) {
				t.Errorf("status %d, %q; want %d and %q", r.status, r.messages, failed, c.says)
			}
		})
	}
	t.Run("locked", func(t *testing.T) {
		if r := command(t, "import", path, locked(t), "--take"); r.status != failed || !strings.Contains(r.messages, "password") {
			t.Errorf("status %d, %q", r.status, r.messages)
		}
	})
	if must(t, "history", path) != before {
		t.Error("a refused drawing has changed the production")
	}
}
