package riser

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// TestPublished compares every row of riser.csv; a quantity that nothing checks
// fails.
func TestPublished(t *testing.T) {
	reftable.Load(t, "riser.csv").Each(t, func(t *testing.T, row reftable.Row) {
		check, ok := published[row.Quantity]
		if !ok {
			t.Fatalf("no check of %q", row.Quantity)
		}
		check(t, row)
	})
}

var published = map[string]func(*testing.T, reftable.Row){
	"steepest angle": func(t *testing.T, row reftable.Row) {
		row.Check(t, math.Atan(1/soilType(t, row).Slope())*180/math.Pi)
	},
	"horizontal to one vertical": func(t *testing.T, row reftable.Row) { row.Check(t, soilType(t, row).Slope()) },
	"offered": func(t *testing.T, row reftable.Row) {
		var s SoilType
		got := "yes"
		if s.UnmarshalText([]byte(row.Input(t, "type"))) != nil {
			got = "no"
		}
		row.CheckText(t, got)
	},
	"protective system from a depth of": limitOfDepth(func(d Dig) bool { return d.Protect }),
	"ladder from a depth of":            limitOfDepth(func(d Dig) bool { return d.Ladder }),
	"air test below a depth of":         limitOfDepth(func(d Dig) bool { return d.AirTest }),
	"engineer from a depth of": func(t *testing.T, row reftable.Row) {
		row.Check(t, firstTrue(0.1, 40, func(ft float64) bool {
			_, err := DigOf(plainPit(manway.Length(ft) * manway.Foot))
			return err != nil
		}))
	},
	"spoil from the edge": func(t *testing.T, row reftable.Row) {
		row.Check(t, must(DigOf(plainPit(manway.Foot))).Setback.In(manway.Foot))
	},
	"loose volume": func(t *testing.T, row reftable.Row) {
		d := bank(t, row)
		row.Check(t, d.Loose.In(manway.CubicYard))
		near(t, "by the earth", float64(d.Bank)*d.Pit.Earth.Loose(), float64(d.Loose), 1e-12)
	},
	"compacted volume": func(t *testing.T, row reftable.Row) { row.Check(t, compacted(t, row)) },
	"hours to dig by hand": func(t *testing.T, row reftable.Row) {
		d := bank(t, row)
		row.Check(t, d.HandHours.In(manway.Hour))
		row.Check(t, (uncovered(t, d) - d.FillHours).In(manway.Hour))
	},
	"hours to backfill by hand": func(t *testing.T, row reftable.Row) { row.Check(t, bank(t, row).FillHours.In(manway.Hour)) },
	"hours to lift off a ring":  func(t *testing.T, row reftable.Row) { row.Check(t, labour(t, RebedRing, "lift-ring")) },
	"hours to patch":            func(t *testing.T, row reftable.Row) { row.Check(t, labour(t, PatchFromInside, "patch")) },
	"machine hours a cubic yard dug": func(t *testing.T, row reftable.Row) {
		row.Check(t, machineDig)
	},
	"machine hours a cubic yard filled": func(t *testing.T, row reftable.Row) { row.Check(t, machineFill) },
	"days to wait for marks":            func(t *testing.T, row reftable.Row) { row.Check(t, labour(t, RebedRing, "wait-locate")) },
	"good life of a tank riser": func(t *testing.T, row reftable.Row) {
		row.Check(t, remedyOf(t, ReplaceConcrete).Life.High.In(manway.Year))
	},
	"pit volume":     func(t *testing.T, row reftable.Row) { row.Check(t, pit(t, row).Hole.In(manway.CubicFoot)) },
	"pit top length": func(t *testing.T, row reftable.Row) { row.Check(t, pit(t, row).Top[0].In(manway.Foot)) },
	"ring mass":      ringMass,
	"joint length":   func(t *testing.T, row reftable.Row) { row.Check(t, joint(t, row).Length().In(manway.Inch)) },
	"least fill of the joint": func(t *testing.T, row reftable.Row) {
		row.Check(t, halfVolume*100)
		j := joint(t, row)
		row.Read(t, "closed", &j.Closed)
		need := must(j.Strip(Strip{Width: manway.Inch / 2, Height: manway.Inch, Roll: 20 * manway.Foot}))
		if need.Runs != 2 || need.Fill < halfVolume {
			t.Errorf("got %+v: 1/2 in2 strips in a joint of 1.5 in2 want two runs", need)
		}
	},
	"tube volume": func(t *testing.T, row reftable.Row) { row.Check(t, bead(t, row).Tube.In(manway.CubicInch)) },
	"bead of one tube": func(t *testing.T, row reftable.Row) {
		b := bead(t, row)
		row.Check(t, b.Yield().In(manway.Foot))
		n := must(benchJoint.Bead(b))
		near(t, "by what a joint needs", float64(n.Length)*float64(b.Tube/n.Volume), float64(b.Yield()), 1e-12)
	},
	"bag yield": func(t *testing.T, row reftable.Row) { row.Check(t, bag(t, row).Yield.In(manway.CubicFoot)) },
	"bags":      bags,
	"cover too deep beyond": func(t *testing.T, row reftable.Row) {
		row.Check(t, firstTrue(0, 30, func(in float64) bool {
			return has(t, Condition{CoverDepth: manway.Read(manway.Length(in) * manway.Inch)}, TooDeep, Watch)
		}))
	},
	"unfastened cover urgent above a soil cover of": func(t *testing.T, row reftable.Row) {
		row.Check(t, firstTrue(0, 30, func(in float64) bool {
			return !has(t, Condition{Fastened: manway.No, CoverDepth: manway.Read(manway.Length(in) * manway.Inch)}, CoverUnfastened, Urgent)
		}))
	},
	"opening too small below": func(t *testing.T, row reftable.Row) {
		row.Check(t, firstTrue(1, 30, func(in float64) bool {
			return !has(t, Condition{Size: manway.Read(manway.Length(in) * manway.Inch)}, AccessTooSmall, Watch)
		}))
	},
	"gap that is a hole from": func(t *testing.T, row reftable.Row) {
		row.Check(t, firstTrue(0, 30, func(in float64) bool {
			return has(t, Condition{RimGap: manway.Read(manway.Length(in) * manway.Inch)}, OpenHole, Urgent)
		}))
	},
	"weight once taken for a fastener": func(t *testing.T, row reftable.Row) {
		row.Check(t, heavyCoverFrom.In(manway.Kilogram))
	},
	"crack to plan for from": func(t *testing.T, row reftable.Row) {
		row.Check(t, firstTrue(0.0001, 2, func(in float64) bool {
			return has(t, Condition{CrackWidth: manway.Read(manway.Length(in) * manway.Inch)}, Cracked, Plan)
		}))
	},
	"orifice leak":   leak,
	"tube buckling":  func(t *testing.T, row reftable.Row) { row.Check(t, must(pipe(t, row).Buckling(0)).Tube.In(manway.PSI)) },
	"pipe stiffness": func(t *testing.T, row reftable.Row) { row.Check(t, must(pipe(t, row).Stiffness()).In(manway.PSI)) },
	"water pressure": func(t *testing.T, row reftable.Row) {
		s := Surround{Water: manway.GroundwaterAt(0)}
		row.Read(t, "depth", &s.Depth)
		row.Check(t, must(benchWall.Press(s)).Water.In(manway.PSF))
	},
	"wall of a joint":      func(t *testing.T, row reftable.Row) { row.Check(t, joint(t, row).Wall().In(manway.Inch)) },
	"azimuth of the point": azimuth,
	"factor on uplift": func(t *testing.T, row reftable.Row) {
		row.Check(t, must(UpliftOf(Light{Outside: 24 * manway.Inch, Bore: 23 * manway.Inch, Base: 2 * manway.Foot})).Factor)
	},
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// firstTrue is where f turns true between lo and hi, by halving.
func firstTrue(lo, hi float64, f func(float64) bool) float64 {
	for hi-lo > 1e-6 {
		if mid := (lo + hi) / 2; f(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

func soilType(t *testing.T, row reftable.Row) (s SoilType) {
	row.Read(t, "type", &s)
	return s
}

func plainPit(depth manway.Length) Pit {
	return Pit{Length: 3 * manway.Foot, Working: manway.Foot, Depth: depth}
}

func limitOfDepth(f func(Dig) bool) func(*testing.T, reftable.Row) {
	return func(t *testing.T, row reftable.Row) {
		row.Check(t, firstTrue(0.1, 19.9, func(ft float64) bool {
			return f(must(DigOf(plainPit(manway.Length(ft) * manway.Foot))))
		}))
	}
}

// bank is a pit, shored so that its sides are plumb, of the row's bank volume.
func bank(t *testing.T, row reftable.Row) Dig {
	var volume manway.Volume
	p := Pit{Length: 6 * manway.Foot, Width: 6 * manway.Foot, Shored: true}
	row.Read(t, "bank", &volume)
	row.Read(t, "earth", &p.Earth)
	for p.Depth = volume.Over(p.Length.Times(p.Width)); p.Depth >= 10*manway.Foot; p.Depth /= 4 {
		p.Length, p.Width = 2*p.Length, 2*p.Width
	}
	return must(DigOf(p))
}

// compacted is the compacted volume that the dug soil gives: what is left over
// where nothing is refilled.
func compacted(t *testing.T, row reftable.Row) float64 {
	p := bank(t, row).Pit
	p.Refill = must(DigOf(p)).Hole
	d := must(DigOf(p))
	return d.Over.In(manway.CubicYard) * p.Earth.Compacted()
}

// remedyOf is a remedy on a site where all is known.
func remedyOf(t *testing.T, kind RemedyKind) Remedy {
	t.Helper()
	c := Condition{JointSealed: manway.No, Roots: manway.Yes, SpallDepth: manway.Read(manway.Inch), Thickness: manway.Read(4 * manway.Inch)}
	s := Site{Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, Standing: 1, StandingMass: 60, Height: manway.Foot,
		Pit: plainPit(2 * manway.Foot), SpallArea: 12 * manway.SquareFoot, SpallDepth: manway.Inch, Liquid: 600 * manway.Gallon}
	for _, r := range must(Remedies(c, s)) {
		if r.Kind == kind {
			return r
		}
	}
	t.Fatalf("no %s", kind)
	return Remedy{}
}

// labour is the quantity of one line of such a remedy.
func labour(t *testing.T, kind RemedyKind, code string) float64 {
	for _, item := range remedyOf(t, kind).Scope {
		if item.Code == code {
			return item.Quantity
		}
	}
	t.Fatalf("%s has no %s", kind, code)
	return 0
}

func pit(t *testing.T, row reftable.Row) Dig {
	var p Pit
	row.Read(t, "a", &p.Length)
	if _, ok := row.Lookup("b"); ok {
		row.Read(t, "b", &p.Width)
	}
	row.Read(t, "depth", &p.Depth)
	p.Type = soilType(t, row)
	return must(DigOf(p))
}

func ringMass(t *testing.T, row reftable.Row) {
	var r Ring
	var d manway.Density
	row.Read(t, "bore", &r.Bore)
	row.Read(t, "outside", &r.Outside)
	row.Read(t, "height", &r.Height)
	row.Read(t, "density", &d)
	unit := manway.Pound
	if row.Unit == "t" {
		unit = manway.Tonne
	}
	row.Check(t, must(RingMass(r, d)).In(unit))
}

func joint(t *testing.T, row reftable.Row) Joint {
	j := Joint{Closed: manway.Inch / 2}
	row.Read(t, "inside", &j.Inside)
	row.Read(t, "outside", &j.Outside)
	return j
}

func bead(t *testing.T, row reftable.Row) Bead {
	b := Bead{Width: manway.Inch, Depth: manway.Inch}
	row.Read(t, "tube", &b.Tube)
	if _, ok := row.Lookup("width"); ok {
		row.Read(t, "width", &b.Width)
		row.Read(t, "depth", &b.Depth)
	}
	_, b.Round = row.Lookup("round")
	return b
}

func bag(t *testing.T, row reftable.Row) Pack {
	var m manway.Mass
	row.Read(t, "bag", &m)
	return MixBag(m)
}

func bags(t *testing.T, row reftable.Row) {
	var v manway.Volume
	row.Read(t, "volume", &v)
	row.Check(t, float64(must(bag(t, row).For(v)).Packs))
	j := Joint{Inside: 10 * manway.Foot, Outside: 14 * manway.Foot, Square: true} // 96 ft2
	j.Closed = v.Over(96 * manway.SquareFoot)
	row.Check(t, float64(must(j.Cement(j.Wall(), false, bag(t, row))).Packs))
}

// uncovered is the time to uncover, on bare ground, a cover that as much soil lies on.
func uncovered(t *testing.T, d Dig) manway.Duration {
	b := Buried{Diameter: 8 * manway.Foot, Surface: BareSoil, Earth: d.Pit.Earth}
	across := b.Diameter + manway.Foot // 6 in all round
	b.Depth = d.Bank.Over(math.Pi / 4 * across.Times(across))
	return must(Uncover(b)).Minutes
}

// pipe is a pipe of a row by its outside diameter and its ratio to the wall.
func pipe(t *testing.T, row reftable.Row) Wall {
	var od manway.Length
	row.Read(t, "od", &od)
	w := Wall{Thickness: od / manway.Length(row.Float(t, "dr")), Modulus: 400000 * manway.PSI, Poisson: 0.38}
	w.Diameter = od - w.Thickness
	return w
}

// azimuth is that of a point seen from J, by its distances to J and K; it lies on
// the right hand of one who walks from J to K.
func azimuth(t *testing.T, row reftable.Row) {
	in := func(key string) float64 { return row.Float(t, key) }
	north, east := in("north_k")-in("north_j"), in("east_k")-in("east_j")
	half := manway.Length(0.5) * manway.Foot
	p := must(Tie{Corners: manway.Length(math.Hypot(north, east)) * half, FromA: manway.Length(in("from_j")) * half, FromB: manway.Length(in("from_k")) * half, Right: true}.Position())
	got := math.Atan2(east, north) + math.Atan2(float64(p.Out), float64(p.Along))
	row.Check(t, math.Mod(got*180/math.Pi+360, 360))
}

func has(t *testing.T, c Condition, kind DefectKind, atLeast Severity) bool {
	t.Helper()
	for _, d := range must(Defects(c)) {
		if d.Kind == kind && d.Severity <= atLeast {
			return true
		}
	}
	return false
}

func leak(t *testing.T, row reftable.Row) {
	j := OpenJoint{Wall: 3 * manway.Inch, Water: manway.GroundwaterAt(manway.Foot)}
	var head manway.Length
	row.Read(t, "head", &head)
	j.Depth = manway.Foot + head
	unit := manway.GallonPerDay
	if _, ok := row.Lookup("hole"); ok {
		row.Read(t, "hole", &j.Gap)
		j.Length = math.Pi / 4 * j.Gap
	} else {
		row.Read(t, "length", &j.Length)
		row.Read(t, "gap", &j.Gap)
		unit = manway.GallonPerMinute
	}
	row.Check(t, must(LeakOf(j)).Orifice.In(unit))
}
