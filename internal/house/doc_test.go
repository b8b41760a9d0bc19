package house_test

import (
	"bytes"
	"os/exec"
	"testing"

	"manway.example/manway/internal/house"
)

// longestDoc is what fits on two screens of 60 lines.
const longestDoc = 120

// What go doc says of a package that a user calls fits on two screens: the package
// comment and every exported name.
func TestDocFitsOnTwoScreens(t *testing.T) {
	for _, room := range []string{"", "/tank", "/lid", "/riser", "/hydraulics", "/cost"} {
		out, err := exec.Command("go", "doc", house.Module+room).CombinedOutput()
		if err != nil {
			t.Fatalf("go doc %s: %v\n%s", house.Module+room, err, out)
		}
		switch n := bytes.Count(out, []byte("\n")); {
		case n > longestDoc:
			t.Errorf("go doc %s has %d lines, want %d at most", house.Module+room, n, longestDoc)
		case n < 20 || !bytes.Contains(out, []byte("\ntype ")):
			t.Errorf("go doc %s says too little to be measured:\n%s", house.Module+room, out)
		}
	}
}
