package paperplace

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"groundrow/prep"
	"groundrow/prep/sheets"
	"groundrow/store"
)

// folderOf is where the sheets of a production file go: a folder beside it.
func folderOf(production string) string {
	base := filepath.Base(production)
	return filepath.Join(filepath.Dir(production), strings.TrimSuffix(base, filepath.Ext(base))+" on paper")
}

// writeAll writes sheets as PDF into a folder and returns the files in their
// order. It stops between two sheets when it is called off.
func writeAll(ctx context.Context, folder string, which []sheets.Sheet, job sheets.Job) (files []string, err error) {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, fmt.Errorf("making the folder for the sheets: %w", err)
	}
	for _, s := range which {
		if err := ctx.Err(); err != nil {
			return files, err
		}
		path := filepath.Join(folder, fileName(job.P, s, job, ".pdf"))
		if err := store.WriteWhole(path, func(w io.Writer) error { return sheets.Write(w, s.Kind, job) }); err != nil {
			return files, err
		}
		files = append(files, path)
	}
	return files, nil
}

// keep returns the edit that records the printing of sheets and fixes the labels
// that they carry.
func keep(which []sheets.Sheet, job sheets.Job) func(*prep.Production) error {
	return func(p *prep.Production) error {
		for _, s := range which {
			sheets.Record(p, s.Kind, job)
		}
		return nil
	}
}

// printLabel names that edit.
func printLabel(which []sheets.Sheet) string {
	if len(which) == 1 {
		return "Print: " + which[0].Name
	}
	return fmt.Sprintf("Print %d sheets", len(which))
}

// printer hands files to the printer of the system; nil when the system has no
// command for that.
func printer() func(ctx context.Context, files []string, size sheets.PageSize) error {
	lp, err := exec.LookPath("lp")
	if err != nil {
		return nil
	}
	return func(ctx context.Context, files []string, size sheets.PageSize) error {
		args := append([]string{"-o", "media=" + size.Name, "--"}, files...)
		out, err := exec.CommandContext(ctx, lp, args...).CombinedOutput()
		if err != nil && ctx.Err() == nil {
			return fmt.Errorf("the printer did not take it: %s (%w)", strings.TrimSpace(string(out)), err)
		}
		return ctx.Err()
	}
}
