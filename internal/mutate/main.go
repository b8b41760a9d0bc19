// Mutate asks how much the tests would notice: it makes one small change at a
// time to the formulas of a package and runs the tests of that package alone.
// A change that fails a test is killed; one that does not has survived, and
// says what is not held by any test.
//
//	go run ./internal/mutate                    every room, 60 changes each
//	go run ./internal/mutate -n 200 tank lid    more of two rooms
//	go run ./internal/mutate -seed 2            another sample
//	go run ./internal/mutate -match 'box\.go'   only changes whose text matches
//
// The changes are listed in change.go. The sample is fixed: each change has a
// number, a hash of the seed and of its own text, and those with the lowest
// numbers are tried, so that an edit elsewhere leaves the sample as it is. What
// does not compile is passed over and the next is taken. Tests that use five
// times the processor time that they need count as killed and are stated apart.
//
// A change that cannot alter a result stands with its reason in
// equivalent.csv, found by file, function, line of source and change, not by the
// number of the line. It is reported as survived. The share killed is given
// twice, of all that were tried and of those that can be killed, with the 95 %
// interval of Wilson (1927).
//
// Nothing is written to the source: go test reads changed files in place of the
// true ones (-overlay). The tests of a package are built once with all changes
// in them and run once for each, switched on by a variable of the environment;
// a change of a table or a constant outside functions is built for itself.
// Memory and time are limited by the shell (ulimit), so a shell is needed. The
// exit status is 1 when a survivor has no reason or a reason no place, 2 when
// the run itself failed.
package main

import (
	"cmp"
	"flag"
	"fmt"
	"io"
	"os"
	"regexp"
	"slices"
	"strings"

	"manway.example/manway/internal/house"
)

// rooms are the packages with formulas, and the tests of theirs that would not
// see a change because they start commands built from the true source.
var rooms = []struct{ name, skip string }{
	{".", "Consoles|CommentsOfCommands|MannersOfCommands|Newcomer|ReadmeProgram|ShellScript|Shares"},
	{"internal/plate", ""},
	{"internal/concrete", ""},
	{"internal/soil", ""},
	{"tank", ""},
	{"riser", ""},
	{"lid", ""},
	{"hydraulics", ""},
	{"cost", ""},
	{"examples/visit", ""},
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("mutate", flag.ContinueOnError)
	flags.SetOutput(stderr)
	n := flags.Int("n", 60, "changes tried in each package")
	seed := flags.Uint64("seed", 1, "which sample")
	match := flags.String("match", "", "try only changes whose file, function or text matches this expression")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	fail := func(err error) int { fmt.Fprintln(stderr, "mutate:", err); return 2 }
	wanted, err := regexp.Compile(*match)
	if err != nil {
		return fail(err)
	}
	root, err := moduleRoot()
	if err != nil {
		return fail(err)
	}
	equivalent, err := readEquivalent(root)
	if err != nil {
		return fail(err)
	}
	packages, err := house.Sources()
	if err != nil {
		return fail(err)
	}
	for _, name := range flags.Args() {
		if !slices.ContainsFunc(rooms, func(r struct{ name, skip string }) bool { return r.name == name }) {
			return fail(fmt.Errorf("no formulas are sought in %q", name))
		}
	}
	var tallies []tally
	for _, room := range rooms {
		if flags.NArg() > 0 && !slices.Contains(flags.Args(), room.name) {
			continue
		}
		p := packages[slices.IndexFunc(packages, func(p house.Package) bool {
			return p.Path == strings.TrimSuffix(house.Module+"/"+room.name, "/.")
		})]
		t, err := mutate(root, room.name, room.skip, p, sampling{*n, *seed, wanted}, equivalent, stderr)
		if err != nil {
			return fail(err)
		}
		tallies = append(tallies, t)
	}
	return report(stdout, tallies)
}

// sampling says which changes of a package are tried.
type sampling struct {
	n     int
	seed  uint64
	match *regexp.Regexp
}

// mutate tries a sample of the changes of one package.
func mutate(root, room, skip string, p house.Package, s sampling, equivalent map[key]string, progress io.Writer) (tally, error) {
	t := tally{room: room}
	changes, err := changesOf(p, root)
	if err != nil {
		return t, err
	}
	t.changes, t.stale = len(changes), stale(equivalent, changes)
	slices.SortFunc(changes, func(a, b change) int { return cmp.Compare(a.number(s.seed), b.number(s.seed)) })
	var sample []change
	for _, c := range changes {
		if len(sample) == s.n {
			break
		}
		if !s.match.MatchString(c.String()) {
			continue
		}
		ok, err := c.compiles(p, root)
		if err != nil {
			return t, err
		}
		if ok {
			sample = append(sample, c)
		}
	}
	b, err := newBench(root, room, skip, p, sample)
	if err != nil {
		return t, err
	}
	defer b.close()
	return t, t.run(b, sample, equivalent, progress)
}
