// Package locale spares the toolkit a locale that it cannot read: it logs an
// error for C.UTF-8 and its like while its packages are initialised. Imported for
// that effect alone, and first, by main. It imports only os, so that it is
// initialised before anything that looks at the language.
package locale

import "os"

// variables are where a language is looked for.
var variables = []string{"LC_ALL", "LC_MESSAGES", "LANG", "LANGUAGE"}

func init() {
	for _, v := range variables {
		if value := os.Getenv(v); len(value) > 1 && value[:2] == "C." {
			os.Setenv(v, "C") // which is what C.UTF-8 means to everything but the encoding
		}
	}
}
