package manway

// Person is somebody who may stand on a lid or lift it. The zero value is a
// person of whom nothing is known.
type Person struct {
	Mass Mass // with clothes and tools, 50 to 600 lb; 0: not known, 300 lb is taken
}

// Filled is p with a mass, and the assumption that was made.
func (p Person) Filled() (Person, Assumptions) {
	if p.Mass == 0 {
		return Person{UsualPerson}, AssumedPerson
	}
	return p, 0
}

// Validate returns the faults of p.
func (p Person) Validate() error {
	var faults InputErrors
	if p.Mass != 0 {
		Within(&faults, "Mass", p.Mass, 50*Pound, 600*Pound)
	}
	return faults.Err()
}

// Wheel is one wheel that may stand over a tank: its load and the rectangle on
// which it stands, length in the direction of travel, and the other wheel of
// its axle.
type Wheel struct {
	Name   string
	Load   Force
	Length Length
	Width  Length
	Gauge  Length // between the two wheels of the axle, centre to centre
	Source Citation
}

// The wheels that are asked about. The truck is the design truck of the bridge
// code: a 32 kip axle, so 16 kip a wheel on 20 in by 10 in, 6 ft apart (AASHTO
// LRFD 3.6.1.2.2 and 3.6.1.2.5). Mower and pickup are common practice.
var (
	MowerWheel  = Wheel{"ride-on mower", 300 * PoundForce, 4 * Inch, 8 * Inch, 3 * Foot, Citation{Practice, "900 lb with its rider, a third on one rear wheel"}}
	PickupWheel = Wheel{"pickup truck", 2000 * PoundForce, 8 * Inch, 8 * Inch, 5.5 * 12 * Inch, Citation{Practice, "loaded rear axle of 4,000 lb"}}
	TruckWheel  = Wheel{"truck", 16000 * PoundForce, 10 * Inch, 20 * Inch, 6 * Foot, Citation{AASHTOLRFD, "3.6.1.2.2, 3.6.1.2.5"}}
)

// Validate returns the faults of w.
func (w Wheel) Validate() error {
	var faults InputErrors
	Within(&faults, "Load", w.Load, 1*PoundForce, 100000*PoundForce)
	Within(&faults, "Length", w.Length, 1*Inch, 4*Foot)
	Within(&faults, "Width", w.Width, 1*Inch, 4*Foot)
	Within(&faults, "Gauge", w.Gauge, 0, 20*Foot)
	return faults.Err()
}
