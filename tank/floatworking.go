package tank

import (
	"fmt"

	"manway.example/manway"
)

// Working is the balance step by step in the units of a system, from the numbers
// of the result.
func (f Flotation) Working(sys manway.System) manway.Working {
	force := func(x manway.Force) string { return fmt.Sprintf("%.0f lbf", x.In(manway.PoundForce)) }
	density := func(x float64) string {
		return fmt.Sprintf("%.1f lb/ft3", manway.Density(x).In(manway.PoundPerCubicFoot))
	}
	volume := func(x manway.Volume) string { return fmt.Sprintf("%.2f ft3", x.In(manway.CubicFoot)) }
	if sys == manway.SI {
		force = func(x manway.Force) string { return fmt.Sprintf("%.2f kN", x.In(manway.Kilonewton)) }
		density = func(x float64) string { return fmt.Sprintf("%.0f kg/m3", x) }
		volume = func(x manway.Volume) string { return fmt.Sprintf("%.3f m3", float64(x)) }
	}
	const g, rho = manway.StandardGravity, float64(manway.WaterDensity)
	soil := func(x manway.Force, d float64) string {
		if d <= 0 || x == 0 {
			return volume(0) + " x " + density(d)
		}
		return volume(manway.Volume(float64(x)/d/g)) + " x " + density(d)
	}
	moist := float64(f.Case.Soil.Moist)
	sunk := float64(f.Case.Soil.Saturated) - rho
	w := manway.Working{
		{Symbol: "Ws", Formula: "shell and ledge", Value: force(f.Shell)},
		{Symbol: "Wl", Formula: "covers", Value: force(f.Lids)},
		{Symbol: "Wr", Formula: "risers", Value: force(f.Risers)},
		{Symbol: "Wc", Formula: "liquid x water", Numbers: soil(f.Contents, rho), Value: force(f.Contents)},
		{Symbol: "Wm", Formula: "soil over the water table x moist", Numbers: soil(f.MoistSoil, moist), Value: force(f.MoistSoil)},
		{Symbol: "Wu", Formula: "soil under it x (saturated - water)", Numbers: soil(f.SubmergedSoil, sunk), Value: force(f.SubmergedSoil)},
	}
	if len(f.Case.Ballast) > 0 {
		w = append(w, manway.Step{Symbol: "Wb", Formula: "ballast under water", Value: force(f.Ballast)})
	}
	w = append(w,
		manway.Step{Symbol: "W", Formula: "sum of the weights", Value: force(f.Down)},
		manway.Step{Symbol: "U", Formula: "displaced x water", Numbers: volume(f.Displaced) + " x " + density(rho), Value: force(f.Uplift)},
	)
	if f.State == NoUplift {
		return append(w, manway.Step{Symbol: "FS", Formula: "W/U", Value: "no uplift: the water stands below the tank"})
	}
	w = append(w, manway.Step{
		Symbol: "FS", Formula: "W/U", Numbers: force(f.Down) + "/" + force(f.Uplift),
		Value: fmt.Sprintf("%.3f, asked for %.2f", f.Factor, f.Required.Value),
	})
	need := float64(f.Uplift)*f.Required.Value - float64(f.Down-f.Contents)
	switch f.Leave {
	case LeaveNone:
		w = append(w, manway.Step{Symbol: "Wc,min", Formula: "asked for x U - (W - Wc)", Value: "0: nothing need be left"})
	case LeaveAtLeast:
		w = append(w, manway.Step{Symbol: "Wc,min", Formula: "asked for x U - (W - Wc)", Value: force(manway.Force(need)) + ", " + f.LeastLiquid.Text(sys) + " of liquid"})
	default:
		w = append(w, manway.Step{Symbol: "Wc,min", Formula: "asked for x U - (W - Wc)", Value: force(manway.Force(need)) + ": more than a full tank"})
	}
	return w
}
