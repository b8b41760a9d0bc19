package manway

import (
	"encoding/json"
	"flag"
	"io"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/unit"
)

// tables is every quantity's table, by Kind.
func tables() []*unitTable { return kinds[1:] }

func TestReadsWhatPeopleWrite(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64 // m
	}{
		{"8 ft 4 1/2 in", 100.5 * 0.0254},
		{`8'-4 1/2"`, 100.5 * 0.0254},
		{`8' - 4 1/2"`, 100.5 * 0.0254},
		{`8′-4½″`, 100.5 * 0.0254},
		{"100.5 in", 100.5 * 0.0254},
		{"100.5in", 100.5 * 0.0254},
		{"5'-6 1/2\"", 66.5 * 0.0254},
		{"5 ft 6.5 in", 66.5 * 0.0254},
		{`66"`, 66 * 0.0254},
		{"5'6''", 66 * 0.0254},
		{"1.68 m", 1.68},
		{"2.55 M", 2.55},
		{"1,250 mm", 1.25},
		{"1/2 in", 0.0127},
		{"4-1/2 in", 4.5 * 0.0254},
		{`-11'2"`, -134 * 0.0254},
		{"−3 in", -3 * 0.0254},
		{"+3 in", 3 * 0.0254},
		{"1e-3 m", 0.001},
		{"0 ft", 0},
		{".5 in", 0.0127},
	} {
		var l Length
		if err := l.UnmarshalText([]byte(c.text)); err != nil {
			t.Errorf("%q: %v", c.text, err)
		} else if !near(float64(l), c.want) {
			t.Errorf("%q reads as %v m, want %v", c.text, float64(l), c.want)
		}
	}
}

func TestRefuses(t *testing.T) {
	lengths := "in, ft, yd, mm, cm, m"
	for _, c := range []struct{ text, want string }{
		{"100.5", lengths},
		{"", lengths},
		{"1e309 in", lengths},
		{"1e-400 in", lengths},
		{"NaN", lengths},
		{"Inf m", lengths},
		{"--3 in", lengths},
		{"5 gal", lengths},
		{"5 ft 6", lengths},
		{"5.5 ft 6 in", lengths},
		{"6 in 5 ft", lengths},
		{"5 ft -6 in", lengths},
		{"5 ft 13 in", "smaller than one of the unit before"},
		{"1/0 in", lengths},
		{"1,25 m", lengths},
		{"0x10 in", lengths},
		{"1_000 mm", lengths},
		{"3 in in", lengths},
		{strings.Repeat("9", 10000) + " in", lengths},
	} {
		var l Length
		err := l.UnmarshalText([]byte(c.text))
		if err == nil {
			t.Errorf("%.20q reads as %v, want a refusal", c.text, l)
		} else if !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.20q is refused with %q, want it to say %q", c.text, err, c.want)
		}
	}
	var v Volume
	if err := v.UnmarshalText([]byte("1000 imp gal")); err == nil || !strings.Contains(err.Error(), "other than imp gal") {
		t.Errorf("imperial gallons: %v", err)
	}
	var m Mass
	if err := m.UnmarshalText([]byte("5 lbf")); err == nil {
		t.Error("a mass in lbf was read")
	}
	var f Force
	if err := f.UnmarshalText([]byte("5 lb")); err == nil {
		t.Error("a force in lb was read")
	}
}

// A bare number is refused for every quantity, with every unit listed.
func TestBareNumberListsUnits(t *testing.T) {
	for _, table := range tables() {
		_, err := table.parse([]byte("12.5"))
		if err == nil {
			t.Errorf("%s: 12.5 was read", table.quantity)
			continue
		}
		for _, u := range table.units {
			if !strings.Contains(err.Error(), u.names[0]) {
				t.Errorf("%s: %q does not list %s", table.quantity, err, u.names[0])
			}
		}
	}
}

// Every name of every unit reads as its factor, and no name stands twice.
func TestUnitNames(t *testing.T) {
	for _, table := range tables() {
		seen := map[string]bool{}
		for _, u := range table.units {
			for _, name := range u.names {
				if seen[strings.ToLower(name)] {
					t.Errorf("%s: %s stands twice", table.quantity, name)
				}
				seen[strings.ToLower(name)] = true
				got, err := table.parse([]byte("2 " + name))
				if err != nil || !near(got, 2*u.factor+u.offset) {
					t.Errorf("%s: 2 %s reads as %v, %v", table.quantity, name, got, err)
				}
			}
		}
	}
}

func TestUnitsAgree(t *testing.T) {
	for _, c := range []struct {
		name     string
		us, want float64
	}{
		{"foot is 12 inches", float64(Foot), 12 * 0.0254},
		{"gallon is 231 in3", float64(Gallon), 231 * math.Pow(0.0254, 3)},
		{"ft3 is 1728/231 gal", CubicFoot.In(Gallon), 1728.0 / 231},
		{"62.4 lb/ft3 is 8.341667 lb/gal", Density(62.4 * PoundPerCubicFoot).In(PoundPerGallon), 62.4 * 231 / 1728},
		{"psi", float64(PSI), 0.45359237 * 9.80665 / (0.0254 * 0.0254)},
		{"kip ft/ft is kip", float64(KipFootPerFoot), float64(Kip)},
		{"lb weighs one lbf", float64(Pound.Weight()), float64(PoundForce)},
	} {
		if !(math.Abs(c.us-c.want) <= 1e-12*math.Abs(c.want)) {
			t.Errorf("%s: %v, want %v", c.name, c.us, c.want)
		}
	}
	for _, c := range []struct {
		text string
		k    float64
	}{{"32 F", 273.15}, {"212 F", 373.15}, {"-40 F", 233.15}, {"-40 C", 233.15}, {"20 °C", 293.15}} {
		var x Temperature
		if err := x.UnmarshalText([]byte(c.text)); err != nil || !near(float64(x), c.k) {
			t.Errorf("%s reads as %v K, %v; want %v", c.text, float64(x), err, c.k)
		}
	}
}

// The lossless text reads back to the same bits.
func TestLosslessText(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		x := math.Float64frombits(r.Uint64())
		for _, table := range tables() {
			b, err := table.append(nil, x)
			if !finite(x) {
				if err == nil {
					t.Fatalf("%s: %v was written", table.quantity, x)
				}
				continue
			}
			got, err := table.parse(b)
			if err != nil || math.Float64bits(got) != math.Float64bits(x) && x != 0 {
				t.Fatalf("%s: %q reads as %v, %v", table.quantity, b, got, err)
			}
		}
	}
}

// The text for people reads back within half of its last place, sign and all.
func TestTextForPeople(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 5000 {
		x := (r.Float64()*2 - 1) * math.Pow(10, float64(r.IntN(7)-2))
		for _, s := range []System{US, SI} {
			for kind := KindLength; kind <= KindTemperature; kind++ {
				text := kind.Text(x, s)
				got, err := kinds[kind].parse([]byte(text))
				if err != nil {
					t.Fatalf("%s %v: printed %q: %v", kind, x, text, err)
				}
				half := 0.0254 / 16
				if kind != KindLength || s == SI {
					half = halfTick(t, kinds[kind], text)
				}
				if !(math.Abs(got-x) <= half*(1+1e-6)) {
					t.Fatalf("%s %v: printed %q, read back %v, off by %v, more than %v", kind, x, text, got, got-x, half)
				}
				if got != 0 && math.Signbit(got) != math.Signbit(x) && kind != KindTemperature {
					t.Fatalf("%s %v: printed %q lost its sign", kind, x, text)
				}
			}
		}
	}
}

// halfTick is half of the last place of a printed number, in SI. The zeros that
// are cut after the point count as printed.
func halfTick(t *testing.T, table *unitTable, text string) float64 {
	t.Helper()
	n, unit, _ := strings.Cut(text, " ")
	u, ok := table.find(unit)
	if !ok {
		t.Fatalf("%q has no unit of %s", text, table.quantity)
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(n, ",", ""), 64)
	if err != nil {
		t.Fatal(err)
	}
	places := 6
	if v != 0 {
		places = min(max(3-int(math.Floor(math.Log10(math.Abs(v)))), 0), 6)
	}
	return 0.5 * math.Pow(10, -float64(places)) * u.factor
}

func TestStrings(t *testing.T) {
	for _, c := range []struct {
		got, want string
	}{
		{Length(100.5 * Inch).String(), "8 ft 4 1/2 in"},
		{Length(35.999 * Inch).String(), "3 ft"},
		{Length(-35.999 * Inch).String(), "-3 ft"},
		{Length(-0.01 * Inch).String(), "0 in"},
		{Length(18 * Inch).String(), "1 ft 6 in"},
		{Length(3.0 / 8 * Inch).String(), "3/8 in"},
		{Length(12.5 * Inch).String(), "1 ft 1/2 in"},
		{Length(2.5545).Text(SI), "2.554 m"},
		{Length(0.4555).Text(SI), "455.5 mm"},
		{Volume(1234.4 * Gallon).String(), "1,234 gal"},
		{Volume(12.5 * Gallon).String(), "12.5 gal"},
		{Volume(0).String(), "0 gal"},
		{Mass(1e6 * Pound).String(), "1,000,000 lb"},
		{Pressure(4000 * PSI).String(), "4,000 psi"},
		{Pressure(200 * PSF).String(), "1.389 psi"},
		{Pressure(100 * PSF).String(), "100 psf"},
		{Temperature(293.15).String(), "68 F"},
		{Duration(2.6 * Year).String(), "2.6 yr"},
		{Duration(90 * Second).String(), "1.5 min"},
		{Groundwater{}.String(), "unknown"},
		{GroundwaterAt(0).String(), "0 in"},
	} {
		if c.got != c.want {
			t.Errorf("printed %q, want %q", c.got, c.want)
		}
	}
}

func TestJSONAndFlags(t *testing.T) {
	var rec struct {
		Length Length
		Volume Volume
		Ground Groundwater
	}
	in := `{"Length":"8'-4 1/2\"","Volume":"1,250 gal","Ground":"unknown"}`
	if err := json.Unmarshal([]byte(in), &rec); err != nil {
		t.Fatal(err)
	}
	if !near(float64(rec.Length), 2.5527) || !near(rec.Volume.In(Gallon), 1250) || rec.Ground.Known {
		t.Errorf("read %+v", rec)
	}
	out, err := json.Marshal(rec)
	if err != nil {
		t.Fatal(err)
	}
	before := rec
	if err := json.Unmarshal(out, &rec); err != nil || rec != before {
		t.Errorf("%s read back as %+v, %v", out, rec, err)
	}
	if _, err := json.Marshal(Length(math.NaN())); err == nil {
		t.Error("NaN was written as JSON")
	}
	fs := flag.NewFlagSet("", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.TextVar(&rec.Length, "length", Length(0), "")
	if err := fs.Parse([]string{"-length", "66 in"}); err != nil || rec.Length.String() != "5 ft 6 in" {
		t.Errorf("flag reads %v, %v", rec.Length, err)
	}
	if err := fs.Parse([]string{"-length", "66"}); err == nil {
		t.Error("a flag without a unit was read")
	}
}

// The dimensions given to gonum's unit package are those of its own types.
func TestUniter(t *testing.T) {
	for _, c := range []struct {
		got, want unit.Uniter
	}{
		{Length(1), unit.Length(1)}, {Area(1), unit.Area(1)}, {Volume(1), unit.Volume(1)},
		{Mass(1), unit.Mass(1)}, {Force(1), unit.Force(1)}, {Pressure(1), unit.Pressure(1)},
		{Duration(1), unit.Time(1)}, {Velocity(1), unit.Velocity(1)}, {Angle(1), unit.Angle(1)},
		{Temperature(1), unit.Temperature(1)}, {Moment(1), unit.Torque(1)},
	} {
		if !unit.DimensionsMatch(c.got, c.want) {
			t.Errorf("%T has the dimensions of %v", c.got, c.got.Unit())
		}
	}
	flow := Volume(6).Unit().Div(Duration(2))
	if !unit.DimensionsMatch(Flow(1), flow) || !near(flow.Value(), 3) {
		t.Errorf("volume over time is %v", flow)
	}
	if !unit.DimensionsMatch(Density(1), Mass(1).Unit().Div(Volume(1))) ||
		!unit.DimensionsMatch(LineLoad(1), Force(1).Unit().Div(Length(1))) ||
		!unit.DimensionsMatch(MomentPerLength(1), Force(1)) {
		t.Error("density, line load or moment per length has other dimensions")
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"8 ft 4 1/2 in", `8'-4 1/2"`, "1,250 gal", "150 lb/ft3", "--3 in", "1e309 in", "imp gal", "NaN", "-40 F", "5 lb 3 oz", "1/0 in", "’”½",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, table := range tables() {
			x, err := table.parse([]byte(s))
			if err != nil {
				if !strings.Contains(err.Error(), table.quantity) {
					t.Fatalf("%q: error %q does not name the quantity", s, err)
				}
				continue
			}
			if !finite(x) {
				t.Fatalf("%q reads as %v", s, x)
			}
			b, err := table.append(nil, x)
			if err != nil {
				t.Fatal(err)
			}
			if y, err := table.parse(b); err != nil || y != x {
				t.Fatalf("%q is %v, written %q, read back %v, %v", s, x, b, y, err)
			}
		}
	})
}

func BenchmarkParseLength(b *testing.B) {
	text := []byte("8 ft 4 1/2 in")
	b.ReportAllocs()
	var l Length
	for b.Loop() {
		if err := l.UnmarshalText(text); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParseInches(b *testing.B) {
	text := []byte("100.5 in")
	b.ReportAllocs()
	var l Length
	for b.Loop() {
		if err := l.UnmarshalText(text); err != nil {
			b.Fatal(err)
		}
	}
}

func near(got, want float64) bool { return math.Abs(got-want) <= 1e-12*math.Max(1, math.Abs(want)) }
