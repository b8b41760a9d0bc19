// Package hydraulics answers, of a tank and its chamber:
//
//	what is in it     Compartment.Layers, Case.PumpOut: gallons, by layer; WaterTest
//	how to get it out Case.PumpOut, Truck, Suction, Emptying, Gauge, Brief
//	when to come back Rule.Trigger, Measured.NextPumpOut, Household.Interval
//	why it backs up   Found.Arrival, Drain, FixtureLoad, Outlet, Route, Chamber
//	what it can serve Served, Retention
//
// Levels are heights above the inside floor; scum reaches from the level down by
// its thickness, sludge from the floor up. Gauge vacuum is positive downwards from
// the atmosphere. A reading that was not taken is not zero, a compartment that was
// not opened says nothing. Flow of sludge or through roots is an estimate.
package hydraulics
