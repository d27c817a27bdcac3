package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// writeFile writes a file whole or not at all: into a temporary file beside
// it, which takes its name when everything has been written. A file that was
// there before stays as it was until then.
func writeFile(name string, write func(io.Writer) error) (err error) {
	f, err := os.CreateTemp(filepath.Dir(name), ".whorl-*")
	if err != nil {
		return plainError(err)
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if err = write(f); err != nil {
		return plainError(err)
	}
	if err = f.Chmod(0o644); err != nil {
		return plainError(err)
	}
	if err = f.Close(); err != nil {
		return plainError(err)
	}
	return plainError(os.Rename(f.Name(), name))
}

// plainError says in plain words what went wrong with a file.
func plainError(err error) error {
	var p *fs.PathError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &p) && errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no file or folder %s", p.Path)
	case errors.As(err, &p) && errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("no permission for %s", p.Path)
	case errors.As(err, &p):
		return fmt.Errorf("%s: %v", p.Path, p.Err)
	}
	return err
}
