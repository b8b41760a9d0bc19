package main

import (
	"manway.example/manway"
	"manway.example/manway/internal/concrete"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

func structure() []calculation {
	strip := concrete.Strip{Concrete: strong, Thickness: 4 * inch, Steel: wires}
	section := concrete.Section{Concrete: strong, Width: foot, Depth: 5 * inch, Steel: 0.24 * manway.SquareInch, Yield: 60000 * manway.PSI}
	disc := plate.Disc{Radius: 0.3, Thickness: 0.075, E: 25e9, Nu: 0.2}
	return []calculation{
		{"concrete.Section.Flexure", of(section.Flexure)},
		{"concrete.Section.OneWayShear", of(section.OneWayShear)},
		{"concrete.Strip.Bending", of(strip.Bending)},
		{"concrete.Strip.Shear", of(strip.Shear)},
		{"concrete.RatioAtStrain", func() (any, error) { return concrete.RatioAtStrain(strong, 60000*manway.PSI, 0.005) }},
		{"plate.Study", bend},
		{"plate.Disc.Patch", func() (any, error) {
			return disc.Patch(plate.Patch{X: 0.1, Y: 0.05, Length: 0.2, Width: 0.1, Force: 1e3}, plate.Point{X: 0.07, Y: -0.03})
		}},
		{"soil.CornerInfluence", func() (any, error) { return soil.CornerInfluence(0.7, 1.3) }},
		{"soil.Rectangle.Stress", func() (any, error) {
			return soil.Rectangle{Length: 3 * foot, Width: 2 * foot, Pressure: 1000 * manway.PSF}.Stress(foot, foot/2, 4*foot)
		}},
		{"soil.Trench.Load", func() (any, error) {
			k, p, err := soil.Trench{Cover: 5 * foot, Width: 3 * foot, Density: 120 * manway.PoundPerCubicFoot, Friction: 0.165}.Load()
			return []float64{k, float64(p)}, err
		}},
	}
}

// bend is a slab with an opening and a patch of load, held so that it may lift.
func bend() (any, error) {
	var st plate.Study
	slab := plate.Slab{Length: 3, Width: 1.7, Thickness: 0.1, E: 25e9, Nu: 0.2, Openings: []plate.Opening{plate.RectOpening(0.5, 0.5, 0.6, 0.5)}}
	err := st.Run(&slab, [][]plate.Load{{plate.Uniform{Pressure: 10e3}, plate.Patch{X: 2, Y: 0.6, Length: 0.5, Width: 0.25, Force: 20e3}}})
	return st.Cases[0], err
}

func tanks() []calculation {
	t, d := box(), drum()
	buried := tank.FloatCase{Cover: 12 * inch, Soil: clay, Groundwater: manway.GroundwaterAt(2 * foot)}
	bars := tank.Steel{Inside: tank.Mesh(wires)}
	return []calculation{
		{"tank.New", func() (any, error) { return *t, nil }},
		{"tank.Chart, box", with(t.Chart, tank.ChartCase{Step: 7 * inch})},
		{"tank.Chart, lying cylinder", with(d.Chart, tank.ChartCase{Step: 7 * inch})},
		{"tank.Depth", with(d.Depth, 700*manway.Gallon)},
		{"tank.ShellWeight", with(t.ShellWeight, strong)},
		{"tank.Float", with(t.Float, buried)},
		{"tank.WaterLimit", with(t.WaterLimit, buried)},
		{"tank.Stages", func() (any, error) { return t.Stages(buried, tank.Work{Found: 48 * inch, Dug: 6 * manway.CubicFoot}) }},
		{"tank.Roof", with(t.Roof, tank.RoofCase{Concrete: strong, Steel: bars, Now: tank.RoofLoad{Cover: 12 * inch}, Soil: clay})},
		{"tank.Wall", with(t.Wall, tank.WallCase{Concrete: strong, Steel: bars, Cover: 12 * inch, Soil: clay})},
		{"tank.Partition", with(t.Partition, tank.PartitionCase{Concrete: strong, Steel: bars})},
		{"tank.Floor", with(t.Floor, tank.FloorCase{Concrete: strong, Steel: bars, Cover: 12 * inch})},
	}
}

func lids() []calculation {
	l := lid.Lid{Shape: lid.Disc, Diameter: 24 * inch, Thickness: 3 * inch, Loss: 0.25 * inch, Concrete: strong}
	plug := lid.Lid{Shape: lid.BevelledPlug, Diameter: 26 * inch, BottomDiameter: 24 * inch, Thickness: 4 * inch}
	reach := lid.Hands{Horizontal: 23 * inch, Vertical: 15 * inch}
	return []calculation{
		{"lid.Weigh", of(plug.Weigh)},
		{"lid.Sit", with(l.Sit, lid.Seat{Fit: lid.OnTop, Opening: 20 * inch})},
		{"lid.Move", with(l.Move, lid.MoveCase{Seat: lid.Seat{Fit: lid.OnTop}, Crew: lid.Crew{People: 2, Limit: 50 * manway.Pound}})},
		{"lid.Lift", of(lid.Lift{Load: 44 * manway.Pound, Origin: reach, Destination: lid.Hands{Horizontal: 20 * inch, Vertical: 40 * inch}, Control: true, Grip: lid.FairGrip}.Limit)},
		{"lid.Bend", with(l.Bend, lid.BendCase{})},
		{"lid.Strength", with(l.Strength, lid.StrengthCase{Seat: lid.Seat{Fit: lid.OnTop, Opening: 20 * inch}, Steel: wires})},
		{"lid.CheckHandle", with(l.CheckHandle, lid.Handle{State: lid.HandleSound, Waist: 0.4375 * inch, AsMade: 0.5 * inch})},
		{"lid.Wear", of(lid.Wear{Protected: 3 * inch, Now: 2.25 * inch, Age: 30 * manway.Year}.Loss)},
	}
}
