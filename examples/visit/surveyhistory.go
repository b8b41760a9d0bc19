package visit

import (
	"manway.example/manway"
	"manway.example/manway/riser"
)

// Tried is what hammer, screwdriver and eye say of concrete whose loss nobody can
// measure. Each pick stands for a measurement.
type Tried struct {
	Remark
	// Sound under a hammer; what was neither sounded nor probed counts as dull: 0.4 in of the face is not counted.
	Sound manway.Sounding `json:"sound"`
	// How far a screwdriver goes in, pushed by hand; so much of the face is not counted.
	Screwdriver manway.Probe `json:"screwdriver"`
	// What shows of the bars; bare bars are not counted, nor the concrete before them.
	Bars manway.Bars `json:"bars"`
}

// Offer is what was offered to the owner and what came of it.
type Offer struct {
	Remark
	// Day of the offer; in the history left out for the day of that visit.
	Date manway.Date `json:"date"`
	// What was offered.
	Remedy riser.RemedyKind `json:"remedy" strict:"required"`
	// Which access it was for.
	Access string `json:"access"`
	// Open, accepted, declined or done; open when left out.
	State string `json:"state"`
}

// Earlier is an earlier visit.
type Earlier struct {
	Remark
	// Day of that visit, or a year, or a year and a month.
	Date manway.Date `json:"date" strict:"required"`
	// Whether every compartment was pumped then; left out with a volume pumped: yes.
	Emptied manway.Answer `json:"emptied"`
	// What was pumped.
	Pumped manway.Volume `json:"pumped"`
	// Surface above the floor on arrival.
	Level manway.Reading `json:"level"`
	// What was read in each compartment before anything was pumped, from the inlet end.
	Compartments []Contents `json:"compartments"`
	// Remedies that were done or declined.
	Offers []Offer `json:"offers"`
}

// Field is a field that the load was spread on.
type Field struct {
	Remark
	// Name of the field, the same at every visit.
	Name string `json:"name" strict:"required"`
	// Area that is spread on.
	Area manway.Area `json:"area" strict:"required"`
	// Nitrogen that the crop of the whole field needs in 365 days, less what other manure and fertilizer bring.
	Nitrogen manway.Mass `json:"nitrogen" strict:"required"`
	// Whether the load was limed to pH 12 for 30 minutes.
	Limed manway.Answer `json:"limed"`
}
