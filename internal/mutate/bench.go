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
)

// outcome is what the tests made of a change.
type outcome string

const (
	killed     outcome = "killed"
	timedOut   outcome = "timed out"
	survived   outcome = "survived"
	notBuilt   outcome = "does not compile"
	memoryKiB          = 6 << 20 // address space of the tests of one package
	leastLimit         = 20 * time.Second
)

// bench runs the tests of one package with one file changed.
type bench struct {
	root, room, skip string
	dir              string // holds the changed file
	limit            time.Duration
}

// newBench runs the tests once without a change: they must pass, and a run with
// a change may take ten times as long and a little more.
func newBench(root, room, skip string) (*bench, error) {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return nil, err
	}
	b := &bench{root: root, room: room, skip: skip, dir: dir, limit: 10 * time.Minute}
	start := time.Now()
	if out, err := b.test("{}"); err != nil {
		b.close()
		return nil, fmt.Errorf("the tests of %s fail without a change: %w\n%s", room, err, out)
	}
	b.limit = leastLimit + 10*time.Since(start)
	return b, nil
}

func (b *bench) close() { os.RemoveAll(b.dir) }

// try makes the change and runs the tests.
func (b *bench) try(c change) (outcome, error) {
	path := filepath.Join(b.root, filepath.FromSlash(c.file))
	source, err := os.ReadFile(path)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(b.dir, "changed.go")
	if err := os.WriteFile(changed, c.apply(source), 0o644); err != nil {
		return "", err
	}
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {path: changed}})
	if err != nil {
		return "", err
	}
	out, err := b.test(string(overlay))
	var exit *exec.ExitError
	switch {
	case err == nil:
		return survived, nil
	case !errors.As(err, &exit):
		return "", err
	case bytes.Contains(out, []byte("[build failed]")):
		return notBuilt, nil
	case bytes.Contains(out, []byte("[setup failed]")):
		return "", fmt.Errorf("%s: %s", c, out)
	case bytes.Contains(out, []byte("panic: test timed out after")):
		return timedOut, nil
	}
	return killed, nil
}

// test runs the tests with the given overlay.
func (b *bench) test(overlay string) ([]byte, error) {
	file := filepath.Join(b.dir, "overlay.json")
	if err := os.WriteFile(file, []byte(overlay), 0o644); err != nil {
		return nil, err
	}
	args := []string{"test", "-overlay", file, "-count=1", "-vet=off", "-failfast", "-p=1", "-timeout", b.limit.String(),
		"-exec", fmt.Sprintf(`sh -c 'ulimit -v %d; exec "$0" "$@"'`, memoryKiB)}
	if b.skip != "" {
		args = append(args, "-skip", b.skip)
	}
	cmd := exec.Command("go", append(args, "./"+b.room)...)
	cmd.Dir = b.root
	return cmd.CombinedOutput()
}

// moduleRoot is the folder of go.mod.
func moduleRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return "", err
	}
	return filepath.Dir(strings.TrimSpace(string(out))), nil
}
