package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

func risers() []calculation {
	joint := riser.Joint{Inside: 24 * inch, Outside: 30 * inch, Closed: inch / 2}
	rings := []riser.Ring{
		{Code: "ring-6", Height: 6 * inch, Bore: 24 * inch, Outside: 30 * inch},
		{Code: "ring-4", Height: 4 * inch, Bore: 24 * inch, Outside: 30 * inch},
	}
	return []calculation{
		{"riser.ReachOf", with(riser.ReachOf, riser.Access{Cover: 26 * inch, Slope: 4 * manway.Degree, Span: 30 * inch, Reveal: 2 * inch, CoverThickness: 3 * inch})},
		{"riser.StackOf", func() (any, error) {
			return riser.StackOf(rings, riser.Need{Port: 24 * inch, Gap: 25 * inch, Joint: inch / 2})
		}},
		{"riser.Joint.Strip", with(joint.Strip, riser.Strip{Width: inch, Height: inch, Roll: 14*foot + 6*inch, Overlap: 2 * inch})},
		{"riser.DigOf", with(riser.DigOf, riser.Pit{Length: 4 * foot, Width: 6 * foot, Depth: 4.3 * foot})},
		{"riser.LeakOf", with(riser.LeakOf, riser.OpenJoint{Length: foot, Gap: inch / 16, Wall: 3 * inch, Depth: 2 * foot, Water: manway.GroundwaterAt(foot)})},
		{"riser.UpliftOf", with(riser.UpliftOf, riser.Light{Outside: 26 * inch, Bore: 24 * inch, Base: 3 * foot, Mass: 30 * manway.Pound, Anchors: 6})},
		{"riser.Tie.Position", of(riser.Tie{Corners: 30 * foot, FromA: 17 * foot, FromB: 24 * foot, Tape: inch}.Position)},
	}
}

func liquids() []calculation {
	parts := box().Compartments()
	front := hydraulics.Compartment{Name: "front", Shape: &parts[0], State: hydraulics.Opened, Level: manway.Read(48 * inch),
		Sludge: manway.Read(12 * inch), Scum: manway.Read(4 * inch)}
	rear := hydraulics.Compartment{Name: "rear", Shape: &parts[1], Reason: "lid under the deck"}
	house := hydraulics.Household{People: 4, PeopleKnown: hydraulics.About}
	day := manway.Date{Year: 2026, Month: 3, Day: 15}
	suction := hydraulics.Suction{Altitude: 1000 * foot, Temperature: 288.15 * manway.Kelvin, Vacuum: 20 * manway.InchMercury, Lift: 9 * foot,
		Hose: hydraulics.Hose{Diameter: 3 * inch, Length: 100 * foot, Fittings: 1.5}}
	return []calculation{
		{"hydraulics.Case.PumpOut", of(hydraulics.Case{Outlet: 48 * inch, Compartments: []hydraulics.Compartment{front, rear},
			Dividers: []hydraulics.Divider{{Port: manway.Read(24 * inch)}}}.PumpOut)},
		{"hydraulics.Measured.NextPumpOut", func() (any, error) {
			return hydraulics.Measured{Outlet: 48 * inch, Visit: day, Rule: hydraulics.RuleEPA,
				Compartments: []hydraulics.Compartment{front}}.NextPumpOut(house, 1000*manway.Gallon, day)
		}},
		{"hydraulics.Household.Interval", with(house.Interval, 1000*manway.Gallon)},
		{"hydraulics.Suction.Pull", of(suction.Pull)},
		{"hydraulics.Emptying", of(hydraulics.Emptying{Suction: suction, Compartment: front, From: 48 * inch, To: 6 * inch}.Time)},
		{"hydraulics.Drain.AtFlow", with(hydraulics.Drain{Diameter: 8 * inch, Slope: 0.005, N: 0.013}.AtFlow, 0.4*manway.CubicFootPerSecond)},
		{"hydraulics.Found.Arrival", of(hydraulics.Found{Outlet: 48 * inch, Level: manway.Read(53 * inch), Area: 32 * manway.SquareFoot}.Arrival)},
		{"hydraulics.Route", of(hydraulics.Route{Compartments: []*tank.Compartment{&parts[0]}, OutletInvert: 48 * inch, Outlet: hydraulics.Outlet{Diameter: 4 * inch, Open: 0.02},
			Surges: []hydraulics.Surge{hydraulics.Bath.Begin(7 * manway.Hour), hydraulics.Laundry.Begin(7.5 * manway.Hour)}}.Route)},
		{"hydraulics.Hose.Friction", with(hydraulics.Hose{Diameter: 0.5, Roughness: 5e-4}.Friction, 1e5)},
	}
}

const prices = cost.BookHeader + `
concrete-bag-60lb,concrete mix,EA,6.80,USD,2026-01-01,invented
dig-hand,dig by hand,LH,46.00,USD,2026-01-01,invented
`

func money() []calculation {
	patch := cost.Option{ID: "patch", First: decimal.NewFromInt(450), Life: cost.Lives{Good: 6, Usual: 3, Bad: 1}}
	renew := cost.Option{ID: "riser", First: decimal.NewFromInt(2400), Life: cost.Lives{Good: 40, Usual: 20, Bad: 12}}
	project := cost.Project{-100000, 28000, 28000, 28000, 28000, 28000, 28000}
	return []calculation{
		{"cost.Compare", func() (any, error) {
			return cost.Compare([]cost.Option{patch, renew}, cost.Horizon{Years: 20, Rate: 5 * cost.Percent, Currency: "USD"})
		}},
		{"cost.Rate.Factors", func() (any, error) { return (3 * cost.Percent).Factors(15) }},
		{"cost.Project.InternalRate", of(project.InternalRate)},
		{"cost.PatchOrReplace", of(cost.PatchOrReplace{Patch: patch.First, Replace: renew.First, ReplaceLife: 20, Rate: 5 * cost.Percent}.Lives)},
		{"cost.Estimate.Simulate", simulate},
	}
}

// simulate draws many prices, in parallel.
func simulate() (any, error) {
	book, err := cost.ReadPriceBook(strings.NewReader(prices))
	if err != nil {
		return nil, err
	}
	dig := cost.Line{Code: "dig-hand", Class: riser.Labour, Quantity: 7, Unit: "LH", Quantities: cost.Range{Low: 5, Likely: 7, High: 15}}
	e, err := cost.Job{Lines: []cost.Line{dig}, Book: book, On: manway.Date{Year: 2026, Month: 11, Day: 25}, Terms: cost.Terms{Currency: "USD"}}.Estimate()
	if err != nil {
		return nil, err
	}
	return e.Simulate(cost.Simulation{Draws: 20_000, Seed: 1})
}

// visits are whole visits, each read from a file of surveys.
func visits(sites []string) []calculation {
	var all []calculation
	for _, file := range sites {
		all = append(all, calculation{"visit " + filepath.Base(file), func() (any, error) { return visitOf(file) }})
	}
	return all
}

func visitOf(file string) (visit.Visit, error) {
	f, err := os.Open(file)
	if err != nil {
		return visit.Visit{}, err
	}
	defer f.Close()
	survey, err := visit.Read(f)
	if err != nil {
		return visit.Visit{}, err
	}
	book, err := cost.ReadPriceBook(strings.NewReader(prices))
	if err != nil {
		return visit.Visit{}, err
	}
	return visit.Run(survey, book)
}

// page is the page of a visit.
func page(file string) ([]byte, error) {
	answer, err := visitOf(file)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = answer.WriteHTML(&b)
	return b.Bytes(), err
}
