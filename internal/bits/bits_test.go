package main

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"runtime"
	"sync"
	"testing"
)

func sites(t *testing.T) []string {
	t.Helper()
	list, err := filepath.Glob("../../testdata/sites/*.json")
	if err != nil || len(list) == 0 {
		t.Fatalf("no surveys: %v", err)
	}
	return list
}

// The same bits come again and again, from one goroutine and from eight, with
// one processor and with eight.
func TestSameBits(t *testing.T) {
	calculations := table(sites(t))
	first, err := figures(calculations)
	if err != nil {
		t.Fatal(err)
	}
	if len(first) < 5000 {
		t.Fatalf("only %d figures are compared", len(first))
	}
	want := hash(first)
	for _, processors := range []int{1, 8} {
		before := runtime.GOMAXPROCS(processors)
		for _, goroutines := range []int{1, 8} {
			var all sync.WaitGroup
			for range goroutines {
				all.Go(func() {
					again, err := figures(calculations)
					if err != nil {
						t.Error(err)
					}
					if hash(again) != want {
						t.Errorf("GOMAXPROCS %d, %d goroutines: %s", processors, goroutines, firstDifference(first, again))
					}
				})
			}
			all.Wait()
		}
		runtime.GOMAXPROCS(before)
	}
}

func firstDifference(a, b []figure) string {
	if len(a) != len(b) {
		return "another number of figures"
	}
	for i := range a {
		if hash(a[i:i+1]) != hash(b[i:i+1]) {
			return a[i].path + " differs"
		}
	}
	return "only the hash differs"
}

// A page made twice is the same page, to the byte.
func TestSamePage(t *testing.T) {
	for _, file := range sites(t) {
		first, err := page(file)
		if err != nil {
			t.Fatal(err)
		}
		second, err := page(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first, second) || len(first) < 10_000 {
			t.Errorf("%s: pages of %d and %d bytes differ", filepath.Base(file), len(first), len(second))
		}
	}
}

// What differs is seen, and what may differ is not.
func TestCompares(t *testing.T) {
	here := []figure{{"tank.Float.Factor", 0.67}, {"tank.Roof.Solved.Residual", 1e-12}, {"tank.Roof.Loadings[0].Load", 3000}}
	for _, c := range []struct {
		values [3]float64
		agrees bool
	}{
		{[3]float64{0.67, 1e-12, 3000}, true},
		{[3]float64{0.67 * (1 + 4e-13), 5e-12, 3000 * (1 + 5e-11)}, true},
		{[3]float64{0.67 * (1 + 4e-12), 1e-12, 3000}, false},
		{[3]float64{0.67, 1e-9, 3000}, false},
		{[3]float64{0.67, 1e-12, 3000 * (1 + 5e-10)}, false},
		{[3]float64{math.NaN(), 1e-12, 3000}, false},
	} {
		var list bytes.Buffer
		for i, f := range here {
			fmt.Fprintf(&list, "%s %x\n", f.path, c.values[i])
		}
		there, err := read(list.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		if got := (target{os: "a", arch: "b"}).report(here, there, io.Discard); got != c.agrees {
			t.Errorf("%v: agrees %v", c.values, got)
		}
	}
	if (target{}).report(here, here[:2], io.Discard) {
		t.Error("a figure that is missing was not noticed")
	}
}
