package manway

import (
	"math"
	"testing"
)

// Every unit in SI, from the metre, the kilogram and the second: an inch is
// 0.0254 m, a pound 0.45359237 kg, standard gravity 9.80665 m/s2, a gallon 231
// in3, and the rest by counting.
func TestEveryUnit(t *testing.T) {
	const in, lb, g = 0.0254, 0.45359237, 9.80665
	const ft, in3, lbf = 12 * in, in * in * in, lb * g
	want := map[string]map[string]float64{
		"length": {"in": in, "ft": ft, "yd": 3 * ft, "mm": 1e-3, "cm": 1e-2, "m": 1},
		"area":   {"in2": in * in, "ft2": ft * ft, "yd2": 9 * ft * ft, "acre": 43560 * ft * ft, "mm2": 1e-6, "cm2": 1e-4, "m2": 1, "ha": 1e4},
		"volume": {"gal": 231 * in3, "in3": in3, "ft3": ft * ft * ft, "yd3": 27 * ft * ft * ft, "fl oz": 231 * in3 / 128, "mL": 1e-6, "L": 1e-3, "m3": 1},
		"mass":   {"lb": lb, "oz": lb / 16, "ton": 2000 * lb, "g": 1e-3, "kg": 1, "t": 1000},
		"force":  {"lbf": lbf, "kip": 1000 * lbf, "N": 1, "kN": 1000},
		"pressure": {"psi": lbf / (in * in), "ksi": 1000 * lbf / (in * in), "psf": lbf / (ft * ft), "inHg": 3386.389,
			"Pa": 1, "kPa": 1e3, "MPa": 1e6, "GPa": 1e9},
		"density":           {"lb/ft3": lb / (ft * ft * ft), "lb/yd3": lb / (27 * ft * ft * ft), "lb/gal": lb / (231 * in3), "kg/m3": 1, "g/cm3": 1000},
		"flow":              {"gal/min": 231 * in3 / 60, "gal/d": 231 * in3 / 86400, "ft3/s": ft * ft * ft, "L/s": 1e-3, "L/min": 1e-3 / 60, "L/d": 1e-3 / 86400, "m3/h": 1.0 / 3600, "m3/d": 1.0 / 86400, "m3/s": 1},
		"moment":            {"lbf ft": lbf * ft, "lbf in": lbf * in, "kip ft": 1000 * lbf * ft, "N m": 1, "kN m": 1000},
		"moment per length": {"lbf ft/ft": lbf, "kip ft/ft": 1000 * lbf, "N m/m": 1, "kN m/m": 1000},
		"line load":         {"lbf/ft": lbf / ft, "lbf/in": lbf / in, "kip/ft": 1000 * lbf / ft, "N/m": 1, "kN/m": 1000},
		"duration":          {"s": 1, "min": 60, "h": 3600, "d": 86400, "wk": 7 * 86400, "mo": 365.25 / 12 * 86400, "yr": 365.25 * 86400},
		"velocity":          {"ft/s": ft, "m/s": 1},
		"angle":             {"deg": math.Pi / 180, "rad": 1},
		"temperature":       {"F": 5.0 / 9, "C": 1, "K": 1},
	}
	for _, table := range tables() {
		if len(table.units) != len(want[table.quantity]) {
			t.Errorf("%s: %d units, want %d", table.quantity, len(table.units), len(want[table.quantity]))
		}
		for _, units := range [][]unitDef{table.units, table.us, table.si} {
			for _, u := range units {
				if w := want[table.quantity][u.names[0]]; !(math.Abs(u.factor-w) <= 1e-14*w) {
					t.Errorf("%s: a %s is %v, want %v", table.quantity, u.names[0], u.factor, w)
				}
			}
		}
	}
	// 32 F is 0 C is 273.15 K.
	for text, kelvin := range map[string]float64{"32 F": 273.15, "0 C": 273.15, "212 F": 373.15} {
		var x Temperature
		if err := x.UnmarshalText([]byte(text)); err != nil || !(math.Abs(float64(x)-kelvin) <= 1e-9) {
			t.Errorf("%s reads as %v K, %v", text, float64(x), err)
		}
	}
}

// Crossing dimensions with numbers whose product and quotient differ, and the
// units that stand in the results.
func TestCrossings(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"3 ft x 5 ft", Length(3 * Foot).Times(5 * Foot).In(SquareFoot), 15},
		{"15 ft2 x 2 ft", Area(15 * SquareFoot).Times(2 * Foot).In(CubicFoot), 30},
		{"30 ft3 over 15 ft2", Volume(30 * CubicFoot).Over(15 * SquareFoot).In(Foot), 2},
		{"30 ft3 of 5 lb/ft3", Volume(30 * CubicFoot).Times(5 * PoundPerCubicFoot).In(Pound), 150},
		{"6 lbf over 2 ft2", Force(6 * PoundForce).Over(2 * SquareFoot).In(PSF), 3},
		{"6 lbf at 2 ft", Force(6 * PoundForce).Times(2 * Foot).In(PoundForceFoot), 12},
		{"6 lbf/ft over 2 ft", LineLoad(6 * PoundForcePerFoot).Times(2 * Foot).In(PoundForce), 12},
		{"6 psf on 2 ft2", Pressure(6 * PSF).Times(2 * SquareFoot).In(PoundForce), 12},
		{"6 gal/min for 2 min", Flow(6 * GallonPerMinute).Times(2 * Minute).In(Gallon), 12},
		{"4 lb", Mass(4 * Pound).Weight().In(PoundForce), 4},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-12*c.want) {
			t.Errorf("%s is %v, want %v", c.name, c.got, c.want)
		}
	}
}

// What the trade presses on a slab, and what is taken where nothing is known.
func TestTakenValues(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"a wheel of a mower, lbf", MowerWheel.Load.In(PoundForce), 300}, {"long, in", MowerWheel.Length.In(Inch), 4}, {"wide, in", MowerWheel.Width.In(Inch), 8}, {"gauge, ft", MowerWheel.Gauge.In(Foot), 3},
		{"a wheel of a pickup, lbf", PickupWheel.Load.In(PoundForce), 2000}, {"long, in", PickupWheel.Length.In(Inch), 8}, {"wide, in", PickupWheel.Width.In(Inch), 8}, {"gauge, in", PickupWheel.Gauge.In(Inch), 66},
		{"a wheel of a truck, lbf", TruckWheel.Load.In(PoundForce), 16000}, {"long, in", TruckWheel.Length.In(Inch), 10}, {"wide, in", TruckWheel.Width.In(Inch), 20}, {"gauge, ft", TruckWheel.Gauge.In(Foot), 6},
		{"a person, lb", UsualPerson.In(Pound), 300}, {"water, lb/ft3", WaterDensity.In(PoundPerCubicFoot), 62.4},
		{"f'c, psi", LeastConcreteStrength.In(PSI), 2500}, {"concrete, lb/ft3", UsualConcreteDensity.In(PoundPerCubicFoot), 150}, {"as ballast", LightConcreteDensity.In(PoundPerCubicFoot), 135}, {"fy, psi", UsualSteelYield.In(PSI), 40000},
		{"heavy soil, lb/ft3", HeavySoilMoist.In(PoundPerCubicFoot), 120}, {"saturated", HeavySoilSaturated.In(PoundPerCubicFoot), 130},
		{"light soil", LightSoil.In(PoundPerCubicFoot), 100}, {"friction, deg", LooseSoilFriction.In(Degree), 28},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-12*c.want) {
			t.Errorf("%s is %v, want %v", c.name, c.got, c.want)
		}
	}
	if p, made := (Person{}).Filled(); p.Mass != UsualPerson || made != AssumedPerson {
		t.Errorf("an unknown person is %v, %v", p, made.List())
	}
	if p, made := (Person{Mass: 70}).Filled(); p.Mass != 70 || made != 0 {
		t.Errorf("a person of 70 kg is %v, %v", p, made.List())
	}
	if c, made := (Concrete{Strength: 3000 * PSI, Density: 2000}).Filled(); c.Strength != 3000*PSI || c.Density != 2000 || made != 0 {
		t.Errorf("known concrete became %v with %v", c, made.List())
	}
	if c, made := (Concrete{Density: 2000}).AsBallast(); c.Density != 2000 || made != 0 {
		t.Errorf("known concrete became %v with %v", c, made.List())
	}
	if c, made := (Concrete{}).AsBallast(); c.Density != LightConcreteDensity || made != AssumedLightConcrete {
		t.Errorf("unknown concrete became %v with %v", c, made.List())
	}
	for _, c := range []struct {
		in            Soil
		moist, soaked Density
	}{ // a soil is never heavier moist than saturated
		{Soil{Moist: 140 * PoundPerCubicFoot}, 140 * PoundPerCubicFoot, 140 * PoundPerCubicFoot},
		{Soil{Moist: 110 * PoundPerCubicFoot}, 110 * PoundPerCubicFoot, 130 * PoundPerCubicFoot},
		{Soil{Saturated: 125 * PoundPerCubicFoot}, 120 * PoundPerCubicFoot, 125 * PoundPerCubicFoot},
	} {
		if got, made := c.in.AsLoad(); got.Moist != c.moist || got.Saturated != c.soaked || got.Friction != LooseSoilFriction || made != AssumedSoil {
			t.Errorf("%v as load is %v with %v", c.in, got, made.List())
		}
	}
}

// The limits of the functions that refuse, exactly.
func TestRefusingAtLimits(t *testing.T) {
	count := func(f func(*InputErrors)) int {
		var faults InputErrors
		f(&faults)
		return len(faults)
	}
	inf := math.Inf(1)
	for _, c := range []struct {
		name string
		got  int
		want int
	}{
		{"1 within 1 to 2", count(func(f *InputErrors) { Within(f, "", Length(1), 1, 2) }), 0},
		{"2 within 1 to 2", count(func(f *InputErrors) { Within(f, "", Length(2), 1, 2) }), 0},
		{"0.9 within 1 to 2", count(func(f *InputErrors) { Within(f, "", Length(0.9), 1, 2) }), 1},
		{"2.1 within 1 to 2", count(func(f *InputErrors) { Within(f, "", Length(2.1), 1, 2) }), 1},
		{"number 1", count(func(f *InputErrors) { Within(f, "", 1.0, 1, 2) }), 0},
		{"number 2", count(func(f *InputErrors) { Within(f, "", 2.0, 1, 2) }), 0},
		{"not a number", count(func(f *InputErrors) { Within(f, "", math.NaN(), 1, 2) }), 1},
		{"number 0.9", count(func(f *InputErrors) { Within(f, "", 0.9, 1, 2) }), 1},
		{"count 1", count(func(f *InputErrors) { Within(f, "", 1, 1, 2) }), 0},
		{"count 2", count(func(f *InputErrors) { Within(f, "", 2, 1, 2) }), 0},
		{"count 3", count(func(f *InputErrors) { Within(f, "", 3, 1, 2) }), 1},
		{"not negative 0", count(func(f *InputErrors) { NotNegative(f, "", Length(0)) }), 0},
		{"not negative -0.5", count(func(f *InputErrors) { NotNegative(f, "", Length(-0.5)) }), 1},
		{"not negative infinity", count(func(f *InputErrors) { NotNegative(f, "", Length(inf)) }), 1},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d faults, want %d", c.name, c.got, c.want)
		}
	}
	for _, c := range []struct {
		v, limit Length
		want     bool
	}{{1 - 2e-9, 1, false}, {1 - 0.5e-9, 1, true}, {-1 - 0.5e-9, -1, true}, {-1 - 2e-9, -1, false}, {0, 0, true}, {1, 2, false}} {
		if Reached(c.v, c.limit) != c.want {
			t.Errorf("%v of %v reached: want %v", float64(c.v), float64(c.limit), c.want)
		}
	}
	if n, err := Pieces(Length(1.005e9), Length(1)); err == nil {
		t.Errorf("more than a billion pieces are %d", n)
	}
	if n, err := Pieces(Length(4e8), Length(1)); err != nil || n != 4e8 {
		t.Errorf("400 million pieces are %d, %v", n, err)
	}
	for d, want := range map[Date]bool{{1, 1, 1}: true, {9999, 12, 31}: true, {0, 12, 31}: false, {10000, 1, 1}: false, {2026, 13, 1}: false, {2026, 2, 29}: false, {2028, 2, 29}: true, {2026, 4, 31}: false} {
		if got := d.Validate() == nil; got != want {
			t.Errorf("%v is valid: %v, want %v", d, got, want)
		}
	}
}

// Six of a unit are three of its double.
func TestInUnits(t *testing.T) {
	for i, got := range []float64{
		Length(6 * Inch).In(2 * Inch), Area(6 * SquareFoot).In(2 * SquareFoot), Volume(6 * Gallon).In(2 * Gallon), Mass(6 * Pound).In(2 * Pound),
		Force(6 * Kip).In(2 * Kip), Pressure(6 * PSI).In(2 * PSI), Density(6 * PoundPerGallon).In(2 * PoundPerGallon), Flow(6 * GallonPerMinute).In(2 * GallonPerMinute),
		Moment(6 * KipFoot).In(2 * KipFoot), MomentPerLength(6 * KipFootPerFoot).In(2 * KipFootPerFoot), LineLoad(6 * KipPerFoot).In(2 * KipPerFoot),
		Duration(6 * Year).In(2 * Year), Velocity(6 * FootPerSecond).In(2 * FootPerSecond), Angle(6 * Degree).In(2 * Degree),
	} {
		if !(math.Abs(got-3) <= 1e-14) {
			t.Errorf("quantity %d: six are %v of two", i, got)
		}
	}
}

// A hair below a unit reads as one of it, and ten thousand pieces a hair too
// long are ten thousand.
func TestSlack(t *testing.T) {
	if s := Pressure((1 - 0.5e-9) * PSI).String(); s != "1 psi" {
		t.Errorf("a hair less than 1 psi is %s", s)
	}
	if s := Pressure((1 - 2e-9) * PSI).String(); s != "144 psf" {
		t.Errorf("less than 1 psi is %s", s)
	}
	if n, err := Pieces(Length(1000*(1+0.5e-9)), Length(0.1)); err != nil || n != 10000 {
		t.Errorf("1000 m by 0.1 m is %d, %v", n, err)
	}
	if c := Combination(len(combinations)); c.Factors() != (Factors{}) || c.String() != "unknown combination" {
		t.Errorf("no combination is %v", c)
	}
	if s := Status(len(statuses)); s.String() == "" {
		t.Error("a status beyond the last has no word")
	}
}
