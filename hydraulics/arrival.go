package hydraulics

import "manway.example/manway"

// DeviceState is how a tee, baffle, filter or screen was found.
type DeviceState uint8

// The states of a device. The zero value is not seen.
const (
	NotSeen DeviceState = iota
	InPlace
	Loose
	Gone
	Clogged
	NoneFitted // the tank never had one
)

var deviceStates = [...]string{"not seen", "in place", "loose", "gone", "clogged", "none fitted"}

// String is the state in words.
func (d DeviceState) String() string { return manway.Word(deviceStates[:], d) }

// MarshalText is the same as String.
func (d DeviceState) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText accepts the words of String.
func (d *DeviceState) UnmarshalText(text []byte) error {
	return manway.ReadWord(d, "device", deviceStates[:], text)
}

// Devices is the tees, baffles and screens as observed.
type Devices struct {
	Inlet  DeviceState // inlet tee or baffle
	Outlet DeviceState // outlet tee or baffle
	Filter DeviceState // effluent filter or screen
}

// Runback is water running back into the tank from the outlet after the level
// was drawn below it.
type Runback struct {
	Seen manway.Answer // unknown where nobody watched
	Rise manway.Length // of the level while it was watched, with Seen Yes
	Over manway.Duration
}

// Found is what stood in the tank on arrival.
type Found struct {
	Outlet      manway.Length  // outlet invert above the floor
	Inlet       manway.Reading // inlet invert above the floor
	Level       manway.Reading // surface above the floor
	Elsewhere   bool           // the level was read in a compartment that the outlet is not in
	Area        manway.Area    // plan area of all the liquid at the outlet; 0: not known, no gallons
	Runback     Runback
	SincePumped Span // since the last pump-out; a tank pumped days ago may still be filling
	Devices     Devices
}

// PointsTo is what the level on arrival points to.
type PointsTo uint8

// What a level may point to.
const (
	LevelNotRead   PointsTo = iota
	AtOutlet                // within 1 in of the outlet invert
	StillFilling            // low, pumped within the last week
	LeakOut                 // low: a leak
	FieldNotTaking          // high, and water ran back: the field does not take it
	OutletHeldUp            // high, and none ran back: outlet, filter or baffle
	HighNotDecided          // high, and nobody watched for runback
)

var pointsTo = [...]string{
	"level not read",
	"level at the outlet",
	"low, pumped within a week: may still be filling",
	"low: points to a leak",
	"high with runback: points to a field that is not taking water",
	"high without runback: points to the outlet, its filter or baffle",
	"high: watch for runback after pumping to tell field from outlet",
}

// String is the sentence.
func (p PointsTo) String() string { return manway.Word(pointsTo[:], p) }

// MarshalText is the same as String.
func (p PointsTo) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// Finding is the reading of a level on arrival. It points; it does not prove.
type Finding struct {
	PointsTo     PointsTo
	Above        manway.Length // surface above the outlet invert, negative below; 0 where the level was not read
	Over         manway.Volume // liquid above the outlet, negative where it is missing; 0 where Area is not known
	OverKnown    bool
	PerDepth     manway.Area   // gallons per inch are PerDepth times an inch
	RanBack      manway.Volume // rise × area
	RunbackFlow  manway.Flow   // RanBack over the time watched
	RunbackKnown bool
	InletDrowned manway.Answer // the surface stands above the inlet invert
	Elsewhere    bool          // read in a compartment that the outlet is not in
	Devices      Devices
	Cautions     manway.Cautions
}

// levelTolerance is how far from the outlet a level still counts as at it:
// ripples, the thickness of the rod's mark, flow that is just leaving. Common
// practice.
const levelTolerance = 1 * manway.Inch

// Arrival reads the level found on arrival against the outlet:
//
//	above    = level - outlet
//	over     = above × area
//	ran back = rise × area
//
// A level within 1 in of the outlet is at it. Below it points to a leak, or to
// a tank still filling where it was pumped within a week (a household fills a
// tank in two to three days); above it, to the field where water runs back
// after pumping and to the outlet, filter or baffle where none does. Source:
// common practice of the trade; EPA design manual for what tees are for.
func (f Found) Arrival() (Finding, error) {
	if err := f.Validate(); err != nil {
		return Finding{}, err
	}
	r := Finding{Devices: f.Devices, Elsewhere: f.Elsewhere, Cautions: manway.NeverEnter | manway.GuardHole | manway.NotAnInspection, PerDepth: f.Area}
	if f.Runback.Seen == manway.Yes && f.Area > 0 {
		r.RunbackKnown = true
		r.RanBack = f.Area.Times(f.Runback.Rise)
		r.RunbackFlow = r.RanBack.Per(f.Runback.Over)
	}
	if !f.Level.Taken {
		return r, nil
	}
	r.Above = f.Level.Length - f.Outlet
	if f.Area > 0 {
		r.Over, r.OverKnown = f.Area.Times(r.Above), true
	}
	if f.Inlet.Taken {
		r.InletDrowned = manway.No
		if f.Level.Length > f.Inlet.Length {
			r.InletDrowned = manway.Yes
		}
	}
	r.PointsTo = f.pointsTo(r.Above)
	return r, nil
}

func (f Found) pointsTo(above manway.Length) PointsTo {
	reach := levelTolerance * (1 + 1e-9)
	switch {
	case above < -reach && f.SincePumped.Known && f.SincePumped.Time <= manway.Week:
		return StillFilling
	case above < -reach:
		return LeakOut
	case above <= reach:
		return AtOutlet
	case f.Runback.Seen == manway.Yes:
		return FieldNotTaking
	case f.Runback.Seen == manway.No:
		return OutletHeldUp
	}
	return HighNotDecided
}

// Next is what to look at next, most telling first.
func (r Finding) Next() []string {
	var next []string
	switch r.PointsTo {
	case LevelNotRead:
		next = append(next, "read the level before pumping: it is lost afterwards")
	case LeakOut:
		next = append(next, "pump, and look at floor, walls, seams and pipe holes from grade with a light or camera",
			"fill to the outlet and watch for a day without use: see the water test",
			"ask whether the house stood empty or the tank was pumped lately")
	case StillFilling:
		next = append(next, "come back when the household has filled it, and read the level again")
	case FieldNotTaking:
		next = append(next, "open the distribution box or the head of the field and read the level there",
			"look for wet or lush ground over the field",
			"check inflow: leaking fixtures, roof drains, groundwater at the joints")
	case OutletHeldUp:
		next = append(next, "take out and rinse the filter over the inlet side",
			"look at the outlet tee or baffle for scum, grease and a fallen piece",
			"rod or camera the outlet pipe from a cleanout")
	case HighNotDecided:
		next = append(next, "draw the level below the outlet and watch ten minutes for water running back")
	}
	if r.Elsewhere && r.PointsTo != LevelNotRead {
		next = append(next, "the level was read in another compartment than the outlet's: a blocked opening in the partition looks the same, so open that one too")
	}
	return append(next, r.deviceNotes()...)
}

// deviceNotes says what the devices as observed ask for.
func (r Finding) deviceNotes() []string {
	var notes []string
	for _, d := range [...]struct {
		name  string
		state DeviceState
	}{{"inlet tee or baffle", r.Devices.Inlet}, {"outlet tee or baffle", r.Devices.Outlet}, {"effluent filter", r.Devices.Filter}} {
		switch d.state {
		case NotSeen:
			notes = append(notes, d.name+": not seen")
		case Loose, Gone, Clogged:
			notes = append(notes, d.name+": "+d.state.String()+", put right before leaving or write it on the ticket")
		}
	}
	if r.InletDrowned == manway.Yes {
		notes = append(notes, "the inlet is drowned: the house sewer may be backed up")
	}
	return notes
}

// Working is the reading step by step.
func (r Finding) Working(sys manway.System) manway.Working {
	w := manway.Working{{Symbol: "above", Formula: "level - outlet", Value: r.Above.Text(sys)}}
	if r.OverKnown {
		w = append(w, manway.Step{Symbol: "over", Formula: "above × area", Numbers: r.Above.Text(sys) + " × " + r.PerDepth.Text(sys), Value: r.Over.Text(sys)})
	}
	if r.RunbackKnown {
		w = append(w, manway.Step{Symbol: "ran back", Formula: "rise × area", Value: r.RanBack.Text(sys)})
	}
	return w
}

// Basis lists the sources of the reading.
func (Finding) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "level on arrival"}, {Source: epa1980, Place: "section 6.2, inlet and outlet devices"}}
}

// Validate returns the faults of f.
func (f Found) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Outlet", f.Outlet, 6*manway.Inch, 30*manway.Foot)
	f.Inlet.Within(&faults, "Inlet", 0, 40*manway.Foot)
	f.Level.Within(&faults, "Level", 0, 60*manway.Foot)
	manway.Within(&faults, "Area", f.Area, 0, 10000*manway.SquareFoot)
	f.Runback.Seen.Within(&faults, "Runback.Seen")
	if f.Runback.Seen == manway.Yes {
		manway.Within(&faults, "Runback.Rise", f.Runback.Rise, 0, 10*manway.Foot)
		manway.Within(&faults, "Runback.Over", f.Runback.Over, 1*manway.Second, 7*manway.Day)
	}
	if f.SincePumped.Known {
		manway.Within(&faults, "SincePumped.Time", f.SincePumped.Time, 0, 200*manway.Year)
	}
	for _, d := range [...]struct {
		field string
		state DeviceState
	}{{"Devices.Inlet", f.Devices.Inlet}, {"Devices.Outlet", f.Devices.Outlet}, {"Devices.Filter", f.Devices.Filter}} {
		if d.state > NoneFitted {
			faults.Add(d.field, d.state.String(), "a known state")
		}
	}
	return faults.Err()
}
