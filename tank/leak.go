package tank

import (
	"math"

	"manway.example/manway"
)

// LeakStandard is a test for watertightness, by filling or by vacuum, with what
// it allows.
type LeakStandard struct {
	ID   string
	Name string
	Provenance
	Vacuum manway.Pressure // drawn at first; 0: a water test
	Keep   float64         // share of the vacuum that must be left, 0 to 1
	Hold   manway.Duration // how long the reading lasts
	Loss   manway.Volume   // allowed over Hold in a water test
	Soak   manway.Duration // standing full before the reading, after which it is filled up again
	Over   manway.Length   // how far over the riser joint it is filled; 0: to the top of the cover
}

// LeakStandards lists the named tests, built anew on each call.
func LeakStandards() []LeakStandard {
	const inHg = manway.InchMercury
	return []LeakStandard{
		{ID: "oregon", Name: "Oregon, water", Provenance: asRead(oregon073, "340-073-0025(3)"),
			Hold: 24 * manway.Hour, Loss: 1 * manway.Gallon, Over: 2 * manway.Inch},
		{ID: "washington-water", Name: "Washington, large systems, water", Provenance: asRead(washington272B, "246-272B-05200(2)").from(2011, 7, 1),
			Hold: 1 * manway.Hour, Soak: 24 * manway.Hour, Over: 2 * manway.Inch},
		{ID: "washington-vacuum", Name: "Washington, large systems, vacuum", Provenance: asRead(washington272B, "246-272B-05200(1)").from(2011, 7, 1),
			Vacuum: 4 * inHg, Keep: 0.90, Hold: 2 * manway.Minute},
		{ID: "wisconsin-water", Name: "Wisconsin, water", Provenance: asRead(wisconsin384, "SPS 384.25(2)(a)1"),
			Hold: 1 * manway.Hour, Soak: 24 * manway.Hour},
		{ID: "wisconsin-vacuum", Name: "Wisconsin, vacuum", Provenance: asRead(wisconsin384, "SPS 384.25(2)(b)1"),
			Vacuum: 2 * inHg, Keep: 1, Hold: 60 * manway.Minute},
		{ID: "astm-c1227-vacuum", Name: "ASTM C1227, vacuum", Provenance: remembered(astmC1227, "section 9"),
			Vacuum: 4 * inHg, Keep: 1, Hold: 5 * manway.Minute},
	}
}

// LeakTest is one reading. Of a water test Drop and the surface that fell, of a
// vacuum test the vacuum at both ends.
type LeakTest struct {
	Standard   LeakStandard
	Time       manway.Duration // from the first reading to the last
	Drop       manway.Length   // of the water level; 0: none seen
	Surface    manway.Area     // of the water where it fell: the risers', or Tank.Area at the level
	Start, End manway.Pressure // vacuum, below the air outside
}

// LeakResult is a reading against its standard.
type LeakResult struct {
	Loss     manway.Volume // of water
	PerDay   manway.Flow   // the same as a flow
	Check    manway.Check
	Cautions manway.Cautions
}

func (s LeakStandard) validate() error {
	var faults manway.InputErrors
	if s.Hold == 0 {
		faults.Add("Hold", "none", "that of one of LeakStandards")
		return faults
	}
	manway.Within(&faults, "Vacuum", s.Vacuum, 0, 30*manway.InchMercury)
	manway.Within(&faults, "Keep", s.Keep, 0, 1)
	manway.Within(&faults, "Hold", s.Hold, 1*manway.Second, 30*manway.Day)
	manway.Within(&faults, "Loss", s.Loss, 0, 1e6*manway.Gallon)
	return faults.Err()
}

// Judge holds a reading against its standard:
//
//	water    loss = Drop x Surface, allowed Loss x Time/Hold, Time at least Hold
//	vacuum   End at least Keep x Start, Start at least the standard's, Time at least Hold
//
// A reading shorter than the standard's is NotJudged unless it already fails. A
// standard that is remembered only informs. A vacuum is for new tanks before
// they are covered: it can collapse an old one.
//
// Errors: a time, level, surface or vacuum out of range.
//
// Source: the standard of the test, which the check cites.
func (l LeakTest) Judge() (LeakResult, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Time", l.Time, 1*manway.Second, 30*manway.Day)
	faults.Under("Standard", l.Standard.validate())
	vacuum := l.Standard.Vacuum > 0
	if vacuum {
		manway.Within(&faults, "Start", l.Start, 0.1*manway.InchMercury, 30*manway.InchMercury)
		manway.Within(&faults, "End", l.End, 0, max(l.Start, 0))
	} else {
		manway.Within(&faults, "Drop", l.Drop, 0, 20*manway.Foot)
		manway.Within(&faults, "Surface", l.Surface, 0.1*manway.SquareFoot, 2000*manway.SquareFoot)
	}
	if len(faults) > 0 {
		return LeakResult{}, faults
	}
	r := LeakResult{Cautions: manway.LocalCode}
	c := manway.Check{Combination: manway.Service, Source: l.Standard.Source}
	if vacuum {
		r.Cautions |= manway.VacuumOnTank
		c.Name, c.Kind = "vacuum kept", manway.KindPressure
		c.Demand, c.Capacity = l.Standard.Keep*float64(l.Start), float64(l.End)
	} else {
		r.Loss = l.Surface.Times(l.Drop)
		r.PerDay = r.Loss.Per(l.Time)
		c.Name, c.Kind = "water lost", manway.KindVolume
		c.Demand = float64(r.Loss)
		c.Capacity = float64(l.Standard.Loss) * math.Max(1, float64(l.Time)/float64(l.Standard.Hold))
	}
	c.Unfactored = c.Demand
	c = c.Judge()
	if c.Status == manway.Pass {
		switch {
		case !manway.Reached(l.Time, l.Standard.Hold):
			c.Status, c.Reason = manway.NotJudged, "read for less than the standard asks"
		case vacuum && !manway.Reached(l.Start, l.Standard.Vacuum):
			c.Status, c.Reason = manway.NotJudged, "less vacuum at first than the standard asks"
		}
	}
	if l.Standard.Mark == Memory {
		r.Cautions |= manway.RememberedFigure
	}
	r.Check = l.Standard.settle(c)
	return r, nil
}

// LossOf is the water that a drop of the level from a depth stands for, inside
// the tank: V(depth) - V(depth - drop).
//
// Errors: as Volume, for both levels.
//
// Source: as Volume.
func (t *Tank) LossOf(depth, drop manway.Length) (manway.Volume, error) {
	high, err := t.Volume(depth)
	if err != nil {
		return 0, err
	}
	low, err := t.Volume(depth - drop)
	if err != nil {
		return 0, err
	}
	return high - low, nil
}
