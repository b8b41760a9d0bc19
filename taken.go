package manway

// What is taken for gravity and water, and where nothing is known.
const (
	// StandardGravity is the acceleration of free fall that links lb and lbf, in
	// m/s2, exactly (3rd CGPM, 1901).
	StandardGravity = 9.80665
	// WaterDensity is the working density of water in the trade's arithmetic, the
	// 62.4 lb/ft3 of the published flotation examples.
	WaterDensity Density = 62.4 * PoundPerCubicFoot

	// UsualPerson is a heavy man with tools, common practice of the trade.
	UsualPerson Mass = 300 * Pound

	// LeastConcreteStrength is the least f'c of structural concrete in ACI 318-19
	// Table 19.2.1.1.
	LeastConcreteStrength Pressure = 2500 * PSI
	// UsualConcreteDensity is the usual weight of reinforced concrete (culvert
	// manuals; ASCE 7 commentary).
	UsualConcreteDensity Density = 150 * PoundPerCubicFoot
	// LightConcreteDensity is taken where the weight of concrete holds something
	// down: that of normal weight has 135 to 155 lb/ft3 in the definitions of AASHTO
	// LRFD 5.2 (to 2015).
	LightConcreteDensity Density = 135 * PoundPerCubicFoot
	// UsualSteelYield is that of the lowest grade of deformed bar of ASTM A615.
	UsualSteelYield Pressure = 40000 * PSI

	// HeavySoilMoist and HeavySoilSaturated are soil as a load: 120 lb/ft3 of culvert
	// manuals, 130 lb/ft3 saturated of Minn. R. 7080.1910.
	HeavySoilMoist     Density = 120 * PoundPerCubicFoot
	HeavySoilSaturated Density = 130 * PoundPerCubicFoot
	// LightSoil is soil that holds something down: rammed earth of old handbooks, the
	// same when saturated, so that 37.6 lb/ft3 are left of it under water.
	LightSoil Density = 100 * PoundPerCubicFoot
	// LooseSoilFriction is that of loose silty sand.
	LooseSoilFriction Angle = 28 * Degree
)
