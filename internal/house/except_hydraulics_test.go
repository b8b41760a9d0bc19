package house_test

var hydraulicsExceptions = exceptions{
	figure: {
		"hydraulics.Found.Arrival":        "no figure found: which causes a level points to is practice, its gallons are area times height",
		"hydraulics.Compartment.Layers":   "no figure found: differences of volumes of package tank, which have figures",
		"hydraulics.Emptying.Time":        "no figure found: sums Suction.Pull, which has figures, over the volumes of package tank",
		"hydraulics.Gauge.Read":           "no figure found: the ratio of two volumes, of the gauge and of package tank",
		"hydraulics.Gauge.Recalibrated":   "no figure found: the shape of package tank by the ratio of Read",
		"hydraulics.Span.After":           "no figure found: the civil calendar",
		"hydraulics.Measured.NextPumpOut": "no figure found: the date of Forecast or of Interval, which have figures",
		"hydraulics.Plan.AtRate":          "no figure found: volume over flow",
		"hydraulics.Plan.Skipped":         "no figure found: the difference of two figures of Interval, which has figures",
		"hydraulics.Case.PumpOut":         "no figure found: volumes of package tank, which have figures, in an order that is practice",
		"hydraulics.Route.Route":          "no figure found: a balance over Outlet.Head and Orifice, which have figures, held to its own laws",
		"hydraulics.Truck.Day":            "no figure found: counts loads",
		"hydraulics.Truck.Full":           "no figure found: weight over density",
		"hydraulics.Truck.Loads":          "no figure found: counts loads",
	},
	eachSide: {
		"hydraulics.Gauge.Read: Compartment": "between two levels a real shape always holds something",
		"hydraulics.Span.After: Year":        "a year below 1 is no date, which is refused before it",
	},
}
