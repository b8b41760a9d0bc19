package plate

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway/internal/reftable"
)

// unitDisc has radius 1 and D = 1.
func unitDisc(nu float64, clamped bool) Disc {
	return Disc{Radius: 1, Thickness: 1, E: 12 * (1 - nu*nu), Nu: nu, Clamped: clamped}
}

func TestSolidDiscsOfTheHandbooks(t *testing.T) {
	for _, row := range reftable.Load(t, "plate.csv").With("disc", "solid") {
		t.Run(row.ID, func(t *testing.T) {
			d := unitDisc(row.Float(t, "nu"), row.Input(t, "rim") == "clamped")
			at := func(r float64) Polar {
				if row.Input(t, "load") == "uniform" {
					return d.uniform(1, r)
				}
				p, err := d.Concentric(1, row.Float(t, "r0/a"), r)
				if err != nil {
					t.Fatal(err)
				}
				return p
			}
			// The worked sheet: a = 150 mm, t = 1.5 mm, q = 1 MPa on r0 = 10 mm.
			const a, thick, e, force = 150, 1.5, 200000.0, math.Pi * 100
			rigidity := e * thick * thick * thick / (12 * (1 - d.Nu*d.Nu))
			var got float64
			switch row.Quantity {
			case "w D/(q a4) at 0", "w D/(W a2) at 0":
				got = at(0).W
			case "M/(q a2) at 0", "M/W at 0":
				got = at(0).Radial
				if at(0).Radial != at(0).Tangential {
					t.Error("the moments at the centre differ")
				}
			case "Mr/(q a2) at 1", "Mr/W at 1":
				got = at(1).Radial
			case "M at the centre":
				got = force * at(0).Radial
			case "6 M/t2 at the centre":
				got = force * 6 / (thick * thick) * at(0).Radial
			case "Mr at the rim":
				got = force * at(1).Radial
			case "6 Mr/t2 at the rim":
				got = force * 6 / (thick * thick) * at(1).Radial
			case "w at the centre":
				got = force * a * a / rigidity * at(0).W
			default:
				t.Fatalf("quantity %q", row.Quantity)
			}
			row.Check(t, got)
		})
	}
}

func TestAnnularPlatesOfTheHandbooks(t *testing.T) {
	rims := map[string]Rim{"free": RimFree, "simple": RimSimple, "clamped": RimClamped, "guided": RimGuided}
	loads := map[string]AnnularLoad{"uniform": {Pressure: 1}, "growing": {Growing: 1}, "hole rim": {HoleRim: 1}}
	for _, row := range reftable.Load(t, "plate.csv").With("disc", "annulus") {
		t.Run(row.ID, func(t *testing.T) {
			nu := row.Float(t, "nu")
			plate := Annulus{Outer: 1, Inner: row.Float(t, "b/a"), Thickness: 1, E: 12 * (1 - nu*nu), Nu: nu,
				OuterRim: rims[row.Input(t, "outer")], InnerRim: rims[row.Input(t, "inner")]}
			load, ok := loads[row.Input(t, "load")]
			if !ok {
				t.Fatal("load")
			}
			at := func(r float64) Polar {
				p, err := plate.At(load, r)
				if err != nil {
					t.Fatal(err)
				}
				return p
			}
			what, place, _ := strings.Cut(row.Quantity, " at ")
			r := plate.Inner
			if place == "rim" {
				r = 1
			}
			name, _, _ := strings.Cut(what, "/")
			var got float64
			switch name {
			case "-w D":
				got = -at(r).W
			case "-w max D":
				for k := range 1001 {
					got = math.Min(got, -at(plate.Inner+(1-plate.Inner)*float64(k)/1000).W)
				}
			case "-slope D":
				got = -at(r).Slope
			case "Mr":
				got = at(r).Radial
			case "Mt":
				got = at(r).Tangential
			default:
				t.Fatalf("quantity %q", row.Quantity)
			}
			row.Check(t, got)
		})
	}
}
