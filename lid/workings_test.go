package lid

import (
	"flag"
	"maps"
	"os"
	"regexp"
	lists "slices"
	"strings"
	"testing"

	"manway.example/manway"
)

var update = flag.Bool("update", false, "write testdata/workings.txt anew")

// workings are the printed workings of every shape and of every branch of a
// result, by what they are of.
func workings(t *testing.T) map[string]manway.Working {
	t.Helper()
	all := map[string]manway.Working{}
	chipped := onTop()
	chipped.Chips = chipsOf(3 * in)
	for name, l := range lids {
		m, err := l.Move(MoveCase{Seat: Seat{Fit: OnTop}, Bond: 20 * manway.PoundForce})
		if err != nil {
			t.Fatal(err)
		}
		b, err := l.Bend(BendCase{})
		if err != nil {
			t.Fatal(err)
		}
		all[name+", moves"], all[name+", bending"] = m.Working(manway.US), b.Working(manway.SI)
		for seat, s := range map[string]Seat{"whole": onTop(), "chipped": chipped, "open": {}} {
			all[name+", "+seat+" seat"] = strengthOf(t, l, StrengthCase{Seat: s, Steel: quarterInchMesh(), Fall: manway.Foot}).Working()
		}
		l.Recesses, l.Moisture = []Recess{{Diameter: 2 * in, Depth: 1 * in}}, Soaked
		w, err := l.Weigh()
		if err != nil {
			t.Fatal(err)
		}
		all[name+", with a pocket"] = w.Working(manway.SI)
		l.Measured = 100 * manway.Pound
		if w, err = l.Weigh(); err != nil {
			t.Fatal(err)
		}
		all[name+", on a scale"] = w.Working(manway.US)
	}
	piece := lids["slab"]
	piece.Pieces = 3
	b, err := piece.Bend(BendCase{})
	if err != nil {
		t.Fatal(err)
	}
	all["piece, bending"] = b.Working(manway.US)
	plug, err := lids["bevelled plug"].Move(MoveCase{Seat: Seat{Fit: Bevel, Opening: 22 * in, DrivenBy: 300 * manway.Pound}})
	if err != nil {
		t.Fatal(err)
	}
	all["wedged plug"] = plug.Working(manway.SI)
	for name, h := range map[string]Handle{"sound handle": soundHandle, "handle not looked at": {}} {
		r, err := lids["disc"].CheckHandle(h)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = r.Working(manway.US)
	}
	hands := Hands{Horizontal: 12 * in, Vertical: 30 * in}
	down := Hands{Horizontal: 20 * in, Vertical: 6 * in, Turn: 30 * manway.Degree}
	for name, l := range map[string]Lift{
		"lift": {Load: 40 * manway.Pound, Origin: hands, Destination: down}, "lift placed with care": {Load: 40 * manway.Pound, Origin: hands, Destination: down, Control: true},
		"metric lift": {Edition: MetricEdition, Load: 20, Origin: down, Destination: hands}, "limit alone": {Origin: hands, Destination: hands},
		"beyond reach": {Load: 40 * manway.Pound, Origin: Hands{Horizontal: 30 * in}}, "not covered": {Outside: Kneeling | FastLift},
	} {
		r, err := l.Limit()
		if err != nil {
			t.Fatal(err)
		}
		all[name] = r.Working(manway.US)
	}
	loss, err := Wear{Protected: 4 * in, Now: 3 * in, Age: 20 * manway.Year}.Loss()
	if err != nil {
		t.Fatal(err)
	}
	all["wear"] = loss.Working(manway.US)
	return all
}

// Each working reads as somebody last read it: its steps, formulas and words stand
// where they stood. Digits are left out: figures are held by the tests beside this
// one. After a change write it anew with -update, and read what has changed.
func TestWorkingsReadAsBefore(t *testing.T) {
	var b strings.Builder
	all := workings(t)
	for _, name := range lists.Sorted(maps.Keys(all)) {
		b.WriteString(name + "\n")
		for _, step := range all[name] {
			b.WriteString("  " + step.String() + "\n")
		}
	}
	got := regexp.MustCompile(`[0-9]+`).ReplaceAllString(b.String(), "0")
	const path = "testdata/workings.txt"
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	is, was := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range max(len(is), len(was)) {
		if i >= len(is) || i >= len(was) || is[i] != was[i] {
			t.Fatalf("%s:%d is %q; if that is right: go test ./lid -run Workings -update, and read the difference", path, i+1, strings.Join(is[min(i, len(is)):min(i+1, len(is))], ""))
		}
	}
}
