package hydraulics_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/hostile"
	"manway.example/manway/tank"
)

func abused(t testing.TB) hostile.Room {
	lying := lyingTank(t)
	pumped := twoCompartments(t, lying)
	hose := hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Fittings: 1.5}
	suction := hydraulics.Suction{Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 9 * manway.Foot, Hose: hose}
	return hostile.Room{
		Funcs: []any{
			hydraulics.Accumulations, hydraulics.CompareAccumulation, hydraulics.FixtureLoad, hydraulics.Fittings, hydraulics.Interval,
			hydraulics.Rules, hydraulics.WaterAt, hydraulics.SeptageWaits, hydraulics.LevelTrend, hydraulics.Basis,
		},
		Seeds: []any{
			hydraulics.SeptageField{Area: 5 * manway.Acre, Nitrogen: 200, Spread: 20}, hydraulics.SeptageWaits()[0],
			[]hydraulics.LevelSeen{{Date: manway.Date{Year: 2025, Month: 3, Day: 1}, Level: manway.Read(51 * manway.Inch)}, {Date: manway.Date{Year: 2026, Month: 3, Day: 1}, Level: manway.Read(52 * manway.Inch)}},
			pumped, pumped.Compartments[0], hose, suction, hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, C: 140},
			hydraulics.Case{Outlet: 48 * manway.Inch, Compartments: pumped.Compartments, Dividers: []hydraulics.Divider{{Port: manway.Read(30 * manway.Inch), Judged: true, Difference: manway.Foot}},
				Keeps: []hydraulics.Keep{{Name: "float", Judged: true, Level: 0.3}, {Name: "walls"}}},
			hydraulics.Found{Outlet: 48 * manway.Inch, Level: manway.Read(52 * manway.Inch), Area: 30 * manway.SquareFoot,
				Runback: hydraulics.Runback{Seen: manway.Yes, Rise: manway.Inch, Over: 10 * manway.Minute}},
			hydraulics.Brief{People: 2, Tools: "bar", Lids: []hydraulics.LidFound{{Name: "front"}}}, hydraulics.Served{People: 4, PerPerson: 1.5e-6, Years: 3, Climate: hydraulics.Warm},
			hydraulics.Chamber{Area: 17.5 * manway.SquareFoot, Off: 10 * manway.Inch, On: 16 * manway.Inch, Alarm: 20 * manway.Inch, Top: 40 * manway.Inch},
			hydraulics.Drain{Diameter: 4 * manway.Inch, Slope: 0.02, N: 0.013}, hydraulics.Emptying{Compartment: pumped.Compartments[0], From: 48 * manway.Inch, Suction: suction},
			hydraulics.Measured{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(30 * manway.Inch), Compartments: pumped.Compartments, Last: manway.Date{Year: 2023, Month: 5, Day: 2},
				LastKnown: hydraulics.Counted, Visit: manway.Date{Year: 2026, Month: 10, Day: 14}, Rule: hydraulics.RuleEPA},
			hydraulics.Gauge{Compartment: pumped.Compartments[0], From: 48 * manway.Inch, Before: 0.1, After: 2},
			hydraulics.Household{People: 4, PeopleKnown: hydraulics.About, Grinder: manway.Yes}, hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 0.3},
			hydraulics.Retention{Liquid: 1000 * manway.Gallon, Solids: 300 * manway.Gallon, Average: 300 * manway.GallonPerDay}, hydraulics.Flush, hydraulics.Bath,
			hydraulics.Split{Known: true, Total: 2}, hydraulics.Orifice{Area: 0.001, Coefficient: 0.61}, hydraulics.Weir{Notch: 60 * manway.Degree}, hydraulics.Span{Known: true, Time: 2 * manway.Year}, manway.Date{Year: 2026, Month: 1, Day: 31},
			dayRoute(t, lying), hydraulics.RuleEPA,
			hydraulics.Solids{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(30 * manway.Inch), Sludge: manway.Read(12 * manway.Inch), Scum: manway.Read(4 * manway.Inch)},
			hydraulics.Truck{Capacity: 2500 * manway.Gallon, Aboard: 300 * manway.Gallon},
			hydraulics.Truck{Capacity: 2500 * manway.Gallon, Tare: 9000, Limit: 15000}, []manway.Volume{2, 3, 5},
			hydraulics.WaterTest{Area: 30 * manway.SquareFoot, Liquid: 1000 * manway.Gallon, Change: manway.Inch, Over: manway.Day},
		},
		Calls: [][]any{
			{hydraulics.FixtureLoad, 4 * manway.Inch, 1. / 48, 100, true}, {hydraulics.Truck.VacuumTime, hydraulics.Truck{Capacity: 100 * manway.CubicFoot}, manway.CubicFootPerSecond, 14 * manway.PSI, 7 * manway.PSI},
			{hydraulics.Weir.Flow, hydraulics.Weir{Notch: 60 * manway.Degree}, 3 * manway.Inch}, {hydraulics.Weir.Flow, hydraulics.Weir{Crest: 3 * manway.Foot}, 3 * manway.Inch}, {hydraulics.Hose.Friction, hose, 1e5},
			{hydraulics.Served.PeruSizing, hydraulics.Served{People: 4, PerPerson: 1.5e-6, Years: 1}}, {hydraulics.Served.BrazilSizing, hydraulics.Served{People: 4, PerPerson: 1.5e-6, Years: 3}, 1 * manway.LitrePerDay},
		},
		Sealed: []any{tank.Tank{}, tank.Compartment{}},
		Slow:   []string{"Route.Route", "Emptying.Time", "Case.PumpOut"},
	}
}

func TestHostile(t *testing.T) { abused(t).Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused(f).Fuzz(f) }
