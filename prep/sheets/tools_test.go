package sheets

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// tool returns the path of a program of Debian's qpdf or poppler-utils. The
// project's check installs them; a machine without them skips what needs one.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not installed: the project's check installs it, or install qpdf and poppler-utils", name)
	}
	return path
}

// pdf writes a sheet and returns its bytes.
func pdf(t *testing.T, k Kind, j Job) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, k, j); err != nil {
		t.Fatalf("Write(%q): %v", k, err)
	}
	return b.Bytes()
}

// saved writes bytes to a file of the test and returns its path.
func saved(t *testing.T, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// textOf returns the text that a PDF reader finds in a sheet, as it lies.
func textOf(t *testing.T, data []byte) string { return extracted(t, data, "-layout") }

func extracted(t *testing.T, data []byte, order string) string {
	t.Helper()
	out, err := exec.Command(tool(t, "pdftotext"), order, "-enc", "UTF-8", saved(t, data), "-").Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return string(out)
}

// wordsOf returns the words that a PDF reader finds, counted. They are read in the
// order in which they were drawn: by their places, neighbours run together.
func wordsOf(t *testing.T, data []byte) map[string]int {
	t.Helper()
	count := map[string]int{}
	for _, w := range strings.Fields(extracted(t, data, "-raw")) {
		count[w]++
	}
	return count
}
