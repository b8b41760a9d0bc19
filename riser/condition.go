package riser

import (
	"manway.example/manway"
	"manway.example/manway/lid"
)

// Condition is what was observed at one access. Every observation may be left
// out: the zero value is an access of which nothing was seen.
type Condition struct {
	Units manway.System // that reasons are written in

	Missing manway.Answer  // there is no opening here where one is needed
	Size    manway.Reading // least clear size of the opening, 1 in to 10 ft

	CoverPresent  manway.Answer
	CoverDrops    manway.Answer  // the cover can fall through its opening, or rocks on it
	CoverCracked  manway.Answer  // a crack goes through it
	CoverStrength manway.Status  // of the cover under a person, from the lid's screening
	CoverMass     manway.Mass    // 0: not known
	CrewLimit     manway.Mass    // what this crew may move with the gear it has; 0: not known
	CoverDepth    manway.Reading // from grade down to the top of the cover, negative where it stands above; -3 ft to 20 ft
	Fastened      manway.Answer  // it cannot be opened without a tool
	Guard         manway.Answer  // something below the lid holds a child
	Handle        lid.HandleState
	RimGap        manway.Reading // widest opening between lid and rim, 0 to 3 ft
	Bearing       manway.Reading // least width on which the cover still bears, 0 to 1 ft

	JointSealed manway.Answer  // sealant or mortar in the joint between ring and roof
	JointGap    manway.Reading // widest, 0 to 1 ft
	Roots       manway.Answer
	WaterStain  manway.Answer // or water seen running in
	Odour       manway.Answer

	SpallDepth   manway.Reading // deepest loss of concrete of ring or neck, 0 to 2 ft
	Thickness    manway.Reading // of the ring or neck where it is sound, 1/2 in to 2 ft
	SteelExposed manway.Answer
	CrackWidth   manway.Reading // widest crack in ring or neck, 0 to 2 in
	Settled      manway.Reading // by how much riser or cover has sunk or tilted, 0 to 3 ft

	RoofStrength manway.Status // of the roof at the access, from the tank's screening
	RoofSeen     bool          // RoofStrength was worked out; false: nothing is known
}

// Validate returns the faults of c.
func (c Condition) Validate() error {
	var faults manway.InputErrors
	for _, a := range c.answers() {
		a.got.Within(&faults, a.field)
	}
	if c.Handle > lid.HandleMissing {
		faults.Add("Handle", c.Handle.String(), "unknown, sound, rusted, pitted, necked, loose or missing")
	}
	if c.CoverStrength > manway.NotPermitted {
		faults.Add("CoverStrength", c.CoverStrength.String(), "a status")
	}
	if c.RoofStrength > manway.NotPermitted {
		faults.Add("RoofStrength", c.RoofStrength.String(), "a status")
	}
	manway.Within(&faults, "CoverMass", c.CoverMass, 0, 3*manway.Tonne)
	manway.Within(&faults, "CrewLimit", c.CrewLimit, 0, 3*manway.Tonne)
	c.Size.Within(&faults, "Size", manway.Inch, 10*manway.Foot)
	c.CoverDepth.Within(&faults, "CoverDepth", -3*manway.Foot, 20*manway.Foot)
	c.RimGap.Within(&faults, "RimGap", 0, 3*manway.Foot)
	c.Bearing.Within(&faults, "Bearing", 0, manway.Foot)
	c.JointGap.Within(&faults, "JointGap", 0, manway.Foot)
	c.SpallDepth.Within(&faults, "SpallDepth", 0, 2*manway.Foot)
	c.Thickness.Within(&faults, "Thickness", manway.Inch/2, 2*manway.Foot)
	c.CrackWidth.Within(&faults, "CrackWidth", 0, 2*manway.Inch)
	c.Settled.Within(&faults, "Settled", 0, 3*manway.Foot)
	if c.SpallDepth.Taken && c.Thickness.Taken && c.SpallDepth.Length > c.Thickness.Length {
		faults.Add("SpallDepth", c.SpallDepth.String(), "at most the thickness, "+c.Thickness.String())
	}
	if c.Missing == manway.Yes && c.CoverPresent == manway.Yes {
		faults.Add("CoverPresent", "yes", "no cover where there is no opening")
	}
	return faults.Err()
}

// aboveCrew reports whether the cover is more than the crew may move, where both
// are known.
func (c Condition) aboveCrew() bool {
	return c.CrewLimit > 0 && c.CoverMass > c.CrewLimit*(1+1e-9)
}

// answered is one question of a condition, what is judged by it, and whether it
// was answered.
type answered struct {
	field  string
	got    manway.Answer
	judges string
}

func (c Condition) answers() [11]answered {
	return [...]answered{
		{"Missing", c.Missing, "whether an access is missing"},
		{"CoverPresent", c.CoverPresent, "whether the hole is open"},
		{"CoverDrops", c.CoverDrops, "whether the lid can fall in"},
		{"CoverCracked", c.CoverCracked, "whether the lid is sound"},
		{"Fastened", c.Fastened, "whether a child can open it"},
		{"Guard", c.Guard, "whether anything below the lid holds a child"},
		{"JointSealed", c.JointSealed, "whether the ring is sealed to the roof"},
		{"Roots", c.Roots, "whether roots enter"},
		{"WaterStain", c.WaterStain, "whether water enters"},
		{"Odour", c.Odour, "whether gas escapes"},
		{"SteelExposed", c.SteelExposed, "whether steel is exposed"},
	}
}

// Unjudged is one thing that was not observed and what could therefore not be
// judged.
type Unjudged struct {
	Field  string `json:"field"`
	Judges string `json:"judges"`
}

// NotSeen is every observation that is wanting and what it leaves unjudged.
func (c Condition) NotSeen() []Unjudged {
	var list []Unjudged
	add := func(seen bool, field, judges string) {
		if !seen {
			list = append(list, Unjudged{field, judges})
		}
	}
	for _, a := range c.answers() {
		if c.Missing == manway.Yes && a.field != "Missing" {
			continue
		}
		add(a.got != manway.Unknown, a.field, a.judges)
	}
	if c.Missing == manway.Yes {
		return list
	}
	add(c.Handle != lid.HandleUnknown, "Handle", "whether the lid may be lifted by its handle")
	add(c.CoverStrength != manway.NotJudged, "CoverStrength", "whether the lid carries a person")
	add(c.CoverMass > 0 && c.CrewLimit > 0, "CoverMass", "whether the crew may move the lid")
	add(c.RoofSeen, "RoofStrength", "whether the roof at the access carries what stands on it")
	for _, r := range [...]struct {
		got           manway.Reading
		field, judges string
	}{
		{c.Size, "Size", "whether the opening is large enough"},
		{c.CoverDepth, "CoverDepth", "whether the lid is too deep to be found and opened, or within reach of children"},
		{c.RimGap, "RimGap", "the opening between lid and rim"},
		{c.Bearing, "Bearing", "what the lid still bears on"},
		{c.JointGap, "JointGap", "what leaks through the joint"},
		{c.SpallDepth, "SpallDepth", "how much concrete is lost"},
		{c.CrackWidth, "CrackWidth", "how far the ring is cracked"},
		{c.Settled, "Settled", "whether the riser has moved"},
	} {
		add(r.got.Taken, r.field, r.judges)
	}
	return list
}
