package visit

import (
	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

// Survey is one visit to one tank as it was written down on site. Everything
// but the id, the date, the tank and its accesses may be left out: what is not
// there is not known, and the answer says what it left unjudged.
type Survey struct {
	Remark
	// Name of the job, of our own choosing, one line.
	ID string `json:"id" strict:"required"`
	// Day of the visit.
	Date manway.Date `json:"date" strict:"required"`
	// One line that stands at the top of the page.
	Note string `json:"note"`
	// Units that people are shown; us when left out.
	Units manway.System `json:"units"`
	// Ground and water round the tank.
	Ground Ground `json:"ground"`
	// The tank itself.
	Tank Tank `json:"tank" strict:"required"`
	// Every opening in the roof, found or opened or not.
	Accesses []Access `json:"accesses" strict:"required"`
	// What was read in each compartment, from the inlet end; left out: nothing was read.
	Compartments []Contents `json:"compartments"`
	// What was found before anything was pumped.
	Arrival Arrival `json:"arrival"`
	// Readings of a gas meter lowered into the opening from above.
	Gas *Gas `json:"gas"`
	// Who lives on the tank.
	Household Household `json:"household"`
	// Who is there to lift.
	Crew Crew `json:"crew"`
	// The tank truck.
	Truck Truck `json:"truck"`
	// Riser rings on the truck or in the yard.
	Rings []Ring `json:"rings_in_stock"`
	// How the remedies are priced and compared.
	Money Money `json:"money"`
	// What was done before the crew left.
	Done Done `json:"done"`
	// Sets of rules that the tank is judged against, by their ids, such as us-va; local code governs.
	Rules []string `json:"rules"`
	// Answers of the owner to earlier offers.
	Offers []Offer `json:"offers"`
	// Earlier visits, oldest first.
	History []Earlier `json:"history"`

	// Said is how values were said that are no plain measurements: about 41 in,
	// owner says 2019, 41 in ± 1 in, unknown, not opened. It is no field of the
	// survey's text.
	Said []Said `json:"-"`
}

// Remark lets every object of a survey carry lines that are not read: a survey
// to fill in has its instructions there.
type Remark struct {
	// Lines for people; not read.
	Lines []string `json:"//"`
}

// Ground is the soil and water round the tank.
type Ground struct {
	Remark
	// Depth to groundwater below grade, or unknown.
	Groundwater manway.Groundwater `json:"groundwater"`
	// Weight of the soil above the water; left out: not known.
	Moist manway.Density `json:"moist"`
	// Weight of the soil below the water; left out: not known.
	Saturated manway.Density `json:"saturated"`
	// Friction angle of the soil; left out: not known.
	Friction manway.Angle `json:"friction"`
	// Slope of the surface over the tank.
	Slope manway.Angle `json:"slope"`
	// Kind of earth to dig.
	Earth riser.Earth `json:"earth"`
	// Where the truck or a machine can stand beside the tank: distance from its wall; left out: none comes near.
	Machine manway.Reading `json:"machine_distance"`
}

func (g Ground) soil() manway.Soil {
	return manway.Soil{Moist: g.Moist, Saturated: g.Saturated, Friction: g.Friction}
}

// Tank is the tank's shape and shell.
type Tank struct {
	Remark
	// Shape: box, vertical-cylinder, horizontal-cylinder (flat ends), or nominal where only the gallons are known.
	Kind string `json:"kind" strict:"required"`
	// Length of a box or horizontal cylinder, inside unless measured says outside.
	Length manway.Length `json:"length"`
	// Width of a box.
	Width manway.Length `json:"width"`
	// Height of a box or vertical cylinder, from floor to roof.
	Height manway.Length `json:"height"`
	// Length of a box at its floor, where the walls are drafted.
	FloorLength manway.Length `json:"floor_length"`
	// Width of a box at its floor, where the walls are drafted.
	FloorWidth manway.Length `json:"floor_width"`
	// Gallons that a nominal tank was sold by, to its outlet.
	Nominal manway.Volume `json:"nominal"`
	// Diameter of a cylinder.
	Diameter manway.Length `json:"diameter"`
	// Where the sizes were measured: inside (also when left out) or outside.
	Measured string `json:"measured"`
	// What the shell is made of; concrete when left out.
	Material tank.Material `json:"material"`
	// Thickness of the walls; left out: not known.
	Wall manway.Length `json:"wall"`
	// Thickness of the roof as made; left out: not known.
	Roof manway.Length `json:"roof"`
	// Thickness of the floor; left out: not known.
	Floor manway.Length `json:"floor"`
	// Inlet invert above the floor.
	InletInvert manway.Reading `json:"inlet_invert"`
	// Outlet invert above the floor.
	OutletInvert manway.Length `json:"outlet_invert" strict:"required"`
	// Bottom of the outlet tee or baffle above the floor.
	OutletDevice manway.Reading `json:"outlet_device_bottom"`
	// Walls across the tank, from the inlet end.
	Partitions []Partition `json:"partitions"`
	// Strength of the concrete; left out: not known.
	Strength manway.Pressure `json:"strength"`
	// Weight of the concrete; left out: not known.
	Density manway.Density `json:"density"`
	// Steel of roof and walls near the inside: unknown, none or known.
	Steel manway.SteelState `json:"steel"`
	// Diameter of the bars or wires, where the steel is known.
	BarDiameter manway.Length `json:"bar_diameter"`
	// Spacing of the bars or wires, where the steel is known.
	BarSpacing manway.Length `json:"bar_spacing"`
	// Concrete between the inside face and the bars, where the steel is known.
	BarCover manway.Length `json:"bar_cover"`
	// Thickness of the roof as it looks at the edge of an opening; stands for the roof's thickness where that is not measured.
	RoofEdge manway.Edge `json:"roof_edge"`
	// Thickness gone from the roof's underside.
	RoofLoss manway.Reading `json:"roof_loss"`
	// What hammer, screwdriver and eye say of the roof; stands for the thickness gone where that is not measured.
	RoofTried Tried `json:"roof_tried"`
	// Year the tank was set; 0: not known.
	SetYear int `json:"set_year"`
}

// concrete is the concrete of the tank.
func (t Tank) concrete() manway.Concrete {
	return manway.Concrete{Strength: t.Strength, Density: t.Density}
}

// steel is the steel near the inside of roof and walls.
func (t Tank) steel() manway.Reinforcement {
	return manway.Reinforcement{State: t.Steel, Diameter: t.BarDiameter, Spacing: t.BarSpacing, Cover: t.BarCover}
}

// Partition is one wall across the tank.
type Partition struct {
	Remark
	// From the inside of the inlet end to the near face.
	At manway.Length `json:"at"`
	// Thickness.
	Thickness manway.Length `json:"thickness"`
	// Height; left out: to the roof.
	Height manway.Length `json:"height"`
	// Invert of the transfer opening above the floor; left out: not known, none is counted.
	Port manway.Reading `json:"port"`
	// Whether it was seen to touch the roof.
	Contact manway.Answer `json:"contact"`
}

// Contents is what was read in one compartment.
type Contents struct {
	Remark
	// Surface above the floor.
	Level manway.Reading `json:"level"`
	// Depth of sludge on the floor.
	Sludge manway.Reading `json:"sludge"`
	// Thickness of scum.
	Scum manway.Reading `json:"scum"`
}

// Arrival is what was found before anything was pumped.
type Arrival struct {
	Remark
	// Surface above the floor in the last compartment that was opened; left out: as read in compartments.
	Level manway.Reading `json:"level"`
	// Whether water ran back from the outlet after the level was drawn below it.
	Runback manway.Answer `json:"runback"`
	// Rise of the level while runback was watched.
	Rise manway.Length `json:"rise"`
	// Time for which runback was watched.
	Over manway.Duration `json:"over"`
	// Inlet tee or baffle as found.
	Inlet hydraulics.DeviceState `json:"inlet_baffle"`
	// Outlet tee or baffle as found.
	Outlet hydraulics.DeviceState `json:"outlet_baffle"`
	// Effluent filter as found.
	Filter hydraulics.DeviceState `json:"filter"`
}

// Done is what was done before the crew left.
type Done struct {
	Remark
	// Whether every opened compartment was pumped.
	Pumped manway.Answer `json:"pumped"`
	// Whether every lid is on with every fastener in.
	LidsOn manway.Answer `json:"lids_on"`
	// Whether a written notice of an unsafe opening was left.
	NoticeLeft manway.Answer `json:"notice_left"`
	// Truck gauge before pumping.
	GaugeBefore manway.Volume `json:"gauge_before"`
	// Truck gauge after pumping.
	GaugeAfter manway.Volume `json:"gauge_after"`
	// Where the load was taken.
	Disposal string `json:"disposal_site"`
	// Number of the disposal ticket.
	Ticket string `json:"disposal_ticket"`
	// Volume on the disposal ticket.
	Volume manway.Volume `json:"disposal_volume"`
	// The field, where the load was spread on land.
	Field *Field `json:"field"`
}

// Gas is what a gas meter read in the opening.
type Gas struct {
	Remark
	// Oxygen, per cent by volume.
	Oxygen *float64 `json:"oxygen_percent"`
	// Hydrogen sulfide, parts per million.
	Sulfide *float64 `json:"hydrogen_sulfide_ppm"`
	// Flammable gas, per cent of the lower limit.
	Flammable *float64 `json:"flammable_percent_of_limit"`
}
