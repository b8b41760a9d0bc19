package visit

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

// picks are the picks in the root package's terms.
func (t Tried) picks() manway.Inspection {
	return manway.Inspection{Sounding: t.Sound, Probe: t.Screwdriver, Bars: t.Bars}
}

// picked reports whether anything was tried.
func (t Tried) picked() bool { return t.picks() != manway.Inspection{} }

// words are the picks as a person says them: hollow under the hammer.
func (t Tried) words() string {
	var list []string
	if t.Sound != manway.NotSounded {
		list = append(list, t.Sound.String()+" under the hammer")
	}
	if t.Screwdriver != manway.NotProbed {
		list = append(list, "screwdriver "+t.Screwdriver.String())
	}
	if t.Bars != manway.BarsNotLooked {
		list = append(list, "bars "+t.Bars.String())
	}
	if len(list) == 0 {
		return "neither sounded nor probed, so taken as dull"
	}
	return strings.Join(list, ", ")
}

// RoofTried is what of a concrete roof does not count.
type RoofTried struct {
	manway.Unsound
	Used bool // the roof's loss was not measured, and picks stand for it
}

// tryRoof finds what picks stand for at the roof.
func (v *Visit) tryRoof() error {
	t := v.Survey.Tank
	if t.RoofLoss.Taken || t.Material != tank.ConcreteShell || v.Tank.Spec.Roof < manway.Inch {
		return nil
	}
	var err error
	v.RoofTried.Used = true
	v.RoofTried.Unsound, err = t.RoofTried.picks().Unsound(v.Tank.Spec.Roof, t.BarCover)
	return err
}

// counted is the steel that counts after what was seen of it: stained bars with
// less area, thinned ones not at all.
func (r RoofTried) counted(steel manway.Reinforcement) manway.Reinforcement {
	if !r.Used || steel.State != manway.SteelKnown || r.Bars == 1 {
		return steel
	}
	if r.Bare {
		return manway.Reinforcement{}
	}
	return steel.WithArea(r.Bars)
}

// roofLoss is the thickness of the roof that does not count.
func (v *Visit) roofLoss() manway.Length {
	if v.RoofTried.Used {
		return v.RoofTried.Depth
	}
	return v.Survey.Tank.RoofLoss.Length
}

// unsoundWeight is the weight of the concrete that does not count and still hangs
// there.
func (v *Visit) unsoundWeight() manway.Pressure {
	if !v.RoofTried.Used {
		return 0
	}
	concrete, _ := v.Survey.Tank.concrete().Filled()
	return manway.Pressure(float64(concrete.Density) * manway.StandardGravity * float64(v.RoofTried.Depth))
}

// tryLid takes what picks stand for off a concrete lid whose loss was not
// measured; its weight stays as made.
func (out *AccessAnswer) tryLid(a Access, t Tank, strong *lid.Lid) error {
	if a.Lid.Loss.Taken || a.Lid.Material != lid.OfConcrete || a.Lid.Thickness < manway.Inch {
		return nil
	}
	var err error
	if out.Tried, err = a.Lid.Tried.picks().Unsound(a.Lid.Thickness, 0); err != nil {
		return err
	}
	strong.Loss = out.Tried.Depth
	return nil
}

// tryRiser is the concrete lost and the steel laid bare at a riser, as picks that
// were made stand for them. Nothing is taken where nobody tried: a defect wants to
// be seen.
func (a Access) tryRiser(spall manway.Reading, exposed manway.Answer) (manway.Reading, manway.Answer) {
	thick := a.Seen.Sound.Length
	if thick == 0 {
		thick = a.Riser.Wall
	}
	if !a.Riser.Tried.picked() || thick < manway.Inch {
		return spall, exposed
	}
	u, err := a.Riser.Tried.picks().Unsound(thick, 0)
	if err != nil {
		return spall, exposed // refused with the survey
	}
	if !spall.Taken {
		spall = manway.Read(u.Depth)
	}
	if exposed == manway.Unknown && u.Bare {
		exposed = manway.Yes
	}
	return spall, exposed
}

// standIns says what stands for a measurement, part by part.
func (v Visit) standIns() []string {
	sys := v.Survey.Units
	var list []string
	say := func(part string, t Tried, depth manway.Length, atLeast bool) {
		least := ""
		if atLeast {
			least = "at least "
		}
		list = append(list, fmt.Sprintf("Stands for a measurement: %s, %s: %s%s of the concrete is not counted.", part, t.words(), least, short(depth.Text(sys))))
	}
	t := v.Survey.Tank
	if t.Roof == 0 {
		if thick, ok := t.RoofEdge.Thickness(); ok {
			list = append(list, fmt.Sprintf("Stands for a measurement: the edge at the opening, %s: a roof of %s.", t.RoofEdge, short(thick.Text(sys))))
		}
	}
	if v.RoofTried.Used {
		say("roof", t.RoofTried, v.RoofTried.Depth, v.RoofTried.AtLeast)
	}
	for i, a := range v.Survey.Accesses {
		r := v.Accesses[i]
		if r.HasLid && r.Tried != (manway.Unsound{}) {
			say("lid of "+a.Name, a.Lid.Tried, r.Tried.Depth, r.Tried.AtLeast)
		}
		if spall, _ := a.tryRiser(a.Seen.Spall, a.Seen.SteelExposed); spall != a.Seen.Spall {
			say("riser of "+a.Name, a.Riser.Tried, spall.Length, false)
		}
	}
	return list
}
