// Package hydraulics answers what is in the tank, how to get it out, when to come
// back, and why it backs up.
//
//	what is in it     Compartment.Layers, PumpOut: gallons per compartment, by layer
//	how to get it out PumpOut, Truck, Suction, Emptying, Gauge, Brief
//	when to come back Rule.Trigger, Measured.Forecast, Household.Interval, NextPumpOut
//	why it backs up   Arrival, Drain, FixtureLoad, Outlet, Route
//	chambers, balance Chamber, Retention, WaterTest; capacity: Served
//
// Levels are heights above the inside floor; scum reaches from the level down by
// its thickness, sludge from the floor up. Gauge vacuum is positive downwards from
// the local atmosphere. A reading that was not taken is not zero, and nothing in a
// compartment that was not opened is taken from another. Pressure flow of anything
// thicker than water, and flow through roots, are estimates and say so.
package hydraulics
