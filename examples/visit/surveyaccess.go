package visit

import (
	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
)

// Access is one opening in the roof, its riser and its lid.
type Access struct {
	Remark
	// Name on the ticket, such as inlet lid.
	Name string `json:"name" strict:"required"`
	// Compartment below it, 1 at the inlet.
	Compartment int `json:"compartment" strict:"required"`
	// From the inside of the inlet end to the middle of the opening; left out: not measured, taken in the middle of its compartment.
	At manway.Reading `json:"at"`
	// Clear width of the hole in the roof.
	Opening manway.Length `json:"opening" strict:"required"`
	// Whether it was opened at this visit.
	Opened manway.Answer `json:"opened"`
	// Why it was not opened.
	WhyNot string `json:"why_not"`
	// Soil over the roof, straight down from grade to the roof.
	Cover manway.Length `json:"cover" strict:"required"`
	// Wanted height of the finished top above grade, negative below it.
	Reveal manway.Length `json:"reveal"`
	// The lid.
	Lid Lid `json:"lid"`
	// What stands on the roof round the opening now.
	Riser Riser `json:"riser"`
	// What was observed.
	Seen Seen `json:"seen"`
	// Distances from two corners of the house.
	Tie *Tie `json:"tie"`
}

// Lid is the cover of an access.
type Lid struct {
	Remark
	// Shape; left out: no lid was described.
	Shape lid.Shape `json:"shape"`
	// How it lies on its seat.
	Fit lid.Fit `json:"fit"`
	// Diameter of a round lid on top.
	Diameter manway.Length `json:"diameter"`
	// Diameter of its underside, where narrower.
	BottomDiameter manway.Length `json:"bottom_diameter"`
	// Long side of a slab.
	Length manway.Length `json:"length"`
	// Short side of a slab.
	Width manway.Length `json:"width"`
	// Long side of its underside, where narrower.
	BottomLength manway.Length `json:"bottom_length"`
	// Short side of its underside, where narrower.
	BottomWidth manway.Length `json:"bottom_width"`
	// Thickness as made, at a protected place.
	Thickness manway.Length `json:"thickness"`
	// Thickness of the upper, wider part of a stepped lid.
	Flange manway.Length `json:"flange"`
	// Thickness gone since it was made.
	Loss manway.Reading `json:"loss"`
	// What hammer, screwdriver and eye say of a concrete lid; stands for the thickness gone where that is not measured.
	Tried Tried `json:"tried"`
	// Depth by which it is let into its seat.
	LetIn manway.Length `json:"let_in"`
	// What it is made of; concrete when left out.
	Material lid.Material `json:"material"`
	// Its weight on a scale; left out: reckoned from its size.
	Measured manway.Mass `json:"measured"`
	// How wet it is.
	Moisture lid.Moisture `json:"moisture"`
	// Steel in it: unknown or none.
	Steel manway.SteelState `json:"steel"`
	// Sound metal left at the thinnest place of the handle's bar, loose rust off.
	HandleWaist manway.Length `json:"handle_waist"`
	// Diameter of the handle's bar at a protected place.
	HandleBar manway.Length `json:"handle_bar"`
}

// Riser is what stands on the roof round an opening now.
type Riser struct {
	Remark
	// Height above the roof; left out: none stands there.
	Height manway.Length `json:"height"`
	// Inside diameter.
	Bore manway.Length `json:"bore"`
	// Thickness of its wall.
	Wall manway.Length `json:"wall"`
	// Number of rings.
	Rings int `json:"rings"`
	// Whether there is sealant or mortar in the joint on the roof.
	Sealed manway.Answer `json:"sealed"`
	// What hammer, screwdriver and eye say of a concrete riser or neck; stands for the concrete lost where that is not measured.
	Tried Tried `json:"tried"`
}

// Seen is what was observed at an access; what is left out was not seen.
type Seen struct {
	Remark
	// The lid's handle.
	Handle lid.HandleState `json:"handle"`
	// It cannot be opened without a tool.
	Fastened manway.Answer `json:"fastened"`
	// Something below the lid holds a child.
	Guard manway.Answer `json:"guard"`
	// The lid rocks, or can fall through its opening.
	Drops manway.Answer `json:"drops"`
	// A crack goes through the lid.
	LidCracked manway.Answer `json:"lid_cracked"`
	// Widest opening between lid and rim.
	RimGap manway.Reading `json:"rim_gap"`
	// Least width on which the lid still bears.
	Bearing manway.Reading `json:"bearing"`
	// Widest opening of the joint between riser and roof.
	Gap manway.Reading `json:"gap"`
	// Length of the open part of that joint; left out: all round.
	GapLength manway.Reading `json:"gap_length"`
	// Roots at the joint.
	Roots manway.Answer `json:"roots"`
	// Stains of water that ran in, or water running in.
	WaterStain manway.Answer `json:"water_stain"`
	// Sewer gas outside a closed lid.
	Odour manway.Answer `json:"odour"`
	// Deepest loss of concrete of riser or neck.
	Spall manway.Reading `json:"spall"`
	// Thickness of riser or neck where it is sound.
	Sound manway.Reading `json:"sound_thickness"`
	// Steel shows.
	SteelExposed manway.Answer `json:"steel_exposed"`
	// Widest crack in riser or neck.
	Crack manway.Reading `json:"crack"`
	// By how much riser or lid has sunk or tilted.
	Settled manway.Reading `json:"settled"`
}

// Tie is an access fixed by its distances to two corners of the house.
type Tie struct {
	Remark
	// Between the corners A and B.
	Corners manway.Length `json:"corners"`
	// From corner A.
	FromA manway.Length `json:"from_a"`
	// From corner B.
	FromB manway.Length `json:"from_b"`
	// Whether it lies on the right of one who walks from A to B.
	Right bool `json:"right"`
	// By how much a distance may be off.
	Tape manway.Length `json:"tape"`
}

// Household is who lives on the tank.
type Household struct {
	Remark
	// People; 0: not known. A number without people_known, or about or owner says before it, is taken as about.
	People int `json:"people"`
	// How the number is known: counted, about, owner says or unknown.
	Known hydraulics.Certainty `json:"people_known"`
	// Bedrooms; 0: not known.
	Bedrooms int `json:"bedrooms"`
	// Garbage grinder.
	Grinder manway.Answer `json:"grinder"`
	// Months of the year that the house is lived in; 0: not known.
	Months int `json:"months"`
	// Day of the last pump-out of every compartment, a year or a year and a month; left out: not known.
	LastPumped manway.Date `json:"last_pumped"`
	// How that day is known.
	LastKnown hydraulics.Certainty `json:"last_pumped_known"`
}

// Crew is who is there to lift.
type Crew struct {
	Remark
	// People at the lid; 0: one.
	People int `json:"people"`
	// What each of them will lift; left out: not said.
	Limit manway.Mass `json:"limit"`
	// The heaviest of them with tools; left out: not known.
	Heaviest manway.Mass `json:"heaviest"`
}

// Truck is the tank truck and the way of its hose.
type Truck struct {
	Remark
	// What its tank holds; left out: no truck.
	Capacity manway.Volume `json:"capacity"`
	// What is in it on arrival.
	Aboard manway.Volume `json:"aboard"`
	// Hose to lay from the opening to the truck.
	Hose manway.Reading `json:"hose"`
	// Ground at the truck above the ground at the opening, negative below.
	Rise manway.Length `json:"rise"`
	// Altitude of the place above the sea.
	Altitude manway.Length `json:"altitude"`
}

// Ring is one kind of riser ring on the truck or in the yard.
type Ring struct {
	Remark
	// Code on the stock list and in the price book.
	Code string `json:"code" strict:"required"`
	// Height without its joint.
	Height manway.Length `json:"height"`
	// Inside diameter.
	Bore manway.Length `json:"bore"`
	// Thickness of its wall; left out: not known.
	Wall manway.Length `json:"wall"`
	// Weight; left out: reckoned from its size.
	Weight manway.Mass `json:"weight"`
	// How many there are; 0: as many as needed.
	Count int `json:"count"`
}

// Money is how the remedies are priced and compared.
type Money struct {
	Remark
	// Price book, a CSV file, relative to the survey.
	Prices string `json:"prices"`
	// Remedies to price; left out: all that apply.
	Remedies []riser.RemedyKind `json:"remedies"`
	// Years over which they are compared; 0: 20.
	Years int `json:"years"`
	// Rate above inflation at which later money counts less, such as 0.03; left out: 0.03.
	Rate string `json:"rate"`
}
