package riser

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

func reachRefused(a Access) error { _, err := ReachOf(a); return err }

func TestLimitsOfReach(t *testing.T) {
	a := Access{Cover: 4 * manway.Foot, Slope: 4 * manway.Degree, Span: 30 * manway.Inch, CoverThickness: 3 * manway.Inch, RoofThickness: 4 * manway.Inch}
	limit.Check(t, a, reachRefused,
		limit.Between("Cover", 0, 30*manway.Foot),
		limit.Between("Slope", 0, 45*manway.Degree),
		limit.AtMost("From", Downhill),
		limit.Between("Reveal", -3*manway.Foot, 3*manway.Foot),
		limit.Between("Settlement", 0, manway.Foot),
		limit.Between("GradeRise", -3*manway.Foot, 3*manway.Foot),
		limit.Between("CoverThickness", 0, manway.Foot),
		limit.Between("RoofThickness", 0, 3*manway.Foot))
	a.Slope = 0
	limit.Check(t, a, reachRefused, limit.Between("Span", 0, 12*manway.Foot))
	limit.Refuses(t, a, reachRefused, "Span", func(a *Access) { a.Slope, a.Span = manway.Degree, 0 })
	a.Cover = manway.Foot
	limit.Check(t, a, reachRefused, limit.AtLeast("GradeRise", -manway.Foot)) // no cut below the roof
}

// stackInput is both arguments of StackOf.
type stackInput struct {
	Rings []Ring
	Need  Need
}

func stackRefused(x stackInput) error { _, err := StackOf(x.Rings, x.Need); return err }

func TestLimitsOfStack(t *testing.T) {
	x := stackInput{
		[]Ring{{Height: 6 * manway.Inch, Bore: 24 * manway.Inch, TopBore: 24 * manway.Inch, Outside: 30 * manway.Inch, Mass: 60, Cost: 900, CutStep: manway.Inch, CutLeast: 2 * manway.Inch}},
		Need{Port: 24 * manway.Inch, Gap: 2 * manway.Foot, Below: manway.Inch, Above: manway.Inch, Joint: manway.Inch / 2, Covers: []Cover{{Fits: 24 * manway.Inch, Stands: 2 * manway.Inch, Mass: 9, Cost: 5}}},
	}
	limit.Check(t, x, stackRefused,
		limit.AtMost("rings", 200),
		limit.Between("rings[0].Count", 0, 10000),
		limit.Between("rings[0].Height", manway.Inch, 8*manway.Foot),
		limit.Between("rings[0].Bore", 6*manway.Inch, 10*manway.Foot),
		limit.Between("rings[0].TopBore", 6*manway.Inch, 10*manway.Foot),
		limit.Between("rings[0].Outside", 24*manway.Inch, 14*manway.Foot),
		limit.Between("rings[0].Mass", 0, 3*manway.Tonne),
		limit.Between("rings[0].Cost", 0, 4000000),
		limit.Between("rings[0].CutStep", 0, 6*manway.Inch),
		limit.AtLeast("rings[0].CutStep", manway.Millimetre),
		limit.Between("rings[0].CutLeast", 0, 6*manway.Inch),
		limit.Between("need.Port", 6*manway.Inch, 10*manway.Foot),
		limit.Between("need.Gap", 0, 20*manway.Foot),
		limit.Between("need.Below", 0, 2*manway.Foot),
		limit.Between("need.Above", 0, 2*manway.Foot),
		limit.Between("need.Joint", 0, 2*manway.Inch),
		limit.AtMost("need.Covers", 100),
		limit.Between("need.Covers[0].Fits", 6*manway.Inch, 10*manway.Foot),
		limit.Between("need.Covers[0].Stands", 0, manway.Foot),
		limit.Between("need.Covers[0].Mass", 0, 3*manway.Tonne),
		limit.Between("need.Covers[0].Cost", 0, 4000000))
	limit.Refuses(t, x, stackRefused, "rings[0].Mass", func(x *stackInput) { x.Rings = []Ring{{Height: 0.1, Bore: 0.6}} })
	limit.Refuses(t, x, stackRefused, "rings[0].CutStep", func(x *stackInput) {
		x.Rings = []Ring{{Height: 0.1, Bore: 0.6, TopBore: 0.7, Mass: 9, CutStep: 0.01}}
	})
	limit.Refuses(t, x, stackRefused, "rings", func(x *stackInput) { // no common step
		x.Rings = []Ring{{Height: 0.1234567, Bore: 0.6096, Mass: 9}, {Height: 0.2345678, Bore: 0.6096, Mass: 9}, {Height: 0.3456781, Bore: 0.6096, Mass: 9}}
		x.Need = Need{Port: 0.6, Gap: 3}
	})
}

func TestLimitsOfRingMass(t *testing.T) {
	type input struct {
		Ring    Ring
		Density manway.Density
	}
	x := input{Ring{Height: 6 * manway.Inch, Bore: 24 * manway.Inch, TopBore: 22 * manway.Inch, Outside: 30 * manway.Inch}, manway.UsualConcreteDensity}
	limit.Check(t, x, func(x input) error { _, err := RingMass(x.Ring, x.Density); return err },
		limit.Between("Height", manway.Inch, 8*manway.Foot).In("Ring.Height"),
		limit.Between("Bore", 6*manway.Inch, 10*manway.Foot).In("Ring.Bore"),
		limit.Between("TopBore", 6*manway.Inch, 10*manway.Foot).In("Ring.TopBore"),
		limit.Between("Outside", 24*manway.Inch+manway.Inch/16, 14*manway.Foot).In("Ring.Outside"),
		limit.Between("density", 50*manway.PoundPerCubicFoot, 200*manway.PoundPerCubicFoot))
}

func TestLimitsOfJoint(t *testing.T) {
	type strip struct {
		Joint Joint
		Strip Strip
	}
	limit.Check(t, strip{benchJoint, Strip{Width: manway.Inch, Height: manway.Inch, Roll: 14.5 * manway.Foot, Overlap: 2 * manway.Inch}},
		func(x strip) error { _, err := x.Joint.Strip(x.Strip); return err },
		limit.Between("Joint.Inside", 6*manway.Inch, 10*manway.Foot),
		limit.Between("Joint.Outside", 24*manway.Inch+manway.Inch/4, 14*manway.Foot),
		limit.Between("Joint.Closed", manway.Inch/16, 4*manway.Inch),
		limit.Between("Width", manway.Inch/4, 4*manway.Inch).In("Strip.Width"),
		limit.Between("Height", manway.Inch/4, 4*manway.Inch).In("Strip.Height"),
		limit.Between("Roll", manway.Foot, 1000*manway.Foot).In("Strip.Roll"),
		limit.Between("Overlap", 0, manway.Foot).In("Strip.Overlap"))
	limit.Refuses(t, benchJoint, func(j Joint) error {
		_, err := j.Strip(Strip{Width: 2 * manway.Inch, Height: manway.Inch / 2, Roll: manway.Foot})
		return err
	}, "Width", func(j *Joint) { j.Closed = manway.Inch }) // two runs of 2 in do not fit in 3 in
	need := must(benchJoint.Strip(Strip{Width: manway.Inch, Height: manway.Inch, Roll: 14.5 * manway.Foot}))
	limit.Check(t, need, func(n StripNeed) error { _, err := n.Times(2); return err }, limit.Between("Runs", 1, 100), limit.Between("Length", 0, 10000*manway.Foot),
		limit.Between("Roll", manway.Foot, 1000*manway.Foot), limit.Between("Fill", 0.0, 1e6), limit.Between("Squeeze", 0.0, 1e6))
	limit.Check(t, 3, func(joints int) error { _, err := need.Times(joints); return err }, limit.Between("joints", 0, 1000))
	limit.Check(t, Bead{Width: manway.Inch / 2, Depth: manway.Inch / 2, Tube: 300 * manway.Millilitre},
		func(b Bead) error { _, err := benchJoint.Bead(b); return err },
		limit.Between("Width", manway.Inch/16, 4*manway.Inch),
		limit.Between("Depth", manway.Inch/16, 4*manway.Inch),
		limit.Between("Tube", manway.FluidOunce, 10*manway.Gallon))
	type cement struct {
		Depth manway.Length
		Pack  Pack
	}
	limit.Check(t, cement{manway.Inch, MixBag(80 * manway.Pound)}, func(x cement) error { _, err := benchJoint.Cement(x.Depth, false, x.Pack); return err },
		limit.Between("depth", manway.Millimetre, 3*manway.Inch),
		limit.Between("Pack.Mass", manway.Pound, 2000*manway.Pound),
		limit.Between("Pack.Yield", manway.CubicFoot/1000, 100*manway.CubicFoot))
	limit.Check(t, manway.CubicFoot, func(v manway.Volume) error { _, err := MixBag(40 * manway.Pound).For(v); return err }, limit.AtLeast("volume", manway.Volume(0)))
}

func digRefused(p Pit) error { _, err := DigOf(p); return err }

func TestLimitsOfPit(t *testing.T) {
	p := Pit{Length: 4 * manway.Foot, Width: 5 * manway.Foot, Working: 0, Depth: 2 * manway.Foot, Shored: true, Density: 110 * manway.PoundPerCubicFoot}
	hole := 40 * manway.CubicFoot
	limit.Check(t, p, digRefused,
		limit.Between("Length", 6*manway.Inch, 60*manway.Foot),
		limit.Between("Width", 6*manway.Inch, 60*manway.Foot),
		limit.Between("Working", 0, 6*manway.Foot),
		limit.Above("Depth", manway.Length(0)),
		limit.Below("Depth", 20*manway.Foot),
		limit.AtMost("Type", TypeBDeclared),
		limit.AtMost("Earth", Clay),
		limit.Between("Density", 60*manway.PoundPerCubicFoot, 150*manway.PoundPerCubicFoot),
		limit.Between("Standing", 0, hole),
		limit.Between("Refill", 0, hole))
	slope := Pit{Length: 6 * manway.Inch, Depth: 3 * manway.Foot, Type: TypeBDeclared}
	limit.Check(t, slope, digRefused, limit.Between("Ground", 0, 30*manway.Degree))
	limit.Refuses(t, slope, digRefused, "Ground", func(p *Pit) { p.Depth, p.Ground = 19*manway.Foot, 10*manway.Degree })               // 20 ft deep uphill
	limit.Refuses(t, slope, digRefused, "Ground", func(p *Pit) { p.Length, p.Depth, p.Ground = 6*manway.Foot, 0.2, 20*manway.Degree }) // the ground lies below the bottom
	d := must(DigOf(slope))
	box := must(tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot}, Wall: 3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 4 * manway.Inch}))
	limit.Refuses(t, &box, func(b *tank.Tank) error {
		_, err := d.While(b, tank.FloatCase{Cover: 3 * manway.Foot}, tank.WallCase{Cover: 3 * manway.Foot})
		return err
	}, "Tank", func(b **tank.Tank) { *b = nil })
}

func TestLimitsOfLeak(t *testing.T) {
	j := OpenJoint{Length: 7 * manway.Foot, Gap: manway.Inch / 16, Wall: 3 * manway.Inch, Depth: 2 * manway.Foot, Inside: manway.Read(manway.Foot), Design: 300 * manway.GallonPerDay}
	limit.Check(t, j, func(j OpenJoint) error { _, err := LeakOf(j); return err },
		limit.Between("Length", manway.Inch/100, 50*manway.Foot),
		limit.Between("Gap", manway.Inch/1000, 4*manway.Inch),
		limit.Between("Wall", manway.Inch/2, 2*manway.Foot),
		limit.Between("Depth", 0, 20*manway.Foot),
		limit.Between("Inside", 0, 20*manway.Foot).In("Inside.Length"),
		limit.AtLeast("Design", manway.GallonPerDay))
}

func TestLimitsOfUplift(t *testing.T) {
	l := Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Flange: 32 * manway.Inch, Base: 3 * manway.Foot, Mass: 20, Anchors: 6, Factor: 1.5}
	limit.Check(t, l, func(l Light) error { _, err := UpliftOf(l); return err },
		limit.Between("Outside", 6*manway.Inch, 14*manway.Foot),
		limit.Between("Bore", manway.Inch, 26*manway.Inch),
		limit.Between("Flange", 26*manway.Inch, 20*manway.Foot),
		limit.Between("Base", manway.Inch/10, 20*manway.Foot),
		limit.Between("Mass", 0, 10*manway.Tonne),
		limit.Between("Anchors", 0, 100),
		limit.Between("Factor", 1.0, 5))
}

func TestLimitsOfWall(t *testing.T) {
	type input struct {
		Wall     Wall
		Surround Surround
	}
	x := input{benchWall, Surround{Depth: 3 * manway.Foot, Wheel: manway.PickupWheel, Away: manway.Foot}}
	limit.Check(t, x, func(x input) error { _, err := x.Wall.Press(x.Surround); return err },
		limit.Between("Wall.Diameter", 4*manway.Inch, 240*manway.Inch),
		limit.Between("Wall.Thickness", 0.01*manway.Inch, 4.8*manway.Inch),
		limit.Between("Wall.Modulus", 1000*manway.PSI, 40e6*manway.PSI),
		limit.Between("Wall.Poisson", 0, 0.5),
		limit.Between("Depth", manway.Inch/10, 20*manway.Foot).In("Surround.Depth"),
		limit.Between("Reaction", 0, 10000*manway.PSI).In("Surround.Reaction"),
		limit.Between("Away", 0, 100*manway.Foot).In("Surround.Away"))
	limit.Check(t, 200*manway.PSI, func(e manway.Pressure) error { _, err := benchWall.Buckling(e); return err }, limit.Between("Reaction", 0, 10000*manway.PSI))
	limit.Check(t, benchWall, func(w Wall) error { _, err := w.Stiffness(); return err }, limit.Between("Diameter", 4*manway.Inch, 240*manway.Inch))
	limit.Check(t, Squash{Load: manway.PSI, Reaction: 200 * manway.PSI, Lag: 1.5, Bedding: 0.1}, func(s Squash) error { _, err := benchWall.Deflection(s); return err },
		limit.Between("Load", 0, 1000*manway.PSI), limit.Between("Reaction", 0, 10000*manway.PSI), limit.Between("Lag", 1.0, 2), limit.Between("Bedding", 0.083, 0.110))
}

// A wall may be thick enough and yet too soft to be reckoned.
func TestLimitsOfStiffness(t *testing.T) {
	limit.Refuses(t, benchWall, func(w Wall) error { _, err := w.Deflection(Squash{Load: manway.PSI}); return err }, "Thickness", func(w *Wall) { w.Thickness = 0.02 * manway.Inch })
}

func TestLimitsOfFinding(t *testing.T) {
	limit.Check(t, Tie{Corners: 1000 * manway.Foot, FromA: 1000 * manway.Foot, FromB: 500 * manway.Foot, Tape: manway.Inch}, func(x Tie) error { _, err := x.Position(); return err },
		limit.Between("Corners", manway.Foot, 1000*manway.Foot),
		limit.Between("FromA", 0, 1000*manway.Foot),
		limit.Between("FromB", 0, 1000*manway.Foot),
		limit.Between("Tape", 0, 10*manway.Foot))
	limit.Check(t, Buried{Diameter: 24 * manway.Inch, Depth: 8 * manway.Inch, Working: manway.Foot}, func(b Buried) error { _, err := Uncover(b); return err },
		limit.Between("Diameter", 6*manway.Inch, 10*manway.Foot),
		limit.Between("Depth", 0, 2*manway.Foot),
		limit.Between("Working", 0, 3*manway.Foot),
		limit.AtMost("Surface", Deck),
		limit.AtMost("Earth", Clay))
	limit.Check(t, Hose{Along: 90 * manway.Foot, Fall: manway.Foot, Bottom: 8 * manway.Foot, Inlet: 4 * manway.Foot, Section: 25 * manway.Foot}, func(h Hose) error { _, err := h.Run(); return err },
		limit.Between("Along", 0, 2000*manway.Foot),
		limit.Between("Fall", -200*manway.Foot, 200*manway.Foot),
		limit.Between("Inlet", 0, 15*manway.Foot),
		limit.Between("Bottom", 0, 30*manway.Foot),
		limit.Between("Spare", 0, 100*manway.Foot),
		limit.Between("Section", 5*manway.Foot, 200*manway.Foot))
}

func findRefused(c Condition) error { _, err := Defects(c); return err }

func TestLimitsOfCondition(t *testing.T) {
	c := Condition{Size: manway.Read(2 * manway.Foot), CoverDepth: manway.Read(0), RimGap: manway.Read(0), Bearing: manway.Read(manway.Inch), JointGap: manway.Read(0), SpallDepth: manway.Read(0), Thickness: manway.Read(2 * manway.Foot), CrackWidth: manway.Read(0), Settled: manway.Read(0)}
	limit.Check(t, c, findRefused,
		limit.AtMost("Roots", manway.Yes),
		limit.AtMost("Handle", lid.HandleMissing),
		limit.AtMost("CoverStrength", manway.NotPermitted),
		limit.AtMost("RoofStrength", manway.NotPermitted),
		limit.Between("CoverMass", 0, 3*manway.Tonne),
		limit.Between("CrewLimit", 0, 3*manway.Tonne),
		limit.Between("Size", manway.Inch, 10*manway.Foot).In("Size.Length"),
		limit.Between("CoverDepth", -3*manway.Foot, 20*manway.Foot).In("CoverDepth.Length"),
		limit.Between("RimGap", 0, 3*manway.Foot).In("RimGap.Length"),
		limit.Between("Bearing", 0, manway.Foot).In("Bearing.Length"),
		limit.Between("JointGap", 0, manway.Foot).In("JointGap.Length"),
		limit.Between("SpallDepth", 0, 2*manway.Foot).In("SpallDepth.Length"),
		limit.Between("Thickness", manway.Inch/2, 2*manway.Foot).In("Thickness.Length"),
		limit.Between("CrackWidth", 0, 2*manway.Inch).In("CrackWidth.Length"),
		limit.Between("Settled", 0, 3*manway.Foot).In("Settled.Length"))
	c.Thickness = manway.Reading{}
	limit.Check(t, c, findRefused, limit.Between("SpallDepth", 0, 2*manway.Foot).In("SpallDepth.Length"))
	c.Thickness = manway.Read(3 * manway.Inch)
	limit.Check(t, c, findRefused, limit.AtMost("SpallDepth", 3*manway.Inch).In("SpallDepth.Length"))
	limit.Refuses(t, c, findRefused, "CoverPresent", func(c *Condition) { c.Missing, c.CoverPresent = manway.Yes, manway.Yes })
}

func remedyRefused(s Site) error { _, err := Remedies(Condition{Roots: manway.Yes}, s); return err }

func TestLimitsOfSite(t *testing.T) {
	span := func(field string, most manway.Length) limit.Row {
		return limit.Between("Site."+field, 0, most).In(field)
	}
	limit.Check(t, Site{JointDown: manway.Read(manway.Foot)}, remedyRefused,
		span("Port", 10*manway.Foot), span("Bore", 10*manway.Foot), span("Outside", 14*manway.Foot),
		span("JointClosed", 4*manway.Inch), span("Height", 20*manway.Foot), span("Topsoil", 2*manway.Foot), span("SpallDepth", 2*manway.Foot),
		limit.Between("Site.JointDown", 0, 20*manway.Foot).In("JointDown.Length"),
		limit.Between("Site.Standing", 0, 100).In("Standing"),
		limit.Between("Site.StandingMass", 0, 50*manway.Tonne).In("StandingMass"),
		limit.Between("Site.SpallArea", 0, 1000*manway.SquareFoot).In("SpallArea"),
		limit.Between("Site.Liquid", 0, 100000*manway.Gallon).In("Liquid"),
		limit.Between("Site.TankVolume", 0, 100000*manway.Gallon).In("TankVolume"),
		limit.AtMost("Site.Emptying", manway.Yes).In("Emptying"),
		limit.Between("Site.LocateDays", 0, 60).In("LocateDays"))
	limit.Check(t, Site{Bore: 24 * manway.Inch, Outside: 30 * manway.Inch}, remedyRefused, limit.AtLeast("Site.Outside", 24*manway.Inch+manway.Inch/4).In("Outside"))
}
