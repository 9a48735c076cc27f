// Command groundrow opens the window or, with the name of a command, does one
// piece of the work without it.
package main

import (
	"context"
	"os"
	"time"

	_ "groundrow/cmd/groundrow/locale" // before the toolkit looks at the language
)

func main() {
	s := &session{out: os.Stdout, messages: os.Stderr, now: time.Now}
	os.Exit(s.run(context.Background(), os.Args[1:]))
}
