package main

import (
	"encoding"
	"flag"
	"fmt"
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/riser"
)

type input struct {
	ID             string             `json:"id"`
	Units          manway.System      `json:"units"` // of the text
	Cover          *manway.Length     `json:"cover"`
	Slope          manway.Angle       `json:"slope"`
	From           riser.Edge         `json:"from"`
	Reveal         manway.Length      `json:"reveal"`
	Settlement     manway.Length      `json:"settlement"`
	GradeRise      manway.Length      `json:"grade_rise"`
	CoverThickness manway.Length      `json:"cover_thickness"`
	Roof           manway.Length      `json:"roof"`
	Outside        manway.Length      `json:"outside"`
	Bore           manway.Length      `json:"bore"`
	Port           manway.Length      `json:"port"`
	Below          manway.Length      `json:"below"`
	Above          manway.Length      `json:"above"`
	Joint          manway.Length      `json:"joint"`
	Rings          []ring             `json:"rings"`
	Lids           []cover            `json:"lids"`
	Strip          strip              `json:"strip"`
	Working        manway.Length      `json:"working"`
	SoilType       riser.SoilType     `json:"soil_type"`
	Shored         bool               `json:"shored"`
	Earth          riser.Earth        `json:"earth"`
	Density        manway.Density     `json:"density"`
	Groundwater    manway.Groundwater `json:"groundwater"`
	Gap            *manway.Length     `json:"gap"`
	DesignFlow     manway.Flow        `json:"design_flow"`
	Pit            *pit               `json:"pit"`
	Bead           *bead              `json:"bead"`
	Cement         *cement            `json:"cement"`
	Light          *light             `json:"light"`
	Wall           *wall              `json:"wall"`
	Tie            *tie               `json:"tie"`
	Hose           *hose              `json:"hose"`
	Surface        riser.Surface      `json:"surface"`
	CoverDown      *manway.Length     `json:"cover_down"`
	Seen           *seen              `json:"seen"`
	Site           site               `json:"site"`
}

type ring struct {
	Code     string        `json:"code"`
	Count    int           `json:"count"`
	Height   manway.Length `json:"height"`
	Bore     manway.Length `json:"bore"`
	TopBore  manway.Length `json:"top_bore"`
	Outside  manway.Length `json:"outside"`
	Plastic  bool          `json:"plastic"`
	Mass     manway.Mass   `json:"mass"`
	Cost     int64         `json:"cost"`
	CutStep  manway.Length `json:"cut_step"`
	CutLeast manway.Length `json:"cut_least"`
}

type cover struct {
	Code   string        `json:"code"`
	Fits   manway.Length `json:"fits"`
	Stands manway.Length `json:"stands"`
	Mass   manway.Mass   `json:"mass"`
	Cost   int64         `json:"cost"`
}

type strip struct {
	Width   manway.Length `json:"width"`
	Height  manway.Length `json:"height"`
	Roll    manway.Length `json:"roll"`
	Overlap manway.Length `json:"overlap"`
}

type pit struct {
	Length   manway.Length `json:"length"`
	Width    manway.Length `json:"width"`
	Depth    manway.Length `json:"depth"`
	Standing manway.Volume `json:"standing"`
	Refill   manway.Volume `json:"refill"`
}

type bead struct {
	Width manway.Length `json:"width"`
	Depth manway.Length `json:"depth"`
	Round bool          `json:"round"`
	Inner bool          `json:"inner"`
	Outer bool          `json:"outer"`
	Tube  manway.Volume `json:"tube"`
}

type cement struct {
	Depth       manway.Length `json:"depth"`
	FromOutside bool          `json:"from_outside"`
	Bag         manway.Mass   `json:"bag"`
	Yield       manway.Volume `json:"yield"`
}

type light struct {
	Flange  manway.Length `json:"flange"`
	Closed  bool          `json:"closed"`
	Mass    manway.Mass   `json:"mass"`
	Anchors int           `json:"anchors"`
	Factor  number        `json:"factor"`
}

type wall struct {
	Thickness manway.Length   `json:"thickness"`
	Modulus   manway.Pressure `json:"modulus"`
	Poisson   number          `json:"poisson"`
	Reaction  manway.Pressure `json:"reaction"`
	Wheel     wheel           `json:"wheel"`
	Away      manway.Length   `json:"away"`
}

type tie struct {
	Corners manway.Length `json:"corners"`
	FromA   manway.Length `json:"from_a"`
	FromB   manway.Length `json:"from_b"`
	Right   bool          `json:"right"`
	Tape    manway.Length `json:"tape"`
}

type hose struct {
	Along   manway.Length `json:"along"`
	Fall    manway.Length `json:"fall"`
	Inlet   manway.Length `json:"inlet"`
	Bottom  manway.Length `json:"bottom"`
	Spare   manway.Length `json:"spare"`
	Section manway.Length `json:"section"`
}

type site struct {
	JointDown    manway.Reading `json:"joint_down"`
	Standing     int            `json:"standing"`
	StandingMass manway.Mass    `json:"standing_mass"`
	SpallArea    manway.Area    `json:"spall_area"`
	SpallDepth   manway.Length  `json:"spall_depth"`
	Liquid       manway.Volume  `json:"liquid"`
	TankVolume   manway.Volume  `json:"tank_volume"`
	Emptying     manway.Answer  `json:"emptying"`
	LocateDays   int            `json:"locate_days"`
	Supported    bool           `json:"supported"`
}

// number is a figure without a unit.
type number float64

// wheel is one of the wheels that are asked about, or none.
type wheel struct{ manway.Wheel }

// UnmarshalText accepts mower, pickup, truck and none.
func (w *wheel) UnmarshalText(text []byte) error {
	switch string(text) {
	case "mower":
		w.Wheel = manway.MowerWheel
	case "pickup":
		w.Wheel = manway.PickupWheel
	case "truck":
		w.Wheel = manway.TruckWheel
	case "none":
		w.Wheel = manway.Wheel{}
	default:
		return &manway.InputError{Field: "wheel", Value: strconv.Quote(string(text)), Want: "mower, pickup, truck or none"}
	}
	return nil
}

// preset is what stands in for fields that a record leaves out.
func (in *input) preset() {
	in.Below, in.Above, in.Joint = manway.Inch, manway.Inch/2, manway.Inch/2
	in.Working = manway.Foot
	in.Strip = strip{manway.Inch, manway.Inch, 14.5 * manway.Foot, 2 * manway.Inch}
}

func flags(fs *flag.FlagSet, in *input) {
	in.preset()
	fs.StringVar(&in.ID, "id", "", "`NAME` of the access")
	record.UnitsFlag(fs, &in.Units)
	record.Optional(fs, &in.Cover, "cover", "`DEPTH` from grade down to the roof")
	fs.TextVar(&in.Slope, "slope", manway.Angle(0), "`ANGLE` of the ground")
	fs.TextVar(&in.From, "from", riser.Uphill, "`EDGE` where the reveal is measured: uphill, centre, downhill")
	for _, l := range []struct {
		to          *manway.Length
		name, usage string
	}{
		{&in.Reveal, "reveal", "finished top above grade, negative below"},
		{&in.Settlement, "settlement", "by how much the riser may sink"},
		{&in.GradeRise, "grade-rise", "by how much grade will be raised"},
		{&in.CoverThickness, "cover-thickness", "of a cover standing on the rings, without -lid"},
		{&in.Roof, "roof", "thickness of the roof"},
		{&in.Outside, "outside", "outside diameter of the riser, where no ring says it"},
		{&in.Bore, "bore", "inside diameter of the riser, likewise"},
		{&in.Port, "port", "opening in the roof"},
		{&in.Below, "below", "tolerance below"},
		{&in.Above, "above", "tolerance above"},
		{&in.Joint, "joint", "thickness of a closed joint"},
		{&in.Working, "working", "space round the riser at the bottom of the pit"},
	} {
		fs.TextVar(l.to, l.name, *l.to, l.usage)
	}
	fs.Func("ring", "`RING` in stock: \"height=6 in; bore=24 in; outside=30 in; count=4\"; once for each", appender(&in.Rings))
	fs.Func("lid", "`LID` to choose: \"fits=24 in; stands=3 in; mass=60 lb\"; once for each", appender(&in.Lids))
	fs.TextVar(&in.SoilType, "soil-type", riser.TypeC, "`TYPE` of the pit's sides: C, or B-declared by a competent person")
	fs.BoolVar(&in.Shored, "shored", false, "the sides are held plumb by a protective system")
	fs.TextVar(&in.Earth, "earth", riser.Loam, "`KIND` of ground: loam, sand, clay")
	fs.TextVar(&in.Density, "density", manway.Density(0), "`DENSITY` of the ground, moist; 0: taken heavy")
	fs.TextVar(&in.Groundwater, "groundwater", manway.Groundwater{}, "`DEPTH` of groundwater, or unknown")
	record.Optional(fs, &in.Gap, "gap", "`WIDTH` of an open joint at the roof")
	fs.TextVar(&in.DesignFlow, "design-flow", manway.Flow(0), "`FLOW` of the house, to compare a leak with")
	fs.TextVar(&in.Surface, "surface", riser.Turf, "`SURFACE` over the cover")
	record.Optional(fs, &in.CoverDown, "cover-down", "`DEPTH` of soil over the cover")
	fs.Func("tie", "`TIE` to two corners, see above", single(&in.Tie))
	fs.Func("hose", "`HOSE` to the truck, see above", single(&in.Hose))
	fs.Func("pit", "`PIT` round another part: \"length=8 ft; width=5 ft; depth=4 ft\"; round without width", single(&in.Pit))
	fs.Func("bead", "`BEAD` of gunned sealant: \"width=1/2 in; depth=1/2 in; tube=10.1 fl oz; inner=true\"", single(&in.Bead))
	fs.Func("cement", "`CEMENT` in the joint: \"depth=1 in; bag=60 lb\", or with its yield", single(&in.Cement))
	fs.Func("light", "`RISER` that water may lift: \"mass=40 lb; anchors=6; flange=34 in\"", single(&in.Light))
	fs.Func("wall", "`WALL` of the riser: \"thickness=1/2 in; modulus=22000 psi; poisson=0.4; wheel=pickup; away=2 ft\"", single(&in.Wall))
	fs.Func("seen", "what was `SEEN`, see above", single(&in.Seen))
	fs.Func("site", "`SITE` for the scope of remedies, see above", func(text string) error { return fields(text, &in.Site) })
}

// single reads a flag of named values into a struct that may be left out.
func single[T any](to **T) func(string) error {
	return func(text string) error {
		var v T
		if err := fields(text, &v); err != nil {
			return err
		}
		*to = &v
		return nil
	}
}

// appender reads a flag of named values into a further item of a list.
func appender[T any](to *[]T) func(string) error {
	return func(text string) error {
		var v T
		if err := fields(text, &v); err != nil {
			return err
		}
		*to = append(*to, v)
		return nil
	}
}

// fields reads "name=value; name=value" into the struct at to, by the names of
// its JSON fields.
func fields(text string, to any) error {
	into := named(to)
	done := map[string]bool{}
	for part := range strings.SplitSeq(text, ";") {
		name, value, ok := strings.Cut(part, "=")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !ok || into[name] == nil {
			return fmt.Errorf("%q: want \"name=value; name=value\" with names of %s", strings.TrimSpace(part), strings.Join(names(into), ", "))
		}
		if done[name] {
			return fmt.Errorf("%q: want each name once", name)
		}
		done[name] = true
		if err := set(into[name], value); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

func set(to any, value string) (err error) {
	switch to := to.(type) {
	case encoding.TextUnmarshaler:
		return to.UnmarshalText([]byte(value))
	case *string:
		*to = value
	case *int:
		*to, err = strconv.Atoi(value)
	case *int64:
		*to, err = strconv.ParseInt(value, 10, 64)
	case *number:
		var v float64
		v, err = strconv.ParseFloat(value, 64)
		*to = number(v)
	case *bool:
		*to, err = strconv.ParseBool(value)
	default:
		err = fmt.Errorf("%q: this field is not set by a flag", value)
	}
	return err
}
