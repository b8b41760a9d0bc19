package lid

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
)

func weighRefused(l Lid) error { _, err := l.Weigh(); return err }

func TestLimitsOfLid(t *testing.T) {
	limit.Check(t, lids["disc"], func(l Lid) error { _, err := l.Volume(); return err },
		limit.Between("Diameter", 4*in, 10*manway.Foot),
		limit.Between("Thickness", 0.25*in, 24*in))
	plug := lids["stepped plug"]
	plug.Loss, plug.Measured = in, 100*manway.Pound
	limit.Check(t, plug, weighRefused,
		limit.Above("BottomDiameter", manway.Length(0)), limit.AtMost("BottomDiameter", 27*in),
		limit.Above("Flange", manway.Length(0)), limit.Below("Flange", 5*in),
		limit.AtLeast("Loss", manway.Length(0)), limit.Below("Loss", 5*in),
		limit.AtMost("Material", OfIron),
		limit.AtMost("Moisture", Soaked),
		limit.Between("Absorption", 0, 0.15),
		limit.Between("Measured", 0.5*manway.Pound, 20000*manway.Pound),
		limit.Between("Pieces", 0, 20),
		limit.Between("Overburden.Depth", 0, 20*manway.Foot))
	slab := lids["tapered slab"]
	limit.Check(t, slab, weighRefused,
		limit.Between("Width", 4*in, 30*in),
		limit.Above("BottomLength", manway.Length(0)), limit.AtMost("BottomLength", 30*in),
		limit.Above("BottomWidth", manway.Length(0)), limit.AtMost("BottomWidth", 20*in))
	limit.Check(t, Lid{Shape: Slab, Length: 30 * in, Width: 4 * in, Thickness: 4 * in}, weighRefused, limit.Between("Length", 4*in, 20*manway.Foot))
	limit.Refuses(t, slab, weighRefused, "Shape", func(l *Lid) { l.Shape = SteppedSlab + 1 })
	limit.Refuses(t, slab, weighRefused, "Diameter", func(l *Lid) { l.Diameter = in })
	limit.Refuses(t, slab, weighRefused, "Measured", func(l *Lid) { l.Material = OfIron })
}

func TestLimitsOfRecess(t *testing.T) {
	l := lids["slab"]
	l.Recesses = []Recess{{Diameter: 2 * in, Depth: in, Count: 2}}
	limit.Check(t, l, weighRefused,
		limit.Above("Recesses[0].Diameter", manway.Length(0)), limit.Below("Recesses[0].Diameter", 20*in),
		limit.AtLeast("Recesses[0].Depth", manway.Length(0)), limit.Below("Recesses[0].Depth", 4*in),
		limit.Between("Recesses[0].Count", 0, 50))
	limit.Refuses(t, l, weighRefused, "Recesses", func(l *Lid) { l.Recesses = []Recess{{Diameter: 19 * in, Count: 50}} })
	l.Recesses = []Recess{{Length: 4 * in, Width: 2 * in, Depth: in}}
	limit.Check(t, l, weighRefused,
		limit.Above("Recesses[0].Length", manway.Length(0)), limit.Below("Recesses[0].Length", 30*in),
		limit.Above("Recesses[0].Width", manway.Length(0)), limit.Below("Recesses[0].Width", 20*in))
}

// seated is the argument of Sit by the name in its faults.
type seated struct{ Seat Seat }

func sitRefused(x seated) error { _, err := lids["disc"].Sit(x.Seat); return err }

func thickRefused(x seated) error {
	_, err := Lid{Shape: Disc, Diameter: 48 * in, Thickness: 24 * in}.Sit(x.Seat)
	return err
}

func TestLimitsOfSeat(t *testing.T) {
	s := Seat{Fit: OnTop, Opening: 20 * in, Gap: in / 4, GapKnown: true, Friction: Friction{0.6, 0.8}, Chips: []Chip{{Along: in, In: in, Height: in}}}
	limit.Check(t, seated{s}, sitRefused,
		limit.Between("Seat.Opening", 0, 10*manway.Foot),
		limit.Between("Seat.Gap", 0, 12*in),
		limit.Between("Seat.Friction.Low", 0.05, 0.8),
		limit.Between("Seat.Friction.High", 0.05, 1.5),
		limit.Between("Seat.DrivenBy", 0, 20000*manway.Pound),
		limit.AtMost("Seat.Chips", 50),
		limit.Between("Seat.Chips[0].Along", 0, 20*manway.Foot),
		limit.Between("Seat.Chips[0].In", 0, 10*manway.Foot),
		limit.Between("Seat.Chips[0].Height", 0, 24*in))
	limit.Check(t, seated{Seat{Fit: OnTop}}, sitRefused, limit.Between("Seat.OpeningLong", 0, 20*manway.Foot))
	limit.Check(t, seated{Seat{Fit: OnTop}}, sitRefused, limit.AtMost("Seat.Depth", 3*in)) // the thickness of the lid
	limit.Check(t, seated{Seat{Fit: LetIn}}, thickRefused, limit.Between("Seat.Depth", 0, 24*in))
	limit.Check(t, seated{Seat{Fit: Step}}, func(x seated) error { _, err := lids["stepped plug"].Sit(x.Seat); return err }, limit.AtMost("Seat.Fit", Step))
	limit.Refuses(t, seated{s}, sitRefused, "Seat.OpeningLong", func(x *seated) { x.Seat.OpeningLong = 19 * in })
	limit.Refuses(t, seated{s}, sitRefused, "Seat.Fit", func(x *seated) { x.Seat.Fit = Bevel }) // a disc has none
}

func TestLimitsOfMoving(t *testing.T) {
	c := MoveCase{Crew: Crew{People: 2, Limit: 50 * manway.Pound}, Bar: Bar{4 * in, 44 * in}, HandHeight: 40 * in}
	limit.Check(t, c, func(c MoveCase) error { _, err := lids["disc"].Move(c); return err },
		limit.Between("Crew.People", 0, 6),
		limit.Between("Crew.Limit", 5*manway.Pound, 200*manway.Pound),
		limit.Between("Bond", 0, 5000*manway.PoundForce),
		limit.Between("Bar.LoadArm", 0.5*in, 24*in),
		limit.Between("Bar.EffortArm", manway.Foot, 8*manway.Foot),
		limit.Between("HandHeight", in, 7*manway.Foot),
		limit.Between("Slings.Legs", 0, 4),
		limit.Between("Slings.Lean", 0, 60*manway.Degree),
		limit.Between("Below", 0, 6*manway.Foot),
		limit.AtMost("Edition", MetricEdition),
		limit.AtMost("Grip", GoodGrip))
	limit.Refuses(t, c, func(c MoveCase) error { _, err := lids["disc"].Move(c); return err }, "Outside", func(c *MoveCase) { c.Outside = endOfOutside })
}

func TestLimitsOfLifting(t *testing.T) {
	l := Lift{Load: 40 * manway.Pound, Origin: Hands{15 * in, 20 * in, 0}, Destination: Hands{15 * in, 30 * in, 0}, Frequency: 1}
	limit.Check(t, l, func(l Lift) error { _, err := l.Limit(); return err },
		limit.AtMost("Edition", MetricEdition),
		limit.Between("Load", 0, 20000*manway.Pound),
		limit.Between("Origin.Horizontal", 0, 6*manway.Foot),
		limit.Between("Origin.Vertical", 0, 8*manway.Foot),
		limit.Between("Destination.Turn", 0, 180*manway.Degree),
		limit.Between("Frequency", 0.0, 60),
		limit.AtMost("Spell", LongSpell),
		limit.AtMost("Grip", GoodGrip))
	limit.Refuses(t, l, func(l Lift) error { _, err := l.Limit(); return err }, "Outside", func(l *Lift) { l.Outside = endOfOutside })
	type tasks struct {
		Tasks []Task
		Spell Spell
	}
	limit.Check(t, tasks{[]Task{{20 * manway.Pound, 30 * manway.Pound, 1}}, ShortSpell}, func(x tasks) error { _, _, err := CompositeIndex(x.Tasks, x.Spell, false); return err },
		limit.Between("Tasks", 1, 10),
		limit.AtMost("Spell", LongSpell),
		limit.Between("Tasks[0].Load", 0, 20000*manway.Pound),
		limit.Between("Tasks[0].Free", 0.1*manway.Pound, 51*manway.Pound),
		limit.Between("Tasks[0].Frequency", 0.0, 60))
	type spell struct{ Work, Rest manway.Duration }
	limit.Check(t, spell{manway.Hour, manway.Hour}, func(x spell) error { _, err := SpellOf(x.Work, x.Rest); return err },
		limit.Between("Work", 0, 8*manway.Hour), limit.Between("Rest", 0, 24*manway.Hour))
	type rate struct {
		PerMinute float64
		Lifting   manway.Duration
	}
	limit.Check(t, rate{10, 8 * manway.Minute}, func(x rate) error { _, err := AverageRate(x.PerMinute, x.Lifting); return err },
		limit.Between("PerMinute", 0.0, 60), limit.Between("Lifting", 0, 15*manway.Minute))
	limit.Check(t, Filter{}, func(f Filter) error { _, err := f.Limit(); return err },
		limit.AtMost("Zone", AboveShoulder), limit.Between("Turn", 0, 180*manway.Degree), limit.Between("Frequency", 0.0, 60))
}

func TestLimitsOfPulling(t *testing.T) {
	limit.Check(t, SidePull{20 * manway.PoundForce, 30 * manway.Foot, 6 * in}, func(p SidePull) error { _, err := p.Tension(); return err },
		limit.Between("Side", 0, 500*manway.PoundForce),
		limit.Between("Span", manway.Foot, 100*manway.Foot),
		limit.Above("Moved", manway.Length(0)), limit.AtMost("Moved", 3*manway.Foot))
	limit.Check(t, manway.Kip, func(f manway.Force) error { _, err := HoleCoverLoad(f); return err }, limit.Between("Failure", 0, 1000*manway.Kip))
}

func TestLimitsOfHandle(t *testing.T) {
	type input struct{ Handle Handle }
	x := input{Handle{State: HandleSound, Waist: 0.5 * in, AsMade: 2 * in, Legs: 2, Spacing: 6 * in, Embedment: 2 * in, Edge: 6 * in, Yield: 36000 * manway.PSI, Tensile: 58000 * manway.PSI, Load: 100 * manway.PoundForce}}
	limit.Check(t, x, func(x input) error { _, err := lids["disc"].CheckHandle(x.Handle); return err },
		limit.AtMost("Handle.State", HandleMissing),
		limit.Between("Handle.Waist", in/16, 2*in),
		limit.Between("Handle.AsMade", in/8, 2*in),
		limit.Between("Handle.Legs", 0, 2),
		limit.Between("Handle.Spacing", 0, 3*manway.Foot),
		limit.Between("Handle.Embedment", 0.5*in, 3*in), // the thickness of the lid
		limit.Between("Handle.Edge", 0, 10*manway.Foot),
		limit.Between("Handle.Yield", 24000*manway.PSI, 100000*manway.PSI),
		limit.Between("Handle.Tensile", 40000*manway.PSI, 150000*manway.PSI),
		limit.Between("Handle.Load", 0, 20000*manway.PoundForce))
}

func TestLimitsOfGuard(t *testing.T) {
	type input struct {
		Guard Guard
		Rules []GuardRule
	}
	x := input{Guard{Opening: 20 * in, DepthKnown: true}, GuardRules()[:3]}
	limit.Check(t, x, func(x input) error { _, err := lids["disc"].CheckGuard(x.Guard, x.Rules); return err },
		limit.Between("Guard.Opening", in, 10*manway.Foot),
		limit.Between("Guard.Depth", 0, 20*manway.Foot),
		limit.AtMost("Guard.Fastened", manway.Yes),
		limit.Between("Rules", 1, 16))
	byRules := func(x input) error { _, err := lids["disc"].CheckGuard(x.Guard, x.Rules); return err }
	heavy := input{x.Guard, []GuardRule{{Code: "heavy", AnyOf: ByWeight, Weight: 30}}}
	limit.Check(t, heavy, byRules, limit.Between("Rules[0].OpeningOver", 0, mostWidth), limit.Between("Rules[0].DepthUnder", 0, 20*manway.Foot),
		limit.Between("Rules[0].Weight", 0, 20000*manway.Pound), limit.AtMost("Rules[0].Binding", Repealed), limit.AtMost("Rules[0].AnyOf", ByLock|ByFastener|ByWeight))
	limit.Refuses(t, x, byRules, "Rules[0].Code", func(x *input) { x.Rules = []GuardRule{{}} })
}

func TestLimitsOfStrength(t *testing.T) {
	limit.Check(t, BendCase{Span: 20 * in}, func(c BendCase) error { _, err := lids["disc"].Bend(c); return err }, limit.Between("Span", 2*in, 24*in))
	limit.Check(t, BendCase{Span: 18 * in, Long: 26 * in}, func(c BendCase) error { _, err := lids["slab"].Bend(c); return err }, limit.Between("Long", 2*in, 30*in))
	c := StrengthCase{Seat: Seat{Fit: OnTop, Opening: 20 * in}, Wheels: []manway.Wheel{manway.PickupWheel}}
	limit.Check(t, c, func(c StrengthCase) error { _, err := lids["disc"].Strength(c); return err },
		limit.Between("People", 0, 10),
		limit.Between("Gear", 0, 2000*manway.Pound),
		limit.Between("Fall", 0, 20*manway.Foot),
		limit.AtMost("Wheels", 6))
	limit.Refuses(t, c, func(c StrengthCase) error { _, err := lids["disc"].Strength(c); return err }, "Steel.State", func(c *StrengthCase) { c.Steel.State = manway.SteelKnown + 1 })
}

func TestLimitsOfWear(t *testing.T) {
	w := Wear{Protected: 4 * in, Now: 3 * in, Age: 30 * manway.Year}
	limit.Check(t, w, func(w Wear) error { _, err := w.Loss(); return err },
		limit.Between("Protected", 0.5*in, 60*in),
		limit.Between("Now", 0, 4*in),
		limit.Between("Age", manway.Year, 150*manway.Year),
		limit.Between("Reading", 0, in))
	loss := must(w.Loss())
	limit.Check(t, 2*in, func(x manway.Length) error { _, err := loss.Until(x); return err }, limit.Between("Limit", 0, 4*in))
	limit.Check(t, Sulfide{0.4, 0.1, 0.2}, func(s Sulfide) error { _, _, err := s.PerYear(); return err },
		limit.Between("Reaction", 0.1, 1), limit.Between("Flux", 0.0, 10), limit.Between("Alkalinity", 0.05, 1))
	type bar struct{ AsMade, Waist manway.Length }
	limit.Check(t, bar{0.5 * in, 0.4 * in}, func(b bar) error { _, err := WornBar(b.AsMade, b.Waist); return err },
		limit.Between("AsMade", 0.05*in, 2*in), limit.Between("Waist", 0, 0.5*in))
	type air struct {
		Metal Metal
		Class AirClass
		Age   manway.Duration
	}
	limit.Check(t, air{Steel, C3, 20 * manway.Year}, func(x air) error { _, err := AirLoss(x.Metal, x.Class, x.Age); return err },
		limit.AtMost("Metal", Zinc), limit.Between("Class", C1, CX), limit.Between("Age", manway.Year, 100*manway.Year))
}
