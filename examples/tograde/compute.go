package main

import (
	"manway.example/manway"
	"manway.example/manway/riser"
)

// output is all that was computed for one access; what was not asked for, or
// lacks an input, is left out and named in without.
type output struct {
	hasReach   bool
	reach      riser.Reach
	hasStacks  bool
	stacks     riser.Stacks
	bore       manway.Length // of the riser, 0 where not known
	outside    manway.Length
	hasJoint   bool
	joint      riser.Joint
	strip      riser.StripNeed // of one joint
	strips     riser.StripNeed // of all
	joints     int
	hasDig     bool
	dig        riser.Dig
	hasBead    bool
	bead       riser.BeadNeed
	hasCement  bool
	cement     riser.PackNeed
	hasLeak    bool
	leak       riser.Leakage
	hasUplift  bool
	uplift     riser.Uplift
	hasPress   bool
	press      riser.Press
	buckling   riser.Buckling
	hasTie     bool
	position   riser.Position
	hasHose    bool
	hose       riser.HoseRun
	hasUncover bool
	uncover    riser.Uncovering
	seen       bool
	defects    []riser.Defect
	notSeen    []riser.Unjudged
	remedies   []riser.Remedy
	notice     string
	without    []string
}

func compute(in *input) (output, error) {
	var out output
	var faults manway.InputErrors
	out.sizes(in)
	out.raise(in, &faults)
	out.seal(in, &faults)
	out.excavate(in, &faults)
	out.load(in, &faults)
	out.find(in, &faults)
	out.judge(in, &faults)
	return out, faults.Err()
}

// sizes is the riser's bore and outside, from the flags or the first ring.
func (o *output) sizes(in *input) {
	o.bore, o.outside = in.Bore, in.Outside
	if len(in.Rings) > 0 {
		if o.bore == 0 {
			o.bore = in.Rings[0].Bore
		}
		if o.outside == 0 {
			o.outside = in.Rings[0].Outside
		}
	}
}

// raise is the reach and its stacks.
func (o *output) raise(in *input, faults *manway.InputErrors) {
	if in.Cover == nil {
		if len(in.Rings) > 0 || in.Seen == nil && in.Tie == nil && in.Hose == nil && in.CoverDown == nil && in.Pit == nil && in.Bead == nil && in.Cement == nil {
			faults.Add("cover", "not given", "the depth from grade down to the roof")
		}
		return
	}
	thickness := in.CoverThickness
	if len(in.Lids) > 0 && thickness != 0 {
		faults.Add("cover_thickness", thickness.String(), "either it, or lids with what each stands above the rings")
		return
	}
	span := o.outside
	reach, err := riser.ReachOf(riser.Access{Cover: *in.Cover, Slope: in.Slope, Span: span, From: in.From, Reveal: in.Reveal,
		Settlement: in.Settlement, GradeRise: in.GradeRise, CoverThickness: thickness, RoofThickness: in.Roof})
	o.reach, o.hasReach = reach, !o.keep(faults, err, "")
	if len(in.Rings) > 0 {
		o.stack(in, faults) // of no height where the reach was refused: its own faults are told too
	}
}

func (o *output) stack(in *input, faults *manway.InputErrors) {
	if in.Port == 0 {
		faults.Add("port", "not given", "the opening in the roof that the rings stand on")
		return
	}
	need := riser.Need{Port: in.Port, Gap: o.reach.Height, Below: in.Below, Above: in.Above, Joint: in.Joint}
	for _, l := range in.Lids {
		need.Covers = append(need.Covers, riser.Cover(l))
	}
	rings := make([]riser.Ring, len(in.Rings))
	for i, r := range in.Rings {
		rings[i] = riser.Ring(r)
	}
	stacks, err := riser.StackOf(rings, need)
	if o.keep(faults, err, "") {
		return
	}
	o.stacks, o.hasStacks = stacks, true
	if best, ok := o.chosen(); ok && len(best.Pieces) > 0 {
		low := in.Rings[best.Pieces[0].Ring]
		o.bore = low.Bore
		if low.Outside != 0 {
			o.outside = low.Outside
		}
	}
}

// chosen is the stack to draw and to price: the best, else the nearest.
func (o *output) chosen() (riser.Stack, bool) {
	switch {
	case len(o.stacks.Best) > 0:
		return o.stacks.Best[0], true
	case len(o.stacks.Nearest) > 0:
		return o.stacks.Nearest[0], true
	}
	return riser.Stack{}, false
}

// judge is the defects and remedies.
func (o *output) judge(in *input, faults *manway.InputErrors) {
	if in.Seen == nil {
		return
	}
	c := in.Seen.condition()
	s := riser.Site{Port: in.Port, Bore: o.bore, Outside: o.outside, JointClosed: in.Joint, JointDown: in.Site.JointDown,
		Standing: in.Site.Standing, StandingMass: in.Site.StandingMass, Pit: o.dig.Pit, SpallArea: in.Site.SpallArea, SpallDepth: in.Site.SpallDepth,
		Liquid: in.Site.Liquid, TankVolume: in.Site.TankVolume, Emptying: in.Site.Emptying, Water: in.Groundwater, LocateDays: in.Site.LocateDays, Supported: in.Site.Supported}
	if o.hasReach {
		s.Height = o.reach.Height
	}
	if len(o.stacks.Best) > 0 {
		s.Stack = o.stacks.Best[0]
		if s.Stack.Cover >= 0 {
			s.CoverCode = in.Lids[s.Stack.Cover].Code
		}
	}
	remedies, err := riser.Remedies(c, s)
	if o.keep(faults, err, "") {
		return
	}
	o.seen, o.remedies, o.notSeen = true, remedies, c.NotSeen()
	o.defects, _ = riser.Defects(c) // Remedies has validated c
	o.notice, _ = riser.Notice(in.ID, o.defects)
}
