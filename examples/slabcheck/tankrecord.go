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
	Access       []tank.Access      `json:"access"`
	Concrete     manway.Concrete    `json:"concrete"`
	Soil         manway.Soil        `json:"soil"`
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

// faces is the steel of a member: one mesh the same both ways at a face, or two
// directions of bars.
type faces struct {
	Inside        *manway.Reinforcement `json:"inside"` // underside of the roof, upper side of the floor
	InsideAcross  *manway.Reinforcement `json:"inside_across"`
	Outside       *manway.Reinforcement `json:"outside"`
	OutsideAcross *manway.Reinforcement `json:"outside_across"`
}

func (f *faces) of() tank.Steel {
	layer := func(along, across *manway.Reinforcement) (l tank.Layer) {
		if along != nil {
			l = tank.Mesh(*along)
		}
		if across != nil {
			l.Across = *across
		}
		return l
	}
	return tank.Steel{Inside: layer(f.Inside, f.InsideAcross), Outside: layer(f.Outside, f.OutsideAcross)}
}

type roofPart struct {
	Steel   faces           `json:"steel"`
	Loss    manway.Length   `json:"loss"`
	Spalls  []tank.Spall    `json:"spalls"`
	Contact []bool          `json:"contact"`
	Joints  []manway.Length `json:"joints"`
	Now     tank.RoofLoad   `json:"now"`
	Planned *tank.RoofLoad  `json:"planned"`
	Person  manway.Mass     `json:"person"`
	Wheels  []wheel         `json:"wheels"`
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

// lidPart is a lid and what may come on it. Concrete that is not given is the
// tank's.
type lidPart struct {
	Name string `json:"name"`
	lid.Lid
	Steel       manway.Reinforcement `json:"steel"`
	Fit         lid.Fit              `json:"fit"`
	Opening     manway.Length        `json:"opening"`
	OpeningLong manway.Length        `json:"opening_long"`
	Chips       []lid.Chip           `json:"chips"`
	Person      manway.Mass          `json:"person"`
	People      int                  `json:"people"`
	Gear        manway.Mass          `json:"gear"`
	Fall        manway.Length        `json:"fall"`
	Wheels      []wheel              `json:"wheels"`
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
	Mesh           *manway.Reinforcement
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
		Roof:  &roofPart{Steel: f, Loss: w.Loss, Now: tank.RoofLoad{Cover: w.Cover}},
		Walls: &wallPart{Steel: f, Loss: w.Loss}, Partitions: &partitionPart{Steel: f}, Floor: &floorPart{Steel: f},
	}
	if w.Planned > 0 {
		r.Judge.Roof.Planned = &tank.RoofLoad{Cover: w.Planned}
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
