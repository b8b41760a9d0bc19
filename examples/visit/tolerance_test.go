package visit_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
)

// A tolerance on the inside length moves the gallons in proportion, by a hand
// sum: 1 in of 93 in of liquid length is 1/93 of 1,159.48 gal.
func TestTolerance(t *testing.T) {
	b, err := os.ReadFile(filepath.Join(testdata, "sites", "rusted-handle.json"))
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(b), `"length": "96 in"`, `"length": "96 in ± 1 in"`, 1)
	text = strings.Replace(text, `"diameter": "24 in"`, `"diameter": "24 in +/- 1/2 in"`, 1)
	s, err := visit.Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	v, err := visit.Run(s, cost.Book{})
	if err != nil {
		t.Fatal(err)
	}
	want := map[string][2]float64{
		"liquid_gal":   {48 * 60 * 92 / 231.0, 48 * 60 * 94 / 231.0},
		"inlet_lid_lb": {weigh(23.5), weigh(24.5)},
	}
	for _, f := range v.Spreads {
		if w, ok := want[f.Key]; ok {
			if !(math.Abs(f.Low-w[0]) <= 1e-9*w[0]) || !(math.Abs(f.High-w[1]) <= 1e-9*w[1]) {
				t.Errorf("%s is %v to %v, want %v to %v", f.Key, f.Low, f.High, w[0], w[1])
			}
			delete(want, f.Key)
		}
	}
	if len(want) > 0 {
		t.Errorf("no spread of %v", want)
	}
	bad := strings.Replace(string(b), `"cover": "18 in"`, `"cover": "18 in ± much"`, 1)
	if _, err := visit.Read(strings.NewReader(bad)); err == nil || !strings.Contains(err.Error(), "accesses[0].cover") {
		t.Errorf("a tolerance without a number gives %v", err)
	}
	bad = strings.Replace(string(b), `"limit": "60 lb"`, `"limit": "60 lb ± 1 in"`, 1)
	if _, err := visit.Read(strings.NewReader(bad)); err == nil || !strings.Contains(err.Error(), "crew.limit") {
		t.Errorf("a tolerance in inches on a weight gives %v", err)
	}
}

// weigh is the soaked inlet lid by hand, in pounds, of a top diameter in inches.
func weigh(top float64) float64 {
	return math.Pi * 4 / 12 * (top*top + top*21 + 21*21) / 1728 * 150 * 1.05
}

// A tolerance of the roof's thickness is followed to the Use of the roof under a
// person: a thinner roof uses more of what it carries. What is in the tank has nothing to do
// with it.
func TestToleranceOfTheRoof(t *testing.T) {
	b, err := os.ReadFile(filepath.Join(testdata, "sites", "rusted-handle.json"))
	if err != nil {
		t.Fatal(err)
	}
	for was, c := range map[string]struct {
		is     string
		path   string
		moving bool
	}{
		`"roof": "4 in"`:                        {`"roof": "4 in ± 1/4 in"`, "tank.roof", true},
		`"roof_loss": "1/4 in"`:                 {`"roof_loss": "1/4 in ± 1/8 in"`, "tank.roof_loss", true},
		`"level": "49.5 in", "sludge": "13 in"`: {`"level": "49.5 in", "sludge": "13 in ± 1 in"`, "compartments[0].sludge", false},
	} {
		text := strings.Replace(strings.Replace(string(b), was, c.is, 1), `"about 4 in"`, `"4 in"`, 1)
		v, _ := page(t, readText(t, text), cost.Book{})
		found := false
		for _, f := range v.Spreads {
			if !strings.HasPrefix(f.Key, "roof_") {
				continue
			}
			found = true
			if c.moving != (f.Drives == c.path) || c.moving && !(f.Low <= f.Value && f.Value < f.High) || !c.moving && (f.Low != f.Value || f.High != f.Value) {
				t.Errorf("%s: %+v", c.path, f)
			}
		}
		if !found {
			t.Errorf("%s: the Use of the roof is not followed", c.path)
		}
	}
}
