package riser_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/riser"
)

func ExampleReachOf() {
	r, err := riser.ReachOf(riser.Access{
		Cover: 26 * manway.Inch, Slope: 4 * manway.Degree, Span: 30 * manway.Inch,
		Reveal: 2 * manway.Inch, CoverThickness: 3 * manway.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Height)
	fmt.Println(r.Uphill, "above grade uphill,", r.Downhill, "downhill")
	// Output:
	// 2 ft 2 in
	// 2 in above grade uphill, 4 1/8 in downhill
}

func ExampleStackOf() {
	stock := []riser.Ring{
		{Code: "ring-24x6", Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch},
		{Code: "ring-24x4", Height: 4 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, Count: 2},
	}
	s, err := riser.StackOf(stock, riser.Need{Port: 24 * manway.Inch, Gap: 24 * manway.Inch, Above: manway.Inch, Joint: manway.Inch / 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, best := range s.Best {
		fmt.Println(best, "off by", best.Off)
	}
	fmt.Println(s.Missing(manway.US))
	// Output:
	// 3 x ring-24x6 + 1 x ring-24x4 off by 0 in
}

func ExampleStacks_Missing() {
	stock := []riser.Ring{{Code: "ring-24x6", Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Mass: 60 * manway.Kilogram}}
	s, err := riser.StackOf(stock, riser.Need{Port: 24 * manway.Inch, Gap: 8 * manway.Inch, Joint: manway.Inch / 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Missing(manway.US))
	// Output:
	// the nearest below is 1 1/2 in short; the nearest above is 5 in too high
}

func ExampleJoint_Strip() {
	j := riser.Joint{Inside: 24 * manway.Inch, Outside: 30 * manway.Inch, Closed: manway.Inch / 2}
	n, err := j.Strip(riser.Strip{Width: manway.Inch, Height: manway.Inch, Roll: 14*manway.Foot + 6*manway.Inch, Overlap: 2 * manway.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n.Length, "of strip, rolls", n.Rolls)
	fmt.Printf("fills %.0f %%\n", 100*n.Fill)
	// Output:
	// 7 ft 2 7/8 in of strip, rolls 1
	// fills 67 %
}

func ExampleDigOf() {
	d, err := riser.DigOf(riser.Pit{Length: 4 * manway.Foot, Width: 6 * manway.Foot, Depth: 4 * manway.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f ft3, %v by %v at grade\n", d.Hole.In(manway.CubicFoot), d.Top[0], d.Top[1])
	fmt.Println("ladder:", d.Ladder)
	// Output:
	// 528 ft3, 16 ft by 18 ft at grade
	// ladder: true
}

func ExampleLeakOf() {
	l, err := riser.LeakOf(riser.OpenJoint{Length: 12 * manway.Inch, Gap: manway.Inch / 16, Wall: 3 * manway.Inch, Depth: 2 * manway.Foot, Water: manway.GroundwaterAt(manway.Foot)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("orifice", l.Orifice)
	fmt.Println("head", l.Head)
	// Output:
	// orifice 11.44 gal/min
	// head 1 ft
}

func ExampleDefects() {
	list, err := riser.Defects(riser.Condition{
		CoverPresent: manway.Yes, Fastened: manway.No, Roots: manway.Yes, JointSealed: manway.No,
		CoverDepth: manway.Read(0), Settled: manway.Read(manway.Inch / 2),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range list {
		fmt.Println(d.Severity, d.Kind)
	}
	// Output:
	// urgent cover-unfastened
	// soon joint-roots
	// soon joint-unsealed
	// watch settled
}

func ExampleRemedies() {
	condition := riser.Condition{Roots: manway.Yes, JointSealed: manway.No}
	site := riser.Site{Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, Standing: 1, JointDown: manway.Read(3 * manway.Foot)}
	list, err := riser.Remedies(condition, site)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range list[:3] {
		fmt.Printf("%s: entry %v, dig %v\n", r.Kind, r.NeedsEntry, r.NeedsDig)
		if r.RuledOut != "" {
			fmt.Println("  ruled out:", r.RuledOut)
		}
	}
	// Output:
	// reseal-from-grade: entry false, dig false
	//   ruled out: the joint is 3 ft down: beyond the 2 ft that is reached from grade with the head outside
	// outside-collar: entry false, dig true
	// rebed-ring: entry false, dig true
}

func ExampleTie_Position() {
	p, err := riser.Tie{Corners: 30 * manway.Foot, FromA: 18 * manway.Foot, FromB: 24 * manway.Foot, Tape: manway.Inch}.Position()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p)
	// Output:
	// 10 ft 9 5/8 in along from the first corner, 14 ft 4 3/4 in out, within 1 3/8 in
}

func ExampleUpliftOf() {
	u, err := riser.UpliftOf(riser.Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Base: 3 * manway.Foot, Mass: 30 * manway.Pound, Anchors: 6})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("lifts:", u.Lifts, "up", u.Up, "each anchor", u.Each)
	for _, a := range u.Assumed.List() {
		fmt.Println("taken:", a.Taken)
	}
	// Output:
	// lifts: true up 102.1 lbf each anchor 20.53 lbf
	// taken: groundwater at grade
}
