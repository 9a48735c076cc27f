package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage/repository"
)

// lateFiles opens files as the toolkit does, but empties or makes one only when
// something is written into it. The toolkit's file dialog opens the file for writing as
// soon as its name is confirmed: whoever picked a production, to be told that it is never
// written over, had lost it by then.
type lateFiles struct{ toolkitFiles }

// toolkitFiles is all that the toolkit does with files.
type toolkitFiles interface {
	repository.AppendableRepository
	repository.DeleteAllRepository
	repository.HierarchicalRepository
	repository.ListableRepository
	repository.MovableRepository
	repository.CopyableRepository
}

// openFilesLate has all file dialogs open files late.
func openFilesLate() {
	of, err := repository.ForScheme("file")
	if err != nil {
		return // without files there is nothing to lose
	}
	if _, late := of.(lateFiles); late {
		return
	}
	if files, ok := of.(toolkitFiles); ok {
		repository.Register("file", lateFiles{files})
	}
}

// Writer returns a writer that opens the file at the first write.
func (l lateFiles) Writer(u fyne.URI) (fyne.URIWriteCloser, error) {
	return &lateWriter{uri: u, open: l.toolkitFiles.Writer}, nil
}

type lateWriter struct {
	uri  fyne.URI
	open func(fyne.URI) (fyne.URIWriteCloser, error)
	file fyne.URIWriteCloser // nil until something is written
}

func (w *lateWriter) URI() fyne.URI { return w.uri }

func (w *lateWriter) Write(p []byte) (int, error) {
	if w.file == nil {
		file, err := w.open(w.uri)
		if err != nil {
			return 0, err
		}
		w.file = file
	}
	return w.file.Write(p)
}

func (w *lateWriter) Close() error {
	if w.file == nil {
		return nil
	}
	return w.file.Close()
}
