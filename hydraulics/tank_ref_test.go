package hydraulics_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
)

func TestLiftFigures(t *testing.T) {
	atmosphere := func(t testing.TB, row reftable.Row) manway.Pressure {
		return reftable.Must[manway.Pressure](t)(hydraulics.Suction{Altitude: reftable.In[manway.Length](t, row, "altitude")}.Atmosphere())
	}
	at := func(t testing.TB, row reftable.Row) hydraulics.Water {
		var temperature manway.Temperature
		row.Read(t, "temperature", &temperature)
		return reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(temperature))
	}
	cold := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(273.15 + 4))
	quantities{
		"pressure of the atmosphere": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(atmosphere(t, row)), manway.KindPressure
		},
		"height of water the atmosphere carries": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(cold.Head(atmosphere(t, row))), manway.KindLength
		},
		"vapour pressure of water": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(at(t, row).Vapour), manway.KindPressure
		},
		"vapour pressure as height of water": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			w := at(t, row)
			return float64(w.Head(w.Vapour)), manway.KindLength
		},
		"flow of a suction hose": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			s := hydraulics.Suction{Temperature: at(t, row).Temperature, Lift: reftable.In[manway.Length](t, row, "lift"), Hose: hose(t, row)}
			row.Read(t, "vacuum", &s.Vacuum)
			s.Hose.C, s.Hose.Fittings = row.Float(t, "c"), row.Float(t, "fittings")
			return float64(reftable.Must[hydraulics.Pull](t)(s.Pull()).Hose.Flow), manway.KindFlow
		},
		"head left above vapour": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			w := at(t, row)
			var gauge manway.Pressure
			row.Read(t, "gauge", &gauge)
			air := reftable.Must[manway.Pressure](t)(hydraulics.Suction{Altitude: 0}.Atmosphere())
			return float64(w.Head(gauge+air-w.Vapour) - reftable.In[manway.Length](t, row, "below") - reftable.In[manway.Length](t, row, "losses")), manway.KindLength
		},
	}.run(t)
}

func TestVacuumTimeFigures(t *testing.T) {
	for _, id := range []string{"vacuum-time-1", "vacuum-time-2", "vacuum-time-3"} {
		row := reftable.Load(t, "hydraulics.csv").With("id", id)[0]
		tank, displacement, from, to := 1*manway.CubicMetre, 0.1*manway.CubicMetrePerSecond, 100*manway.Kilopascal, 50*manway.Kilopascal
		switch id {
		case "vacuum-time-1":
			const torr = 101325. / 760
			tank, displacement, from, to = 750*manway.CubicFoot, 405*manway.CubicFootPerSecond/60, 760*torr, 150*torr
		case "vacuum-time-3":
			to = 10 * manway.Kilopascal
		}
		got := reftable.Must[manway.Duration](t)(hydraulics.Truck{Capacity: tank}.VacuumTime(displacement, from, to))
		row.Check(t, inUnit(t, row, float64(got), manway.KindDuration))
	}
}

func TestIntervalFigures(t *testing.T) {
	household := accumulation(t, "household table")
	for _, row := range reftable.Load(t, "hydraulics.csv").With("quantity", "years between pump-outs") {
		t.Run(row.ID, func(t *testing.T) {
			people := int(row.Float(t, "people"))
			var tank manway.Volume
			row.Read(t, "tank", &tank)
			got := reftable.Must[manway.Duration](t)(hydraulics.Interval(people, tank))
			row.Check(t, got.In(manway.Year))
			house := hydraulics.Household{People: people, PeopleKnown: hydraulics.Counted, Grinder: manway.No}
			row.Check(t, reftable.Must[hydraulics.HouseholdInterval](t)(house.Interval(tank)).Likely.Time.In(manway.Year))
			// Its solids and 50 gal a person fill the tank, by a straight line within 0.1
			// years of each cell.
			year, _, err := household.Volume(people, manway.Year)
			if err != nil {
				t.Fatal(err)
			}
			line := float64((tank - 50*manway.Gallon*manway.Volume(people)) / year)
			if off := line - got.In(manway.Year); off > 0.1 || off < -0.1 {
				t.Errorf("straight line %v yr: off by %.3f yr, want within 0.1", line, off)
			}
		})
	}
}

func TestRuleFigures(t *testing.T) {
	quantities{
		"limit of a rule": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			r := rule(t, row.Input(t, "rule"))
			switch row.Input(t, "part") {
			case "sludge to outlet":
				return float64(r.SludgeToOutlet), manway.KindLength
			case "scum to outlet":
				return float64(r.ScumToOutlet), manway.KindLength
			case "scum to top":
				return float64(r.ScumToTop), manway.KindLength
			case "holding tank":
				c := reftable.Must[manway.Check](t)(hydraulics.Split{Known: true, Total: 500 * manway.Gallon}.HoldingTank(1000 * manway.Gallon))
				return c.Capacity / float64(1000*manway.Gallon), manway.Ratio
			}
			return r.Share, manway.Ratio
		},
	}.run(t)
}

// The worked decisions: 30 % of depth is more than a quarter, 25 % is not.
func TestDecisionFigures(t *testing.T) {
	rows := reftable.Load(t, "hydraulics.csv").Under("decide-")
	quarter := hydraulics.Rule{Name: "share 25 %", Share: 0.25}
	solids := func(row reftable.Row) hydraulics.Solids {
		return hydraulics.Solids{Outlet: reftable.In[manway.Length](t, row, "depth"), Sludge: manway.Read(reftable.In[manway.Length](t, row, "sludge")), Scum: manway.Read(reftable.In[manway.Length](t, row, "scum"))}
	}
	for _, row := range rows.With("quantity", "pump") {
		r := reftable.Must[hydraulics.TriggerResult](t)(quarter.Trigger(solids(row)))
		word := "no"
		if r.Pump {
			word = "yes"
		}
		row.CheckText(t, word)
	}
	for _, row := range rows.With("quantity", "share of depth") {
		r := reftable.Must[hydraulics.TriggerResult](t)(quarter.Trigger(solids(row)))
		row.Check(t, 100*r.Checks[0].Demand)
	}
	for _, row := range rows.With("quantity", "greatest sludge and scum") {
		// Use is 1 at the greatest depth of solids: scale a tenth of it up.
		rule := hydraulics.Rule{Name: "30 %", Share: row.Float(t, "share")}
		tenth := reftable.In[manway.Length](t, row, "depth") / 10
		r := reftable.Must[hydraulics.TriggerResult](t)(rule.Trigger(hydraulics.Solids{Outlet: reftable.In[manway.Length](t, row, "depth"), Sludge: manway.Read(tenth), Scum: manway.Read(0)}))
		use, ok := r.Checks[0].Use()
		if !ok {
			t.Fatal("no use")
		}
		row.Check(t, tenth.In(manway.Inch)/use)
	}
	for _, row := range rows.With("quantity", "months at the limit") {
		rule := hydraulics.Rule{Name: "30 %", Share: row.Float(t, "share")}
		visit := manway.Date{Year: 2020, Month: 3, Day: 1}
		f := reftable.Must[hydraulics.Forecast](t)(hydraulics.Measured{
			Outlet: reftable.In[manway.Length](t, row, "depth"), Rule: rule, LastKnown: hydraulics.Counted,
			Last: visit.AddMonths(-int(row.Float(t, "months"))), Visit: visit,
			Compartments: []hydraulics.Compartment{{Shape: &boxTank(t, 0).Compartments()[0], State: hydraulics.Opened, Sludge: manway.Read(reftable.In[manway.Length](t, row, "solids")), Scum: manway.Read(0)}},
		}.Forecast())
		row.Check(t, row.Float(t, "months")*f.Growth)
	}
}

func TestAccumulationFigures(t *testing.T) {
	of := func(t testing.TB, row reftable.Row) (low, high manway.Volume) {
		for _, a := range hydraulics.Accumulations() {
			if a.Name == row.Input(t, "model") {
				low, high, err := a.Volume(int(row.Float(t, "people")), manway.Duration(row.Float(t, "years"))*manway.Year)
				if err != nil {
					t.Fatal(err)
				}
				return low, high
			}
		}
		t.Fatalf("no model %s", row.Input(t, "model"))
		return 0, 0
	}
	quantities{
		"sludge of a model": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			low, _ := of(t, row)
			c := reftable.Must[hydraulics.Comparison](t)(hydraulics.CompareAccumulation(int(row.Float(t, "people")), manway.Duration(row.Float(t, "years"))*manway.Year))
			for _, m := range c.Models {
				if m.Model.Name == row.Input(t, "model") && m.Low != low {
					t.Errorf("%v beside the other models, %v alone", m.Low, low)
				}
			}
			return float64(low), manway.KindVolume
		},
		"sludge over tank": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			low, _ := of(t, row)
			var tank manway.Volume
			row.Read(t, "tank", &tank)
			return float64(low / tank), manway.Ratio
		},
		"sludge of a model, high": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			_, high := of(t, row)
			return float64(high), manway.KindVolume
		},
	}.run(t)
}

func TestChamberFigures(t *testing.T) {
	chamber := func(t testing.TB, row reftable.Row) hydraulics.Chamber {
		c := hydraulics.Chamber{Area: reftable.In[manway.Area](t, row, "area"), Off: 1 * manway.Inch, On: 2 * manway.Inch}
		if _, ok := row.Lookup("on"); ok {
			c.Off, c.On = reftable.In[manway.Length](t, row, "off"), reftable.In[manway.Length](t, row, "on")
		}
		c.Alarm, c.Top = c.On, c.On
		return c
	}
	dosing := func(t testing.TB, row reftable.Row) hydraulics.Dosing {
		return reftable.Must[hydraulics.Dosing](t)(chamber(t, row).Dosing(100*manway.GallonPerDay, 0))
	}
	quantities{
		"gallons an inch": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(dosing(t, row).PerInch), manway.KindVolume
		},
		"dose": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(dosing(t, row).Dose), manway.KindVolume
		},
		"flow from runs": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			u := reftable.Must[hydraulics.Usage](t)(chamber(t, row).Usage(int(row.Float(t, "runs")), manway.Duration(row.Float(t, "days"))*manway.Day, 500*manway.GallonPerDay))
			return float64(u.Flow), manway.KindFlow
		},
		"rate from a drawdown": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			c := chamber(t, row)
			c.On, c.Alarm, c.Top = 30*manway.Inch, 30*manway.Inch, 30*manway.Inch
			d := reftable.Must[hydraulics.Drawdown](t)(c.Drawdown(reftable.In[manway.Length](t, row, "fall"), manway.Duration(row.Float(t, "minutes"))*manway.Minute, 0))
			return float64(d.Rate), manway.KindFlow
		},
		"least working volume": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			v := working(t, reftable.In[manway.Flow](t, row, "pump"), manway.Duration(row.Float(t, "minutes"))*manway.Minute)
			return float64(v), manway.KindVolume
		},
		"time between starts": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			var v manway.Volume
			row.Read(t, "volume", &v)
			d := reftable.Must[manway.Duration](t)(wetWell(v).CycleTime(reftable.In[manway.Flow](t, row, "pump"), reftable.In[manway.Flow](t, row, "inflow")))
			return float64(d), manway.KindDuration
		},
		"retention": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			var v manway.Volume
			row.Read(t, "liquid", &v)
			r := reftable.Must[hydraulics.RetentionTimes](t)(hydraulics.Retention{Liquid: v, Average: reftable.In[manway.Flow](t, row, "flow")}.Times())
			return float64(r.Clean), manway.KindDuration
		},
		"greatest loss in 30 min": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			r := reftable.Must[hydraulics.WaterTestResult](t)(hydraulics.WaterTest{Area: 1, Liquid: 1, Wetted: reftable.In[manway.Area](t, row, "wetted"), Over: manway.Hour}.Result())
			return r.Checks[2].Capacity / 48, manway.KindVolume
		},
		"greatest loss a day": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			var v manway.Volume
			row.Read(t, "liquid", &v)
			r := reftable.Must[hydraulics.WaterTestResult](t)(hydraulics.WaterTest{Area: 1, Liquid: v, Over: manway.Hour}.Result())
			return r.Checks[0].Capacity, manway.KindVolume
		},
	}.run(t)
}

// The published sizings: the fresh sludge of the Brazilian example is 1 L.
func TestSizingFigures(t *testing.T) {
	sized := func(t testing.TB, row reftable.Row) hydraulics.Sizing {
		s := hydraulics.Served{People: int(row.Float(t, "people")), PerPerson: reftable.In[manway.Flow](t, row, "each"), Years: int(row.Float(t, "years"))}
		if err := s.Climate.UnmarshalText([]byte(row.Input(t, "climate"))); err != nil {
			t.Fatal(err)
		}
		switch row.Input(t, "standard") {
		case "WHO":
			return reftable.Must[hydraulics.Sizing](t)(s.WHOSizing(false))
		case "Peru":
			return reftable.Must[hydraulics.Sizing](t)(s.PeruSizing())
		}
		return reftable.Must[hydraulics.Sizing](t)(s.BrazilSizing(manway.LitrePerDay))
	}
	quantities{
		"capacity for wastewater": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(sized(t, row).Liquid), manway.KindVolume
		},
		"capacity for sludge": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(sized(t, row).Solids), manway.KindVolume
		},
		"capacity in all": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(sized(t, row).Total), manway.KindVolume
		},
		"retention by design": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(sized(t, row).Retention), manway.KindDuration
		},
		"depth of the sludge": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(sized(t, row).Solids.Over(reftable.In[manway.Area](t, row, "area"))), manway.KindLength
		},
		"depth of the wastewater": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(sized(t, row).Liquid.Over(reftable.In[manway.Area](t, row, "area"))), manway.KindLength
		},
		"depth of the scum": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(sized(t, row).Reserve.Over(reftable.In[manway.Area](t, row, "area"))), manway.KindLength
		},
	}.run(t)
}

// Every row of the file is of a quantity that some test computes.
func TestEveryRowIsChecked(t *testing.T) {
	checked := map[string]bool{}
	for _, q := range []string{
		"Darcy friction factor", "loss by Darcy-Weisbach", "velocity in a full pipe", "flow under a head", "loss by Hazen-Williams",
		"loss coefficient", "velocity by Manning", "flow by Manning", "area over full area", "hydraulic radius over that of the full pipe",
		"top width over diameter", "area of flow", "hydraulic radius", "Manning's n", "critical depth", "time to drain",
		"flow through an opening", "leak through a hole", "flow over a weir with two end contractions", "flow over a notch",
		"least slope for 2 ft/s full", "greatest fixture units", "pressure of the atmosphere", "height of water the atmosphere carries",
		"vapour pressure of water", "vapour pressure as height of water", "head left above vapour", "minutes to draw down", "seconds to draw down",
		"years between pump-outs", "limit of a rule", "pump", "share of depth", "greatest sludge and scum", "months at the limit",
		"sludge of a model", "sludge of a model, high", "gallons an inch", "dose", "flow from runs", "rate from a drawdown",
		"velocity at critical depth", "head over the invert", "flow of a suction hose", "sludge over tank",
		"capacity for wastewater", "capacity for sludge", "capacity in all", "retention by design", "depth of the sludge",
		"depth of the wastewater", "depth of the scum", "least working volume", "time between starts", "retention", "greatest loss in 30 min", "greatest loss a day",
		"nitrogen a gallon of septage", "septage a field takes in a year", "drive that empties the spreader", "months to wait after spreading",
		"days to wait after spreading", "pH of limed septage", "minutes at that pH", "hours to plow septage in", "years records are kept",
		"trend of the level", "months left at the rate between two readings",
	} {
		checked[q] = true
	}
	for _, row := range reftable.Load(t, "hydraulics.csv") {
		if !checked[row.Quantity] {
			t.Errorf("%s: no test computes %q", row.ID, row.Quantity)
		}
	}
}

func rule(t testing.TB, name string) hydraulics.Rule {
	t.Helper()
	for _, r := range hydraulics.Rules() {
		if r.Name == name {
			return r
		}
	}
	t.Fatalf("no rule %q", name)
	return hydraulics.Rule{}
}

func accumulation(t testing.TB, name string) hydraulics.Accumulation {
	t.Helper()
	for _, a := range hydraulics.Accumulations() {
		if a.Name == name {
			return a
		}
	}
	t.Fatalf("no accumulation %q", name)
	return hydraulics.Accumulation{}
}
