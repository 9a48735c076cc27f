package store

import (
	"context"
	"sync"
	"time"
)

// listeners are told of every new snapshot, in order, one at a time, with no
// lock held: a listener may edit the file.
type listeners struct {
	mu         sync.Mutex
	next       int
	tell       map[int]func(Snapshot)
	queue      []Snapshot
	delivering bool
}

// Listen calls fn with every new snapshot after it has been saved, whoever made
// the change: this window, another, or another program. The calls come one after
// another, on the goroutine that made an edit or on one that watches the file.
// stop ends them; a call that has begun may still be running when it returns.
func (f *File) Listen(fn func(Snapshot)) (stop func()) {
	l := &f.listeners
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.tell == nil {
		l.tell = map[int]func(Snapshot){}
	}
	id := l.next
	l.next++
	l.tell[id] = fn
	return func() {
		l.mu.Lock()
		defer l.mu.Unlock()
		delete(l.tell, id)
	}
}

// add puts a snapshot in line. Called in the order of the commits.
func (l *listeners) add(s Snapshot) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.queue = append(l.queue, s)
}

// deliver calls the listeners until the line is empty, unless another goroutine,
// or a call further down this one's stack, is at it.
func (l *listeners) deliver() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.delivering {
		return
	}
	l.delivering = true
	defer func() { l.delivering = false }()
	for len(l.queue) > 0 {
		s := l.queue[0]
		l.queue = l.queue[1:]
		for id := 0; id < l.next; id++ {
			if fn, ok := l.tell[id]; ok {
				l.call(fn, s)
			}
		}
	}
}

// call runs one listener with the lock released.
func (l *listeners) call(fn func(Snapshot), s Snapshot) {
	l.mu.Unlock()
	defer l.mu.Lock()
	fn(s)
}

// lookEvery is how often the file is looked at for changes by others.
const lookEvery = 200 * time.Millisecond

// watch looks for changes made through other connections until f.stop is called.
// PRAGMA data_version tells of them without reading the file.
func (f *File) watch() {
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan struct{})
	f.stop = func() { cancel(); <-done }
	go func() {
		defer close(done)
		tick := time.NewTicker(lookEvery)
		defer tick.Stop()
		for {
			select {
			case <-ctx.Done():
				return
			case <-tick.C:
				f.look(ctx)
			}
		}
	}()
}

// look reads the file again if somebody else has changed it. Trouble is left for
// the next look, or for the next edit to tell of.
func (f *File) look(ctx context.Context) {
	f.writing.Lock()
	before := f.now.Load()
	version, err := pragma(ctx, f.conn, "data_version")
	if err == nil && (version != f.version || f.stale) {
		_ = f.reread(ctx)
	}
	if after := f.now.Load(); after != before {
		f.listeners.add(*after)
	}
	f.writing.Unlock()
	f.listeners.deliver()
}
