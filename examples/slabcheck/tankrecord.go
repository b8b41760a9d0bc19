package main

import (
	"flag"
	"fmt"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

// tankRecord is a whole tank: what it is made of, what stands on and round it,
// its lids, and which parts of its shell are asked about. A part that is left out
// is not judged; with none at all, and no lid, the whole shell is.
type tankRecord struct {
	tankinput.Tank
	Material     tank.Material      `json:"material"`
	OutletInvert manway.Length      `json:"outlet_invert"`
	Access       []access           `json:"access"`
	Concrete     concrete           `json:"concrete"`
	Soil         soil               `json:"soil"`
	Groundwater  manway.Groundwater `json:"groundwater"`
	Liquid       manway.Length      `json:"liquid"` // level of the full tank; 0: the outlet invert

	Judge judge     `json:"judge"`
	Lids  []lidPart `json:"lids"`
}

// judge says which parts of the shell are judged, and how they stand today.
type judge struct {
	Roof       *roofPart      `json:"roof"`
	Walls      *wallPart      `json:"walls"`
	Partitions *partitionPart `json:"partitions"` // each of them
	Floor      *floorPart     `json:"floor"`
}

type concrete struct {
	Strength manway.Pressure `json:"strength"`
	Density  manway.Density  `json:"density"`
}

type soil struct {
	Moist     manway.Density `json:"moist"`
	Saturated manway.Density `json:"saturated"`
	Friction  manway.Angle   `json:"friction"`
}

type access struct {
	Compartment int           `json:"compartment"`
	Along       manway.Length `json:"along"`
	Across      manway.Length `json:"across"`
	Diameter    manway.Length `json:"diameter"`
	Length      manway.Length `json:"length"`
	Width       manway.Length `json:"width"`
}

type steel struct {
	State    manway.SteelState `json:"state"`
	Diameter manway.Length     `json:"diameter"`
	Spacing  manway.Length     `json:"spacing"`
	Cover    manway.Length     `json:"cover"`
	Yield    manway.Pressure   `json:"yield"`
}

func (s *steel) of() manway.Reinforcement {
	if s == nil {
		return manway.Reinforcement{}
	}
	return manway.Reinforcement{State: s.State, Diameter: s.Diameter, Spacing: s.Spacing, Cover: s.Cover, Yield: s.Yield}
}

// faces is the steel of a member: one mesh the same both ways at a face, or two
// directions of bars.
type faces struct {
	Inside        *steel `json:"inside"` // underside of the roof, upper side of the floor
	InsideAcross  *steel `json:"inside_across"`
	Outside       *steel `json:"outside"`
	OutsideAcross *steel `json:"outside_across"`
}

func (f *faces) of() tank.Steel {
	layer := func(along, across *steel) tank.Layer {
		if across == nil {
			across = along
		}
		return tank.Layer{Along: along.of(), Across: across.of()}
	}
	return tank.Steel{Inside: layer(f.Inside, f.InsideAcross), Outside: layer(f.Outside, f.OutsideAcross)}
}

type roofPart struct {
	Steel   faces           `json:"steel"`
	Loss    manway.Length   `json:"loss"`
	Spalls  []spall         `json:"spalls"`
	Contact []bool          `json:"contact"`
	Joints  []manway.Length `json:"joints"`
	Now     roofLoad        `json:"now"`
	Planned *roofLoad       `json:"planned"`
	Person  manway.Mass     `json:"person"`
	Wheels  []wheel         `json:"wheels"`
}

type spall struct {
	Along  manway.Length `json:"along"`
	Across manway.Length `json:"across"`
	Length manway.Length `json:"length"`
	Width  manway.Length `json:"width"`
	Depth  manway.Length `json:"depth"`
}

type roofLoad struct {
	Cover   manway.Length   `json:"cover"`
	Wetness tank.Wetness    `json:"wetness"`
	Surface manway.Pressure `json:"surface"`
	Risers  []riser         `json:"risers"`
}

type riser struct {
	Access int           `json:"access"`
	Mass   manway.Mass   `json:"mass"`
	Wall   manway.Length `json:"wall"`
}

type wheel struct {
	Name   string        `json:"name"`
	Load   manway.Force  `json:"load"`
	Length manway.Length `json:"length"`
	Width  manway.Length `json:"width"`
	Gauge  manway.Length `json:"gauge"`
}

type wallPart struct {
	Steel    faces         `json:"steel"`
	Loss     manway.Length `json:"loss"`
	TopHeld  bool          `json:"top_held"`
	Braced   []bool        `json:"braced"`
	Distance manway.Length `json:"vehicle_distance"`
	Towards  bool          `json:"vehicle_towards"`
}

type partitionPart struct {
	Steel faces         `json:"steel"`
	Loss  manway.Length `json:"loss"`
}

type floorPart struct {
	Steel faces         `json:"steel"`
	Loss  manway.Length `json:"loss"`
}

type lidPart struct {
	Name           string        `json:"name"`
	Shape          lid.Shape     `json:"shape"`
	Diameter       manway.Length `json:"diameter"`
	BottomDiameter manway.Length `json:"bottom_diameter"`
	Length         manway.Length `json:"length"`
	Width          manway.Length `json:"width"`
	BottomLength   manway.Length `json:"bottom_length"`
	BottomWidth    manway.Length `json:"bottom_width"`
	Thickness      manway.Length `json:"thickness"`
	Flange         manway.Length `json:"flange"`
	Loss           manway.Length `json:"loss"`
	Moisture       lid.Moisture  `json:"moisture"`
	Pieces         int           `json:"pieces"`
	Concrete       *concrete     `json:"concrete"` // not given: the tank's
	Steel          *steel        `json:"steel"`
	Fit            lid.Fit       `json:"fit"`
	Opening        manway.Length `json:"opening"`
	OpeningLong    manway.Length `json:"opening_long"`
	Chips          []chip        `json:"chips"`
	Person         manway.Mass   `json:"person"`
	People         int           `json:"people"`
	Gear           manway.Mass   `json:"gear"`
	Fall           manway.Length `json:"fall"`
	Wheels         []wheel       `json:"wheels"`
}

type chip struct {
	Along  manway.Length `json:"along"`
	In     manway.Length `json:"in"`
	Height manway.Length `json:"height"`
}

func (c concrete) of() manway.Concrete {
	return manway.Concrete{Strength: c.Strength, Density: c.Density}
}

func (s soil) of() manway.Soil {
	return manway.Soil{Moist: s.Moist, Saturated: s.Saturated, Friction: s.Friction}
}

func (l *roofLoad) of() tank.RoofLoad {
	out := tank.RoofLoad{Cover: l.Cover, Wetness: l.Wetness, Surface: l.Surface}
	for _, r := range l.Risers {
		out.Risers = append(out.Risers, tank.Riser{Access: r.Access, Mass: r.Mass, Wall: r.Wall})
	}
	return out
}

func wheelsOf(list []wheel) (out []manway.Wheel) {
	for i, w := range list {
		name := w.Name
		if name == "" {
			name = fmt.Sprintf("wheel %d", i)
		}
		out = append(out, manway.Wheel{Name: name, Load: w.Load, Length: w.Length, Width: w.Width, Gauge: w.Gauge,
			Source: manway.Citation{Source: manway.Practice, Place: "as given"}})
	}
	return out
}

// whole is a tank from flags: one mesh and one loss for all its parts.
type whole struct {
	tankRecord
	Mesh           *steel
	Cover, Planned manway.Length
	Loss           manway.Length
}

// record is the tank of the flags, nil where none of them was given.
func (w *whole) record() *tankRecord {
	if w.Shape.Kind == "" {
		return nil
	}
	r := w.tankRecord
	f := faces{Inside: w.Mesh}
	r.Judge = judge{
		Roof:  &roofPart{Steel: f, Loss: w.Loss, Now: roofLoad{Cover: w.Cover}},
		Walls: &wallPart{Steel: f, Loss: w.Loss}, Partitions: &partitionPart{Steel: f}, Floor: &floorPart{Steel: f},
	}
	if w.Planned > 0 {
		r.Judge.Roof.Planned = &roofLoad{Cover: w.Planned}
	}
	return &r
}

// tankFlags declares the flags of a tank.
func tankFlags(fs *flag.FlagSet, t *whole) {
	tankinput.Flags(fs, &t.Tank)
	fs.TextVar(&t.OutletInvert, "outlet-invert", manway.Length(0), "`HEIGHT` over the floor of a tank")
	fs.TextVar(&t.Groundwater, "groundwater", manway.Groundwater{}, "`DEPTH` below grade, or unknown")
	fs.TextVar(&t.Concrete.Strength, "strength", manway.Pressure(0), "f'c of the tank's `CONCRETE`; not given: not known")
	record.Appended(fs, &t.Access, "access", "`ACCESS` of a tank: \"compartment=0; along=24 in; length=24 in; width=24 in\"; once for each")
	record.Nested(fs, &t.Mesh, "mesh", "`STEEL` of all slabs and walls of a tank, near the inside and the same both ways: \"state=known; diameter=3/8 in; spacing=6 in; cover=1 in; yield=60000 psi\"")
	fs.TextVar(&t.Cover, "cover", manway.Length(0), "`DEPTH` of soil on the roof")
	fs.TextVar(&t.Planned, "planned-cover", manway.Length(0), "`DEPTH` of soil that is to be there instead")
	fs.TextVar(&t.Loss, "loss", manway.Length(0), "`DEPTH` worn off the inside of roof and walls")
}
