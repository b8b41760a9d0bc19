package tank

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// A mesh of #3 at 6 in whose cover is 1 in from the outside of a slab of 4 in. On
// the outside it has d = 4 - 1 - 3/16 - 3/8, the bars that lie inside. Pulled on
// the inside, those that lie outside have the least: d = 1 + 3/16, whatever the
// inside has lost, so with As = 0.2209 in2/ft and 60 ksi
//
//	a = 0.2209 x 60/(0.85 x 4 x 12) = 0.3248 in,  phi Mn = 0.9 x 13.25 (1.1875 - 0.1624)/12 = 1.019 kip ft/ft
func TestMeshOfTheOtherFace(t *testing.T) {
	for _, lost := range []manway.Length{0, 0.5 * in} {
		m := member{concrete: strongConcrete, thickness: 4*in - lost, lost: lost, steel: Steel{Outside: Mesh(bar(0.375, 6, 1))}}
		for dir := range 2 {
			if d := m.strip(insideFace, dir).EffectiveDepth().In(in); !(math.Abs(d-1.1875) <= 1e-9) {
				t.Errorf("lost %v: inside pulled, d is %g in", lost, d)
			}
			if d := m.strip(outsideFace, dir).EffectiveDepth().In(in); !(math.Abs(d-(2.4375-lost.In(in))) <= 1e-9) {
				t.Errorf("lost %v: outside pulled, d is %g in", lost, d)
			}
		}
		if lost > 0 {
			continue
		}
		st, err := m.strip(insideFace, 0).Bending()
		if err != nil {
			t.Fatal(err)
		}
		if got := st.Design / float64(manway.PoundForceFootPerFoot); !(math.Abs(got/1019-1) <= 1e-3) || st.Counts != manway.Pass {
			t.Errorf("phi Mn is %g lbf ft/ft, %v", got, st.Counts)
		}
	}
}

// A person a depth from the side wall, on 8 in, d 3.5 in: on his way there the
// load spreads to both sides, to 8 + 7 in, unless an opening lies beside it, to
// 8 + 3.5 in. Across, 64 in, the near wall gets 1 - 7.5/64 of it; along, 124 in, 1 -
// 7.5/124.
func TestShearBesideAnOpening(t *testing.T) {
	for _, c := range []struct {
		across manway.Length
		want   [2]float64 // lbf/in, across or along
	}{
		{-17 * in, [2]float64{300 / 11.5 * (1 - 7.5/64), 300 / 11.5 * (1 - 7.5/64)}}, // 3 in from the wall
		{0, [2]float64{300. / 15 * (1 - 7.5/64), 300. / 15 * (1 - 7.5/124)}},
	} {
		tk, err := New(Spec{
			Shape: Box{Length: 120 * in, Width: 60 * in, Height: 60 * in}, Wall: 4 * in, Roof: 5 * in, Floor: 4 * in,
			Access: []Access{{Along: 60 * in, Across: c.across, Length: 20 * in, Width: 20 * in}},
		})
		if err != nil {
			t.Fatal(err)
		}
		r := roofOf(t, &tk, RoofCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.5, 6, 0.75))}, Wheels: []manway.Wheel{}})
		shear := checkNamed(t, r.Loadings[2].Checks, "one-way shear")
		// Demand = 1.2 D + 1.6 L, Unfactored = D + L
		live := (shear.Demand - 1.2*shear.Unfactored) / 0.4 / float64(manway.PoundForcePerInch)
		if !(math.Abs(live/c.want[0]-1) <= 1e-6) && !(math.Abs(live/c.want[1]-1) <= 1e-6) {
			t.Errorf("opening at %v: %g lbf/in, want %v", c.across, live, c.want)
		}
	}
}

// A long wall built in at its foot, its head free, liquid to its head, 5 ft over a
// floor of 6 in: about the middle of the floor its thrust of 62.4 x 25/2 lbf/ft
// stands 20 in + 3 in high. The panel is pressed down to there, 3 in more.
func TestLiquidStandsOverTheFloor(t *testing.T) {
	w, err := longTank(t, 6, 6).Wall(WallCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.625, 6, 1)), Outside: Mesh(bar(0.625, 6, 1))}})
	if err != nil {
		t.Fatal(err)
	}
	low, high := 62.4*25/2*(20+3)/12, 62.4*5.25*5.25*5.25/6
	l := w.Loadings[0]
	if got := checkNamed(t, l.Checks, "bending, inside face").Unfactored / float64(manway.PoundForceFootPerFoot); !(got > low && got < 1.005*high) || l.Edges != "held" {
		t.Errorf("%g lbf ft/ft at the foot, statics %g to %g, edges %s", got, low, high, l.Edges)
	}
}

// A mesh near the outside counts for a pull on the inside up to a foot below that
// face, itself among it: 1/32 m of cover and a bar of 1/128 m, exact in binary, end
// there in a slab thicker than a foot by both.
func TestMeshOfTheOtherFaceUpToAFoot(t *testing.T) {
	const cover, diameter = manway.Length(1) / 32, manway.Length(1) / 128
	steel := Mesh(manway.Reinforcement{State: manway.SteelKnown, Diameter: diameter, Spacing: 6 * in, Cover: cover, Yield: 60000 * manway.PSI})
	for _, c := range []struct {
		beyond manway.Length
		want   manway.SteelState
	}{{-0.01, manway.SteelKnown}, {0, manway.SteelKnown}, {0.01, manway.SteelUnknown}} {
		m := member{concrete: strongConcrete, thickness: manway.Foot + cover + diameter + c.beyond, steel: Steel{Outside: steel}}
		got := m.strip(insideFace, 0).Steel
		if got.State != c.want || c.want == manway.SteelKnown && math.Abs(float64(got.Cover-manway.Foot-c.beyond)) > 1e-12 {
			t.Errorf("%v beyond a foot: %+v, want state %v", c.beyond, got, c.want)
		}
	}
}

// Moments of 5 and 1 with a twist of 1.5: the circle has its middle at 3 and a radius
// of the root of 2 x 2 + 1.5 x 1.5, 2.5, so that the principal ones are 5.5 and 0.5. By
// Wood and Armer bars have to carry 5 + 1.5 and 1 + 1.5. Turned over, the other face
// has them.
func TestMeasuresOfAMoment(t *testing.T) {
	sag := measuresOf(plate.Moment{X: 5, Y: 1, XY: 1.5})
	hog := measuresOf(plate.Moment{X: -5, Y: -1, XY: 1.5})
	for name, pair := range map[string][2]float64{
		"along": {sag[0][0], 6.5}, "across": {sag[0][1], 2.5}, "principal": {sag[0][2], 5.5}, "principal of the other face": {sag[1][2], -0.5},
		"along, over": {hog[1][0], 6.5}, "across, over": {hog[1][1], 2.5}, "principal, over": {hog[1][2], 5.5}, "principal of the first face, over": {hog[0][2], -0.5},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-12 {
			t.Errorf("%s: %v, want %v", name, pair[0], pair[1])
		}
	}
	for _, face := range []int{0, 1} {
		for dir, want := range [2]float64{6.5, 2.5} {
			if got := (measure{face: face, dir: dir}).of(&sag, face); got != want {
				t.Errorf("face %d pulled, direction %d: %v, want %v", face, dir, got, want)
			}
		}
		if got := (measure{face: face, principal: true}).of(&sag, 1-face); got != -0.5 {
			t.Errorf("principal moment of the face away: %v, want -0.5", got)
		}
	}
}

// The same wall one depth over the middle of the floor is sheared by the liquid above:
// with d of 4.06 in, the bars that lie inside, 62.4 (5.25 - 0.34)2/2 = 752 lbf/ft, or
// with 4.69 in 737. Up to 2 % more is right: 30 ft from end to end the middle takes 1 %
// of what the held ends do not (0.3 % at 60 ft), and the mesh half a percent.
func TestShearAtTheFootOfALongWall(t *testing.T) {
	w, err := longTank(t, 6, 6).Wall(WallCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.625, 6, 1)), Outside: Mesh(bar(0.625, 6, 1))}})
	if err != nil {
		t.Fatal(err)
	}
	shear := func(d float64) float64 { return 62.4 * (5.25 - d/12) * (5.25 - d/12) / 2 }
	got := checkNamed(t, w.Loadings[0].Checks, "one-way shear").Unfactored / float64(manway.PoundForcePerFoot)
	if low, high := shear(6-1-0.625/2), shear(6-1-1.5*0.625); !(got > low && got < 1.02*high) {
		t.Errorf("%g lbf/ft, by hand %g to %g", got, low, high)
	}
}
