package visit_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/strictjson"
	"manway.example/manway/examples/visit"
)

const testdata = "../../testdata"

// read reads a survey of testdata/sites and the example price book.
func read(t testing.TB, name string) (visit.Survey, cost.Book) {
	t.Helper()
	f, err := os.Open(filepath.Join(testdata, "sites", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	s, err := visit.Read(f)
	if err != nil {
		t.Fatal(err)
	}
	p, err := os.Open(filepath.Join(testdata, "prices", "example.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer p.Close()
	book, err := cost.ReadPriceBook(p)
	if err != nil {
		t.Fatal(err)
	}
	return s, book
}

func sites(t testing.TB) []string {
	t.Helper()
	entries, err := os.ReadDir(filepath.Join(testdata, "sites"))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), ".json") {
			names = append(names, e.Name())
		}
	}
	if len(names) < 2 {
		t.Fatalf("testdata/sites holds %v, want a survey in US units and one in SI", names)
	}
	return names
}

// Every section of the page is there, with a method and a source or words of
// its own, and no figure in it is not a number.
func TestSections(t *testing.T) {
	for _, name := range sites(t) {
		s, book := read(t, name)
		v, err := visit.Run(s, book)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		seen := map[string]bool{}
		for _, section := range v.Sections {
			if seen[section.ID] || section.Title == "" || section.Method == "" {
				t.Errorf("%s: section %q stands twice, or has no title or method", name, section.ID)
			}
			seen[section.ID] = true
			for _, table := range section.Tables {
				for _, row := range table.Rows {
					if len(row) != len(table.Columns) {
						t.Errorf("%s: table %s has a row of %d cells under %d columns", name, table.ID, len(row), len(table.Columns))
					}
					for _, c := range row {
						if math.IsNaN(c.Number) || math.IsInf(c.Number, 0) {
							t.Errorf("%s: %s is %v", name, c.Key, c.Number)
						}
					}
				}
			}
		}
		for _, id := range []string{"first", "seen", "drawing", "tank", "pump_out", "arrival", "next", "reach", "lids", "remedies", "flotation", "not_checked", "structure"} {
			if !seen[id] {
				t.Errorf("%s: no section %s", name, id)
			}
		}
		if !v.Cautions().Has(manway.NeverEnter | manway.GuardHole | manway.Screening | manway.LocalCode | manway.HeavyLift) {
			t.Errorf("%s: cautions are %v", name, v.Cautions())
		}
	}
}

// The figures of one survey by hand: a box of 96 by 60 in with a 3 in partition
// at 62 in holds 48 in x 60 in x (96 - 3) in = 267,840 in3 below the outlet, of
// which the first compartment has 62/93.
func TestFiguresByHand(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	v, err := visit.Run(s, book)
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Tank struct {
			Liquid       float64 `json:"liquid_gal"`
			Compartments []struct {
				Gal, Share float64
				Liquid     float64 `json:"liquid_gal"`
				PerInch    float64 `json:"gal_per_in"`
			}
		}
		Reach struct {
			Accesses []struct {
				Reach float64 `json:"reach_in"`
			}
		}
		Lids struct {
			Lids []struct {
				Dry float64 `json:"dry_lb"`
			}
		}
		Pump struct {
			Compartments []struct {
				Sludge *float64 `json:"sludge_gal"`
			}
		} `json:"pump_out"`
	}
	if err := json.Unmarshal(b, &got); err != nil {
		t.Fatal(err)
	}
	within := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	within("liquid", got.Tank.Liquid, 48*60*93/231.0)
	within("first compartment", got.Tank.Compartments[0].Liquid, 48*60*62/231.0)
	within("its share", got.Tank.Compartments[0].Share, 62.0/93)
	within("its gallons per inch", got.Tank.Compartments[0].PerInch, 60*62/231.0)
	within("reach", got.Reach.Accesses[0].Reach, 18+2+15*math.Tan(4*math.Pi/180))
	// Frustum of 24 and 21 in, 4 in thick, at 150 lb/ft3.
	within("inlet lid", got.Lids.Lids[0].Dry, math.Pi*4/12*(24*24+24*21+21*21)/1728*150)
	within("outlet lid", got.Lids.Lids[1].Dry, 30*26*4/1728.0*150)
	within("sludge", *got.Pump.Compartments[0].Sludge, 13*60*62/231.0)
	if got.Pump.Compartments[1].Sludge != nil {
		t.Errorf("the compartment that was not opened has sludge of %v gal", *got.Pump.Compartments[1].Sludge)
	}
}

// Five faults of different kinds are all named at once, by path and line.
func TestFiveFaults(t *testing.T) {
	survey := `{
  "id": "bad", "date": "2026-10-14",
  "tank": {"kind": "box", "length": "-96 in", "width": "60 parsec", "height": "60 in",
    "colour": "grey",
    "outlet_invert": "48 in",
    "partitions": [{"at": "900 in", "thickness": "3 in"}]},
  "accesses": [{"name": "lid", "compartment": 1, "opening": "20 in", "opened": "yes", "cover": "18 in"}],
  "compartments": [{"level": "48 in",
    "sludge": "55 in"}]
}`
	_, err := visit.Read(strings.NewReader(survey))
	var faults strictjson.Faults
	if !errors.As(err, &faults) {
		t.Fatalf("error is %v", err)
	}
	for _, want := range []struct {
		path string
		line int
	}{{"tank.length", 3}, {"tank.width", 3}, {"tank.colour", 4}, {"tank.partitions[0].at", 6}, {"compartments[0].sludge", 9}} {
		found := false
		for _, f := range faults {
			found = found || f.Path == want.path && f.Line == want.line && f.Want != ""
		}
		if !found {
			t.Errorf("no fault at %s in line %d among\n%v", want.path, want.line, strings.ReplaceAll(faults.Error(), "; ", "\n"))
		}
	}
	if len(faults) != 5 {
		t.Errorf("%d faults, want 5:\n%v", len(faults), strings.ReplaceAll(faults.Error(), "; ", "\n"))
	}
}

// What was not measured stays unknown in every form of the answer.
func TestUnknownStaysUnknown(t *testing.T) {
	survey := `{"id": "bare", "date": "2026-10-14",
  "tank": {"kind": "box", "length": "96 in", "width": "60 in", "height": "60 in", "outlet_invert": "48 in"},
  "accesses": [{"name": "lid", "compartment": 1, "at": "20 in", "opening": "20 in", "cover": "18 in"}]}`
	s, err := visit.Read(strings.NewReader(survey))
	if err != nil {
		t.Fatal(err)
	}
	v, err := visit.Run(s, cost.Book{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"next_date":null`, `"sludge_gal":null`, `"now_gal":null`, `"points_to":"level not read"`, `"truck_loads":null`} {
		if !bytes.Contains(b, []byte(want)) {
			t.Errorf("the answer lacks %s", want)
		}
	}
	var text strings.Builder
	if err := v.WriteText(&text); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Groundwater was not measured and is taken at grade", "lid was not opened", "no lid was described"} {
		if !strings.Contains(strings.Join(strings.Fields(text.String()), " "), want) {
			t.Errorf("the text does not say %q", want)
		}
	}
}

// Where the last pump-out is not known, the household table gives the next one:
// 1,000 gal (a box of 231,000 in3 below the outlet) and 4 people are 2.6 years
// by Mancl's table, less what the solids that stay take from it: none, since the
// tank is deep under soil and may be drawn to the floor.
func TestNextByTheTable(t *testing.T) {
	survey := `{"id": "table", "date": "2026-01-15", "ground": {"groundwater": "20 ft"},
  "tank": {"kind": "box", "length": "96.25 in", "width": "50 in", "height": "60 in", "outlet_invert": "48 in"},
  "accesses": [{"name": "lid", "compartment": 1, "opening": "24 in", "opened": "yes", "cover": "18 in"}],
  "compartments": [{"level": "48 in", "sludge": "12 in", "scum": "4 in"}],
  "household": {"people": 4, "people_known": "counted", "grinder": "no", "months": 12}}`
	s, err := visit.Read(strings.NewReader(survey))
	if err != nil {
		t.Fatal(err)
	}
	v, err := visit.Run(s, cost.Book{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"next_date":"2028-08-`, `"table_years":2.6,`} {
		if !bytes.Contains(b, []byte(want)) {
			t.Errorf("the answer lacks %s", want)
		}
	}
}

// Markup in a survey's texts is shown as text, in the page and its pictures.
func TestTextIsNotMarkup(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	const evil = `<script>alert(1)</script>"'&`
	s.ID, s.Note = evil, evil
	s.Accesses[0].Name, s.Accesses[1].WhyNot = evil, evil
	v, err := visit.Run(s, book)
	if err != nil {
		t.Fatal(err)
	}
	var page bytes.Buffer
	if err := v.WriteHTML(&page); err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(page.Bytes(), []byte("<script")) {
		t.Error("the page holds a script element")
	}
	if !bytes.Contains(page.Bytes(), []byte("&lt;script&gt;")) {
		t.Error("the page does not show the text")
	}
}

// No result is called what it must never be called.
func TestNothingIsCalledSafe(t *testing.T) {
	for _, name := range sites(t) {
		s, book := read(t, name)
		v, err := visit.Run(s, book)
		if err != nil {
			t.Fatal(err)
		}
		var page bytes.Buffer
		if err := v.WriteHTML(&page); err != nil {
			t.Fatal(err)
		}
		for _, word := range []string{"safe to", "is safe", "certified", "approved by"} {
			text := strings.ReplaceAll(strings.ToLower(page.String()), "not safe to", "")
			if strings.Contains(text, word) {
				t.Errorf("%s: the page says %q", name, word)
			}
		}
	}
}

// The same survey gives the same bytes, and the page ends where it should.
func TestPure(t *testing.T) {
	for _, name := range sites(t) {
		s, book := read(t, name)
		var pages [2]bytes.Buffer
		for i := range pages {
			v, err := visit.Run(s, book)
			if err != nil {
				t.Fatal(err)
			}
			if err := v.WriteHTML(&pages[i]); err != nil {
				t.Fatal(err)
			}
		}
		if !bytes.Equal(pages[0].Bytes(), pages[1].Bytes()) {
			t.Errorf("%s: two runs differ", name)
		}
		if !strings.HasSuffix(strings.TrimSpace(pages[0].String()), "</html>") {
			t.Errorf("%s: the page does not end", name)
		}
	}
}
