package manway

import "strings"

// Groundwater is the depth from grade to the water table, or unknown. The zero
// value is unknown; water at grade is known, at depth 0.
type Groundwater struct {
	Known bool
	Depth Length // below grade, 0 to 100 ft; 0 where it is not known
}

// GroundwaterAt is groundwater found at a depth below grade.
func GroundwaterAt(depth Length) Groundwater { return Groundwater{Known: true, Depth: depth} }

// Taken is the depth to reckon with: the one found, or grade where nothing was
// measured, with the assumption that this is.
// Source: S. Heger, University of Minnesota, 2019, whose cautious way is to
// take a tank under water whole.
func (g Groundwater) Taken() (depth Length, made Assumptions) {
	if g.Known {
		return g.Depth, 0
	}
	return 0, AssumedGroundwaterAtGrade
}

// Validate returns the faults of g.
func (g Groundwater) Validate() error {
	var faults InputErrors
	if g.Known {
		Within(&faults, "Depth", g.Depth, 0, 100*Foot)
	} else {
		Absent(&faults, "Depth", g.Depth, "not Known")
	}
	return faults.Err()
}

// String is the depth, or unknown.
func (g Groundwater) String() string {
	if !g.Known {
		return "unknown"
	}
	return g.Depth.String()
}

// MarshalText writes the depth losslessly, or unknown.
func (g Groundwater) MarshalText() ([]byte, error) {
	if !g.Known {
		return []byte("unknown"), nil
	}
	return g.Depth.MarshalText()
}

// UnmarshalText accepts a length or unknown.
func (g *Groundwater) UnmarshalText(text []byte) error {
	if strings.TrimSpace(string(text)) == "unknown" {
		*g = Groundwater{}
		return nil
	}
	var depth Length
	if err := depth.UnmarshalText(text); err != nil {
		return orWord(err, "groundwater", "unknown")
	}
	*g = GroundwaterAt(depth)
	return nil
}

// Soil is the ground round and over a tank. The zero value is soil of which
// nothing is known.
type Soil struct {
	Moist     Density `json:"moist"`     // above the water table, 60 to 150 lb/ft3; 0: not known
	Saturated Density `json:"saturated"` // below it, 80 to 160 lb/ft3; 0: not known
	Friction  Angle   `json:"friction"`  // effective friction angle, 15 to 45 deg; 0: not known
}

// AsLoad is s with what is not known taken heavy and loose.
func (s Soil) AsLoad() (Soil, Assumptions) { return s.filled(HeavySoilMoist, HeavySoilSaturated) }

// AsBallast is s with what is not known taken light and loose.
func (s Soil) AsBallast() (Soil, Assumptions) { return s.filled(LightSoil, LightSoil) }

func (s Soil) filled(moist, saturated Density) (Soil, Assumptions) {
	var made Assumptions
	if s.Moist == 0 {
		s.Moist, made = moist, AssumedSoil
	}
	if s.Saturated == 0 {
		s.Saturated, made = max(saturated, s.Moist), AssumedSoil
	}
	if s.Friction == 0 {
		s.Friction, made = LooseSoilFriction, AssumedSoil
	}
	return s, made
}

// Validate returns the faults of s.
func (s Soil) Validate() error {
	var faults InputErrors
	if s.Moist != 0 {
		Within(&faults, "Moist", s.Moist, 60*PoundPerCubicFoot, 150*PoundPerCubicFoot)
	}
	if s.Saturated != 0 {
		Within(&faults, "Saturated", s.Saturated, 80*PoundPerCubicFoot, 160*PoundPerCubicFoot)
	}
	if s.Friction != 0 {
		Within(&faults, "Friction", s.Friction, 15*Degree, 45*Degree)
	}
	return faults.Err()
}
