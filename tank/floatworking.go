package tank

import (
	"fmt"

	"manway.example/manway"
)

// Working is the balance step by step, from the numbers of the result.
func (f Flotation) Working() manway.Working {
	lbf := func(x manway.Force) string { return fmt.Sprintf("%.0f lbf", x.In(manway.PoundForce)) }
	lb := func(x float64) string {
		return fmt.Sprintf("%.1f lb/ft3", manway.Density(x).In(manway.PoundPerCubicFoot))
	}
	const g, rho = manway.StandardGravity, float64(manway.WaterDensity)
	soil := func(x manway.Force, d float64) string {
		if d <= 0 || x == 0 {
			return "0 ft3 x " + lb(d)
		}
		return fmt.Sprintf("%.2f ft3 x %s", manway.Volume(float64(x)/d/g).In(manway.CubicFoot), lb(d))
	}
	moist := float64(f.Case.Soil.Moist)
	sunk := float64(f.Case.Soil.Saturated) - rho
	w := manway.Working{
		{Symbol: "Ws", Formula: "shell and ledge", Value: lbf(f.Shell)},
		{Symbol: "Wl", Formula: "covers", Value: lbf(f.Lids)},
		{Symbol: "Wr", Formula: "risers", Value: lbf(f.Risers)},
		{Symbol: "Wc", Formula: "liquid x water", Numbers: soil(f.Contents, rho), Value: lbf(f.Contents)},
		{Symbol: "Wm", Formula: "soil over the water table x moist", Numbers: soil(f.MoistSoil, moist), Value: lbf(f.MoistSoil)},
		{Symbol: "Wu", Formula: "soil under it x (saturated - water)", Numbers: soil(f.SubmergedSoil, sunk), Value: lbf(f.SubmergedSoil)},
	}
	if len(f.Case.Ballast) > 0 {
		w = append(w, manway.Step{Symbol: "Wb", Formula: "ballast under water", Value: lbf(f.Ballast)})
	}
	w = append(w,
		manway.Step{Symbol: "W", Formula: "sum of the weights", Value: lbf(f.Down)},
		manway.Step{Symbol: "U", Formula: "displaced x water", Numbers: fmt.Sprintf("%.2f ft3 x %s", f.Displaced.In(manway.CubicFoot), lb(rho)), Value: lbf(f.Uplift)},
	)
	if f.State == NoUplift {
		return append(w, manway.Step{Symbol: "FS", Formula: "W/U", Value: "no uplift: the water stands below the tank"})
	}
	w = append(w, manway.Step{
		Symbol: "FS", Formula: "W/U", Numbers: fmt.Sprintf("%.0f/%.0f", f.Down.In(manway.PoundForce), f.Uplift.In(manway.PoundForce)),
		Value: fmt.Sprintf("%.3f, asked for %.2f", f.Factor, f.Required.Value),
	})
	need := float64(f.Uplift)*f.Required.Value - float64(f.Down-f.Contents)
	switch f.Leave {
	case LeaveNone:
		w = append(w, manway.Step{Symbol: "Wc,min", Formula: "asked for x U - (W - Wc)", Value: "0: nothing need be left"})
	case LeaveAtLeast:
		w = append(w, manway.Step{Symbol: "Wc,min", Formula: "asked for x U - (W - Wc)", Value: lbf(manway.Force(need)) + ", " + f.LeastLiquid.String() + " of liquid"})
	default:
		w = append(w, manway.Step{Symbol: "Wc,min", Formula: "asked for x U - (W - Wc)", Value: lbf(manway.Force(need)) + ": more than a full tank"})
	}
	return w
}
