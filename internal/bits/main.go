// Bits compares what the main calculations of every room give on this machine
// with what they give on others, which it runs under an emulator:
//
//	go run ./internal/bits
//
// On one target equal input gives equal bits; its test holds that. Across
// targets, where one fuses a multiplication with an addition and another does
// not, results agree to 1e-12 of their size. The command builds itself for
// linux/arm64 and for js/wasm, runs it with qemu-aarch64 and with node, and
// compares every number of every result. Then it runs the tests of the rooms,
// their comparisons with the published figures among them, on those targets.
// Where an emulator is missing the target is named as not compared.
//
// What comes from the equations of a plate agrees to 1e-10, because their
// condition magnifies the last bit. A residual, an estimate of the mesh's error
// and an imbalance are what is left when equal numbers are taken from each
// other: they are shares of one, and agree to 1e-10 of one.
//
// The exit status is 1 when a target differs, 2 when a run failed.
package main

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("bits", flag.ContinueOnError)
	flags.SetOutput(stderr)
	list := flags.Bool("list", false, "write the figures of this target and compare nothing")
	tests := flags.Bool("tests", true, "run the tests of the rooms on the other targets")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	fail := func(err error) int { fmt.Fprintln(stderr, "bits:", err); return 2 }
	root := flags.Arg(0) // on a target without the go command
	if root == "" {
		module, err := exec.Command("go", "env", "GOMOD").Output()
		if err != nil {
			return fail(err)
		}
		root = filepath.Dir(strings.TrimSpace(string(module)))
	}
	sites, err := filepath.Glob(filepath.Join(root, "testdata", "sites", "*.json"))
	if err != nil || len(sites) == 0 {
		return fail(fmt.Errorf("no surveys below %s (%v)", root, err))
	}
	here, err := figures(table(sites))
	if err != nil {
		return fail(err)
	}
	if *list {
		w := bufio.NewWriter(stdout)
		for _, f := range here {
			fmt.Fprintf(w, "%s %x\n", f.path, f.value)
		}
		if err := w.Flush(); err != nil {
			return fail(err)
		}
		return 0
	}
	status := 0
	for _, t := range targets {
		agrees, err := t.compare(root, here, *tests, stdout)
		if err != nil {
			return fail(fmt.Errorf("%s/%s: %w", t.os, t.arch, err))
		}
		if !agrees {
			status = 1
		}
	}
	return status
}
