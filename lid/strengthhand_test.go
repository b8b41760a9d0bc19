package lid

import (
	"math"
	lists "slices"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
)

// A lid spans from the middle of its bearing on one side to that on the other,
// and at most its own thickness more than the hole: the lesser of hole + what is
// left and (lid + hole)/2. A lid with bevelled sides bears in their middle; a hole
// that was not measured, or is as wide as the lid, is taken as the lid's width.
func TestSpansByHand(t *testing.T) {
	for _, c := range []struct {
		name       string
		lid        Lid
		hole, long float64 // in
		span       float64
		along      float64
	}{
		{"disc", disc24(), 20, 0, 22, 0}, {"small hole", disc24(), 10, 0, 12.75, 0}, {"not measured", disc24(), 0, 0, 24, 0}, {"as wide", disc24(), 24, 0, 24, 0},
		{"bevelled", lids["bevelled plug"], 22, 0, 23.5, 0}, {"stepped", lids["stepped plug"], 22, 0, 24.5, 0},
		{"slab", lids["slab"], 16, 24, 18, 27}, {"round hole", lids["slab"], 16, 0, 18, 20}, {"tapered", lids["tapered slab"], 14, 25, 16, 27.5},
		{"long hole not measured", lids["slab"], 0, 0, 20, 30},
	} {
		seat := Seat{Fit: OnTop, Opening: manway.Length(c.hole) * in, OpeningLong: manway.Length(c.long) * in}
		s := strengthOf(t, c.lid, StrengthCase{Seat: seat, Steel: quarterInchMesh()})
		if !close(s.Span.In(in), c.span, 1e-9) || !close(s.Long.In(in), c.along, 1e-9) {
			t.Errorf("%s: spans %v and %v in, want %v and %v", c.name, s.Span.In(in), s.Long.In(in), c.span, c.along)
		}
		open := lists.ContainsFunc(s.NotJudged, func(c manway.Check) bool { return c.Name == "opening" })
		if open != (c.hole == 0) || (s.Checks[0].Status == manway.NotJudged) != (c.hole == 0) {
			t.Errorf("%s: opening not judged %v, %+v", c.name, open, s.Checks[0])
		}
	}
}

// A lid is judged as a plate where 1/2 in is left and no more than half
// of the span.
func TestThicknessesThatAreJudged(t *testing.T) {
	for left, reason := range map[float64]string{0.499: "less than 1/2 in", 0.501: "", 3: "", 6: "", 11.99: "", 12.01: "thicker than half"} {
		l := Lid{Shape: Disc, Diameter: 24 * in, Thickness: manway.Length(left+1) * in, Loss: 1 * in}
		s := strengthOf(t, l, StrengthCase{Steel: manway.Reinforcement{}})
		why := ""
		for _, c := range s.NotJudged {
			if c.Name == "strength" {
				why = c.Reason
			}
		}
		if (reason == "") != (why == "") || !strings.HasPrefix(why, reason) || (len(s.Checks) > 1) != (reason == "") {
			t.Errorf("%v in left: %q, %d checks, want %q", left, why, len(s.Checks), reason)
		}
	}
}

// Demands by hand from the moments of the lid itself and of one person: 1.4 D, 1.2
// D + 1.6 L, the same with two people for a hard step, D + 2 n L over a hole where
// three people of 300 lb and gear of 150 lb are 3.5 persons, and D + (1 + sqrt(1 +
// 2 h/w)) L for a fall of h onto a lid that gives by w.
func TestDemandsByHand(t *testing.T) {
	c := StrengthCase{Seat: onTop(), Steel: quarterInchMesh(), People: 3, Gear: 150 * manway.Pound, Fall: 2 * manway.Foot}
	for name, l := range map[string]Lid{"disc": disc24(), "slab": lids["slab"]} {
		s := strengthOf(t, l, c)
		d, p, w := s.judged.response.dead, s.judged.response.person, s.judged.response.sink
		if !(d > 0 && p > 0 && w > 0) {
			t.Fatalf("%s: %+v", name, s.judged.response)
		}
		fall := 1 + math.Sqrt(1+2*2*0.3048/w)
		for check, want := range map[string][2]float64{
			"bending, own weight": {1.4 * d, d}, "bending, a person": {1.2*d + 1.6*p, d + p}, "bending, a hard step": {1.2*d + 3.2*p, d + 2*p},
			"hole cover: twice people and gear": {d + 7*p, d + 3.5*p}, "bending, a fall from 2 ft": {d + fall*p, d + p},
			"punching, a person": {1.6 * 300 * float64(manway.PoundForce), 300 * float64(manway.PoundForce)},
		} {
			got := named(t, s, check)
			if !close(got.Demand, want[0], 1e-9) || !close(got.Unfactored, want[1], 1e-9) {
				t.Errorf("%s, %s: %v and %v, want %v", name, check, got.Demand, got.Unfactored, want)
			}
		}
		bend, cover := named(t, s, "bending, a person"), named(t, s, "hole cover: twice people and gear")
		if !close(cover.Capacity, bend.Capacity/bend.Phi, 1e-9) || cover.Phi != 0 {
			t.Errorf("%s: a hole cover has %v, bending %v by phi %v", name, cover.Capacity, bend.Capacity, bend.Phi)
		}
		if weight := s.judged.weight; !close(float64(s.Dead), float64(weight.Heaviest)*manway.StandardGravity, 1e-12) {
			t.Errorf("%s: weighs %v", name, s.Dead)
		}
	}
	// Soil on the lid counts by its own weight: 2 ft of 120 lb/ft3 on 37.5 lbf/ft2 of lid.
	l := disc24()
	l.Overburden = Overburden{Depth: 2 * manway.Foot, Soil: manway.Soil{Moist: 120 * manway.PoundPerCubicFoot, Saturated: 130 * manway.PoundPerCubicFoot}}
	s := strengthOf(t, l, c)
	if q := manway.Pressure(s.judged.q).In(manway.PSF); !close(q, 37.5+240, 1e-9) {
		t.Errorf("the lid and the soil on it are %v lbf/ft2", q)
	}
	if area := math.Pi / 4 * 4; !close(s.Dead.In(manway.PoundForce), area*277.5, 1e-9) {
		t.Errorf("they weigh %v", s.Dead)
	}
}

// Punching by hand: 0.75 x 4 sqrt(4000) bo d, with bo 4 (c + d) round a boot of c =
// 3 sqrt(pi) in, and 3 c + 2 d at a side that bears nothing or at a hole.
func TestPunchingByHand(t *testing.T) {
	holed := disc24()
	holed.Recesses = []Recess{{Diameter: 2 * in, Depth: 1 * in}}
	chipped := onTop()
	chipped.Chips = chipsOf(3 * in)
	side, d := 3*math.Sqrt(math.Pi), 1.875
	for _, c := range []struct {
		name string
		lid  Lid
		seat Seat
		bo   float64
	}{{"whole", disc24(), onTop(), 4 * (side + d)}, {"pocket", holed, onTop(), 3*side + 2*d}, {"chipped", disc24(), chipped, 3*side + 2*d}} {
		s := strengthOf(t, c.lid, StrengthCase{Seat: c.seat, Steel: quarterInchMesh()})
		if got, want := named(t, s, "punching, a person").Capacity/float64(manway.PoundForce), 0.75*4*math.Sqrt(4000)*c.bo*d; !close(got, want, 1e-6) {
			t.Errorf("%s: %v lbf, want %v", c.name, got, want)
		}
		names := map[string]bool{}
		for _, n := range s.NotJudged {
			names[n.Name] = true
		}
		if !names["anchorage of the steel"] || names["pockets and holes in the lid"] != (c.name == "pocket") || names["the rim where the lid still bears"] != (c.name == "chipped") {
			t.Errorf("%s: not judged are %v", c.name, names)
		}
		tips := lists.ContainsFunc(s.Checks, func(c manway.Check) bool { return c.Name == "does not tip on three points" })
		if tips != (c.name == "chipped") {
			t.Errorf("%s: tipping is judged: %v", c.name, tips)
		}
	}
}

// The check that governs is the one of the greatest Use, and the heaviest person
// is given where all of a person were judged.
func TestWhatGovernsALid(t *testing.T) {
	for name, l := range map[string]Lid{"disc": disc24(), "slab": lids["slab"]} {
		s := strengthOf(t, l, StrengthCase{Seat: onTop(), Steel: quarterInchMesh(), Wheels: []manway.Wheel{manway.MowerWheel}})
		most := 0.0
		for _, c := range s.Checks {
			if use, ok := c.Use(); ok {
				most = max(most, use)
			}
		}
		if s.Governs < 0 {
			t.Fatalf("%s: nothing governs", name)
		}
		if use, _ := s.Checks[s.Governs].Use(); use != most {
			t.Errorf("%s: %s governs with %v, the greatest Use is %v", name, s.Checks[s.Governs].Name, use, most)
		}
		// With that person, and no wheel, the greatest Use of a person standing is 1.
		bare := strengthOf(t, l, StrengthCase{Seat: onTop(), Steel: quarterInchMesh()})
		if !bare.Known || bare.Heaviest > 600*manway.Pound {
			continue
		}
		again := strengthOf(t, l, StrengthCase{Seat: onTop(), Steel: quarterInchMesh(), Person: manway.Person{Mass: bare.Heaviest}})
		most = 0
		for _, check := range []string{"bending, a person", "one-way shear, a person", "punching, a person"} {
			use, _ := named(t, again, check).Use()
			most = max(most, use)
		}
		if math.Abs(most-1) > 1e-6 {
			t.Errorf("%s: under %v the Use is %v", name, bare.Heaviest, most)
		}
	}
}

// Where the steel is not known nothing is shown, and no check governs.
func TestNothingGovernsUnknownSteel(t *testing.T) {
	for name, l := range map[string]Lid{"disc": disc24(), "slab": lids["slab"]} {
		if s := strengthOf(t, l, StrengthCase{Seat: onTop()}); s.Governs != -1 || s.Checks[0].Status != manway.Pass || s.Known {
			t.Errorf("%s: %d governs of %+v", name, s.Governs, s.Checks)
		}
	}
}

// Property (bounded): where the long sides bear nothing nobody bends the lid more
// from another place across it than from its side, in the middle of its length.
func TestPersonStandsAtTheWorstPlace(t *testing.T) {
	piece := Lid{Shape: Slab, Length: 48 * in, Width: 16 * in, Thickness: 4 * in, Pieces: 3, Moisture: Dry}
	c := StrengthCase{Seat: Seat{Fit: OnTop, Opening: 14 * in, OpeningLong: 44 * in}, Steel: quarterInchMesh(), Wheels: []manway.Wheel{manway.MowerWheel}}
	s := strengthOf(t, piece, c)
	j := s.judged
	j.s = &s
	slab := j.slab()
	side := float64(boot) * math.Sqrt(math.Pi)
	place := func(x, y, length, width, force float64) float64 {
		cases, err := j.solve(&slab, []plate.Load{plate.Patch{X: x, Y: y, Length: length, Width: width, Force: force}})
		if err != nil {
			t.Fatal(err)
		}
		return cases[0].moment
	}
	at := place(slab.Length/2, side/2, side, side, j.person)
	if !close(at, j.response.person, 1e-9) {
		t.Errorf("a person at the side bends it by %v, taken is %v", at, j.response.person)
	}
	for _, y := range []float64{side, slab.Width / 2} {
		if m := place(slab.Length/2, y, side, side, j.person); m > at {
			t.Errorf("at %v m from the side a person bends it by %v, at the side by %v", y, m, at)
		}
	}
	if m := place(slab.Length/2-side, side/2, side, side, j.person); m > at {
		t.Errorf("off the middle a person bends it by %v, in the middle by %v", m, at)
	}
	// The wheel too: what it adds to the lid's own weight.
	on, err := soil.AASHTO.OneWheel(manway.MowerWheel, 0)
	if err != nil {
		t.Fatal(err)
	}
	length, width, force := j.clip(on)
	wheel := named(t, s, "bending, "+manway.MowerWheel.Name)
	if got, want := wheel.Unfactored-j.response.dead, place(slab.Length/2, width/2, length, width, force); !close(got, want, 1e-9) {
		t.Errorf("a wheel at the side bends it by %v, taken is %v", want, got)
	}
	if !close(wheel.Demand, 1.2*j.response.dead+1.6*(wheel.Unfactored-j.response.dead), 1e-12) {
		t.Errorf("the wheel asks for %v of %v and %v", wheel.Demand, j.response.dead, wheel.Unfactored)
	}
}
