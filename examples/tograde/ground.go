package main

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// seal is what closes the joints, and what leaks through an open one.
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
	if in.Bead != nil {
		o.bead, err = o.joint.Bead(riser.Bead(*in.Bead))
		o.hasBead = !o.keep(faults, err, "bead.")
	}
	if in.Cement != nil {
		pack := riser.MixBag(in.Cement.Bag)
		if in.Cement.Yield != 0 {
			pack.Yield = in.Cement.Yield
		}
		o.cement, err = o.joint.Cement(in.Cement.Depth, in.Cement.FromOutside, pack)
		o.hasCement = !o.keep(faults, err, "cement.")
	}
	o.leaks(in, faults)
}

func (o *output) leaks(in *input, faults *manway.InputErrors) {
	gap := in.Gap
	if gap == nil && in.Seen != nil && in.Seen.JointGap.Taken && in.Seen.JointGap.Length > 0 {
		gap = &in.Seen.JointGap.Length
	}
	if gap == nil || in.Cover == nil {
		return
	}
	leak, err := riser.LeakOf(riser.OpenJoint{Length: o.joint.Length(), Gap: *gap, Wall: o.joint.Wall(), Depth: *in.Cover, Water: in.Groundwater, Design: in.DesignFlow})
	o.leak, o.hasLeak = leak, !o.keep(faults, err, "")
}

// excavate is the pit: down to the roof, or round the part that pit names.
func (o *output) excavate(in *input, faults *manway.InputErrors) {
	p := riser.Pit{Working: in.Working, Ground: in.Slope, Type: in.SoilType, Shored: in.Shored, Earth: in.Earth, Density: in.Density, Water: in.Groundwater}
	prefix := ""
	switch {
	case in.Pit != nil:
		p.Length, p.Width, p.Depth, p.Standing, p.Refill = in.Pit.Length, in.Pit.Width, in.Pit.Depth, in.Pit.Standing, in.Pit.Refill
		prefix = "pit."
	case in.Cover == nil || !(*in.Cover > 0):
		return
	case o.outside == 0:
		o.without = append(o.without, "pit: outside diameter of the riser")
		return
	default:
		p.Length, p.Depth = o.outside, *in.Cover
		p.Refill = math.Pi / 4 * o.outside.Times(o.outside).Times(*in.Cover) // the riser fills the middle
	}
	dig, err := riser.DigOf(p)
	o.dig, o.hasDig = dig, !o.keep(faults, err, prefix)
}

// load is what groundwater, soil and wheels do to the riser.
func (o *output) load(in *input, faults *manway.InputErrors) {
	if in.Light == nil && in.Wall == nil {
		return
	}
	if in.Cover == nil || o.bore == 0 || o.outside == 0 {
		o.without = append(o.without, "uplift and wall: cover, bore and outside diameter of the riser")
		return
	}
	if l := in.Light; l != nil {
		u, err := riser.UpliftOf(riser.Light{Outside: o.outside, Bore: o.bore, Flange: l.Flange, Base: *in.Cover, Closed: l.Closed, Mass: l.Mass,
			Soil: manway.Soil{Moist: in.Density}, Water: in.Groundwater, Anchors: l.Anchors, Factor: float64(l.Factor)})
		o.uplift, o.hasUplift = u, !o.keep(faults, err, "light.")
	}
	if l := in.Wall; l != nil {
		w := riser.Wall{Diameter: o.bore + l.Thickness, Thickness: l.Thickness, Modulus: l.Modulus, Poisson: float64(l.Poisson)}
		p, err := w.Press(riser.Surround{Depth: *in.Cover, Soil: manway.Soil{Moist: in.Density}, Water: in.Groundwater, Wheel: l.Wheel.Wheel, Away: l.Away, Reaction: l.Reaction})
		if o.keep(faults, err, "") {
			return
		}
		b, err := w.Buckling(l.Reaction)
		o.press, o.buckling, o.hasPress = p, b, !o.keep(faults, err, "wall.")
	}
}

// find is the place, the way to the truck and the uncovering.
func (o *output) find(in *input, faults *manway.InputErrors) {
	if in.Tie != nil {
		position, err := riser.Tie(*in.Tie).Position()
		o.position, o.hasTie = position, !o.keep(faults, err, "tie.")
	}
	if in.Hose != nil {
		h := riser.Hose(*in.Hose)
		if h.Section == 0 {
			h.Section = 25 * manway.Foot
		}
		run, err := h.Run()
		o.hose, o.hasHose = run, !o.keep(faults, err, "hose.")
	}
	if in.CoverDown != nil {
		across := o.outside
		if across == 0 {
			across = in.Port
		}
		u, err := riser.Uncover(riser.Buried{Diameter: across, Depth: *in.CoverDown, Surface: in.Surface, Earth: in.Earth})
		o.uncover, o.hasUncover = u, !o.keep(faults, err, "uncover.")
	}
}
