package visit

import (
	"math"
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
)

// A decimal figure is cut to three digits, and a whole one keeps all it has.
func TestShort(t *testing.T) {
	for text, want := range map[string]string{
		"1.23456 gal": "1.23 gal", "12.3456 gal": "12.3 gal", "123.456 gal": "123 gal", "1,234.56 gal": "1,235 gal", "0.123456 gal": "0.123 gal",
		"-1.23456 gal": "-1.23 gal", "-12.3456 lbf": "-12.3 lbf", "1,234 gal": "1,234 gal", "12.3 gal": "12.3 gal", "1.23 gal": "1.23 gal", "0.5 m": "0.5 m",
		"4 ft 2 1/2 in": "4 ft 2 1/2 in", "about": "about", "1.23456": "1.23456",
	} {
		if got := short(text); got != want {
			t.Errorf("%q is cut to %q, want %q", text, got, want)
		}
	}
}

// Thousands are parted, whatever the sign and the decimals.
func TestGrouped(t *testing.T) {
	for text, want := range map[string]string{
		"0": "0", "1": "1", "999": "999", "1000": "1,000", "12345": "12,345", "123456": "123,456", "1234567": "1,234,567",
		"-999": "-999", "-1000": "-1,000", "1000.50": "1,000.50", "12.3456": "12.3456", "-1234567.89": "-1,234,567.89",
	} {
		if got := grouped(text); got != want {
			t.Errorf("%q is parted as %q, want %q", text, got, want)
		}
	}
}

// The lines of a chart stand 1, 2 or 5 times a power of ten apart, the least of
// these that is no less than asked.
func TestRoundStep(t *testing.T) {
	for x, want := range map[float64]float64{
		0: 1, -3: 1, 1: 1, 1.01: 2, 2: 2, 2.01: 5, 5: 5, 5.01: 10, 9.99: 10, 10: 10, 10.1: 20, 0.3: 0.5, 0.03: 0.05, 1234: 2000, 5e5: 5e5, 2 * (1 + 1e-12): 2,
	} {
		if got := roundStep(x); !(math.Abs(got-want) <= 1e-9*want) {
			t.Errorf("at least %v: %v, want %v", x, got, want)
		}
	}
}

// A date stands with its ends; what is not known is said.
func TestDates(t *testing.T) {
	a, b, c := manway.Date{Year: 2027, Month: 1, Day: 2}, manway.Date{Year: 2028, Month: 1, Day: 2}, manway.Date{Year: 2029, Month: 1, Day: 2}
	for _, one := range []struct {
		ends hydraulics.Ends
		want string
	}{
		{hydraulics.Ends{Low: a, Likely: b, High: c}, "2028-01-02, 2027-01-02 to 2029-01-02"}, {hydraulics.Ends{Low: a, High: c}, "2027-01-02 to 2029-01-02"},
		{hydraulics.Ends{Low: a, Likely: b}, "2028-01-02, 2027-01-02 to not known"}, {hydraulics.Ends{High: c}, "not known to 2029-01-02"},
	} {
		if got := dates(one.ends); got != one.want {
			t.Errorf("%+v is %q, want %q", one.ends, got, one.want)
		}
	}
}

// One whether serves those that follow each other.
func TestOneWhether(t *testing.T) {
	for _, c := range []struct{ judges, want string }{
		{"whether a", "whether a"}, {"whether a|whether b", "whether a, b"}, {"b|whether a", "b; whether a"}, {"whether a|b|whether c", "whether a; b; whether c"},
		{"whether a|whether b|c|d|whether e|whether f", "whether a, b; c; d; whether e, f"},
	} {
		if got := oneWhether(strings.Split(c.judges, "|")); got != c.want {
			t.Errorf("%s is %q, want %q", c.judges, got, c.want)
		}
	}
}

// Of several openings the worst is told: one that is not locked spoils all, and
// one that nobody looked at leaves it open.
func TestLeast(t *testing.T) {
	for _, c := range []struct {
		all  []manway.Answer
		want manway.Answer
	}{
		{[]manway.Answer{manway.Yes}, manway.Yes}, {[]manway.Answer{manway.No}, manway.No}, {[]manway.Answer{manway.Unknown}, manway.Unknown},
		{[]manway.Answer{manway.Yes, manway.Yes}, manway.Yes}, {[]manway.Answer{manway.Yes, manway.No}, manway.No}, {[]manway.Answer{manway.No, manway.Yes}, manway.No},
		{[]manway.Answer{manway.Yes, manway.Unknown}, manway.Unknown}, {[]manway.Answer{manway.Unknown, manway.Yes}, manway.Unknown},
		{[]manway.Answer{manway.Unknown, manway.No}, manway.No}, {[]manway.Answer{manway.No, manway.Unknown}, manway.No}, {[]manway.Answer{manway.Unknown, manway.Unknown}, manway.Unknown},
	} {
		so := manway.Unknown
		for i, next := range c.all {
			so = least(so, next, i)
		}
		if so != c.want {
			t.Errorf("%v: %v, want %v", c.all, so, c.want)
		}
	}
}

// What never pays asks for more than any life, what always pays for none.
func TestHarder(t *testing.T) {
	order := []cost.When{{State: cost.Always}, {State: cost.InYears, Years: 3}, {State: cost.InYears, Years: 7}, {State: cost.Never}}
	for i, a := range order {
		for j, b := range order {
			if harder(a, b) != (i > j) {
				t.Errorf("%+v harder than %+v: %v", a, b, !(i > j))
			}
		}
	}
}

// A source stands once, where it came first.
func TestMerge(t *testing.T) {
	a, b, c := manway.Citation{Place: "a"}, manway.Citation{Place: "b"}, manway.Citation{Place: "c"}
	if got := merge([]manway.Citation{a, b, a}, nil, []manway.Citation{b, c, a}); !slices.Equal(got, []manway.Citation{a, b, c}) {
		t.Errorf("%v", got)
	}
}

// What a remedy cures, delays and leaves: all of it in one word, and more than
// three things left by their count.
func TestDoes(t *testing.T) {
	k := []riser.DefectKind{"a-cover", "b", "c", "d"}
	for _, c := range []struct {
		r    riser.Remedy
		want string
	}{
		{riser.Remedy{Cures: k[:1]}, "Cures a lid."}, {riser.Remedy{Cures: k[:2]}, "Cures all 2 things seen."},
		{riser.Remedy{Cures: k[:2], Delays: k[2:3]}, "Cures a lid, b. Only delays c."}, {riser.Remedy{Cures: k[:2], Leaves: k[2:3]}, "Cures a lid, b. Leaves c."},
		{riser.Remedy{Leaves: k[:3]}, "Leaves a lid, b, c."}, {riser.Remedy{Cures: k[:1], Leaves: k}, "Cures a lid. Leaves the other 4 things seen."},
		{riser.Remedy{Delays: k}, "Only delays a lid, b, c, d."}, {riser.Remedy{}, ""},
	} {
		if got := does(c.r).Text; got != c.want {
			t.Errorf("%+v does %q, want %q", c.r, got, c.want)
		}
	}
}

// A life with no end of its own lasts until what is wrong is mended.
func TestLifeText(t *testing.T) {
	year := manway.Year
	for _, c := range []struct {
		l    riser.Life
		want string
	}{{riser.Life{Low: 5 * year, High: 10 * year}, "5–10 years"}, {riser.Life{High: 2 * year}, "0–2 years"}, {riser.Life{}, "until mended"}} {
		if got := lifeText(c.l); got != c.want {
			t.Errorf("%+v is %q, want %q", c.l, got, c.want)
		}
	}
}

// A gas reading is hazardous beyond its limit and not at it; oxygen on both sides.
// One that was not taken says nothing.
func TestGas(t *testing.T) {
	for _, c := range []struct {
		what string
		x    float64
		bad  bool
	}{
		{"oxygen", 19.4, true}, {"oxygen", 19.5, false}, {"oxygen", 20.9, false}, {"oxygen", 23.5, false}, {"oxygen", 23.6, true},
		{"hydrogen sulfide", 0, false}, {"hydrogen sulfide", 20, false}, {"hydrogen sulfide", 20.1, true},
		{"flammable gas", 0, false}, {"flammable gas", 10, false}, {"flammable gas", 10.1, true},
	} {
		g := new(Gas)
		*map[string]**float64{"oxygen": &g.Oxygen, "hydrogen sulfide": &g.Sulfide, "flammable gas": &g.Flammable}[c.what] = &c.x
		says, basis := Survey{Gas: g}.gasSays()
		if len(says) != 1 || len(basis) != 1 || strings.Contains(says[0], "hazardous") != c.bad || c.bad != strings.Contains(says[0], c.what) || !c.bad && !strings.Contains(says[0], "let nobody in") {
			t.Errorf("%s %v: %q, %d sources", c.what, c.x, says, len(basis))
		}
	}
	for _, g := range []*Gas{nil, {}} {
		if says, basis := (Survey{Gas: g}).gasSays(); len(says) != 1 || says[0] != gasNotRead || len(basis) > 0 {
			t.Errorf("not read: %q, %v", says, basis)
		}
	}
}
