// Page writes testdata/references/README.md, the validation page: every
// published figure beside what the tests of this module computed for it.
//
//	go generate ./internal/reftable       write the page
//	go run ./internal/reftable/page -check     compare, write nothing
//
// The values are those that the tests themselves computed: page runs, by
// "go test -json", the packages whose tests read the tables, and collects the
// attribute that each comparison leaves. A figure that no test compared, that
// two tests computed differently, or that disagrees, is an error, and the page
// stays as it was.
//
// Three tests hold the page without running the suite twice. Each comparison of
// a figure fails where the page shows another value than the one just computed;
// the test of this package lays the page out again from the tables and the
// values on it, and compares all of it; and -check, which the full run of
// checks calls, computes everything afresh and finds a figure whose comparison
// was dropped.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"manway.example/manway/internal/reftable"
)

func main() {
	check := flag.Bool("check", false, "compare the page with fresh values instead of writing it")
	flag.Parse()
	if err := run(*check); err != nil {
		fmt.Fprintln(os.Stderr, "page:", err)
		os.Exit(1)
	}
}

func run(check bool) error {
	dir, err := reftable.Dir()
	if err != nil {
		return err
	}
	sources, rows, err := reftable.ReadAll(dir)
	if err != nil {
		return err
	}
	if err := reftable.Verify(sources, rows); err != nil {
		return err
	}
	root := filepath.Join(dir, "..", "..")
	computed, failed, err := compute(root)
	if err != nil {
		return err
	}
	ours, err := shown(rows, computed)
	if err != nil {
		return errors.Join(err, failed)
	}
	pages, err := lay(root, sources, rows, ours)
	if err != nil {
		return err
	}
	for _, p := range pages {
		if check {
			err = p.compare()
		} else {
			err = os.WriteFile(p.file, []byte(p.text), 0o644)
		}
		if err != nil {
			return err
		}
	}
	fmt.Printf("page: %d figures from %d sources\n", len(rows), len(sources))
	return nil
}
