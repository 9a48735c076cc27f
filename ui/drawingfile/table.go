package drawingfile

import (
	"fmt"
	"io"
	"os"
)

// TableExtensions are the endings of files that are tables.
var TableExtensions = []string{".csv", ".tsv", ".txt"}

// mostTable bounds the size of a table in bytes.
const mostTable = 32 << 20

// ReadTable reads a table of a plan or of a room whole.
func ReadTable(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	content, err := io.ReadAll(io.LimitReader(f, mostTable+1))
	if err == nil && len(content) > mostTable {
		err = fmt.Errorf("it is larger than %d MB, which no such table is", mostTable>>20)
	}
	return content, err
}
