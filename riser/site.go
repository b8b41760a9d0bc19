package riser

import "manway.example/manway"

// Site is what the scope of a remedy is derived from. What is not known is left
// at zero: the lines that need it are then named in Remedy.Unscoped instead of
// being guessed.
type Site struct {
	Units        manway.System      // that workings are written in
	Port         manway.Length      // opening in the roof; 0: not known
	Bore         manway.Length      // inside diameter of the riser that stands or will stand
	Outside      manway.Length      // its outside diameter
	JointClosed  manway.Length      // thickness of a closed joint; 0: 1/2 in is taken
	JointDown    manway.Reading     // from where hands or tools enter, down to the joint
	Standing     int                // rings that stand there now
	StandingMass manway.Mass        // of these and the cover
	Height       manway.Length      // to be made up by the new riser, Reach.Height
	Stack        Stack              // chosen for it; empty: priced by the foot
	CoverCode    string             // of the cover chosen with it; empty: a cover of the remedy\'s own kind
	Pit          Pit                // to expose the joint; Depth 0: not known
	TankPit      Pit                // to take the whole tank out; Depth 0: not known
	Topsoil      manway.Length      // put back over the pit; 0: 4 in is taken
	SpallArea    manway.Area        // of ring and neck to patch
	SpallDepth   manway.Length      // mean depth of the patch
	Liquid       manway.Volume      // to pump before an entry, 0: not known
	TankVolume   manway.Volume      // of a tank in place of this one, 0: not known
	Emptying     manway.Answer      // may it be emptied, by the checks of flotation and walls
	Water        manway.Groundwater //
	LocateDays   int                // from the call until lines are marked; 0: 3 are taken
	Supported    bool               // a competent person has arranged support so that the weak roof is not loaded
}

// Values that are taken where the site does not say.
const (
	usualJoint      = manway.Inch / 2        // closed thickness, practice
	usualTopsoil    = 4 * manway.Inch        // new lawn: 4 to 6 in
	usualLocateDays = 3                      // working days' notice (Virginia)
	armReach        = 2 * manway.Foot        // from grade with the head outside, practice
	leastEntry      = 24 * manway.Inch       // clear opening through which a person is pulled out, practice
	lawnSeed        = 3.0 / (1000 * 12 * 12) // lb/in2: 3 lb per 1000 ft2, Kentucky bluegrass 1 to 3
)

// Validate returns the faults of s.
func (s Site) Validate() error {
	var faults manway.InputErrors
	span := func(field string, x manway.Length, most manway.Length) { manway.Within(&faults, field, x, 0, most) }
	span("Port", s.Port, 10*manway.Foot)
	span("Bore", s.Bore, 10*manway.Foot)
	span("Outside", s.Outside, 14*manway.Foot)
	if s.Outside != 0 && s.Bore != 0 && s.Outside < s.Bore+manway.Inch/4 {
		faults.Add("Outside", s.Outside.String(), "above the bore, "+s.Bore.String())
	}
	span("JointClosed", s.JointClosed, 4*manway.Inch)
	s.JointDown.Within(&faults, "JointDown", 0, 20*manway.Foot)
	manway.Within(&faults, "Standing", s.Standing, 0, 100)
	manway.Within(&faults, "StandingMass", s.StandingMass, 0, 50*manway.Tonne)
	span("Height", s.Height, 20*manway.Foot)
	span("Topsoil", s.Topsoil, 2*manway.Foot)
	if s.Pit.Depth != 0 {
		faults.Under("Pit", s.Pit.validate())
	}
	if s.TankPit.Depth != 0 {
		faults.Under("TankPit", s.TankPit.validate())
	}
	manway.Within(&faults, "SpallArea", s.SpallArea, 0, 1000*manway.SquareFoot)
	span("SpallDepth", s.SpallDepth, 2*manway.Foot)
	manway.Within(&faults, "Liquid", s.Liquid, 0, 100000*manway.Gallon)
	manway.Within(&faults, "TankVolume", s.TankVolume, 0, 100000*manway.Gallon)
	s.Emptying.Within(&faults, "Emptying")
	faults.Under("Water", s.Water.Validate())
	manway.Within(&faults, "LocateDays", s.LocateDays, 0, 60)
	return faults.Err()
}

// joint is the joint between ring and roof, and whether its size is known.
func (s Site) joint() (Joint, bool) {
	j := Joint{Inside: s.Bore, Outside: s.Outside, Closed: s.JointClosed}
	if j.Closed == 0 {
		j.Closed = usualJoint
	}
	return j, j.Validate() == nil
}
