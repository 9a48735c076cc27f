package sheets

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"
)

// Write writes the sheet as PDF: fonts embedded, text that can be searched, the
// same bytes for the same job.
func Write(w io.Writer, kind Kind, job Job) error {
	p, err := compose(kind, job)
	if err != nil {
		return err
	}
	if err := p.pdf.Output(w); err != nil {
		return fmt.Errorf("writing the sheet %q: %w", kind, err)
	}
	return nil
}

// Pages returns how many pages the sheet has; zero for a kind that does not exist.
func Pages(kind Kind, job Job) int {
	p, err := compose(kind, job)
	if err != nil {
		return 0
	}
	return p.pdf.PageCount()
}

// compose sets the sheet on pages, head and foot included.
func compose(kind Kind, job Job) (*press, error) {
	s, ok := Find(kind)
	if !ok {
		return nil, fmt.Errorf("there is no sheet called %q", kind)
	}
	c := s.content(job)
	size := job.size()
	if c.wide {
		size = size.turned()
	}
	p := newPress(size, job.Printed)
	p.scale = job.Scale
	p.pdf.SetTitle(clean(s.Name+" — "+c.head.Production), true)
	for _, b := range c.blocks {
		b.set(p)
	}
	p.headsAndFeet(c.head, job)
	return p, p.err()
}

// WriteCSV writes what is a table on the sheet as CSV after RFC 4180, with a
// line of titles. Several tables follow each other with an empty line between
// them. Text that a spreadsheet would take for a formula gets an apostrophe.
func WriteCSV(w io.Writer, kind Kind, job Job) error {
	s, ok := Find(kind)
	if !ok {
		return fmt.Errorf("there is no sheet called %q", kind)
	}
	if !s.Table {
		return fmt.Errorf("the sheet %q is not a table, so it cannot be had as CSV", s.Name)
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	first := true
	for _, b := range s.content(job).blocks {
		t, ok := b.(tabular)
		if !ok {
			continue
		}
		if !first {
			out.Flush()
			if _, err := io.WriteString(w, "\r\n"); err != nil {
				return fmt.Errorf("writing the sheet %q as CSV: %w", kind, err)
			}
		}
		first = false
		for _, record := range t.records() {
			if err := out.Write(harmless(record)); err != nil {
				return fmt.Errorf("writing the sheet %q as CSV: %w", kind, err)
			}
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("writing the sheet %q as CSV: %w", kind, err)
	}
	return nil
}

// harmless returns the record with an apostrophe before every cell that a spreadsheet would
// run as a formula. A plain negative number is left as it is.
func harmless(record []string) []string {
	out := make([]string, len(record))
	for i, cell := range record {
		out[i] = cell
		if strings.ContainsAny(firstByte(strings.TrimLeft(cell, " ")), "=+-@\t\r") && !plainNumber(cell) {
			out[i] = "'" + cell
		}
	}
	return out
}

func firstByte(s string) string {
	if s == "" {
		return ""
	}
	return s[:1]
}

func plainNumber(s string) bool {
	return strings.Trim(s, "0123456789.") == "-" && strings.HasPrefix(s, "-")
}
