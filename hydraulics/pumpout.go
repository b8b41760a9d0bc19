package hydraulics

import (
	"strconv"

	"manway.example/manway"
)

// Keep is one reason not to go below a level in any compartment, such as
// flotation or an empty wall. The level is worked out elsewhere (package tank);
// here it is a plain value.
type Keep struct {
	Name    string             // what it guards: "flotation", "walls"
	Judged  bool               // false: nobody could say
	Level   manway.Length      // least level above the floor where Judged; 0: shown down to the floor
	Assumed manway.Assumptions // what the level rests on
}

// Divider is the partition between two compartments.
type Divider struct {
	Port       manway.Reading // invert of the transfer opening above the floor; the fuller side drains down to it. Not taken: no opening is counted
	Judged     bool           // Difference is known
	Difference manway.Length  // greatest difference of level that it is shown to carry; 0: none
}

// Case is a tank to be pumped: compartments from the inlet to the outlet and
// the dividers between them.
type Case struct {
	Outlet       manway.Length // outlet invert above the floor
	Compartments []Compartment // 1 to 4
	Dividers     []Divider     // one fewer
	Keeps        []Keep
}

// HeldBy says what ends the draw-down of a compartment.
type HeldBy uint8

// What may end it.
const (
	HeldByNothing   HeldBy = iota // it is drawn to the floor
	HeldByKeep                    // the level not to go below
	HeldByPartition               // the partition is not shown to carry more difference
	HeldByOpening                 // it was not opened, or only at a cleanout
)

var heldBy = [...]string{"drawn to the floor", "level not to go below", "partition", "not opened for pumping"}

// String is the reason in words.
func (h HeldBy) String() string { return manway.Word(heldBy[:], h) }

// MarshalText is the same as String.
func (h HeldBy) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// CompartmentPlan is the plan for one compartment.
type CompartmentPlan struct {
	Name      string
	State     Opening
	Reason    string
	Capacity  manway.Volume // below the outlet, by shape
	Now       Split         // as found; not known where it was not opened
	AtOutlet  Split         // the same solids with the surface at the outlet
	From, To  manway.Length // levels before and after; From is the outlet where the level was not read
	LevelRead bool
	InRiser   bool          // the surface stood above the roof: liquid in the riser is not counted
	Remove    manway.Volume // leaves it: pumped, or drained through the port to the compartment beside
	Stays     manway.Volume // stays in it; where it was not opened, at most so much
	HeldBy    HeldBy
}

// Ticket is the line on the ticket.
func (c CompartmentPlan) Ticket(s manway.System) string {
	if c.State != Opened {
		why := c.Reason
		if why == "" {
			why = "no reason given"
		}
		line := c.Name + ": " + c.State.String() + " (" + why + "), not pumped, holds up to " + c.Capacity.Text(s)
		if c.State == CleanoutOnly {
			line += "; a cleanout is for looking and rodding"
		}
		return line
	}
	line := c.Name + ": remove " + c.Remove.Text(s) + ", from " + c.From.Text(s) + " to " + upTo(c.To, s).Text(s)
	if c.HeldBy != HeldByNothing {
		line += ", held by " + c.HeldBy.String()
	}
	if c.InRiser {
		line += "; the level stood in the riser, and what was in there comes on top"
	}
	return line
}

// Step is one draw of the hose: a compartment from one level to another.
type Step struct {
	Compartment int
	From, To    manway.Length
}

// Line is the step for the crew, the level rounded up.
func (p Plan) Line(step Step, s manway.System) string {
	name := "compartment " + strconv.Itoa(step.Compartment+1)
	if step.Compartment >= 0 && step.Compartment < len(p.Compartments) {
		name = p.Compartments[step.Compartment].Name
	}
	return name + " from " + step.From.Text(s) + " to " + upTo(step.To, s).Text(s)
}

// Plan is a pump-out.
type Plan struct {
	Compartments []CompartmentPlan
	Steps        []Step             // in order
	Together     bool               // more than 24 steps would be needed: draw all opened compartments down together, no further apart than Apart
	Apart        manway.Length      // greatest difference of level between two compartments on the way, as planned
	Now          Split              // of what was opened
	Remove       manway.Volume      // gallons for the truck
	Stays        manway.Volume      // at most, where a compartment was not opened
	Keep         manway.Length      // level not to go below, 0 where none is
	KeepName     string             // what sets it
	KeepAssumed  manway.Assumptions // what that rests on
	KeepJudged   bool               // every keep given was judged, and one was given
	NotJudged    []string           // names of the keeps that were not
	Clean        manway.Volume      // below the outlet of the compartments that are pumped, less the solids that stay: what the next interval counts on
	Assumed      manway.Assumptions
	Cautions     manway.Cautions
}

// mostSteps is how many draws a crew is asked to count.
const mostSteps = 24

// workingDifference is kept between compartments where the partition was not
// judged: common practice, about what a hose moves in a minute or two.
const workingDifference = 12 * manway.Inch

// PumpOut plans the pump-out of a tank.
//
// Gallons come from the tank's real shape. A compartment whose level was not
// read is taken full to the outlet; one that was not opened has no gallons of
// its own, only its capacity. The draw-down goes by turns, fullest compartment
// first, and never further below the one beside it than the partition is shown
// to carry, or 12 in where that was not judged. A compartment that is not
// pumped drains through the port down to its invert and no further. No level
// goes below the highest of the judged keeps; keeps that were not judged are
// named, with the caution that an emptied tank may float or cave.
//
// Errors: [manway.InputErrors] with every fault. Source: common practice of
// the trade; code of practice of NAWT: every compartment through its own
// manway, not through a cleanout or the baffle.
func (c Case) PumpOut() (Plan, error) {
	if err := c.Validate(); err != nil {
		return Plan{}, err
	}
	p := Plan{
		Compartments: make([]CompartmentPlan, len(c.Compartments)),
		Now:          Split{Known: true, LayersKnown: true},
		Cautions:     manway.NeverEnter | manway.GuardHole | manway.GasAndIgnition | manway.Pathogens | manway.LicensedWork | manway.NotAnInspection,
	}
	p.keeps(c.Keeps)
	levels := make([]manway.Length, len(c.Compartments))
	for i, in := range c.Compartments {
		p.Compartments[i] = p.found(in, c.Outlet)
		levels[i] = p.Compartments[i].From
	}
	p.drawDown(c, levels)
	for i := range p.Compartments {
		p.finish(&p.Compartments[i], c.Compartments[i], levels[i])
	}
	return p, nil
}

// keeps takes the highest of the levels not to go below.
func (p *Plan) keeps(keeps []Keep) {
	p.KeepJudged = len(keeps) > 0
	for _, k := range keeps {
		p.Assumed |= k.Assumed
		if !k.Judged {
			p.KeepJudged = false
			p.NotJudged = append(p.NotJudged, k.Name)
			continue
		}
		if k.Level > p.Keep {
			p.Keep, p.KeepName, p.KeepAssumed = k.Level, k.Name, k.Assumed
			p.Cautions |= manway.DoNotEmpty
		}
	}
	if !p.KeepJudged {
		p.Cautions |= manway.MayFloat | manway.MayCave
	}
}

// found is what stands in one compartment.
func (p *Plan) found(in Compartment, outlet manway.Length) CompartmentPlan {
	out := CompartmentPlan{Name: in.Name, State: in.State, Reason: in.Reason, LevelRead: in.Level.Taken, From: outlet}
	out.Capacity, _ = in.Shape.Volume(outlet)
	if in.Level.Taken {
		top := in.height()
		out.From, out.InRiser = min(in.Level.Length, top), in.Level.Length > top
	} else {
		p.Assumed |= manway.AssumedFullTank
	}
	if in.State == NotOpened {
		return out
	}
	out.Now, out.AtOutlet = in.layers(out.From), in.layers(outlet)
	p.Now = p.Now.Plus(out.Now)
	return out
}

// drawDown lowers the levels by turns and writes down the steps.
func (p *Plan) drawDown(c Case, levels []manway.Length) {
	for {
		best := -1
		for i := range levels {
			if c.Compartments[i].State == Opened && levels[i]-c.lowest(i, levels, p.Keep) > manway.Inch/16 &&
				(best < 0 || levels[i] > levels[best]+manway.Inch/64) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		to := c.lowest(best, levels, p.Keep)
		p.Steps = append(p.Steps, Step{best, levels[best], to})
		levels[best] = to
		c.drain(levels)
		for j := range c.Dividers {
			d := levels[j] - levels[j+1]
			p.Apart = max(p.Apart, d, -d)
		}
	}
	if len(p.Steps) > mostSteps {
		p.Steps, p.Together = nil, true
	}
	if p.Apart > 0 {
		p.Cautions |= manway.UnequalLevels
	}
}

// lowest is how far compartment i may be drawn now: the one beside it has run
// down to the port by then.
func (c Case) lowest(i int, levels []manway.Length, keep manway.Length) manway.Length {
	low := keep
	for _, j := range [...]int{i - 1, i + 1} {
		if j < 0 || j >= len(levels) {
			continue
		}
		d := c.Dividers[min(i, j)]
		beside := levels[j]
		if d.Port.Taken {
			beside = min(beside, d.Port.Length)
		}
		apart := workingDifference
		if d.Judged {
			apart = max(d.Difference, manway.Inch/8)
		}
		low = max(low, beside-apart)
	}
	return min(low, levels[i])
}

// drain lets the fuller side of every partition run down to its port.
func (c Case) drain(levels []manway.Length) {
	for range c.Dividers {
		for j, d := range c.Dividers {
			if !d.Port.Taken {
				continue
			}
			a, b := &levels[j], &levels[j+1]
			if *a > *b {
				*a = min(*a, max(d.Port.Length, *b))
			} else {
				*b = min(*b, max(d.Port.Length, *a))
			}
		}
	}
}

// finish writes what leaves and what stays.
func (p *Plan) finish(out *CompartmentPlan, in Compartment, level manway.Length) {
	out.To = level
	before, _ := in.Shape.Volume(out.From)
	out.Stays, _ = in.Shape.Volume(level)
	out.Remove = before - out.Stays
	switch {
	case in.State != Opened:
		out.HeldBy = HeldByOpening
		p.Cautions |= manway.UnequalLevels
	case level > p.Keep+manway.Inch/16:
		out.HeldBy = HeldByPartition
	case p.Keep > 0:
		out.HeldBy = HeldByKeep
	}
	if in.State == Opened {
		p.Clean += max(out.Capacity-in.solidsBelow(level), 0)
	}
	p.Remove += out.Remove
	p.Stays += out.Stays
}

// solidsBelow is what of the solids stays when the level is drawn down: the
// sludge under it, or all that stays where the sludge was not measured.
func (c Compartment) solidsBelow(level manway.Length) manway.Volume {
	if c.Sludge.Taken {
		level = min(level, c.Sludge.Length)
	}
	v, _ := c.Shape.Volume(level)
	return v
}

// AtRate is how long the plan takes at the truck's own usual rate of 1 to
// 10,000 gal/min, where hose and lift are not known.
//
// Source: volume over flow, at the rate that the truck is said to have.
func (p Plan) AtRate(usual manway.Flow) (manway.Duration, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Usual", usual, 1*manway.GallonPerMinute, 10000*manway.GallonPerMinute)
	manway.Within(&faults, "Remove", p.Remove, 0, 1e6*manway.Gallon)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return manway.Duration(float64(p.Remove) / float64(usual)), nil
}

// Basis lists the sources of the plan.
func (Plan) Basis() []manway.Citation {
	return []manway.Citation{{Source: nawt, Place: "pumping every compartment"}, {Source: manway.Practice, Place: "order and draw-down"}}
}

// Working is the gallons step by step.
func (p Plan) Working(s manway.System) manway.Working {
	var w manway.Working
	for _, c := range p.Compartments {
		w = append(w, manway.Step{
			Symbol: c.Name + " remove", Formula: "V(from) - V(to)",
			Numbers: "V(" + c.From.Text(s) + ") - V(" + c.To.Text(s) + ")", Value: c.Remove.Text(s),
		})
	}
	return append(w, manway.Step{Symbol: "for the truck", Formula: "sum of the compartments", Value: p.Remove.Text(s)})
}

// Validate returns the faults of c.
func (c Case) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Compartments", len(c.Compartments), 1, 4)
	if n := len(c.Compartments); n > 0 {
		manway.Within(&faults, "Dividers", len(c.Dividers), n-1, n-1)
	}
	manway.Within(&faults, "Outlet", c.Outlet, 6*manway.Inch, 30*manway.Foot)
	for i, in := range c.Compartments {
		var of manway.InputErrors
		level := c.Outlet
		if in.Shape != nil && in.Shape.Full() > 0 && !(c.Outlet <= in.height()) {
			of.Add("Shape", in.height().String()+" high", "a compartment that reaches the outlet at "+c.Outlet.String())
			level = 0
		}
		in.validate(&of, level)
		faults.Under(indexed("Compartments", i), of.Err())
	}
	for i, d := range c.Dividers {
		var of manway.InputErrors
		d.Port.Within(&of, "Port", 0, 30*manway.Foot)
		if d.Judged {
			manway.Within(&of, "Difference", d.Difference, 0, 30*manway.Foot)
		}
		faults.Under(indexed("Dividers", i), of.Err())
	}
	for i, k := range c.Keeps {
		if k.Judged {
			manway.Within(&faults, "Keeps["+strconv.Itoa(i)+"].Level", k.Level, 0, 30*manway.Foot)
		}
	}
	return faults.Err()
}
