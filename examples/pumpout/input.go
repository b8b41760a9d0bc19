package main

import (
	"flag"
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/hydraulics"
)

// input is one stop as it is read.
type input struct {
	ID string `json:"id"`
	tankinput.Tank
	Outlet       manway.Length    `json:"outlet"`
	Inlet        manway.Reading   `json:"inlet"`
	DeviceBottom manway.Reading   `json:"device_bottom"`
	Compartments []compartment    `json:"compartments"`
	Ports        []manway.Reading `json:"ports"`
	Carries      []manway.Reading `json:"carries"`

	Cover       manway.Reading     `json:"cover"`
	Groundwater manway.Groundwater `json:"groundwater"`
	NotBelow    manway.Reading     `json:"not_below"`
	Because     string             `json:"because"`

	Truck  manway.Volume `json:"truck"`
	Aboard manway.Volume `json:"aboard"`
	Tare   manway.Mass   `json:"tare"`
	Limit  manway.Mass   `json:"limit"`

	Lift         manway.Reading     `json:"lift"`
	Hose         manway.Length      `json:"hose"`
	HoseDiameter manway.Length      `json:"hose_diameter"`
	Fittings     float64            `json:"fittings"`
	Vacuum       manway.Pressure    `json:"vacuum"`
	Altitude     manway.Length      `json:"altitude"`
	Temperature  manway.Temperature `json:"temperature"`
	UsualRate    manway.Flow        `json:"usual_rate"`
	LightTank    bool               `json:"light_tank"`

	People int    `json:"people"`
	Tools  string `json:"tools"`

	Residents      int                  `json:"residents"`
	ResidentsKnown hydraulics.Certainty `json:"residents_known"`
	Bedrooms       int                  `json:"bedrooms"`
	Grinder        manway.Answer        `json:"grinder"`
	Months         int                  `json:"months"`
	Date           manway.Date          `json:"date"`
	LastPumped     manway.Date          `json:"last_pumped"`
	LastKnown      hydraulics.Certainty `json:"last_known"`

	Runback      manway.Answer          `json:"runback"`
	Rise         manway.Length          `json:"rise"`
	Over         manway.Duration        `json:"over"`
	InletBaffle  hydraulics.DeviceState `json:"inlet_baffle"`
	OutletBaffle hydraulics.DeviceState `json:"outlet_baffle"`
	Filter       hydraulics.DeviceState `json:"filter"`

	Units manway.System `json:"units"`
}

// compartment is one compartment as it was found.
type compartment struct {
	Name     string             `json:"name"`
	State    hydraulics.Opening `json:"state"`
	Reason   string             `json:"reason"`
	Level    manway.Reading     `json:"level"`
	Sludge   manway.Reading     `json:"sludge"`
	Scum     manway.Reading     `json:"scum"`
	LidDepth manway.Reading     `json:"lid_depth"`
	LidNote  string             `json:"lid_note"`

	GaugeBefore *manway.Volume `json:"gauge_before"`
	GaugeAfter  *manway.Volume `json:"gauge_after"`
}

// read takes NAME;STATE;LEVEL;SLUDGE;SCUM;LID DEPTH;REASON, as a flag has it;
// what is left out at the end or empty was not read.
func (c *compartment) read(text string) error {
	parts := strings.Split(text, ";")
	if len(parts) > 7 {
		return fmt.Errorf("compartment %q: want \"NAME;STATE;LEVEL;SLUDGE;SCUM;LID DEPTH;REASON\"", text)
	}
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	parts = append(parts, make([]string, 7-len(parts))...)
	c.Name, c.Reason = parts[0], parts[6]
	if parts[1] != "" {
		if err := c.State.UnmarshalText([]byte(parts[1])); err != nil {
			return err
		}
	}
	for i, to := range []*manway.Reading{&c.Level, &c.Sludge, &c.Scum, &c.LidDepth} {
		if err := to.UnmarshalText([]byte(parts[2+i])); err != nil {
			return err
		}
	}
	return nil
}

// What is taken where a record does not say: a hose of 3 in with entrance and
// exit, a pump that holds 24 inHg, and water of 60 F. Common practice.
const (
	usualHose    = 3 * manway.Inch
	usualK       = 1.5
	usualVacuum  = 24 * manway.InchMercury
	sixtyDegrees = manway.Temperature((60 + 459.67) / 1.8)
)

// flags are those of a single stop.
func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the stop")
	tankinput.Flags(fs, &in.Tank)
	fs.Func("found", "a compartment from the inlet: `\"NAME;STATE;LEVEL;SLUDGE;SCUM;LID DEPTH;REASON\"`; once for each", func(text string) error {
		var c compartment
		if err := c.read(text); err != nil {
			return err
		}
		in.Compartments = append(in.Compartments, c)
		return nil
	})
	record.List(fs, &in.Ports, "ports", "`INVERTS` of the openings through the partitions, over the floor")
	record.List(fs, &in.Carries, "carries", "`DIFFERENCES` of level that the partitions are shown to carry")
	for _, l := range []struct {
		to          *manway.Length
		name, usage string
		usual       manway.Length
	}{
		{&in.Outlet, "outlet", "outlet invert over the floor", 0},
		{&in.Hose, "hose", "length of the hose", 0},
		{&in.HoseDiameter, "hose-diameter", "inside", usualHose},
		{&in.Altitude, "altitude", "of the site", 0},
		{&in.Rise, "rise", "of the level while runback was watched", 0},
	} {
		fs.TextVar(l.to, l.name, l.usual, l.usage)
	}
	for _, r := range []struct {
		to          *manway.Reading
		name, usage string
	}{
		{&in.Inlet, "inlet", "inlet invert over the floor"},
		{&in.DeviceBottom, "device-bottom", "bottom of the outlet tee or baffle over the floor"},
		{&in.Cover, "cover", "soil over the roof: the level not to go below is found from flotation"},
		{&in.NotBelow, "not-below", "level not to go below"},
		{&in.Lift, "lift", "from the surface up to the truck's inlet"},
	} {
		fs.TextVar(r.to, r.name, manway.Reading{}, r.usage)
	}
	fs.StringVar(&in.Because, "because", "", "`REASON` of -not-below")
	fs.TextVar(&in.Groundwater, "groundwater", manway.Groundwater{}, "`DEPTH` below grade, or unknown")
	truckFlags(fs, in)
	houseFlags(fs, in)
	record.UnitsFlag(fs, &in.Units)
}

// truckFlags are those of the truck, its hose and its crew.
func truckFlags(fs *flag.FlagSet, in *input) {
	fs.TextVar(&in.Truck, "truck", manway.Volume(0), "`VOLUME` of the truck")
	fs.TextVar(&in.Aboard, "aboard", manway.Volume(0), "`VOLUME` already on it")
	fs.TextVar(&in.Tare, "tare", manway.Mass(0), "`MASS` of the empty truck")
	fs.TextVar(&in.Limit, "limit", manway.Mass(0), "greatest gross `MASS`")
	fs.Float64Var(&in.Fittings, "fittings", usualK, "`SUM` of K of the hose's fittings, entrance and exit")
	fs.TextVar(&in.Vacuum, "vacuum", usualVacuum, "gauge `VACUUM` that the pump holds")
	fs.TextVar(&in.Temperature, "temperature", sixtyDegrees, "`TEMPERATURE` of the liquid")
	fs.TextVar(&in.UsualRate, "usual-rate", manway.Flow(0), "`FLOW` that the truck usually pumps")
	fs.BoolVar(&in.LightTank, "light-tank", false, "plastic, fibreglass, or no other opening to the air")
	fs.IntVar(&in.People, "people", 0, "`NUMBER` of people to send")
	fs.StringVar(&in.Tools, "tools", "", "`TOOLS` to bring")
}

// houseFlags are those of the people on the tank and of what was seen in it.
func houseFlags(fs *flag.FlagSet, in *input) {
	fs.IntVar(&in.Residents, "residents", 0, "`NUMBER` of people on the tank")
	fs.TextVar(&in.ResidentsKnown, "residents-known", hydraulics.Unknown, "`HOW`: counted, about, owner says, unknown")
	fs.IntVar(&in.Bedrooms, "bedrooms", 0, "`NUMBER`, where residents are unknown")
	fs.TextVar(&in.Grinder, "grinder", manway.Unknown, "garbage grinder: yes, no, unknown")
	fs.IntVar(&in.Months, "months", 0, "`NUMBER` of months of the year that the house is lived in")
	fs.TextVar(&in.Date, "date", manway.Date{}, "`DATE` of the visit")
	fs.TextVar(&in.LastPumped, "last-pumped", manway.Date{}, "`DATE`")
	fs.TextVar(&in.LastKnown, "last-known", hydraulics.Unknown, "`HOW`: counted, about, owner says, unknown")
	fs.TextVar(&in.Runback, "runback", manway.Unknown, "water ran back after the level was drawn below the outlet: yes, no, unknown")
	fs.TextVar(&in.Over, "over", manway.Duration(0), "`TIME` that runback was watched")
	fs.TextVar(&in.InletBaffle, "inlet-baffle", hydraulics.NotSeen, "`STATE` of the inlet tee or baffle")
	fs.TextVar(&in.OutletBaffle, "outlet-baffle", hydraulics.NotSeen, "`STATE` of the outlet tee or baffle")
	fs.TextVar(&in.Filter, "filter", hydraulics.NotSeen, "`STATE` of the effluent filter")
}
