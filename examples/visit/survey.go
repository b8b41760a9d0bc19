package visit

import (
	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

// Survey is one visit to one tank as it was written down on site. Everything
// but the id, the date, the tank and its accesses may be left out: what is not
// there is not known, and the answer says what it left unjudged.
type Survey struct {
	ID           string        `json:"id" strict:"required"`
	Date         manway.Date   `json:"date" strict:"required"`
	Note         string        `json:"note"`
	Units        manway.System `json:"units"` // us or si: what people are shown
	Ground       Ground        `json:"ground"`
	Tank         Tank          `json:"tank" strict:"required"`
	Accesses     []Access      `json:"accesses" strict:"required"`
	Compartments []Contents    `json:"compartments"` // from the inlet end; left out: not opened
	Arrival      Arrival       `json:"arrival"`
	Household    Household     `json:"household"`
	Crew         Crew          `json:"crew"`
	Truck        Truck         `json:"truck"`
	Rings        []Ring        `json:"rings_in_stock"`
	Money        Money         `json:"money"`
}

// Ground is the soil and water round the tank.
type Ground struct {
	Groundwater manway.Groundwater `json:"groundwater"` // depth below grade, or unknown
	Moist       manway.Density     `json:"moist"`       // soil above the water; left out: not known
	Saturated   manway.Density     `json:"saturated"`   // soil below it; left out: not known
	Friction    manway.Angle       `json:"friction"`    // left out: not known
	Slope       manway.Angle       `json:"slope"`       // of the surface
}

func (g Ground) soil() manway.Soil {
	return manway.Soil{Moist: g.Moist, Saturated: g.Saturated, Friction: g.Friction}
}

// Tank is the tank's shape and shell. Kinds are box, vertical-cylinder and
// horizontal-cylinder, with the sizes that belong to each.
type Tank struct {
	Kind         string             `json:"kind" strict:"required"`
	Length       manway.Length      `json:"length"`
	Width        manway.Length      `json:"width"`
	Height       manway.Length      `json:"height"`
	FloorLength  manway.Length      `json:"floor_length"` // box with drafted walls
	FloorWidth   manway.Length      `json:"floor_width"`
	Diameter     manway.Length      `json:"diameter"`
	Measured     string             `json:"measured"` // inside (also when left out) or outside
	Material     tank.Material      `json:"material"` // concrete when left out
	Wall         manway.Length      `json:"wall"`     // left out: not known, the usual is taken
	Roof         manway.Length      `json:"roof"`
	Floor        manway.Length      `json:"floor"`
	InletInvert  hydraulics.Reading `json:"inlet_invert"` // above the floor
	OutletInvert manway.Length      `json:"outlet_invert" strict:"required"`
	Partitions   []Partition        `json:"partitions"`
	Strength     manway.Pressure    `json:"strength"` // of the concrete; left out: not known
	Density      manway.Density     `json:"density"`
	Steel        manway.SteelState  `json:"steel"`
	RoofLoss     hydraulics.Reading `json:"roof_loss"` // thickness gone from the roof's underside
	SetYear      int                `json:"set_year"`
}

// Partition is one wall across the tank.
type Partition struct {
	At        manway.Length `json:"at"` // from the inside of the inlet end to the near face
	Thickness manway.Length `json:"thickness"`
	Height    manway.Length `json:"height"` // left out: to the roof
}

// Access is one opening in the roof, its riser and its lid.
type Access struct {
	Name        string            `json:"name" strict:"required"`
	Compartment int               `json:"compartment"` // 1 at the inlet
	At          manway.Length     `json:"at"`          // from the inside of the inlet end to the middle of the opening
	Opening     manway.Length     `json:"opening"`     // clear width of the hole in the roof
	Opened      hydraulics.Answer `json:"opened"`
	WhyNot      string            `json:"why_not"`                 // why it was not opened
	Cover       manway.Length     `json:"cover" strict:"required"` // soil over the roof, grade to roof
	Lid         Lid               `json:"lid"`
	Riser       Riser             `json:"riser"`
	Seen        Seen              `json:"seen"`
	Reveal      manway.Length     `json:"reveal"` // wanted finished top above grade
}

// Lid is the cover of an access.
type Lid struct {
	Shape          lid.Shape          `json:"shape"` // left out: no lid was there
	Diameter       manway.Length      `json:"diameter"`
	BottomDiameter manway.Length      `json:"bottom_diameter"`
	Length         manway.Length      `json:"length"`
	Width          manway.Length      `json:"width"`
	BottomLength   manway.Length      `json:"bottom_length"`
	BottomWidth    manway.Length      `json:"bottom_width"`
	Thickness      manway.Length      `json:"thickness"`
	Loss           hydraulics.Reading `json:"loss"` // thickness gone since it was made
	Material       lid.Material       `json:"material"`
	Measured       manway.Mass        `json:"measured"` // on a scale
	Flange         manway.Length      `json:"flange"`   // of a stepped lid
	Fit            lid.Fit            `json:"fit"`      // how it lies on its seat
	LetIn          manway.Length      `json:"let_in"`   // depth of its seat below the rim
	Moisture       lid.Moisture       `json:"moisture"`
	Steel          manway.SteelState  `json:"steel"`
}

// Riser is what stands on the roof round an opening now.
type Riser struct {
	Height manway.Length `json:"height"` // 0: none
	Bore   manway.Length `json:"bore"`
	Wall   manway.Length `json:"wall"`
	Rings  int           `json:"rings"`
	Sealed riser.Answer  `json:"sealed"`
}

// Seen is what was observed at an access; what is left out was not seen.
type Seen struct {
	Handle       riser.Handle  `json:"handle"`
	Fastened     riser.Answer  `json:"fastened"` // it cannot be opened without a tool
	Guard        riser.Answer  `json:"guard"`    // something below the lid holds a child
	Drops        riser.Answer  `json:"drops"`    // the lid rocks or can fall in
	LidCracked   riser.Answer  `json:"lid_cracked"`
	RimGap       riser.Reading `json:"rim_gap"`
	Bearing      riser.Reading `json:"bearing"` // least width on which the lid still bears
	Gap          riser.Reading `json:"gap"`     // at the joint between riser and roof
	Roots        riser.Answer  `json:"roots"`
	WaterStain   riser.Answer  `json:"water_stain"`
	Odour        riser.Answer  `json:"odour"`
	Spall        riser.Reading `json:"spall"` // of riser or neck
	Sound        riser.Reading `json:"sound_thickness"`
	SteelExposed riser.Answer  `json:"steel_exposed"`
	Crack        riser.Reading `json:"crack"`
	Settled      riser.Reading `json:"settled"`
}

// Contents is what was read in one compartment.
type Contents struct {
	Level  hydraulics.Reading `json:"level"`  // surface above the floor
	Sludge hydraulics.Reading `json:"sludge"` // depth on the floor
	Scum   hydraulics.Reading `json:"scum"`   // thickness
}

// Arrival is the level before anything was pumped.
type Arrival struct {
	Level   hydraulics.Reading     `json:"level"` // surface in the last compartment above the floor
	Runback hydraulics.Answer      `json:"runback"`
	Rise    manway.Length          `json:"rise"` // of the level while runback was watched
	Over    manway.Duration        `json:"over"`
	Inlet   hydraulics.DeviceState `json:"inlet_baffle"`
	Outlet  hydraulics.DeviceState `json:"outlet_baffle"`
	Filter  hydraulics.DeviceState `json:"filter"`
}

// Household is who lives on the tank.
type Household struct {
	People     int                  `json:"people"`
	Known      hydraulics.Certainty `json:"people_known"` // counted, about, owner says; left out: unknown
	Bedrooms   int                  `json:"bedrooms"`
	Grinder    hydraulics.Answer    `json:"grinder"`
	Months     int                  `json:"months"`
	LastPumped manway.Date          `json:"last_pumped"`
}

// Crew is who is there to lift.
type Crew struct {
	People   int         `json:"people"`
	Limit    manway.Mass `json:"limit"`    // what the crew lets one person lift
	Heaviest manway.Mass `json:"heaviest"` // the heaviest person with tools
}

// Truck is the tank truck.
type Truck struct {
	Capacity manway.Volume `json:"capacity"`
	Aboard   manway.Volume `json:"aboard"`
}

// Ring is one kind of riser ring on the truck or in the yard.
type Ring struct {
	Code   string        `json:"code" strict:"required"`
	Height manway.Length `json:"height"`
	Bore   manway.Length `json:"bore"`
	Wall   manway.Length `json:"wall"`
	Weight manway.Mass   `json:"weight"`
	Count  int           `json:"count"`
}

// Money is how the remedies are compared.
type Money struct {
	Prices   string             `json:"prices"` // CSV price book, relative to the survey
	Remedies []riser.RemedyKind `json:"remedies"`
	Years    int                `json:"years"`
	Rate     string             `json:"rate"` // real discount rate, such as 0.03
}
