package visit_test

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/strictjson"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
)

// spoken is a survey as a person tells it.
const spoken = `{"id": "spoken", "date": "2026-10-14", "ground": {"groundwater": "unknown"},
  "tank": {"kind": "nominal", "nominal": "owner says 1000 gal", "length": "about 96 in", "outlet_invert": "48 in ± 1/2 in",
    "partitions": [{"at": "60 in", "thickness": "3 in"}], "set_year": "owner says 1985", "steel": "owner says none", "wall": "unknown"},
  "accesses": [
    {"name": "inlet lid", "compartment": 1, "opening": "20 in", "opened": "yes", "cover": "about 18 in", "lid": {"shape": "disc", "diameter": "24 in", "thickness": "3 in"}},
    {"name": "outlet lid", "compartment": 2, "opening": "20 in", "opened": "not opened", "cover": "18 in", "seen": {"guard": "not opened"}}],
  "compartments": [{"level": "48 in", "sludge": "12 in", "scum": "about 4 in"}, "not opened"],
  "gas": "unknown",
  "household": {"people": "about 4", "last_pumped": "owner says 2019", "grinder": "unknown"}}`

func readText(t testing.TB, text string) visit.Survey {
	t.Helper()
	s, err := visit.Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// page is the whole answer to a survey as text in one line.
func page(t testing.TB, s visit.Survey, book cost.Book) (visit.Visit, string) {
	t.Helper()
	v, err := visit.Run(s, book)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := v.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	return v, strings.Join(strings.Fields(b.String()), " ")
}

// Values with words round them are read as the values, and how they were said is
// kept: an eye is off by a twentieth and a quarter of an inch at least, an owner by
// a tenth, a year stands for its middle.
func TestSaidValues(t *testing.T) {
	s := readText(t, spoken)
	if s.Tank.Nominal != 1000*manway.Gallon || s.Tank.Length != 96*manway.Inch || s.Tank.SetYear != 1985 || s.Tank.Steel != manway.SteelNone || s.Tank.Wall != 0 || s.Gas != nil {
		t.Errorf("the tank is read as %+v", s.Tank)
	}
	if s.Household.LastPumped != (manway.Date{Year: 2019, Month: 7, Day: 1}) || s.Household.People != 4 || s.Household.Known != hydraulics.About || s.Accesses[1].Opened != manway.No {
		t.Errorf("the household is read as %+v, the second access as %+v", s.Household, s.Accesses[1])
	}
	want := map[string]visit.Said{
		"tank.nominal":          {How: visit.OwnerSays, Off: float64(100 * manway.Gallon)},
		"tank.length":           {How: visit.About, Off: float64(4.8 * manway.Inch)},
		"tank.outlet_invert":    {How: visit.Measured, Off: float64(manway.Inch / 2)},
		"compartments[0].scum":  {How: visit.About, Off: float64(manway.Inch / 4)},
		"accesses[0].cover":     {How: visit.About, Off: float64(0.9 * manway.Inch)},
		"household.last_pumped": {How: visit.OwnerSays}, "household.people": {How: visit.About}, "tank.set_year": {How: visit.OwnerSays}, "tank.steel": {How: visit.OwnerSays},
		"ground.groundwater": {How: visit.AskedUnknown}, "tank.wall": {How: visit.AskedUnknown}, "gas": {How: visit.AskedUnknown}, "household.grinder": {How: visit.AskedUnknown},
		"compartments[1]": {How: visit.NotOpened}, "accesses[1].seen.guard": {How: visit.NotOpened},
	}
	for _, got := range s.Said {
		w, ok := want[got.Path]
		if !ok || got.How != w.How || !(math.Abs(got.Off-w.Off) <= 1e-12) {
			t.Errorf("%s %q: how %d, off %v; want %+v", got.Path, got.Written, got.How, got.Off, w)
		}
		delete(want, got.Path)
	}
	if len(want) > 0 {
		t.Errorf("nothing was said of %v", want)
	}
	_, text := page(t, s, cost.Book{})
	for _, want := range []string{
		"By the owner's word, not verified: ", "tank, nominal 1000 gal", "last pumped 2019", "Estimated, not measured: ", "tank, length 96 in",
		"Asked for, and not known: gas; groundwater; grinder; tank, wall.", "Behind a lid that was not opened:",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

// What was read is written so that it reads the same again, with its words; a
// value that was changed since loses them.
func TestSurveyReadsBack(t *testing.T) {
	texts := []string{spoken}
	for _, name := range sites(t) {
		b, err := os.ReadFile(filepath.Join(testdata, "sites", name))
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(b))
	}
	for _, text := range texts {
		s := readText(t, text)
		b, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		again := readText(t, string(b))
		if diff := cmp.Diff(s, again); diff != "" {
			t.Errorf("%s does not read back:\n%s\n%s", s.ID, diff, b)
		}
	}
	s := readText(t, spoken)
	s.Tank.Length = 90 * manway.Inch
	b, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	if again := readText(t, string(b)); again.Tank.Length != 90*manway.Inch || strings.Contains(string(b), "about 96 in") {
		t.Errorf("a changed length is written with its old words: %s", b)
	}
}

// Words that leave no value are refused where they stand, as they were written.
func TestSaidRefused(t *testing.T) {
	for _, c := range []struct{ was, is, path string }{
		{`"length": "about 96 in"`, `"length": "about 96 parsec"`, "tank.length"},
		{`"length": "about 96 in"`, `"length": "roughly 96 in"`, "tank.length"},
		{`"length": "about 96 in"`, `"length": "96 in ± 1 gal"`, "tank.length"},
		{`"nominal": "owner says 1000 gal"`, `"nominal": "owner says so"`, "tank.nominal"},
		{`"owner says 2019"`, `"owner says 2019-13"`, "household.last_pumped"},
		{`"owner says 2019"`, `"owner says long ago"`, "household.last_pumped"},
		{`"date": "2026-10-14"`, `"date": "about 2026"`, "date"},
		{`"people": "about 4"`, `"people": "about four"`, "household.people"},
		{`"outlet_invert": "48 in ± 1/2 in"`, `"outlet_invert": "unknown"`, "tank.outlet_invert"},
	} {
		_, err := visit.Read(strings.NewReader(strings.Replace(spoken, c.was, c.is, 1)))
		var faults strictjson.Faults
		if !errors.As(err, &faults) {
			t.Errorf("%s is taken", c.is)
			continue
		}
		written := strings.Trim(c.is[strings.Index(c.is, ":")+1:], ` "`)
		found := false
		for _, f := range faults {
			found = found || f.Path == c.path && (strings.Contains(written, f.Value) || strings.Contains(f.Value, written))
		}
		if !found {
			t.Errorf("%s gives %v, want a fault at %s that shows it", c.is, err, c.path)
		}
	}
}
