package visit

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
)

// AccessAnswer is what was worked out for one access.
type AccessAnswer struct {
	Reach     riser.Reach
	Stacks    riser.Stacks
	Joint     riser.Joint
	Strip     riser.StripNeed
	Dig       riser.Dig
	HasLid    bool
	Moves     lid.Moves      // with its Weight; only where HasLid
	Tried     manway.Unsound // of the lid, where its loss was not measured
	Strength  lid.Strength
	Handle    lid.HandleCheck
	Guard     lid.GuardCheck
	Leak      riser.Leakage // groundwater through the joint, where a gap was measured
	HasLeak   bool
	Defects   []riser.Defect
	NotSeen   []riser.Unjudged
	Remedies  []riser.Remedy
	TakenBore manway.Length // of the riser that is reckoned with
	TakenWall manway.Length
}

// What is reckoned with where the survey does not say: a concrete ring 3 in
// thick on sealant strip squeezed to 1/2 in, 1 ft of
// working space. Common practice of the trade.
const (
	usualRingWall = 3 * manway.Inch
	usualJoint    = 0.5 * manway.Inch
	usualWorking  = 1 * manway.Foot
)

// usualStrip is a preformed sealant strip as the trade sells it: 1 in square in
// rolls of 14.5 ft (remembered), lapped by 2 in.
var usualStrip = riser.Strip{Width: 1 * manway.Inch, Height: 1 * manway.Inch, Roll: 14.5 * manway.Foot, Overlap: 2 * manway.Inch}

// reachAll works out reach, rings, joint, dig and lid of every access.
func (v *Visit) reachAll() error {
	v.Accesses = make([]AccessAnswer, len(v.Survey.Accesses))
	steps := make([]func() error, len(v.Accesses))
	for i, a := range v.Survey.Accesses {
		steps[i] = func() (err error) {
			v.Accesses[i], err = v.access(a)
			return under("Accesses", i, err)
		}
	}
	return together(steps...)
}

// access is one access reached and its lid lifted.
func (v *Visit) access(a Access) (AccessAnswer, error) {
	answer, err := v.reach(a)
	if err == nil {
		err = v.liftLid(a, &answer)
	}
	return answer, err
}

func (v *Visit) reach(a Access) (AccessAnswer, error) {
	out := AccessAnswer{TakenBore: a.Riser.Bore, TakenWall: a.Riser.Wall}
	if out.TakenBore == 0 {
		out.TakenBore = a.Opening
	}
	if out.TakenWall == 0 {
		out.TakenWall = usualRingWall
	}
	outside := out.TakenBore + 2*out.TakenWall
	var err error
	out.Reach, err = riser.ReachOf(riser.Access{
		Cover: a.Cover, Slope: v.Survey.Ground.Slope, Span: outside, Reveal: a.Reveal,
		RoofThickness: v.Tank.Spec.Roof,
	})
	if err != nil {
		return out, err
	}
	rings := make([]riser.Ring, len(v.Survey.Rings))
	for i, r := range v.Survey.Rings {
		rings[i] = riser.Ring{Code: r.Code, Count: r.Count, Height: r.Height, Bore: r.Bore, Mass: r.Weight}
		if r.Wall > 0 {
			rings[i].Outside = r.Bore + 2*r.Wall
		}
	}
	out.Stacks, err = riser.StackOf(rings, riser.Need{
		Port: a.Opening, Gap: out.Reach.Height, Below: 2 * manway.Inch, Above: 2 * manway.Inch, Joint: usualJoint,
	})
	if err != nil {
		return out, err
	}
	out.Joint = riser.Joint{Inside: out.TakenBore, Outside: outside, Closed: usualJoint}
	if out.Strip, err = out.Joint.Strip(usualStrip); err != nil {
		return out, err
	}
	if a.Seen.Gap.Taken && a.Seen.Gap.Length > 0 {
		if err := v.leak(a, &out); err != nil {
			return out, err
		}
	}
	if a.Cover > 0 {
		out.Dig, err = riser.DigOf(riser.Pit{Length: outside, Working: usualWorking, Depth: a.Cover, Water: v.Survey.Ground.Groundwater})
	}
	return out, err
}

// leak reckons the groundwater that an open joint on the roof lets in.
func (v *Visit) leak(a Access, out *AccessAnswer) error {
	length := out.Joint.Length()
	if a.Seen.GapLength.Taken {
		length = min(a.Seen.GapLength.Length, length)
	}
	var err error
	out.Leak, err = riser.LeakOf(riser.OpenJoint{
		Length: length, Gap: a.Seen.Gap.Length, Wall: out.TakenWall, Depth: a.Cover, Water: v.Survey.Ground.Groundwater,
	})
	out.HasLeak = err == nil
	return err
}

// reachSection says how far each opening lies from grade and what makes it up.
func (v Visit) reachSection() Section {
	sys := v.Survey.Units
	s := Section{
		ID: "reach", For: ForCrew, Title: "Bringing each opening to grade",
		Method: "Cover, finished top and slope give the height; every stack of the rings in stock is tried for the fewest joints, then the least weight. Joint, sealant strip and hand dig follow from the ring.",
	}
	for i, a := range v.Survey.Accesses {
		r := v.Accesses[i]
		row := []Cell{
			words("access", a.Name),
			amount(sys, "reach_in", r.Reach.Top, manway.Inch),
			v.stackCell(r),
			amount(sys, "joint_length_in", r.Joint.Length(), manway.Inch),
			amount(sys, "strip_in", r.Strip.Length, manway.Inch),
		}
		if len(r.Stacks.Best) > 0 {
			row = append(row, amount(sys, "ring_lb", r.Stacks.Best[0].Mass, manway.Pound))
		} else {
			row = append(row, unknown("ring_lb", "no stack"))
		}
		row = append(row, digCell(sys, r.Dig))
		if i == 0 {
			s.Tables = []Table{{ID: "accesses", Columns: []string{"Opening", "Roof to finished top", "Rings", "One joint", "Sealant strip, one joint", "Rings weigh", "To dig"}}}
		}
		s.Tables[0].Rows = append(s.Tables[0].Rows, row)
		s.Assumed |= r.Reach.Assumed | r.Stacks.Assumed | r.Dig.Assumed
		s.Cautions |= r.Reach.Cautions | r.Stacks.Cautions | r.Dig.Cautions
		if r.HasLeak {
			s.Says = append(s.Says, v.leakWords(a, r.Leak))
			s.Basis = merge(s.Basis, r.Leak.Basis())
			s.Assumed |= r.Leak.Assumed
			s.Cautions |= r.Leak.Cautions
		}
		if missing := r.Stacks.Missing(sys); missing != "" && len(v.Survey.Rings) > 0 {
			s.Unjudged = append(s.Unjudged, a.Name+": "+missing+".")
		}
		s.Working = append(s.Working, r.Reach.Working(sys)...)
	}
	s.Basis = merge(s.Basis, riser.Reach{}.Basis(), riser.Stacks{}.Basis(), riser.Joint{}.Basis())
	return s
}

// leakWords is what the open joint of an access lets in.
func (v Visit) leakWords(a Access, l riser.Leakage) string {
	if l.Dry {
		return a.Name + ": the open joint lies above the groundwater, nothing comes in by it now."
	}
	day := l.Least.Times(manway.Day)
	if full, _ := v.Tank.AtOutlet(); day > full {
		return a.Name + ": the open joint could pass more groundwater in a day than the tank holds: the soil alone sets how much comes in."
	}
	return fmt.Sprintf("%s: the open joint lets in up to %s of groundwater a day, whatever the soil holds back not counted.", a.Name, short(day.Text(v.Survey.Units)))
}

func (v Visit) stackCell(r AccessAnswer) Cell {
	switch {
	case r.Reach.NoRing:
		return words("rings", "none needed")
	case len(v.Survey.Rings) == 0:
		return unknown("rings", "none listed")
	case len(r.Stacks.Best) == 0:
		return unknown("rings", "none from stock")
	}
	return words("rings", r.Stacks.Best[0].String())
}

func digCell(sys manway.System, d riser.Dig) Cell {
	if d.Bank == 0 {
		return words("dig", "nothing")
	}
	c := amount(sys, "dig_yd3", d.Bank, manway.CubicYard)
	if sys == manway.SI {
		c.Text = fmt.Sprintf("%.2f m3", float64(d.Bank))
	} else {
		c.Text = fmt.Sprintf("%.2f yd3", c.Number)
	}
	c.Text += fmt.Sprintf(", about %.1f h by hand", d.HandHours.In(manway.Hour))
	return c
}

// merge is every citation once, in order.
func merge(lists ...[]manway.Citation) []manway.Citation {
	var all []manway.Citation
	for _, list := range lists {
		for _, c := range list {
			known := false
			for _, k := range all {
				known = known || k == c
			}
			if !known {
				all = append(all, c)
			}
		}
	}
	return all
}
