package hydraulics

import "manway.example/manway"

// Retention is how long wastewater stays in a tank.
type Retention struct {
	Liquid  manway.Volume // below the outlet, 10 to 1,000,000 gal
	Solids  manway.Volume // sludge, and scum below the surface, in it
	Average manway.Flow   // 0.1 to 1,000,000 gal/d
	Peak    manway.Flow   // Average or more; 0: not known
	LeakIn  manway.Flow   // groundwater that leaks in; 0: none or not known
}

// RetentionTimes is the result: plug flow, so the longest that the mean can be.
type RetentionTimes struct {
	Clean, Now         manway.Duration // at the average flow, without and with solids
	CleanPeak, NowPeak Span            // at the peak flow, where it is known
	NowWithLeak        manway.Duration // at the average flow and the leak together
	Check              manway.Check    // of Now against 24 h
	Cautions           manway.Cautions
}

// leastRetention is the time that wastewater should stay with the solids in
// the tank: 24 h (US EPA).
const leastRetention = 24 * manway.Hour

// Times reckons the retention:
//
//	clean = liquid/flow    now = (liquid - solids)/flow    with leak: flow + leak
//
// The check sets 24 h against what is left now. Source: US EPA design manual
// and fact sheet 832-F-00-079: at least 24 h with a half to two thirds of the
// tank taken by solids.
func (r Retention) Times() (RetentionTimes, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Liquid", r.Liquid, 10*manway.Gallon, 1e6*manway.Gallon)
	manway.Within(&faults, "Solids", r.Solids, 0, r.Liquid)
	manway.Within(&faults, "Average", r.Average, 0.1*manway.GallonPerDay, 1e6*manway.GallonPerDay)
	if r.Peak != 0 {
		manway.Within(&faults, "Peak", r.Peak, r.Average, 1e8*manway.GallonPerDay)
	}
	manway.Within(&faults, "LeakIn", r.LeakIn, 0, 1e6*manway.GallonPerDay)
	if err := faults.Err(); err != nil {
		return RetentionTimes{}, err
	}
	free := r.Liquid - r.Solids
	over := func(v manway.Volume, q manway.Flow) manway.Duration { return manway.Duration(float64(v) / float64(q)) }
	t := RetentionTimes{
		Clean: over(r.Liquid, r.Average), Now: over(free, r.Average),
		NowWithLeak: over(free, r.Average+r.LeakIn), Cautions: manway.LocalCode,
	}
	if r.Peak > 0 {
		t.CleanPeak, t.NowPeak = Span{true, over(r.Liquid, r.Peak)}, Span{true, over(free, r.Peak)}
	}
	t.Check = manway.Check{
		Name: "retention with solids", Kind: manway.KindDuration, Demand: float64(leastRetention),
		Capacity: float64(min(t.Now, t.NowWithLeak)), Source: manway.Citation{Source: epa832F00079, Place: "septic tank"},
	}.Judge()
	return t, nil
}

// Basis lists the sources of the retention.
func (RetentionTimes) Basis() []manway.Citation {
	return []manway.Citation{{Source: epa832F00079, Place: "septic tank"}, {Source: epa1980, Place: "section 6.2"}}
}

// Working is the retention step by step.
func (t RetentionTimes) Working(r Retention, sys manway.System) manway.Working {
	return manway.Working{
		{Symbol: "clean", Formula: "liquid/flow", Numbers: r.Liquid.Text(sys) + "/" + r.Average.Text(sys), Value: t.Clean.Text(sys)},
		{Symbol: "now", Formula: "(liquid - solids)/flow", Numbers: "(" + r.Liquid.Text(sys) + " - " + r.Solids.Text(sys) + ")/" + r.Average.Text(sys), Value: t.Now.Text(sys)},
	}
}
