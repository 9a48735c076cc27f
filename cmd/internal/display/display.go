// Package display tells whether there is a screen to open a window on.
package display

import (
	"os"
	"runtime"
)

// Named tells whether the session names a display. Systems other than Linux
// always have one; on Linux it may still fail to answer.
func Named() bool {
	if runtime.GOOS != "linux" {
		return true
	}
	return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}
