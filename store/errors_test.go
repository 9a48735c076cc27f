package store

import (
	"strings"
	"testing"
)

// wantError fails unless err is an Error with the code whose sentence holds
// words and ends as a sentence does.
func wantError(tb testing.TB, err error, code Code, words string) {
	tb.Helper()
	if CodeOf(err) != code {
		tb.Fatalf("got code %q (%v), want %q", CodeOf(err), err, code)
	}
	if s := err.Error(); !strings.Contains(s, words) || !strings.HasSuffix(s, ".") {
		tb.Errorf("%q does not say %q as a sentence", s, words)
	}
}
