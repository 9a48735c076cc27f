package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"time"

	wasm "github.com/klippa-app/go-pdfium/errors"

	"groundrow/tapeout/drawing/linework"
)

// Reasons of this format, beside those of package linework, which they wrap; match
// them with errors.Is.
var (
	ErrLocked  = fmt.Errorf("%w: it is locked with a password", linework.ErrUnsupported)
	ErrPicture = fmt.Errorf("%w: the page is a picture", linework.ErrUnsupported)
	ErrBlank   = fmt.Errorf("%w: there are no lines on the page", linework.ErrUnsupported)
	ErrSlow    = fmt.Errorf("%w: it takes too long", linework.ErrTooLarge)
	ErrNoPage  = errors.New("there is no such page")
)

// headerWithin is how far from the start readers look for the header (PDF reference
// 1.7, implementation note 13).
const headerWithin = 1024

// suspect refuses what cannot be a PDF file before PDFium sees it; PDFium would
// search the whole of it for anything that looks like a page.
func suspect(data []byte, limits Limits) error {
	if len(data) > limits.Bytes {
		return &linework.Fault{Reason: linework.ErrTooLarge,
			What: fmt.Sprintf("The file has %d MB, and at most %d MB can be read", len(data)>>20, limits.Bytes>>20),
			Do:   "Export the one page with the ground plan"}
	}
	if bytes.Contains(data[:min(len(data), headerWithin)], []byte("%PDF-")) {
		return nil
	}
	what := "This is not a PDF file"
	switch {
	case len(data) == 0:
		what = "The file is empty"
	case bytes.HasPrefix(data, []byte("PK\x03\x04")):
		what = "This is a ZIP archive, not a PDF file"
	case bytes.HasPrefix(data, []byte("AC10")):
		what = "This is a DWG drawing, not a PDF file"
	}
	return &linework.Fault{Reason: linework.ErrNotThatFormat, What: what, Do: "Choose a PDF file, or ask for one"}
}

// refused turns PDFium's reason for not opening a file into a sentence.
func refused(err error) error {
	switch {
	case errors.Is(err, wasm.ErrPassword):
		return &linework.Fault{Reason: ErrLocked, What: "The file is locked with a password",
			Do: "Ask for a copy without one, or print it to a new PDF"}
	case errors.Is(err, wasm.ErrSecurity):
		return &linework.Fault{Reason: ErrLocked, What: "The file is locked in a way that cannot be read",
			Do: "Ask for a copy that is not protected"}
	}
	return damaged("", "The file is damaged or has been cut short", err)
}

// damaged is a fault at a place; the cause is kept for whoever looks into it.
func damaged(where, what string, cause error) error {
	return &linework.Fault{Reason: errors.Join(linework.ErrDamaged, cause), Where: where, What: what,
		Do: "Fetch or export it again"}
}

func tooSlow(limit time.Duration) error {
	return &linework.Fault{Reason: ErrSlow,
		What: fmt.Sprintf("The file has not been read after %.0f seconds", limit.Seconds()),
		Do:   "Export only the ground plan, without pictures and shading"}
}

func page(number int) string { return fmt.Sprintf("page %d", number) }
