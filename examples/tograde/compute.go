package main

import (
	"math"
	"strings"

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
	hasLeak    bool
	leak       riser.Leakage
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
		if len(in.Rings) > 0 || in.Seen == nil && in.Tie == nil && in.Hose == nil && in.CoverDown == nil {
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

// seal is the strip in the joints.
func (o *output) seal(in *input, faults *manway.InputErrors) {
	if o.bore == 0 || o.outside == 0 || in.Joint == 0 {
		o.without = append(o.without, "sealant: inside and outside diameter of the ring, and the thickness of a joint")
		return
	}
	o.joint = riser.Joint{Inside: o.bore, Outside: o.outside, Closed: in.Joint}
	o.joints = 1
	if best, ok := o.chosen(); ok {
		o.joints = best.Joints
	}
	need, err := o.joint.Strip(riser.Strip(in.Strip))
	if o.keep(faults, err, "strip.") {
		return
	}
	o.strip, o.hasJoint = need, true
	if o.strips, err = need.Times(o.joints); o.keep(faults, err, "") {
		return
	}
	gap := in.Gap
	if gap == nil && in.Seen != nil && in.Seen.JointGap.Taken && in.Seen.JointGap.Length > 0 {
		gap = &in.Seen.JointGap.Length
	}
	if gap == nil || in.Cover == nil {
		return
	}
	leak, err := riser.LeakOf(riser.OpenJoint{Length: o.joint.Length(), Gap: *gap, Wall: o.joint.Wall(), Depth: *in.Cover, Water: in.Groundwater, Design: in.DesignFlow})
	if !o.keep(faults, err, "") {
		o.leak, o.hasLeak = leak, true
	}
}

// excavate is the pit down to the roof.
func (o *output) excavate(in *input, faults *manway.InputErrors) {
	switch {
	case in.Cover == nil || *in.Cover == 0:
		return
	case o.outside == 0:
		o.without = append(o.without, "pit: outside diameter of the riser")
		return
	}
	p := riser.Pit{Length: o.outside, Working: in.Working, Depth: *in.Cover, Ground: in.Slope, Type: in.SoilType, Shored: in.Shored, Earth: in.Earth, Density: in.Density, Water: in.Groundwater}
	p.Refill = math.Pi / 4 * o.outside.Times(o.outside).Times(*in.Cover)
	dig, err := riser.DigOf(p)
	if !o.keep(faults, err, "") {
		o.dig, o.hasDig = dig, true
	}
}

// find is the place, the way to the truck and the uncovering.
func (o *output) find(in *input, faults *manway.InputErrors) {
	if in.Tie != nil {
		position, err := riser.Tie(*in.Tie).Position()
		if !o.keep(faults, err, "tie.") {
			o.position, o.hasTie = position, true
		}
	}
	if in.Hose != nil {
		h := riser.Hose(*in.Hose)
		if h.Section == 0 {
			h.Section = 25 * manway.Foot
		}
		run, err := h.Run()
		if !o.keep(faults, err, "hose.") {
			o.hose, o.hasHose = run, true
		}
	}
	if in.CoverDown != nil {
		across := o.outside
		if across == 0 {
			across = in.Port
		}
		u, err := riser.Uncover(riser.Buried{Diameter: across, Depth: *in.CoverDown, Surface: in.Surface, Earth: in.Earth})
		if !o.keep(faults, err, "uncover.") {
			o.uncover, o.hasUncover = u, true
		}
	}
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
	}
	remedies, err := riser.Remedies(c, s)
	if o.keep(faults, err, "") {
		return
	}
	o.seen, o.remedies, o.notSeen = true, remedies, c.NotSeen()
	o.defects, _ = riser.Defects(c) // Remedies has validated c
	o.notice, _ = riser.Notice(in.ID, o.defects)
}

// keep adds the faults of err under the names of the record, and reports
// whether there are any. A fault that stands already is not added twice.
func (o *output) keep(faults *manway.InputErrors, err error, prefix string) bool {
	if err == nil {
		return false
	}
	list, ok := err.(manway.InputErrors)
	if !ok {
		list = manway.InputErrors{{Field: "record", Value: err.Error(), Want: "values that can be computed"}}
	}
next:
	for _, f := range list {
		name := fieldName(prefix + f.Field)
		for _, have := range *faults {
			if have.Field == name {
				continue next
			}
		}
		faults.Add(name, f.Value, f.Want)
	}
	return true
}

// fieldName is the name that a field of the calculation has in the record.
func fieldName(path string) string {
	path = strings.NewReplacer("need.Covers", "lids", "need.Gap", "cover", "need.", "", "Condition.", "seen.", "Site.", "site.",
		"Joint.Inside", "bore", "Joint.Outside", "outside", "Joint.Closed", "joint", "Pit.", "", "Water.Depth", "groundwater",
		"RoofThickness", "roof", "Span", "outside", "uncover.Diameter", "outside", "uncover.Depth", "cover_down", "Design", "design_flow", "Type", "soil_type", "Ground", "slope").Replace(path)
	switch path { // of pit and leak
	case "Length":
		path = "outside"
	case "Depth":
		path = "cover"
	case "Wall":
		path = "outside"
	}
	var b strings.Builder
	for i, r := range path {
		if r >= 'A' && r <= 'Z' {
			if i > 0 && path[i-1] != '.' && path[i-1] != '_' {
				b.WriteByte('_')
			}
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}
