package manway

import (
	"errors"
	"math"
	"testing"
)

func TestJudge(t *testing.T) {
	for _, c := range []struct {
		demand, capacity float64
		want             Status
	}{
		{1, 2, Pass},
		{2, 2, Pass},
		{2 * (1 + 1e-10), 2, Pass},
		{2 * (1 + 1e-8), 2, Fail},
		{1, 0, Fail},
		{0, 0, Pass},
		{-1, 0, Pass},
		{1, -1, Fail},
		{math.NaN(), 1, NotJudged},
		{1, math.Inf(1), NotJudged},
	} {
		got := Check{Demand: c.demand, Capacity: c.capacity}.Judge()
		if got.Status != c.want {
			t.Errorf("%v of %v is %v, want %v", c.demand, c.capacity, got.Status, c.want)
		}
		if use, ok := got.Use(); ok && !finite(use) {
			t.Errorf("%v of %v has Use %v", c.demand, c.capacity, use)
		}
	}
}

func TestGoverning(t *testing.T) {
	ran := func(d, c float64) Check { return Check{Demand: d, Capacity: c}.Judge() }
	for _, c := range []struct {
		name   string
		checks []Check
		want   int
	}{
		{"none", nil, -1},
		{"none ran", []Check{{Status: NotShown, Demand: 9, Capacity: 1}, {}}, -1},
		{"greatest use", []Check{ran(1, 2), ran(3, 4), ran(1, 9)}, 1},
		{"no capacity first", []Check{ran(9, 1), ran(1, 0), ran(8, 1)}, 1},
		{"one not run is passed over", []Check{{Status: NotPermitted, Demand: 9, Capacity: 1}, ran(1, 2)}, 1},
		{"no demand", []Check{ran(0, 0)}, 0},
	} {
		if got := Governing(c.checks); got != c.want {
			t.Errorf("%s: check %d governs, want %d", c.name, got, c.want)
		}
	}
}

func TestCautionTable(t *testing.T) {
	if got := Cautions(1) << len(cautions); got != endOfCautions {
		t.Fatalf("%d sentences for the bits below %b", len(cautions), endOfCautions)
	}
	if got := Assumptions(1) << len(assumptions); got != endOfAssumptions {
		t.Fatalf("%d texts for the bits below %b", len(assumptions), endOfAssumptions)
	}
	codes := map[string]bool{}
	for _, c := range (endOfCautions - 1).List() {
		if codes[c.Code] || c.Code == "" || c.Sentence == "" || c.Sentence[len(c.Sentence)-1] != '.' {
			t.Errorf("caution %q is empty, twice, or no sentence", c.Code)
		}
		codes[c.Code] = true
	}
	for _, a := range (endOfAssumptions - 1).List() {
		if codes[a.Code] || a.Taken == "" || a.Measure == "" {
			t.Errorf("assumption %q is empty or twice", a.Code)
		}
		codes[a.Code] = true
	}
	set := LocalCode | NeverEnter
	if list := set.List(); len(list) != 2 || list[0].Code != "never-enter" || list[1].Code != "local-code" {
		t.Errorf("%v lists as %v, want what says stop first", set, list)
	}
	if !set.Has(NeverEnter) || set.Has(NeverEnter|GuardHole) {
		t.Error("Has is wrong")
	}
}

func TestInputErrors(t *testing.T) {
	var inner, outer InputErrors
	Within(&inner, "Thickness", 0, 2*Inch, 24*Inch)
	NotNegative(&inner, "Length", Length(math.NaN()))
	NotNegative(&inner, "Depth", Length(math.Inf(1)))
	Within(&inner, "Share", 1.5, 0, 1)
	Within(&inner, "People", 0, 1, 30)
	outer.Under("Lids[1]", inner)
	outer.Under("Lids[1]", nil)
	want := []string{
		"Lids[1].Thickness 0 in: want 2 in to 2 ft",
		"Lids[1].Length NaN: want 0 or more and finite",
		"Lids[1].Depth +Inf: want 0 or more and finite",
		"Lids[1].Share 1.5: want 0 to 1",
		"Lids[1].People 0: want 1 to 30",
	}
	if len(outer) != len(want) {
		t.Fatalf("faults are %v", outer)
	}
	for i, w := range want {
		if outer[i].Error() != w {
			t.Errorf("fault %d is %q, want %q", i, outer[i], w)
		}
	}
	var one *InputError
	if err := outer.Err(); !errors.As(err, &one) || one.Field != "Lids[1].Thickness" {
		t.Errorf("errors.As finds %v", one)
	}
	if (InputErrors{}).Err() != nil {
		t.Error("no fault is an error")
	}
}

func TestPieces(t *testing.T) {
	for _, c := range []struct {
		total, each Length
		want        int
	}{
		{18 * Inch, 6 * Inch, 3},
		{18.001 * Inch, 6 * Inch, 4},
		{3 * 0.1, 0.1, 3},
		{0, 6 * Inch, 0},
		{0.01 * Inch, 6 * Inch, 1},
	} {
		if got, err := Pieces(c.total, c.each); err != nil || got != c.want {
			t.Errorf("%v by %v is %d, %v; want %d", c.total, c.each, got, err, c.want)
		}
	}
	for _, c := range [][2]Length{{1, 0}, {-1, 1}, {1, -1}, {Length(math.NaN()), 1}, {1, Length(math.NaN())}, {Length(math.Inf(1)), 1}, {1e9, 1e-3}} {
		if got, err := Pieces(c[0], c[1]); err == nil {
			t.Errorf("%v by %v is %d, want a refusal", c[0], c[1], got)
		}
	}
	third := 46.8 / 3
	if !Reached(15.6, third) || Reached(15.59, third) {
		t.Error("a third of 46.8 is not reached at 15.6, or at 15.59")
	}
}

// Combinations are those of ACI 318-19 Table 5.3.1 as remembered by the trade:
// 1.2 dead with 1.6 live, 1.6 lateral earth, 0.9 on what resists.
func TestCombinations(t *testing.T) {
	for c, want := range map[Combination]Factors{
		Service:         {1, 1, 1, 1},
		Dead:            {Dead: 1.4, Fluid: 1.4},
		DeadLive:        {1.2, 1.6, 1.6, 1.2},
		DeadResisting:   {Dead: 0.9, Earth: 1.6},
		Combination(99): {},
	} {
		if got := c.Factors(); got != want {
			t.Errorf("%v has factors %v, want %v", c, got, want)
		}
	}
}

func TestDates(t *testing.T) {
	read := func(s string) Date {
		var d Date
		if err := d.UnmarshalText([]byte(s)); err != nil {
			t.Fatal(err)
		}
		return d
	}
	for _, c := range []struct {
		from   string
		months int
		want   string
	}{
		{"2026-01-31", 1, "2026-02-28"},
		{"2028-01-31", 1, "2028-02-29"},
		{"2026-11-25", 31, "2029-06-25"},
		{"2026-03-31", -1, "2026-02-28"},
		{"2026-12-15", 1, "2027-01-15"},
	} {
		if got := read(c.from).AddMonths(c.months); got.String() != c.want {
			t.Errorf("%s and %d months is %s, want %s", c.from, c.months, got, c.want)
		}
	}
	a, b := read("2026-02-27"), read("2026-03-01")
	if a.DaysUntil(b) != 2 || !a.Before(b) || b.Before(a) || a.AddDays(2) != b {
		t.Error("days between 27 February and 1 March 2026 are not 2")
	}
	var d Date
	for _, bad := range []string{"2026-02-30", "2026-2-3", "yesterday", ""} {
		if err := d.UnmarshalText([]byte(bad)); err == nil {
			t.Errorf("%q reads as %v", bad, d)
		}
	}
	if (Date{2026, 2, 30}).Validate() == nil || (Date{}).Validate() == nil || b.Validate() != nil {
		t.Error("Validate takes a day that is not, or refuses one that is")
	}
}

func TestNotKnown(t *testing.T) {
	if depth, made := (Groundwater{}).Taken(); depth != 0 || made != AssumedGroundwaterAtGrade {
		t.Errorf("unknown groundwater is taken at %v with %v", depth, made.List())
	}
	if depth, made := GroundwaterAt(0).Taken(); depth != 0 || made != 0 {
		t.Errorf("groundwater at grade is taken at %v with %v", depth, made.List())
	}
	if c, made := (Concrete{}).Filled(); c.Strength != LeastConcreteStrength || !made.Has(AssumedConcreteStrength|AssumedConcreteDensity) {
		t.Errorf("unknown concrete is %v with %v", c, made.List())
	}
	heavy, _ := Soil{}.AsLoad()
	light, made := Soil{}.AsBallast()
	if heavy.Moist <= light.Moist || heavy.Saturated <= light.Saturated || made != AssumedSoil {
		t.Errorf("soil as load %v, as ballast %v", heavy, light)
	}
	known := Soil{Moist: 110 * PoundPerCubicFoot, Saturated: 125 * PoundPerCubicFoot, Friction: 30 * Degree}
	if got, made := known.AsLoad(); got != known || made != 0 {
		t.Errorf("known soil became %v with %v", got, made.List())
	}
	var g Groundwater
	if err := g.UnmarshalText([]byte("deep")); err == nil {
		t.Error("groundwater deep was read")
	}
	for _, bad := range []interface{ Validate() error }{
		Groundwater{Known: true, Depth: -1}, Concrete{Strength: 100 * PSI}, Concrete{Density: Density(math.NaN())},
		Soil{Moist: 10 * PoundPerCubicFoot}, Soil{Friction: 60 * Degree}, Person{Mass: -1}, Wheel{},
		Reinforcement{State: SteelKnown},
	} {
		if bad.Validate() == nil {
			t.Errorf("%#v has no fault", bad)
		}
	}
	for _, good := range []interface{ Validate() error }{
		Groundwater{}, Concrete{}, Soil{}, Person{}, Reinforcement{}, MowerWheel, PickupWheel, TruckWheel,
	} {
		if err := good.Validate(); err != nil {
			t.Errorf("%#v: %v", good, err)
		}
	}
}

func TestCheckJSON(t *testing.T) {
	c := Check{Name: "bearing", Kind: KindPressure, Demand: 1. / 3, Capacity: 2, Unfactored: 0.25, Combination: DeadLive, Phi: 0.65, Source: Citation{ACI318_19, "22.8"}}.Judge()
	b, err := c.MarshalJSON()
	want := `{"name":"bearing","status":"pass","use":0.166666666667,"demand":0.333333333333,"capacity":2,"unfactored":0.25,"unit":"Pa",` +
		`"combination":"1.2 D + 1.6 L + 1.6 H + 1.2 F","phi":0.65,"source":"American Concrete Institute, ACI 318-19 Building Code Requirements for Structural Concrete (2019), 22.8"}`
	if err != nil || string(b) != want {
		t.Errorf("got  %s, %v\nwant %s", b, err, want)
	}
	b, err = Check{Name: "steel", Status: NotShown, Reason: "no bar was seen"}.MarshalJSON()
	if want := `{"name":"steel","status":"not shown","reason":"no bar was seen","demand":0,"capacity":0,"unfactored":0,"unit":"","combination":"1.0 D + 1.0 L + 1.0 H + 1.0 F","source":""}`; err != nil || string(b) != want {
		t.Errorf("got  %s, %v\nwant %s", b, err, want)
	}
}
