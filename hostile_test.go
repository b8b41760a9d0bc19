package manway_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/hostile"
)

func readWord(text []byte) (a manway.Answer, err error) {
	return a, manway.ReadWord(&a, "answer", []string{"unknown", "no", "yes"}, text)
}

var abused = hostile.Room{
	Funcs: []any{
		manway.Governing, manway.GroundwaterAt, manway.Pieces[manway.Length], manway.Reached[manway.Force],
		manway.Within[manway.Length], manway.Within[float64], manway.Within[int], manway.NotNegative[manway.Angle], manway.Absent[manway.Flow],
		manway.Read, manway.Word[manway.Answer], readWord,
	},
	Apart: map[string]string{"ReadWord": "as readWord, with the field and the words that a type gives it"},
	Seeds: []any{
		manway.Angle(0.5), manway.Area(2), manway.Density(2400), manway.Duration(86400), manway.Flow(1e-3), manway.Force(500), manway.Length(1.2), manway.LineLoad(1e4),
		manway.Mass(80), manway.Moment(1e3), manway.MomentPerLength(1e4), manway.Pressure(5e4), manway.Temperature(285), manway.Velocity(1), manway.Volume(3),
		manway.Length(-0.3), manway.Volume(1e-9), manway.Mass(1e7), manway.Temperature(0), manway.Angle(1e-8),
		manway.Assumptions(5), manway.Cautions(1 << 20), manway.Check{Name: "bending", Demand: 3, Capacity: 4, Status: manway.Pass, Kind: manway.KindForce}, manway.Combination(1), manway.Kind(2), manway.Level(1),
		manway.Date{Year: 2026, Month: 10, Day: 14}, manway.Soil{}, manway.Soil{Moist: 1900, Saturated: 2100, Friction: 0.5}, manway.Groundwater{}, manway.GroundwaterAt(0.5),
		manway.InputError{Field: "Depth", Value: "1 m", Want: "2 m"}, manway.InputErrors{{Field: "Depth", Value: "1 m", Want: "2 m"}}, manway.Person{Mass: 90}, manway.TruckWheel,
		manway.Concrete{}, manway.Concrete{Strength: 28e6, Density: 2400}, manway.SteelKnown, manway.Reinforcement{State: manway.SteelKnown, Diameter: 0.0127, Spacing: 0.2, Cover: 0.025, Yield: 4e8},
		manway.US, manway.SI, manway.Working{{Symbol: "V", Formula: "a x b"}}, manway.Citation{Source: manway.Practice, Place: "trade"}, manway.Pass, manway.Yes, manway.Inspection{}, manway.Sounding(1), manway.Probe(1), manway.Bars(1), manway.Edge(1), manway.Unsound{}, manway.Reading{}, manway.Read(0.3), manway.Read(0),
	},
	Calls: [][]any{{readWord, []byte("no")}},
}

func TestHostile(t *testing.T) { abused.Test(t, 500) }
func FuzzHostile(f *testing.F) { abused.Fuzz(f) }
