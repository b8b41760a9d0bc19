package visit_test

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// Nothing that is judged by rules depends on the order in which the openings were
// written down: the deepest lid, the lightest and the worst fastened one count
// wherever they stand.
func TestOpeningsInAnyOrder(t *testing.T) {
	var ids []string
	for _, set := range tank.RuleSets() {
		ids = append(ids, set.ID)
	}
	for name, v := range answered(t) {
		for from := 0; from < len(ids); from += 10 {
			s := v.Survey
			s.Rules, s.Money.Remedies = ids[from:min(from+10, len(ids))], nil
			want := rulesOf(t, s)
			turned := s
			turned.Accesses = slices.Clone(s.Accesses)
			slices.Reverse(turned.Accesses)
			if got := rulesOf(t, turned); !slices.Equal(got, want) {
				t.Errorf("%s: turned round the rules say\n%q, else\n%q", name, got, want)
			}
		}
	}
	// Of two openings with 8 and 14 in over the lid, of 145 and 284 lb, one fastened.
	s, book := read(t, "rusted-handle.json")
	for i, sets := range [][]string{{"us-nc", "us-wi", "us-in", "us-tx"}, {"us-wy"}} {
		s.Rules = sets
		s.Accesses[0].Cover, s.Accesses[0].Riser.Height, s.Accesses[1].Cover = 14*manway.Inch, 0, 8*manway.Inch
		s.Accesses[0].Seen.Fastened, s.Accesses[1].Seen.Fastened = manway.Yes, manway.No
		s.Accesses[0].Seen.Guard, s.Accesses[1].Seen.Guard = manway.Yes, manway.Unknown
		v, err := visit.Run(s, book)
		if err != nil {
			continue // not every set is there
		}
		for _, c := range section(v, "rules").Checks {
			if strings.HasSuffix(c.Name, "access below grade") && math.Abs(manway.Length(c.Demand).In(manway.Inch)-14) > 1e-9 {
				t.Errorf("%d: %s of %v", i, c.Name, manway.Length(c.Demand))
			}
			if strings.HasSuffix(c.Name, "cover fastened") && c.Status != manway.Fail {
				t.Errorf("%d: one of two is not fastened: %v", i, c.Status)
			}
		}
	}
}

func section(v visit.Visit, id string) visit.Section {
	i := slices.IndexFunc(v.Sections, func(s visit.Section) bool { return s.ID == id })
	return v.Sections[i]
}

func rulesOf(t *testing.T, s visit.Survey) (list []string) {
	t.Helper()
	v, _ := page(t, s, cost.Book{})
	for _, c := range section(v, "rules").Checks {
		list = append(list, c.Name+": "+c.Status.String()+" "+c.Kind.Text(c.Demand, manway.SI))
	}
	return append(list, section(v, "rules").Unjudged...)
}

// A key of the JSON is there where there is something under it, and then only.
func TestKeysOfTheJSON(t *testing.T) {
	for name, v := range answered(t) {
		all := data(t, v)
		for _, s := range v.Sections {
			got := all[s.ID].(map[string]any)
			for key, want := range map[string]bool{
				"says": len(s.Says) > 0, "checks": len(s.Checks) > 0, "not_judged": len(s.Unjudged) > 0, "standing": s.Structure, "assumed": s.Assumed != 0, "cautions": s.Cautions != 0,
				"title": true, "method": true, "sources": true,
			} {
				if slices.ContainsFunc(s.Tables, func(t visit.Table) bool { return t.ID == key }) {
					continue
				}
				if _, has := got[key]; has != want {
					t.Errorf("%s, %s: %q stands there: %v", name, s.ID, key, has)
				}
			}
			if says, _ := got["says"].([]any); len(says) != len(s.Says) {
				t.Errorf("%s, %s: %d sentences of %d", name, s.ID, len(says), len(s.Says))
			}
		}
	}
}

// The text of a figure is its number in the unit that its key names, to the digits
// that are printed.
func TestTextsAreTheirNumbers(t *testing.T) {
	units := map[string]struct {
		unit float64
		read func(text string) (float64, bool)
	}{
		"gal": {float64(manway.Gallon), reading[manway.Volume]}, "in": {float64(manway.Inch), reading[manway.Length]}, "lb": {float64(manway.Pound), reading[manway.Mass]},
		"lbf": {float64(manway.PoundForce), reading[manway.Force]}, "gpm": {float64(manway.GallonPerMinute), reading[manway.Flow]}, "years": {float64(manway.Year), reading[manway.Duration]},
	}
	seen := map[string]int{}
	for name, v := range answered(t) {
		for _, s := range v.Sections {
			check := func(c visit.Cell, key string) {
				u, ok := units[key[strings.LastIndexByte(key, '_')+1:]]
				text, _, _ := strings.Cut(c.Text, " each")
				if !ok || c.Is != visit.Number {
					return
				}
				x, ok := u.read(text)
				if !ok {
					return
				}
				seen[key[strings.LastIndexByte(key, '_')+1:]]++
				// Three digits, or an eighth of an inch, or a whole gallon or pound.
				if got := x / u.unit; math.Abs(got-c.Number) > 0.006*math.Abs(c.Number)+0.063 {
					t.Errorf("%s, %s: %s is %v and reads %q", name, s.ID, key, c.Number, c.Text)
				}
			}
			for _, f := range s.Facts {
				check(f.Cell, f.Key)
			}
			for _, table := range s.Tables {
				for _, row := range table.Rows {
					for _, c := range row {
						check(c, c.Key)
					}
				}
			}
		}
		for _, f := range v.Spreads {
			for _, row := range section(v, "spread").Tables[0].Rows {
				unit, ok := units[f.Key[strings.LastIndexByte(f.Key, '_')+1:]]
				if row[0].Text != f.Name || !ok {
					continue
				}
				for i, x := range []float64{f.Value, f.Low, f.High} {
					if got, ok := unit.read(row[i+1].Text); !ok || row[i+1].Number != x || math.Abs(got/unit.unit-x) > 0.006*math.Abs(x)+0.063 {
						t.Errorf("%s: %s is %v and reads %q", name, f.Key, x, row[i+1].Text)
					}
				}
				seen["spread"]++
			}
		}
	}
	for _, unit := range []string{"gal", "in", "lb", "lbf", "gpm", "years", "spread"} {
		if seen[unit] < 1 {
			t.Errorf("no figure in %s was read: %v", unit, seen)
		}
	}
}

// reading reads a text as a quantity, in its SI unit.
func reading[Q ~float64](text string) (float64, bool) {
	var q Q
	err := any(&q).(encoding.TextUnmarshaler).UnmarshalText([]byte(text))
	return float64(q), err == nil
}

// A value that was said with words and changed since is written as it is now.
func TestChangedValuesLoseTheirWords(t *testing.T) {
	for what, change := range map[string]func(*visit.Survey){
		"count":   func(s *visit.Survey) { s.Household.People = 6 },
		"year":    func(s *visit.Survey) { s.Tank.SetYear = 1999 },
		"date":    func(s *visit.Survey) { s.Household.LastPumped = manway.Date{Year: 2020, Month: 2, Day: 3} },
		"pick":    func(s *visit.Survey) { s.Tank.Steel = manway.SteelUnknown },
		"volume":  func(s *visit.Survey) { s.Tank.Nominal = 1250 * manway.Gallon },
		"reading": func(s *visit.Survey) { s.Compartments[0].Scum = manway.Read(5 * manway.Inch) },
		"wall":    func(s *visit.Survey) { s.Tank.Wall = 3 * manway.Inch },
		"water":   func(s *visit.Survey) { s.Ground.Groundwater = manway.GroundwaterAt(40 * manway.Inch) },
		"grinder": func(s *visit.Survey) { s.Household.Grinder = manway.Yes },
		"nothing": func(s *visit.Survey) {},
	} {
		s := readText(t, spoken)
		change(&s)
		b, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		again := readText(t, string(b))
		said := len(s.Said) - len(again.Said)
		again.Said, s.Said = nil, nil
		if x, _ := json.Marshal(s); what != "count" { // a count that lost its about is about all the same
			if y, _ := json.Marshal(again); !bytes.Equal(x, y) {
				t.Errorf("%s: written as %s, read as %s", what, x, y)
			}
		}
		if again.Household.People != s.Household.People || said != map[bool]int{true: 0, false: 1}[what == "nothing"] {
			t.Errorf("%s: %d people, %d of the said values are gone", what, again.Household.People, said)
		}
		if what == "count" && again.Household.Known == hydraulics.Counted {
			t.Error("a changed number of people is counted")
		}
	}
}

// A date that is none is one fault, whether or not the other could be compared.
func TestOneFaultADate(t *testing.T) {
	bad := manway.Date{Year: 2024, Month: 13, Day: 1}
	for _, c := range []struct {
		visit, earlier manway.Date
		want           []string
	}{
		{manway.Date{Year: 2026, Month: 1, Day: 1}, bad, []string{"History[0].Date"}}, {bad, manway.Date{Year: 2025, Month: 1, Day: 1}, []string{"Date"}}, {bad, bad, []string{"Date", "History[0].Date"}},
		{manway.Date{Year: 2026, Month: 1, Day: 1}, manway.Date{Year: 2026, Month: 1, Day: 1}, []string{"History[0].Date"}}, {manway.Date{Year: 2026, Month: 1, Day: 1}, manway.Date{Year: 2025, Month: 12, Day: 31}, nil},
	} {
		s := readText(t, fifteen)
		s.Date, s.History = c.visit, []visit.Earlier{{Date: c.earlier}}
		var faults manway.InputErrors
		errors.As(s.Validate(), &faults)
		var got []string
		for _, f := range faults {
			got = append(got, f.Field)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v and %v: faults at %v, want %v", c.visit, c.earlier, got, c.want)
		}
	}
}

// Figures stand to the right in the page and so do their headings, words to the
// left.
func TestHeadingsStandOverTheirFigures(t *testing.T) {
	tables := regexp.MustCompile(`(?s)<table class="stack"><thead><tr>([^\n]*)</tr></thead>\s*<tbody>(.*?)</tbody>`)
	head, cell := regexp.MustCompile(`<th scope="col"( class="n")?>`), regexp.MustCompile(`<td data-label="[^"]*"( class="[nu]")?>`)
	found := 0
	for name, v := range answered(t) {
		var b bytes.Buffer
		if err := v.WriteHTML(&b); err != nil {
			t.Fatal(err)
		}
		for _, m := range tables.FindAllStringSubmatch(b.String(), -1) {
			heads, cells := head.FindAllStringSubmatch(m[1], -1), cell.FindAllStringSubmatch(m[2], -1)
			if len(heads) == 0 { // of checks, which has no figures
				continue
			}
			if len(cells) == 0 || len(cells)%len(heads) != 0 {
				t.Errorf("%s: %d cells under %d headings: %.200s", name, len(cells), len(heads), m[0])
			}
			for i, h := range heads {
				figures := false
				for k := i; k < len(cells); k += len(heads) {
					figures = figures || cells[k][1] == ` class="n"`
				}
				if figures != (h[1] != "") {
					t.Errorf("%s: figures %v under a heading to the right %v in %.200s", name, figures, h[1] != "", m[0])
				}
				found++
			}
		}
	}
	if found < 100 {
		t.Errorf("%d headings over figures", found)
	}
}
