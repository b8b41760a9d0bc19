package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"manway.example/manway/internal/house"
)

// outcome is what the tests made of a change.
type outcome string

const (
	killed    outcome = "killed"
	timedOut  outcome = "timed out"
	survived  outcome = "survived"
	memoryKiB         = 6 << 20 // address space of the tests of one package
	idle              = 5 * time.Minute
)

// bench runs the tests of one package with the changes that were built into
// them, one at a time.
type bench struct {
	root, room, skip string
	dir              string        // holds the changed files and the tests that were built
	limit            time.Duration // of processor time
}

// newBench builds the tests of a room with the changes, and runs them once with
// none switched on: they must pass, and a run with a change may take five times
// as much of the processor and a little more.
func newBench(root, room, skip string, p house.Package, changes []change) (*bench, error) {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return nil, err
	}
	b := &bench{root: root, room: room, skip: skip, dir: dir, limit: time.Hour}
	files, err := switched(p, root, changes)
	if err == nil {
		err = b.build("all", files)
	}
	var used time.Duration
	if err == nil {
		var out []byte
		if out, used, err = b.test("all", 0); err != nil {
			err = fmt.Errorf("the tests of %s fail without a change: %w\n%s", room, err, out)
		}
	}
	if err != nil {
		b.close()
		return nil, err
	}
	b.limit = (5*time.Second + 5*used).Round(time.Second)
	return b, nil
}

func (b *bench) close() { os.RemoveAll(b.dir) }

// try runs the tests with a change: switched on, or, where it stands outside
// the functions, built for itself.
func (b *bench) try(c change, number int) (outcome, error) {
	built := "all"
	if !c.switchable() {
		built, number = "one", 0
		path := filepath.Join(b.root, filepath.FromSlash(c.file))
		source, err := os.ReadFile(path)
		if err != nil {
			return "", err
		}
		if err := b.build(built, map[string][]byte{path: c.apply(source)}); err != nil {
			return "", fmt.Errorf("%s: %w", c, err)
		}
	}
	out, used, err := b.test(built, number)
	var exit *exec.ExitError
	switch {
	case err == nil:
		return survived, nil
	case bytes.Contains(out, []byte("panic: test timed out after")) || used > b.limit*9/10:
		return timedOut, nil
	case errors.As(err, &exit):
		return killed, nil
	}
	return "", err
}

// build makes the tests of the room with the given files in place of the true
// ones, which stay as they are.
func (b *bench) build(name string, files map[string][]byte) error {
	replace := map[string]string{}
	for path, text := range files {
		changed := filepath.Join(b.dir, name+"-"+filepath.Base(path))
		if err := os.WriteFile(changed, text, 0o644); err != nil {
			return err
		}
		replace[path] = changed
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return err
	}
	file := filepath.Join(b.dir, "overlay.json")
	if err := os.WriteFile(file, overlay, 0o644); err != nil {
		return err
	}
	cmd := exec.Command("go", "test", "-c", "-overlay", file, "-vet=off", "-ldflags=-s -w", "-o", filepath.Join(b.dir, name), "./"+b.room)
	cmd.Dir = b.root
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("go test -c: %w\n%s", err, out)
	}
	return nil
}

// test runs the built tests with one change switched on, and says how much of
// the processor they used. The shell ends what uses more than the limit.
func (b *bench) test(name string, number int) (out []byte, used time.Duration, err error) {
	cmd := exec.Command("sh", "-c", fmt.Sprintf(`ulimit -v %d && ulimit -t %d && exec "$0" "$@"`, memoryKiB, int(b.limit.Seconds())),
		filepath.Join(b.dir, name), "-test.failfast", "-test.timeout", idle.String())
	if b.skip != "" {
		cmd.Args = append(cmd.Args, "-test.skip", b.skip)
	}
	cmd.Dir = filepath.Join(b.root, filepath.FromSlash(b.room))
	cmd.Env = append(os.Environ(), fmt.Sprintf("%s=%d", switchName, number))
	out, err = cmd.CombinedOutput()
	if s := cmd.ProcessState; s != nil {
		used = s.UserTime() + s.SystemTime()
	}
	return out, used, err
}

// moduleRoot is the folder of go.mod.
func moduleRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return "", err
	}
	return filepath.Dir(strings.TrimSpace(string(out))), nil
}
