package pdf

import (
	"context"
	"errors"
	"fmt"
	"io"
	"sync"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// Limits bound what one file may cost.
type Limits struct {
	Bytes   int           // of the file
	Memory  int           // bytes of the sandbox, in which the file and its pages lie
	Time    time.Duration // for one call of Pages, Read or Render
	Objects int           // on a page, those of nested forms included
}

// DefaultLimits are wide enough for the largest plan that a drawing office sends.
var DefaultLimits = Limits{Bytes: 200 << 20, Memory: 512 << 20, Time: 90 * time.Second, Objects: 200_000}

// wasmPage is the unit of WebAssembly memory.
const wasmPage = 64 << 10

// Engine reads PDF files, one at a time. It is safe for use by several goroutines,
// which wait for each other. The zero value is not usable: Start one.
type Engine struct {
	limits  Limits
	pool    pdfium.Pool
	life    context.Context
	end     context.CancelFunc
	running sync.WaitGroup

	mu     sync.Mutex
	closed bool
}

// errClosed is what a call gets when the engine is or is being closed.
var errClosed = errors.New("the reader of PDF files has been closed")

// Start makes an engine. Without a cache it takes several seconds and some 300 MB to
// compile; with one that has been filled before, a fraction of a second. Call it off
// the path on which the program opens. A nil cache is allowed. A damaged cache is an
// error: start again with another. The cache stays the caller's, who closes it after
// the engine.
func Start(cache wazero.CompilationCache, limits Limits) (*Engine, error) {
	life, end := context.WithCancel(context.Background())
	config := wazero.NewRuntimeConfig().
		WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling).
		WithMemoryLimitPages(uint32(limits.Memory / wasmPage)).
		WithCloseOnContextDone(true) // a file that keeps PDFium in a loop can be given up
	if cache != nil {
		config = config.WithCompilationCache(cache)
	}
	pool, err := webassembly.Init(webassembly.Config{
		Context: life, MaxTotal: 1, MaxIdle: 1,
		RuntimeConfig: config,
		FSConfig:      wazero.NewFSConfig(), // no files: without this the root folder is mounted
		Stdout:        io.Discard, Stderr: io.Discard,
	})
	if err != nil {
		end()
		return nil, fmt.Errorf("start the reader of PDF files: %w", err)
	}
	return &Engine{limits: limits, pool: pool, life: life, end: end}, nil
}

// Close gives up what is running, waits until it has ended, and frees the memory.
// Closing again does nothing.
func (e *Engine) Close() error {
	e.mu.Lock()
	closed := e.closed
	e.closed = true
	e.mu.Unlock()
	if closed {
		return nil
	}
	e.end()
	e.running.Wait()
	if err := e.pool.Close(); err != nil {
		return fmt.Errorf("close the reader of PDF files: %w", err)
	}
	return nil
}

// enter keeps the engine open until leave is called.
func (e *Engine) enter() (leave func(), err error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.closed {
		return nil, errClosed
	}
	e.running.Add(1)
	return e.running.Done, nil
}

// session is one file opened in a sandbox of its own.
type session struct {
	ctx    context.Context
	limits Limits
	lib    pdfium.Pdfium
	doc    document
}

// open opens data in a fresh sandbox, calls work, and throws the sandbox away,
// whatever state the file has brought it into.
func (e *Engine) open(ctx context.Context, data []byte, work func(*session) error) error {
	leave, err := e.enter()
	if err != nil {
		return err
	}
	defer leave()
	if fault := suspect(data, e.limits); fault != nil {
		return fault
	}
	timed, cancel := context.WithTimeoutCause(ctx, e.limits.Time, tooSlow(e.limits.Time))
	defer cancel()
	defer context.AfterFunc(e.life, cancel)()
	lib, err := e.pool.GetInstanceWithContext(timed)
	if err != nil {
		return e.ended(timed, fmt.Errorf("make room for the PDF file: %w", err))
	}
	defer giveUpWith(timed, lib)()
	s := &session{ctx: timed, limits: e.limits, lib: lib}
	if err := s.load(data); err != nil {
		return e.ended(timed, err)
	}
	return e.ended(timed, work(s))
}

// giveUpWith stops lib when ctx ends. The returned function throws lib away; where
// it is being stopped it waits for that.
func giveUpWith(ctx context.Context, lib pdfium.Pdfium) func() {
	stopped := make(chan struct{})
	stop := context.AfterFunc(ctx, func() {
		defer close(stopped)
		_ = lib.Kill() // it is of no use any more, in whatever state it is
	})
	return func() {
		if !stop() {
			<-stopped
			return
		}
		_ = lib.Close() // the sandbox goes with all that the file holds in it
	}
}

// ended says what really ended a call: a sandbox that was stopped, or that ran out
// of memory, tells of it in its own way.
func (e *Engine) ended(ctx context.Context, err error) error {
	switch {
	case err == nil:
		return nil
	case e.life.Err() != nil:
		return errClosed
	case ctx.Err() != nil:
		return context.Cause(ctx)
	}
	return err
}
