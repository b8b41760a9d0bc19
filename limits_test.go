package manway_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
)

func TestLimitsOfGroundAndMaterial(t *testing.T) {
	const pcf, psi = manway.PoundPerCubicFoot, manway.PSI
	limit.Check(t, manway.GroundwaterAt(1), manway.Groundwater.Validate, limit.Between("Depth", 0*manway.Foot, 100*manway.Foot))
	limit.Check(t, manway.Soil{Moist: 110 * pcf, Saturated: 125 * pcf, Friction: 30 * manway.Degree}, manway.Soil.Validate,
		limit.Between("Moist", 60*pcf, 150*pcf), limit.Between("Saturated", 80*pcf, 160*pcf), limit.Between("Friction", 15*manway.Degree, 45*manway.Degree))
	limit.Check(t, manway.Concrete{Strength: 4000 * psi, Density: 150 * pcf}, manway.Concrete.Validate,
		limit.Between("Strength", 1000*psi, 15000*psi), limit.Between("Density", 90*pcf, 200*pcf))
	limit.Check(t, manway.Reinforcement{State: manway.SteelKnown, Diameter: 0.5 * manway.Inch, Spacing: 6 * manway.Inch, Yield: 60000 * psi}, manway.Reinforcement.Validate,
		limit.Between("Diameter", 0.05*manway.Inch, 1.5*manway.Inch), limit.Between("Spacing", 1*manway.Inch, 36*manway.Inch),
		limit.Between("Cover", 0*manway.Inch, 12*manway.Inch), limit.Between("Yield", 24000*psi, 100000*psi))
	limit.Check(t, manway.Person{Mass: 200 * manway.Pound}, manway.Person.Validate, limit.Between("Mass", 50*manway.Pound, 600*manway.Pound))
	limit.Check(t, manway.TruckWheel, manway.Wheel.Validate, limit.Between("Load", 1*manway.PoundForce, 100000*manway.PoundForce),
		limit.Between("Length", 1*manway.Inch, 4*manway.Foot), limit.Between("Width", 1*manway.Inch, 4*manway.Foot), limit.Between("Gauge", 0*manway.Foot, 20*manway.Foot))
}
