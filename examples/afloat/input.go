package main

import (
	"flag"
	"fmt"
	"math"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/tank"
)

// input is one tank in the ground as it is read.
type input struct {
	ID    string        `json:"id"`
	Units manway.System `json:"units"` // of the text
	tankinput.Tank
	Material        tank.Material      `json:"material"`
	EmptyMass       manway.Mass        `json:"empty_mass"`
	Openings        []manway.Length    `json:"openings"`
	Cover           manway.Length      `json:"cover"`
	Groundwater     manway.Groundwater `json:"groundwater"`
	Liquid          manway.Length      `json:"liquid"`
	Found           *manway.Length     `json:"found"`
	Dug             manway.Volume      `json:"dug"`
	ConcreteDensity manway.Density     `json:"concrete_density"`
	SoilMoist       manway.Density     `json:"soil_moist"`
	SoilSaturated   manway.Density     `json:"soil_saturated"`
	Lids            manway.Mass        `json:"lids"`
	Risers          manway.Mass        `json:"risers"`
	RiserDiameters  []manway.Length    `json:"riser_diameters"`
	Flange          manway.Length      `json:"flange"`
	WedgeSlope      float64            `json:"wedge_slope"`
	WedgeEnds       bool               `json:"wedge_ends"`
	Ballast         []ballast          `json:"ballast"`
	Required        float64            `json:"required"`
}

type ballast struct {
	Mass    manway.Mass    `json:"mass"`
	Density manway.Density `json:"density"`
	InSoil  bool           `json:"in_soil"`
}

// spec is the tank with its material and openings, which stand at its middle:
// where they are does not bear on the balance.
func (in *input) spec() (tank.Spec, manway.InputErrors) {
	spec, faults := in.Tank.Spec()
	spec.Material, spec.EmptyMass = in.Material, in.EmptyMass
	if spec.Shape != nil {
		for _, d := range in.Openings {
			spec.Access = append(spec.Access, tank.Access{Along: spec.Shape.Inside().Length / 2, Diameter: d})
		}
	}
	return spec, faults
}

// float is the flotation case. Round risers stand side by side.
func (in *input) float(faults *manway.InputErrors) tank.FloatCase {
	c := tank.FloatCase{
		Cover: in.Cover, Groundwater: in.Groundwater, Liquid: in.Liquid, Dug: in.Dug,
		Soil:     manway.Soil{Moist: in.SoilMoist, Saturated: in.SoilSaturated},
		Concrete: manway.Concrete{Density: in.ConcreteDensity},
		Lids:     in.Lids, Risers: in.Risers, Flange: in.Flange,
		Wedge: tank.Wedge{Slope: in.WedgeSlope, Ends: in.WedgeEnds},
	}
	for i, d := range in.RiserDiameters {
		manway.Within(faults, fmt.Sprintf("RiserDiameters[%d]", i), d, 6*manway.Inch, 10*manway.Foot)
		c.RiserArea += (d * math.Pi / 4).Times(d)
	}
	for _, b := range in.Ballast {
		c.Ballast = append(c.Ballast, tank.Ballast{Mass: b.Mass, Density: b.Density, InSoil: b.InSoil})
	}
	if in.Required != 0 {
		c.Required = tank.RequiredFactor{Value: in.Required, Source: manway.Citation{Source: manway.Practice, Place: "as asked for"}}
	}
	return c
}

func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the tank")
	record.UnitsFlag(fs, &in.Units)
	tankinput.Flags(fs, &in.Tank)
	fs.TextVar(&in.Material, "material", tank.ConcreteShell, "concrete, plastic, fibreglass or steel")
	fs.TextVar(&in.EmptyMass, "empty-mass", manway.Mass(0), "`MASS` of the empty tank without covers; reckoned from the walls unless given")
	record.List(fs, &in.Openings, "openings", "`DIAMETERS` of the openings in the roof, with semicolons between them")
	fs.TextVar(&in.Cover, "cover", manway.Length(0), "`DEPTH` of soil over the roof")
	fs.TextVar(&in.Groundwater, "groundwater", manway.Groundwater{}, "`DEPTH` below grade, or unknown")
	fs.TextVar(&in.Liquid, "liquid", manway.Length(0), "`DEPTH` left in every compartment")
	record.Optional(fs, &in.Found, "found", "`DEPTH` of liquid on arrival: reckons each step of the work")
	fs.TextVar(&in.Dug, "dug", manway.Volume(0), "`VOLUME` of soil over the tank that is dug away")
	fs.TextVar(&in.ConcreteDensity, "concrete-density", manway.Density(0), "135 lb/ft3, light, is taken unless given")
	fs.TextVar(&in.SoilMoist, "soil-moist", manway.Density(0), "soil above the water table; taken light unless given")
	fs.TextVar(&in.SoilSaturated, "soil-saturated", manway.Density(0), "soil below the water table; taken light unless given")
	fs.TextVar(&in.Lids, "lids", manway.Mass(0), "`MASS` of the covers")
	fs.TextVar(&in.Risers, "risers", manway.Mass(0), "`MASS` of the risers")
	record.List(fs, &in.RiserDiameters, "riser-diameters", "outside `DIAMETERS` of the risers, with semicolons between them")
	fs.TextVar(&in.Flange, "flange", manway.Length(0), "ledge of the floor beyond the walls")
	fs.Float64Var(&in.WedgeSlope, "wedge-slope", 0, "count soil beside the tank, widening by `SLOPE` for each unit of height")
	fs.BoolVar(&in.WedgeEnds, "wedge-ends", false, "at the ends of the tank too")
	fs.Float64Var(&in.Required, "required", 0, "factor of safety asked for, 1.2 unless given")
}
