package record

import (
	"os"
	"path/filepath"
)

// Whole is a file that is there whole or not at all: it is written beside its
// place and moved there by Commit.
type Whole struct {
	*os.File
	path string
}

// Create starts a file that Commit will put at path.
func Create(path string) (*Whole, error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".part-*")
	if err != nil {
		return nil, err
	}
	return &Whole{f, path}, nil
}

// Commit puts the file in its place, over one that was there.
func (w *Whole) Commit() error {
	err := w.Chmod(0o644)
	if closing := w.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(w.Name(), w.path)
	}
	if err != nil {
		os.Remove(w.Name())
	}
	w.path = ""
	return err
}

// Discard removes the file, unless it was committed.
func (w *Whole) Discard() {
	if w.path != "" {
		w.Close()
		os.Remove(w.Name())
		w.path = ""
	}
}
