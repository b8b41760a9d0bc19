package hydraulics_test

import (
	"maps"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
)

// sixty is 60 F.
const sixty = manway.Temperature((60 + 459.67) / 1.8)

// closedForms are the calculations that must not allocate, by name.
func closedForms(t testing.TB) map[string]func() error {
	forms := pipeForms(t)
	maps.Copy(forms, tankForms(t))
	return forms
}

// pipeForms are those of water, pipes and openings.
func pipeForms(t testing.TB) map[string]func() error {
	w := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(sixty))
	hose := hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Fittings: 1.5}
	rubber := hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, C: 140}
	suction := hydraulics.Suction{Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 9 * manway.Foot, Hose: hose}
	drain := hydraulics.Drain{Diameter: 4 * manway.Inch, Slope: 0.02, N: 0.013}
	return map[string]func() error{
		"WaterAt":        func() error { _, err := hydraulics.WaterAt(sixty); return err },
		"Atmosphere":     func() error { _, err := hydraulics.Suction{Altitude: 5000 * manway.Foot}.Atmosphere(); return err },
		"FrictionFactor": func() error { _, err := rough(1e-4).Friction(1e5); return err },
		"Hose.AtFlow":    func() error { _, err := hose.AtFlow(200*manway.GallonPerMinute, w); return err },
		"Hose.AtHead":    func() error { _, err := hose.AtHead(10*manway.Foot, w); return err },
		"HazenWilliams":  func() error { _, err := rubber.HazenWilliams(200 * manway.GallonPerMinute); return err },
		"Suction.Pull":   func() error { _, err := suction.Pull(); return err },
		"VacuumTime": func() error {
			_, err := hydraulics.Truck{Capacity: 100 * manway.CubicFoot}.VacuumTime(manway.CubicFootPerSecond, 14*manway.PSI, 7*manway.PSI)
			return err
		},
		"Drain.AtDepth": func() error { _, err := drain.AtDepth(2 * manway.Inch); return err },
		"Drain.AtFlow":  func() error { _, err := drain.AtFlow(30 * manway.GallonPerMinute); return err },
		"FixtureLoad":   func() error { _, err := hydraulics.FixtureLoad(4*manway.Inch, 1./48, 100, true); return err },
		"Outlet.Head": func() error {
			_, err := hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 0.3}.Head(10 * manway.GallonPerMinute)
			return err
		},
		"Orifice": func() error {
			_, err := hydraulics.Orifice{Area: manway.SquareInch, Coefficient: 0.61}.Flow(manway.Foot)
			return err
		},
		"DrainTime": func() error {
			_, err := hydraulics.Orifice{Area: manway.SquareInch, Coefficient: 0.61}.DrainTime(20*manway.SquareFoot, 2*manway.Foot, 0)
			return err
		},
		"FrancisWeir": func() error { _, err := hydraulics.Weir{Crest: 3 * manway.Foot}.Flow(3 * manway.Inch); return err },
		"VNotch":      func() error { _, err := hydraulics.Weir{Notch: 60 * manway.Degree}.Flow(3 * manway.Inch); return err },
	}
}

// tankForms are those of what is in a tank and when it is pumped.
func tankForms(t testing.TB) map[string]func() error {
	chamber := hydraulics.Chamber{Area: 17.5 * manway.SquareFoot, Off: 10 * manway.Inch, On: 16 * manway.Inch, Alarm: 20 * manway.Inch, Top: 40 * manway.Inch}
	house := hydraulics.Household{People: 4, PeopleKnown: hydraulics.About, Grinder: manway.Yes}
	c := twoCompartments(t, lyingTank(t)).Compartments[0]
	solids := hydraulics.Solids{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(30 * manway.Inch), Sludge: manway.Read(12 * manway.Inch), Scum: manway.Read(4 * manway.Inch)}
	found := hydraulics.Found{Outlet: 48 * manway.Inch, Level: manway.Read(52 * manway.Inch), Area: 30 * manway.SquareFoot,
		Runback: hydraulics.Runback{Seen: manway.Yes, Rise: manway.Inch, Over: 10 * manway.Minute}}
	truck := hydraulics.Truck{Capacity: 2500 * manway.Gallon, Aboard: 300 * manway.Gallon}
	return map[string]func() error{
		"Interval":  func() error { _, err := hydraulics.Interval(4, 1100*manway.Gallon); return err },
		"Household": func() error { _, err := house.Interval(1100 * manway.Gallon); return err },
		"NextDate": func() error {
			_, err := hydraulics.Span{Known: true, Time: 2.6 * manway.Year}.After(manway.Date{Year: 2026, Month: 1, Day: 31})
			return err
		},
		"Rule.Trigger":   func() error { _, err := hydraulics.RuleEPA.Trigger(solids); return err },
		"Layers":         func() error { _, err := c.Layers(48 * manway.Inch); return err },
		"Arrival":        func() error { _, err := found.Arrival(); return err },
		"Truck.Loads":    func() error { _, err := truck.Loads(3000 * manway.Gallon); return err },
		"Chamber.Dosing": func() error { _, err := chamber.Dosing(300*manway.GallonPerDay, 0.5); return err },
		"Drawdown":       func() error { _, err := chamber.Drawdown(6*manway.Inch, 2*manway.Minute, 0); return err },
		"Chamber.Starts": func() error {
			_, err := wetWell(75*manway.Gallon).Starts(30*manway.GallonPerMinute, 10*manway.Minute)
			return err
		},
		"CycleTime": func() error {
			_, err := wetWell(75*manway.Gallon).CycleTime(30*manway.GallonPerMinute, 10*manway.GallonPerMinute)
			return err
		},
		"Retention": func() error {
			_, err := hydraulics.Retention{Liquid: 1000 * manway.Gallon, Solids: 300 * manway.Gallon, Average: 300 * manway.GallonPerDay}.Times()
			return err
		},
		"WaterTest": func() error {
			_, err := hydraulics.WaterTest{Area: 30 * manway.SquareFoot, Liquid: 1000 * manway.Gallon, Change: manway.Inch, Over: manway.Day}.Result()
			return err
		},
	}
}

func TestClosedFormsDoNotAllocate(t *testing.T) {
	for name, form := range closedForms(t) {
		if err := form(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = form() }); n != 0 {
			t.Errorf("%s allocates %v times: want 0", name, n)
		}
	}
}
