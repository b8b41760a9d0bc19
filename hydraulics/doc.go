// Package hydraulics answers what is in the tank, how to get it out, when to
// come back, and why it backs up.
//
//	what is in it     Compartment.Layers, PumpOut: gallons per compartment, scum, clear, sludge
//	how to get it out PumpOut: order, draw-down, level not to go below; Truck; Suction; Emptying; Gauge; Brief
//	when to come back Rule.Trigger, Measured.Forecast, Household.Interval, NextPumpOut, CompareAccumulation
//	why it backs up   Arrival, Drain, FixtureLoad, Outlet, Route
//	pump chambers     Chamber: gallons a dose, storage above the alarm, drawdown
//	water balance     Retention, WaterTest; capacity: Served
//
// # Conventions
//
// Depths and levels of a compartment are heights above its inside floor, as
// [tank.Compartment] takes them. The surface of what floats is the level: scum
// reaches from the level down by its thickness, sludge from the floor up.
// Gauge vacuum is positive downwards from the local atmosphere. Gallons are US.
//
// # Not known
//
// A [Reading] that was not taken is not zero. A compartment that was not opened
// is a state of its own, [NotOpened]: nothing in it is taken from another
// compartment. The household table answers only inside its rows and columns.
//
// # What it refuses
//
// Pressure flow of anything thicker than water: septage is reckoned as water of
// a given specific gravity, which is an estimate. A law of flow through roots:
// none is published, so the open area is declared, and the result is an
// estimate too.
package hydraulics
