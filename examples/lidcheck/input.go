package main

import (
	"flag"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/lid"
)

// input is one record: a lid and what is asked of it.
type input struct {
	ID    string        `json:"id"`
	Units manway.System `json:"units"` // of the text
	lid.Lid
	Overburden overburden           `json:"overburden"` // flat, in place of the lid's
	Seat       seat                 `json:"seat"`
	Crew       lid.Crew             `json:"crew"`
	Bond       manway.Force         `json:"bond"`
	Bar        lid.Bar              `json:"bar"`
	HandHeight manway.Length        `json:"hand_height"`
	Slings     lid.Slings           `json:"slings"`
	Below      manway.Length        `json:"below"`
	Edition    lid.Edition          `json:"edition"`
	Grip       lid.Grip             `json:"grip"`
	Outside    lid.Outside          `json:"outside"`
	Span       manway.Length        `json:"span"`
	Long       manway.Length        `json:"long"`
	Person     manway.Mass          `json:"person"`
	Steel      manway.Reinforcement `json:"steel"`
	Handle     *lid.Handle          `json:"handle"`
	Guard      *guard               `json:"guard"`
	Rules      []string             `json:"rules"` // codes; empty: all
	Lift       *lift                `json:"lift"`
	Air        *air                 `json:"air"`
	FailsAt    *manway.Force        `json:"fails_at"`
	Team       *team                `json:"team"`
	Tasks      []task               `json:"tasks"`
	Work       *work                `json:"work"`
	Filter     *filter              `json:"filter"`
	Hand       *hand                `json:"hand"`
	SidePull   *lid.SidePull        `json:"side_pull"`
}

type overburden struct {
	Depth     manway.Length  `json:"depth"`
	Moist     manway.Density `json:"moist"`
	Saturated manway.Density `json:"saturated"`
}

type seat struct {
	Fit          lid.Fit        `json:"fit"`
	Opening      manway.Length  `json:"opening"`
	OpeningLong  manway.Length  `json:"opening_long"`
	Depth        manway.Length  `json:"depth"`
	Gap          *manway.Length `json:"gap"`
	FrictionLow  float64        `json:"friction_low"`
	FrictionHigh float64        `json:"friction_high"`
	DrivenBy     manway.Mass    `json:"driven_by"`
	Chips        []lid.Chip     `json:"chips"`
}

type guard struct {
	Opening   manway.Length  `json:"opening"`
	Depth     *manway.Length `json:"depth"`
	Fastened  manway.Answer  `json:"fastened"`
	Locked    manway.Answer  `json:"locked"`
	Secondary manway.Answer  `json:"secondary"`
	Label     manway.Answer  `json:"label"`
}

type lift struct {
	Edition   lid.Edition   `json:"edition"`
	Load      manway.Mass   `json:"load"`
	H         manway.Length `json:"h"`
	V         manway.Length `json:"v"`
	Turn      manway.Angle  `json:"turn"`
	EndH      manway.Length `json:"end_h"`
	EndV      manway.Length `json:"end_v"`
	EndTurn   manway.Angle  `json:"end_turn"`
	Control   bool          `json:"control"`
	Frequency float64       `json:"frequency"`
	Spell     lid.Spell     `json:"spell"`
	Grip      lid.Grip      `json:"grip"`
	Outside   lid.Outside   `json:"outside"`
}

type air struct {
	Class lid.AirClass    `json:"class"`
	Metal lid.Metal       `json:"metal"`
	Age   manway.Duration `json:"age"`
}

type team struct {
	People int         `json:"people"`
	Each   manway.Mass `json:"each"`
}

// task is one of several kinds of lift in one spell; free is its limit without
// the frequency multiplier.
type task struct {
	Load      manway.Mass `json:"load"`
	Free      manway.Mass `json:"free"`
	Frequency float64     `json:"frequency"`
}

type work struct {
	Lifting manway.Duration `json:"lifting"`
	Rest    manway.Duration `json:"rest"`
	Low     bool            `json:"low"` // of tasks: the hands start below 30 in
}

type filter struct {
	Zone      lid.Zone     `json:"zone"`
	Far       bool         `json:"far"`
	Women     bool         `json:"women"`
	Turn      manway.Angle `json:"turn"`
	Frequency float64      `json:"frequency"`
}

type hand struct {
	Exertion lid.Exertion  `json:"exertion"`
	Height   manway.Length `json:"height"`
}

// flags declares the flags of one lid.
func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the lid")
	record.UnitsFlag(fs, &in.Units)
	fs.TextVar(&in.Moisture, "moisture", lid.MoistureUnknown, "`STATE`: unknown, dry, damp, soaked")
	fs.TextVar(&in.Material, "material", lid.OfConcrete, "`MATERIAL`: concrete, plastic, iron")
	fs.Func("shape", "`SHAPE`: disc, bevelled plug, stepped plug, slab, tapered slab, stepped slab", func(s string) error {
		return in.Shape.UnmarshalText([]byte(s))
	})
	for _, l := range []struct {
		to          *manway.Length
		name, usage string
	}{
		{&in.Diameter, "diameter", "`LENGTH` across the top of a round lid"},
		{&in.BottomDiameter, "bottom-diameter", "`LENGTH` across its underside"},
		{&in.Length, "length", "`LENGTH` long side of a slab"},
		{&in.Width, "width", "`LENGTH` short side of a slab"},
		{&in.BottomLength, "bottom-length", "`LENGTH` long side of its underside"},
		{&in.BottomWidth, "bottom-width", "`LENGTH` short side of its underside"},
		{&in.Thickness, "thickness", "`LENGTH` as made"},
		{&in.Flange, "flange", "`LENGTH` thickness of the upper, wider part of a stepped lid"},
		{&in.Loss, "loss", "`LENGTH` thickness gone from it"},
		{&in.HandHeight, "hand-height", "`LENGTH` of the hands when pulling along; not known if left out"},
		{&in.Below, "below", "`LENGTH` by which the ground under the lid is below the feet, as in a pit"},
		{&in.Span, "span", "`LENGTH` between supports; the width of the lid if left out"},
		{&in.Long, "long", "`LENGTH` the same along a slab"},
		{&in.Overburden.Depth, "overburden", "`LENGTH` soil or gravel on top"},
		{&in.Seat.Opening, "opening", "`LENGTH` clear diameter or short side of the hole"},
		{&in.Seat.OpeningLong, "opening-long", "`LENGTH` long side of a rectangular hole"},
		{&in.Seat.Depth, "seat-depth", "`LENGTH` how deep it is let in"},
	} {
		fs.TextVar(l.to, l.name, manway.Length(0), l.usage)
	}
	record.Optional(fs, &in.Seat.Gap, "gap", "`PLAY` of the lid in its seat, both sides together")
	fs.TextVar(&in.Seat.Fit, "fit", lid.FitUnknown, "`FIT`: unknown, on top, let in, bevel, step")
	fs.TextVar(&in.Seat.DrivenBy, "driven-by", manway.Mass(0), "`WEIGHT` that pressed a bevelled lid into its seat")
	fs.Float64Var(&in.Seat.FrictionLow, "friction-low", 0, "least `FRICTION` of lid and seat; 0.6 if left out")
	fs.Float64Var(&in.Seat.FrictionHigh, "friction-high", 0, "greatest `FRICTION`; 0.8 if left out")
	fs.TextVar(&in.Measured, "measured", manway.Mass(0), "`WEIGHT` of one piece on a scale")
	fs.IntVar(&in.Pieces, "pieces", 0, "equal pieces, `N`")
	fs.TextVar(&in.Concrete.Strength, "strength", manway.Pressure(0), "`STRENGTH` of the concrete; 2500 psi if not known")
	fs.TextVar(&in.Concrete.Density, "density", manway.Density(0), "`DENSITY` of the concrete; 150 lb/ft3 if not known")
	fs.Float64Var(&in.Absorption, "absorption", 0, "`SHARE` of water when soaked; 0.05 if left out")
	fs.IntVar(&in.Crew.People, "people", 0, "`N` who move it; one if left out")
	fs.TextVar(&in.Crew.Limit, "limit", manway.Mass(0), "`WEIGHT` that each of them will lift")
	fs.TextVar(&in.Bond, "bond", manway.Force(0), "`FORCE` declared for dirt and ice at the first pull")
	fs.TextVar(&in.Bar.LoadArm, "load-arm", manway.Length(0), "`LENGTH` of a pry bar; 4 in if left out")
	fs.TextVar(&in.Bar.EffortArm, "effort-arm", manway.Length(0), "`LENGTH` of a pry bar; 44 in if left out")
	fs.IntVar(&in.Slings.Legs, "sling-legs", 0, "`N` legs of a hoist's sling")
	fs.TextVar(&in.Slings.Lean, "sling-lean", manway.Angle(0), "`ANGLE` of each leg from vertical")
	fs.TextVar(&in.Edition, "edition", lid.USEdition, "`EDITION` of the lifting equation: us, metric")
	fs.TextVar(&in.Grip, "grip", lid.PoorGrip, "`GRIP`: poor, fair, good")
	fs.Func("outside", "`CONDITIONS` that the lifting equation does not cover, with commas", func(s string) error {
		return in.Outside.UnmarshalText([]byte(s))
	})
	fs.TextVar(&in.Person, "person", manway.Mass(0), "`WEIGHT` of a person on it; 300 lb if left out")
	fs.TextVar(&in.Steel.State, "steel", manway.SteelUnknown, "`STATE` of its steel: unknown, none, known")
	record.Optional(fs, &in.FailsAt, "fails-at", "`FORCE` at which a hole cover fails")
	nested(fs, in)
}

// nested declares the flags of parts that may be left out.
func nested(fs *flag.FlagSet, in *input) {
	record.Appended(fs, &in.Recesses, "recess", "`RECESS`: \"diameter=4 in\" right through, or \"length=6 in; width=2 in; depth=1 in\"; once for each")
	record.Appended(fs, &in.Seat.Chips, "chip", "`CHIP` of the rim: \"along=4 in; in=2 in; height=1/2 in\"; once for each")
	record.Nested(fs, &in.Handle, "handle", "`HANDLE`: \"state=sound; waist=7/16 in; as_made=1/2 in; embedment=2 in; edge=9 in; spacing=5 in\"")
	record.Nested(fs, &in.Guard, "guard", "`GUARD`: \"opening=20 in; depth=0 in; fastened=no; locked=no; secondary=no; label=no\"")
	fs.Func("rule", "`CODE` of a rule to judge the guarding by; once for each; all if left out", func(code string) error {
		in.Rules = append(in.Rules, code)
		return nil
	})
	record.Nested(fs, &in.Lift, "lift", "any `LIFT` by one person: \"load=44 lb; h=23 in; v=15 in; end_h=23 in; end_v=64 in; control=true; grip=fair\"")
	record.Nested(fs, &in.Air, "air", "`AIR` over a handle: \"class=C3; metal=steel; age=20 yr\"")
	record.Nested(fs, &in.Team, "team", "`TEAM` that lifts: \"people=2; each=25 kg\"")
	record.Appended(fs, &in.Tasks, "task", "`TASK` of several in one spell: \"load=30 lb; free=20 lb; frequency=1\"; once for each")
	record.Nested(fs, &in.Work, "work", "`WORK` of lifting and the rest after it: \"lifting=75 min; rest=30 min; low=true\"")
	record.Nested(fs, &in.Filter, "filter", "`ZONE` of the UK lifting filter: \"zone=below mid-shin; far=true; women=false\"")
	record.Nested(fs, &in.Hand, "hand", "`FORCE` guideline of the hands: \"exertion=pull with both hands; height=40 in\"")
	record.Nested(fs, &in.SidePull, "side-pull", "taut `ROPE` pulled sideways: \"side=20 lbf; span=4 ft; moved=1/2 in\"")
}
