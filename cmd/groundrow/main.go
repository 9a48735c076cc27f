// Command groundrow opens the window or, with the name of a command, does one
// piece of the work without it.
package main

import (
	"context"
	"os"
	"os/signal"
	"time"

	_ "groundrow/cmd/groundrow/locale" // before the toolkit looks at the language
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	s := &session{out: os.Stdout, messages: os.Stderr, now: time.Now}
	status := s.run(ctx, os.Args[1:])
	stop()
	os.Exit(status)
}
