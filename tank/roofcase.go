package tank

import (
	"fmt"

	"manway.example/manway"
)

// RoofCase is a roof as it stands today and what stands, or is to stand, on
// it. The zero value is a whole roof of which nothing is known, with no soil
// on it.
type RoofCase struct {
	Concrete manway.Concrete
	Steel    Steel         // Inside is the underside
	Loss     manway.Length // worn off the underside all over, out of Spec.Roof; 0: none
	Spalls   []Spall       // where more is gone, at most 6
	// Contact says, for each partition, that it was seen to touch the roof. Only
	// then the roof is run with it as a support too, and the worse governs.
	Contact []bool
	// Joints are the places along the tank where a roof of several pieces is
	// parted, from the inside of the inlet end, ascending, at most 11.
	Joints []manway.Length

	Soil    manway.Soil // as a load; not known: taken heavy
	Now     RoofLoad
	Planned *RoofLoad // what will stand there instead; nil: nothing is planned

	Person manway.Person
	// Wheels are the vehicles asked about, at most 6; nil: mower, pickup and
	// truck.
	Wheels []manway.Wheel
}

// Spall is a rectangle of the underside from which more has gone than Loss:
// its centre as that of an Access, and how deep it is below the whole roof.
type Spall struct {
	Along  manway.Length `json:"along"`
	Across manway.Length `json:"across"`
	Length manway.Length `json:"length"`
	Width  manway.Length `json:"width"`
	Depth  manway.Length `json:"depth"` // beyond Loss
}

// RoofLoad is what rests on a roof.
type RoofLoad struct {
	Cover   manway.Length   `json:"cover"`   // soil over the roof, 0 to 20 ft
	Wetness Wetness         `json:"wetness"` // of the soil
	Surface manway.Pressure `json:"surface"` // anything else spread over it, 0 to 2000 lb/ft2
	Risers  []Riser         `json:"risers"`  // standing round openings
}

// Riser is a ring stack standing on the roof round an opening, with its lid and
// what lies on that. An opening without one carries the soil above it.
type Riser struct {
	Access int           `json:"access"` // index in Spec.Access
	Mass   manway.Mass   `json:"mass"`   // all of it, 0 to 20,000 lb
	Wall   manway.Length `json:"wall"`   // of the ring; its middle presses half of it outside the opening; 0: on the edge
}

// Wetness is how wet the soil on a roof is. The zero value is unknown, which is
// taken soaked.
type Wetness uint8

// The states of the soil on a roof.
const (
	WetnessUnknown Wetness = iota
	DrySoil                // moist, as it lies above the water table
	SoakedSoil             // after rain, thaw or flooding
)

var wetnesses = [...]string{"unknown", "dry", "soaked"}

// String is unknown, dry or soaked.
func (w Wetness) String() string { return manway.Word(wetnesses[:], w) }

// MarshalText is the same as String.
func (w Wetness) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// UnmarshalText accepts unknown, dry and soaked.
func (w *Wetness) UnmarshalText(text []byte) error {
	return manway.ReadWord(w, "wetness", wetnesses[:], text)
}

// vehicles are the wheels that are asked about where none are given.
func (c RoofCase) wheels() []manway.Wheel {
	if c.Wheels == nil {
		return []manway.Wheel{manway.MowerWheel, manway.PickupWheel, manway.TruckWheel}
	}
	return c.Wheels
}

// validate adds the faults of c on tank t.
func (c RoofCase) validate(faults *manway.InputErrors, t *Tank) {
	if !t.made(faults) {
		return
	}
	faults.Under("Concrete", c.Concrete.Validate())
	faults.Under("Steel", c.Steel.Validate())
	faults.Under("Soil", c.Soil.Validate())
	faults.Under("Person", c.Person.Validate())
	roof := t.Spec.Roof
	manway.Within(faults, "Loss", c.Loss, 0, max(roof-thinnest, 0))
	manway.Within(faults, "Spalls", len(c.Spalls), 0, 6)
	in := t.Inside
	for i, s := range c.Spalls {
		at := fmt.Sprintf("Spalls[%d].", i)
		manway.Within(faults, at+"Along", s.Along, 0, in.Length)
		manway.Within(faults, at+"Across", s.Across, -in.Width/2, in.Width/2)
		manway.Within(faults, at+"Length", s.Length, 0.5*manway.Inch, in.Length)
		manway.Within(faults, at+"Width", s.Width, 0.5*manway.Inch, in.Width)
		manway.Within(faults, at+"Depth", s.Depth, 0, max(roof-c.Loss-thinnest, 0))
	}
	manway.Within(faults, "Contact", len(c.Contact), 0, t.n-1)
	manway.Within(faults, "Joints", len(c.Joints), 0, 11)
	last := manway.Length(0)
	for i, j := range c.Joints {
		manway.Within(faults, fmt.Sprintf("Joints[%d]", i), j, last+4*manway.Inch, in.Length-4*manway.Inch)
		last = j
	}
	c.Now.validate(faults, "Now", t)
	if c.Planned != nil {
		c.Planned.validate(faults, "Planned", t)
	}
	manway.Within(faults, "Wheels", len(c.Wheels), 0, 6)
	for i, w := range c.Wheels {
		faults.Under(fmt.Sprintf("Wheels[%d]", i), w.Validate())
	}
}

// thinnest is the thickness below which nothing is judged.
const thinnest = 0.5 * manway.Inch

func (l RoofLoad) validate(faults *manway.InputErrors, part string, t *Tank) {
	manway.Within(faults, part+".Cover", l.Cover, 0, 20*manway.Foot)
	manway.Within(faults, part+".Wetness", int(l.Wetness), 0, len(wetnesses)-1)
	manway.Within(faults, part+".Surface", l.Surface, 0, 2000*manway.PSF)
	seen := map[int]bool{}
	for i, r := range l.Risers {
		at := fmt.Sprintf("%s.Risers[%d].", part, i)
		manway.Within(faults, at+"Access", r.Access, 0, len(t.Spec.Access)-1)
		if seen[r.Access] {
			faults.Add(at+"Access", fmt.Sprint(r.Access), "one riser on an opening")
		}
		seen[r.Access] = true
		manway.Within(faults, at+"Mass", r.Mass, 0, 20000*manway.Pound)
		manway.Within(faults, at+"Wall", r.Wall, 0, 12*manway.Inch)
	}
}

// soil is the pressure of the soil of a load and what was taken.
func (l RoofLoad) soil(s manway.Soil) (manway.Pressure, manway.Assumptions) {
	filled, _ := s.AsLoad()
	density, known := filled.Saturated, s.Saturated != 0
	if l.Wetness == DrySoil {
		density, known = filled.Moist, s.Moist != 0
	}
	var made manway.Assumptions
	if l.Cover > 0 && (!known || l.Wetness == WetnessUnknown) {
		made = manway.AssumedSoil
	}
	return manway.Pressure(float64(density) * manway.StandardGravity * float64(l.Cover)), made
}
