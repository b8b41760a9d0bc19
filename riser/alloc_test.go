package riser

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// calculations are the closed forms, none of which allocates where it accepts.
var calculations = []struct {
	name string
	run  func() error
}{
	{"ReachOf", func() error {
		_, err := ReachOf(Access{Cover: 26 * manway.Inch, Slope: 4 * manway.Degree, Span: 30 * manway.Inch, Reveal: 2 * manway.Inch})
		return err
	}},
	{"RingMass", func() error {
		_, err := RingMass(Ring{Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch}, manway.UsualConcreteDensity)
		return err
	}},
	{"Joint.Strip", func() error {
		_, err := benchJoint.Strip(Strip{Width: manway.Inch, Height: manway.Inch, Roll: 14.5 * manway.Foot, Overlap: 2 * manway.Inch})
		return err
	}},
	{"Joint.Bead", func() error {
		_, err := benchJoint.Bead(Bead{Width: manway.Inch / 2, Depth: manway.Inch / 2, Tube: 300 * manway.Millilitre, Inner: true})
		return err
	}},
	{"Joint.Cement", func() error {
		_, err := benchJoint.Cement(manway.Inch, false, MixBag(80*manway.Pound))
		return err
	}},
	{"DigOf round", func() error {
		_, err := DigOf(Pit{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 26 * manway.Inch})
		return err
	}},
	{"DigOf rectangle on a slope", func() error {
		_, err := DigOf(Pit{Length: 8 * manway.Foot, Width: 5 * manway.Foot, Working: manway.Foot, Depth: 5 * manway.Foot, Ground: 4 * manway.Degree})
		return err
	}},
	{"LeakOf", func() error {
		_, err := LeakOf(OpenJoint{Length: 7 * manway.Foot, Gap: manway.Inch / 16, Wall: 3 * manway.Inch, Depth: 26 * manway.Inch})
		return err
	}},
	{"UpliftOf", func() error {
		_, err := UpliftOf(Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Flange: 32 * manway.Inch, Base: 3 * manway.Foot, Mass: 20, Anchors: 6})
		return err
	}},
	{"Wall.Press", func() error {
		_, err := benchWall.Press(Surround{Depth: 3 * manway.Foot, Wheel: manway.PickupWheel, Away: manway.Foot})
		return err
	}},
	{"Wall.Buckling", func() error {
		_, err := benchWall.Buckling(200 * manway.PSI)
		return err
	}},
	{"Tie.Position", func() error {
		_, err := Tie{Corners: 30 * manway.Foot, FromA: 18 * manway.Foot, FromB: 24 * manway.Foot, Tape: manway.Inch}.Position()
		return err
	}},
	{"Uncover", func() error {
		_, err := Uncover(Buried{Diameter: 24 * manway.Inch, Depth: 8 * manway.Inch})
		return err
	}},
	{"Hose.Run", func() error {
		_, err := Hose{Along: 90 * manway.Foot, Bottom: 8 * manway.Foot, Inlet: 4 * manway.Foot, Section: 25 * manway.Foot}.Run()
		return err
	}},
}

var (
	benchJoint = Joint{Inside: 24 * manway.Inch, Outside: 30 * manway.Inch, Closed: manway.Inch / 2}
	benchWall  = Wall{Diameter: 24 * manway.Inch, Thickness: manway.Inch / 2, Modulus: 22000 * manway.PSI, Poisson: 0.4}
)

func TestClosedFormsDoNotAllocate(t *testing.T) {
	for _, c := range calculations {
		if err := c.run(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = c.run() }); n != 0 {
			t.Errorf("%s allocates %v times", c.name, n)
		}
	}
}

func BenchmarkCalculations(b *testing.B) {
	for _, c := range calculations {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := c.run(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkRemedies(b *testing.B) {
	c := Condition{JointSealed: manway.No, Roots: manway.Yes, JointGap: manway.Read(manway.Inch / 2), Fastened: manway.No, Guard: manway.No, Handle: lid.HandleRusted}
	s := Site{Port: 24 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, Standing: 1, StandingMass: 60, Height: 26 * manway.Inch,
		Pit: Pit{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 26 * manway.Inch}, Liquid: 2}
	b.Run("defects", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := Defects(c); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("remedies", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := Remedies(c, s); err != nil {
				b.Fatal(err)
			}
		}
	})
}
