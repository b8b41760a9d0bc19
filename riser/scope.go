package riser

import (
	"strconv"

	"manway.example/manway"
)

// hours is the labour of one task, per piece, foot, and so on.
type hours struct {
	code  string
	each  float64 // labour hours for one
	crew  int
	basis manway.Citation
}

// tasks are the labour hours that scopes rest on. Where nothing was published
// the figure is common practice and says so; a contractor replaces it by its
// own.
var tasks = [...]hours{
	{"clean-joint", 0.10, 1, practice("0.10 labour hour a foot of joint to cut roots, scrape and dry")},
	{"seal-joint", 0.05, 1, practice("0.05 labour hour a foot of joint")},
	{"lift-ring", 1.25, 2, manway.Citation{Source: coverHours, Place: "remove a frame and cover: 1.25 labour hours each"}},
	{"set-ring", 1.0, 2, practice("1 labour hour a ring with a hoist")},
	{"fit-adapter", 2.0, 2, practice("2 labour hours an adapter, roof ground clean and dry")},
	{"fit-cover", 0.5, 2, practice("1/2 labour hour a cover")},
	{"fit-handle", 0.5, 1, practice("1/2 labour hour a handle")},
	{"fit-fasteners", 0.1, 1, practice("0.1 labour hour a fastener")},
	{"fit-guard", 0.5, 1, practice("1/2 labour hour a guard")},
	{"guard-opening", 0.5, 1, practice("1/2 labour hour for barrier, temporary cover and notice")},
	{"patch", 0.05, 1, manway.Citation{Source: storm2019, Place: "p. 55: patch and sack concrete 0.05 labour hour a ft2"}},
	{"place-concrete", 2.0 / 27, 2, manway.Citation{Source: storm2019, Place: "p. 55: place concrete in pedestals and walls 2 labour hours a yd3"}},
	{"cut-opening", 4.0, 2, practice("4 labour hours an opening, wet cut")},
	{"entry-supervisor", 0.5, 1, practice("1/2 hour for permit, gas tests and briefing")},
}

// scoper builds the scope of one remedy.
type scoper struct {
	s     Site
	items []Item
	wants []string // what could not be derived
	made  manway.Assumptions
}

func (b *scoper) want(what string) {
	for _, w := range b.wants {
		if w == what {
			return
		}
	}
	b.wants = append(b.wants, what)
}

// add is one line with its code's description, class and unit.
func (b *scoper) add(code string, quantity float64, working string, basis manway.Citation) {
	b.addCrew(code, quantity, 0, working, basis)
}

func (b *scoper) addCrew(code string, quantity float64, crew int, working string, basis manway.Citation) {
	if !(quantity > 0) {
		return
	}
	for _, c := range itemCodes {
		if c.Code == code {
			b.items = append(b.items, Item{c.Code, c.Description, c.Class, quantity, c.Unit, crew, working, basis})
			return
		}
	}
}

// each is pieces counted on site.
func (b *scoper) each(code string, n int, working string) {
	b.add(code, float64(n), working, practice("counted"))
}

// labour is the hours of n times a task.
func (b *scoper) labour(code string, n float64, of string) {
	for _, t := range tasks {
		if t.code == code {
			b.addCrew(code, n*t.each, t.crew, num(n)+" "+of+" x "+num(t.each)+" h", t.basis)
			return
		}
	}
}

// several is n of something, with its plural.
func several(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

func num(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) }

// sealant is strip and bead for joints of the riser, n of them.
func (b *scoper) sealant(n int) {
	j, ok := b.s.joint()
	if !ok {
		b.want("inside and outside diameter of the ring")
		return
	}
	feet := j.Length().In(manway.Foot) * float64(n)
	times := several(n, "joint") + " x pi x (" + j.Inside.Text(b.s.Units) + " + " + j.Outside.Text(b.s.Units) + ")/2"
	strip := Strip{Width: manway.Inch, Height: manway.Inch, Roll: 1000 * manway.Foot, Overlap: 2 * manway.Inch}
	need, err := j.Strip(strip)
	if err != nil {
		b.want("a sealant strip that suits the joint")
	} else {
		b.add("sealant-strip", need.Length.In(manway.Foot)*float64(n), times+" + 2 in overlap, "+several(need.Runs, "run")+" of 1 in strip", manway.Citation{Source: astmC990, Place: "half-volume rule"})
	}
	b.labour("seal-joint", feet, "ft of joint")
}

// bead is gunned sealant along the inner edge of the joint.
func (b *scoper) bead(outer bool) {
	j, ok := b.s.joint()
	if !ok {
		b.want("inside and outside diameter of the ring")
		return
	}
	along, of := j.InsideLength(), j.Inside
	if outer {
		along, of = j.OutsideLength(), j.Outside
	}
	volume := along.Times(j.Closed).Times(beadDepth)
	b.add("sealant-bead", volume.In(manway.CubicInch), "pi x "+of.Text(b.s.Units)+" x "+j.Closed.Text(b.s.Units)+" x "+beadDepth.Text(b.s.Units)+" deep", manway.Citation{Source: statics, Place: "volume of the bead"})
	b.labour("clean-joint", along.In(manway.Foot), "ft of joint")
	b.labour("seal-joint", along.In(manway.Foot), "ft of joint")
}

// beadDepth is how deep a bead is gunned into a joint: practice.
const beadDepth = manway.Inch / 2

// riser is the new riser: the chosen stack where suits accepts it, else by the
// foot of the code given.
func (b *scoper) riser(code string, suits func(Stack) bool) {
	n := 0
	if suits(b.s.Stack) {
		for _, p := range b.s.Stack.Pieces {
			b.items = append(b.items, Item{p.Code, "riser ring " + p.Height.Text(b.s.Units) + " high", Material, float64(p.Count), "EA", 0, b.s.Stack.String(), manway.Citation{Source: statics, Place: "ring stack"}})
			n += p.Count
		}
	}
	if n == 0 {
		if b.s.Height == 0 {
			b.want("height of the new riser")
			return
		}
		b.add(code, b.s.Height.In(manway.Foot), "reach of "+b.s.Height.Text(b.s.Units), manway.Citation{Source: statics, Place: "reach"})
		n = 1
	}
	b.labour("set-ring", float64(n), "ring of the stack")
	if code != "riser-plastic" {
		b.each("hoist", 1, "rings are not lifted by hand")
	}
	b.sealant(n)
}

func anyStack(s Stack) bool      { return len(s.Pieces) > 0 }
func concreteStack(s Stack) bool { return s.all(false) }
func plasticStack(s Stack) bool  { return s.all(true) }

// takeOff lifts off what stands there and hauls it away.
func (b *scoper) takeOff(haul bool) {
	if b.s.Standing > 0 {
		b.labour("lift-ring", float64(b.s.Standing), "ring that stands there")
	}
	if !haul {
		return
	}
	if b.s.StandingMass > 0 {
		b.add("debris-haul", b.s.StandingMass.In(manway.Pound), "old rings and cover", manway.Citation{Source: statics, Place: "ring weights"})
	} else if b.s.Standing > 0 {
		b.want("weight of the old rings and cover")
	}
}

// closing is a cover with its fasteners and the guard below it.
func (b *scoper) closing(code string) {
	if b.s.CoverCode != "" {
		b.items = append(b.items, Item{b.s.CoverCode, "cover chosen with the stack", Material, 1, "EA", 0, "one an access", practice("counted")})
	} else {
		b.each(code, 1, "one an access")
	}
	b.labour("fit-cover", 1, "cover")
	b.fasteners()
	b.guard()
}

// usualFasteners is how many fasteners a cover gets: practice.
const usualFasteners = 4

func (b *scoper) fasteners() {
	b.each("fastener", usualFasteners, "4 round the cover")
	b.labour("fit-fasteners", usualFasteners, "fastener")
}

func (b *scoper) guard() {
	b.each("guard-secondary", 1, "one an access")
	b.labour("fit-guard", 1, "guard")
}

// pump is pumping down before an entry.
func (b *scoper) pump() {
	if b.s.Liquid == 0 {
		b.want("gallons to pump down")
		return
	}
	b.add("pump-down", b.s.Liquid.In(manway.Gallon), "pumped down and rinsed", manway.Citation{Source: statics, Place: "liquid volume of the compartment"})
}

// entry is the whole scope of going in for work that takes work labour hours of
// one entrant: people, gear and permit.
func (b *scoper) entry(work float64) {
	permit := manway.Citation{Source: manway.OSHA1910, Place: "1910.146: permit, tests, ventilation, attendant, retrieval"}
	b.pump()
	b.addCrew("entrant", settle, 1, num(settle)+" h going in and out, beside the work itself", practice("1/2 hour going in and out"))
	b.addCrew("attendant", work+settle+vent, 1, num(work)+" h of work + "+num(settle)+" h going in and out + "+num(vent)+" h ventilation and tests", permit)
	b.labour("entry-supervisor", 1, "entry")
	for _, gear := range [...]string{"gas-meter", "blower", "retrieval"} {
		b.add(gear, 1, "one day", permit)
	}
	b.add("permit-entry", 1, "one entry", permit)
}

// Hours of an entry beside the work: practice.
const (
	settle = 0.5 // going in and out
	vent   = 1.0 // ventilation and gas tests before going in
)

// patching is mortar for spalls and plugging cement for the joint from inside,
// and its hours.
func (b *scoper) patching() (work float64) {
	before := len(b.items)
	if b.s.SpallArea > 0 && b.s.SpallDepth > 0 {
		b.add("repair-mortar", b.s.SpallArea.Times(b.s.SpallDepth).In(manway.CubicFoot), num(b.s.SpallArea.In(manway.SquareFoot))+" ft2 x "+b.s.SpallDepth.Text(b.s.Units), manway.Citation{Source: statics, Place: "area x depth"})
		b.labour("patch", b.s.SpallArea.In(manway.SquareFoot), "ft2")
	}
	if j, ok := b.s.joint(); ok {
		depth := min(j.Wall(), plugDepth)
		b.add("cement-plug", j.plug(depth, false).In(manway.CubicFoot), "pi x ("+j.Inside.Text(b.s.Units)+" + "+depth.Text(b.s.Units)+") x "+depth.Text(b.s.Units)+" x "+j.Closed.Text(b.s.Units), manway.Citation{Source: statics, Place: "volume of the joint"})
		b.labour("clean-joint", j.InsideLength().In(manway.Foot), "ft of joint")
		b.labour("seal-joint", j.InsideLength().In(manway.Foot), "ft of joint")
	} else {
		b.want("inside and outside diameter of the ring")
	}
	for _, item := range b.items[before:] {
		if item.Class == Labour {
			work += item.Quantity
		}
	}
	return work
}

// plugDepth is how deep plugging cement is pressed into a joint: practice.
const plugDepth = 1 * manway.Inch

// collar is a concrete collar round the joint outside, 6 in by 6 in: practice.
func (b *scoper) collar() {
	j, ok := b.s.joint()
	if !ok {
		b.want("inside and outside diameter of the ring")
		return
	}
	const side = 6 * manway.Inch
	ring := Joint{Inside: j.Outside, Outside: j.Outside + 2*side, Closed: 1}
	volume := ring.Length().Times(side).Times(side)
	b.add("concrete", volume.In(manway.CubicFoot), "pi x ("+j.Outside.Text(b.s.Units)+" + 6 in) x 6 in x 6 in", practice("collar of 6 in by 6 in round the joint"))
	b.add("wrap", j.OutsideLength().Times(manway.Foot).In(manway.SquareFoot), "pi x "+j.Outside.Text(b.s.Units)+" x 12 in", practice("wrap 12 in wide over the joint"))
	b.labour("place-concrete", volume.In(manway.CubicFoot), "ft3")
	b.add("wait-cure", 1, "one day before the fill is compacted", practice("one day"))
}
