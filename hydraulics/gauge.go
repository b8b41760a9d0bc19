package hydraulics

import (
	"manway.example/manway"
	"manway.example/manway/tank"
)

// Gauge is the truck's gauge read before and after one compartment.
type Gauge struct {
	Compartment   Compartment
	From, To      manway.Length // levels in the compartment
	Before, After manway.Volume // on the truck's gauge
	Inflow        manway.Volume // that came in, or drained over from beside, meanwhile
}

// GaugeReading sets the gauge against the shape.
type GaugeReading struct {
	Pumped   manway.Volume // after - before - inflow
	Computed manway.Volume // V(from) - V(to) by shape
	Ratio    float64       // pumped over computed
	Agrees   bool          // within 10 %, what a sight glass and a tape read together
}

// gaugeAgrees is common practice.
const gaugeAgrees = 0.10

// Read sets the gauge against the computed gallons of one compartment. The
// levels must be apart by an inch or more.
//
// Source: practice, a truck gauge read against inches dropped.
func (g Gauge) Read() (GaugeReading, error) {
	var faults manway.InputErrors
	var of manway.InputErrors
	g.Compartment.validate(&of, g.From)
	faults.Under("Compartment", of.Err())
	manway.Within(&faults, "From", g.From, 1*manway.Inch, 40*manway.Foot)
	manway.Within(&faults, "To", g.To, 0, g.From-1*manway.Inch)
	manway.Within(&faults, "Before", g.Before, 0, 15000*manway.Gallon)
	manway.Within(&faults, "After", g.After, g.Before, 15000*manway.Gallon)
	manway.Within(&faults, "Inflow", g.Inflow, 0, g.After-g.Before)
	if err := faults.Err(); err != nil {
		return GaugeReading{}, err
	}
	from, _ := g.Compartment.Shape.Volume(g.From)
	to, _ := g.Compartment.Shape.Volume(g.To)
	r := GaugeReading{Pumped: g.After - g.Before - g.Inflow, Computed: from - to}
	if !(r.Computed > 0) {
		faults.Add("Compartment", r.Computed.String(), "a volume between the levels")
		return GaugeReading{}, faults.Err()
	}
	r.Ratio = float64(r.Pumped / r.Computed)
	r.Agrees = r.Ratio >= 1-gaugeAgrees-1e-9 && r.Ratio <= 1+gaugeAgrees+1e-9
	return r, nil
}

// Recalibrated is the shape of the compartment with its plan areas scaled so
// that it holds what the gauge read between the two levels, as a survey of 33
// volumes over the height. Where the gauge was read at several levels,
// [tank.FromDrops] keeps the form too. Errors: as Read; a ratio outside 0.5 to
// 2, where the levels or the gauge were misread.
//
// Source: as Read.
func (g Gauge) Recalibrated() (tank.Surveyed, error) {
	r, err := g.Read()
	if err != nil {
		return tank.Surveyed{}, err
	}
	var faults manway.InputErrors
	if !(r.Ratio >= 0.5 && r.Ratio <= 2) {
		faults.Add("After", g.After.String(), "a gauge that took half to twice the "+r.Computed.String()+" between the levels")
		return tank.Surveyed{}, faults
	}
	const rows = 32
	height := g.Compartment.height()
	s := tank.Surveyed{Volumes: make([]tank.VolumeAt, rows+1)}
	for i := range s.Volumes {
		depth := height * manway.Length(i) / rows
		v, _ := g.Compartment.Shape.Volume(min(depth, height))
		s.Volumes[i] = tank.VolumeAt{Depth: depth, Volume: v * manway.Volume(r.Ratio)}
	}
	return s, nil
}

// Basis lists the source of the comparison.
func (GaugeReading) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "truck gauge against inches dropped"}}
}
