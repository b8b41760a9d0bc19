package main

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// target is a system and processor, and the command that runs its programs here.
type target struct {
	os, arch string
	emulator func() ([]string, error)
}

var targets = []target{
	{"linux", "arm64", func() ([]string, error) {
		path, err := exec.LookPath("qemu-aarch64")
		return []string{path}, err
	}},
	{"js", "wasm", func() ([]string, error) {
		node, err := exec.LookPath("node")
		if err != nil {
			return nil, err
		}
		goRoot, err := exec.Command("go", "env", "GOROOT").Output()
		return []string{node, "--stack-size=8192", filepath.Join(strings.TrimSpace(string(goRoot)), "lib", "wasm", "wasm_exec_node.js")}, err
	}},
}

// rooms are the packages whose tests run on the other targets.
var rooms = []string{"./internal/plate", "./internal/concrete", "./internal/soil", "./tank", "./riser", "./lid", "./hydraulics", "./cost"}

// compare runs this command for the target and reports whether it agrees.
func (t target) compare(root string, here []figure, tests bool, w io.Writer) (bool, error) {
	emulator, err := t.emulator()
	if err != nil {
		fmt.Fprintf(w, "%s/%s: not compared: %v\n", t.os, t.arch, err)
		return true, nil
	}
	dir, err := os.MkdirTemp("", "bits")
	if err != nil {
		return false, err
	}
	defer os.RemoveAll(dir)
	program := filepath.Join(dir, "bits")
	if _, err := t.command(root, "go", "build", "-o", program, "./internal/bits").Output(); err != nil {
		return false, explained(err)
	}
	out, err := t.command(root, append(emulator, program, "-list", root)...).Output()
	if err != nil {
		return false, explained(err)
	}
	there, err := read(out)
	if err != nil {
		return false, err
	}
	agrees := t.report(here, there, w)
	if !tests {
		return agrees, nil
	}
	quoted := "'" + strings.Join(emulator, "' '") + "'"
	args := append([]string{"go", "test", "-count=1", "-exec", quoted}, rooms...)
	run := t.command(root, args...)
	run.Stdout, run.Stderr = w, w
	err = run.Run()
	if err != nil {
		fmt.Fprintf(w, "%s/%s: go test: %v\n", t.os, t.arch, err)
	}
	return agrees && err == nil, nil
}

func (t target) command(root string, args ...string) *exec.Cmd {
	c := exec.Command(args[0], args[1:]...)
	c.Dir = root
	c.Env = append(os.Environ(), "GOOS="+t.os, "GOARCH="+t.arch)
	return c
}

// explained adds what a command wrote about its failure.
func explained(err error) error {
	if exit, ok := err.(*exec.ExitError); ok {
		return fmt.Errorf("%w: %s", err, exit.Stderr)
	}
	return err
}

// read reads what -list writes.
func read(out []byte) ([]figure, error) {
	var list []figure
	for s := bufio.NewScanner(bytes.NewReader(out)); s.Scan(); {
		path, number, _ := cutLast(s.Text())
		v, err := strconv.ParseFloat(number, 64)
		if err != nil {
			return nil, err
		}
		list = append(list, figure{path, v})
	}
	return list, nil
}

func cutLast(line string) (before, after string, found bool) {
	if i := strings.LastIndexByte(line, ' '); i >= 0 {
		return line[:i], line[i+1:], true
	}
	return line, "", false
}

// report writes how far the figures of two targets are apart.
func (t target) report(here, there []figure, w io.Writer) bool {
	if len(here) != len(there) {
		fmt.Fprintf(w, "%s/%s: %d figures, here %d\n", t.os, t.arch, len(there), len(here))
		return false
	}
	same, agrees := 0, true
	var closed, solved float64
	for i, f := range here {
		g := there[i]
		size := max(math.Abs(f.value), math.Abs(g.value))
		apart := math.Abs(f.value-g.value) / size
		switch {
		case f.path != g.path:
			fmt.Fprintf(w, "%s/%s: %s where here is %s\n", t.os, t.arch, g.path, f.path)
			return false
		case f.value == g.value:
			same++
			continue
		case remainder(f.path):
			apart *= size // it is a share of one already
			solved = max(solved, apart)
		case ofPlate(f.path):
			solved = max(solved, apart)
		default:
			closed = max(closed, apart)
		}
		if !(apart <= tolerance(f.path)) {
			agrees = false
			fmt.Fprintf(w, "%s/%s: %s: %v, here %v: apart by %.1e\n", t.os, t.arch, f.path, g.value, f.value, apart)
		}
	}
	fmt.Fprintf(w, "%s/%s: %d of %d figures have the same bits; the others are apart by %.1e at most, those of a solved plate by %.1e\n",
		t.os, t.arch, same, len(here), closed, solved)
	return agrees
}

// tolerance is how far two targets may be apart, of the number's size: 1e-12,
// and 1e-10 for what comes from the equations of a plate, whose condition
// magnifies the last bit.
func tolerance(path string) float64 {
	if remainder(path) || ofPlate(path) {
		return 1e-10
	}
	return 1e-12
}

// remainder reports whether a figure is what is left when equal numbers are
// taken from each other, as a share of their size.
func remainder(path string) bool {
	return strings.HasSuffix(path, ".Residual") || strings.HasSuffix(path, ".Error") || strings.HasSuffix(path, ".Imbalance")
}

func ofPlate(path string) bool {
	for _, part := range []string{"plate.Study", "tank.Roof", ".Roof.", ".Strength."} {
		if strings.Contains(path, part) {
			return true
		}
	}
	return false
}
