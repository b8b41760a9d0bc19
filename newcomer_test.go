package manway_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// newcomer is a program of somebody else: one tank from tape to ticket.
const newcomer = `package main

import (
	"fmt"
	"log"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

func main() {
	t, err := tank.New(tank.Spec{
		Shape:      tank.Box{Length: 90 * manway.Inch, Width: 44 * manway.Inch, Height: 5 * manway.Foot},
		Partitions: []tank.Partition{{At: 60 * manway.Inch, Thickness: 2 * manway.Inch}},
	})
	check(err)
	var stop hydraulics.Case
	stop.Outlet, stop.Dividers = 49*manway.Inch, make([]hydraulics.Divider, 1)
	for i := range t.Compartments() {
		stop.Compartments = append(stop.Compartments, hydraulics.Compartment{Shape: &t.Compartments()[i], State: hydraulics.Opened})
	}
	plan, err := stop.PumpOut()
	check(err)
	cover, err := lid.Lid{Shape: lid.Slab, Length: 24 * manway.Inch, Width: 18 * manway.Inch, Thickness: 4 * manway.Inch}.Weigh()
	check(err)
	reach, err := riser.ReachOf(riser.Access{Cover: 18 * manway.Inch, Reveal: 2 * manway.Inch})
	check(err)
	fmt.Printf("%.3f gal, %.3f lb, %v\n", plan.Remove.In(manway.Gallon), cover.Dry.In(manway.Pound), reach.Height)
}

func check(err error) {
	if err != nil {
		log.Fatal(err)
	}
}
`

// A program in a module of its own imports the library by a replace line, as the
// README says, with nothing fetched. By hand: 88 x 44 x 49/231 gallons leave,
// 24 x 18 x 4/1728 ft3 of concrete at 150 lb, and 18 + 2 in.
func TestNewcomer(t *testing.T) {
	if out, want := runElsewhere(t, newcomer), "821.333 gal, 150.000 lb, 1 ft 8 in\n"; out != want {
		t.Errorf("%q, want %q", out, want)
	}
}

// runElsewhere runs a program in a module of its own that imports the library by
// a replace line, with nothing fetched.
func runElsewhere(t *testing.T, program string) string {
	t.Helper()
	root, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	sums, err := os.ReadFile("go.sum")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	for name, text := range map[string]string{
		"go.mod":  "module newcomer.example\n\ngo 1.25\n",
		"go.sum":  string(sums),
		"main.go": program,
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	var out []byte
	for _, args := range [][]string{
		{"mod", "edit", "-require", "manway.example/manway@v0.0.0", "-replace", "manway.example/manway=" + root},
		{"run", "."},
	} {
		c := exec.Command("go", args...)
		c.Dir = dir
		c.Env = append(os.Environ(), "GOFLAGS=-mod=mod", "GOPROXY=off", "GOWORK=off")
		if out, err = c.CombinedOutput(); err != nil {
			t.Fatalf("go %v: %v\n%s", args, err, out)
		}
	}
	return string(out)
}
