package concrete

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/hostile"
)

var abused = hostile.Room{
	Funcs: []any{BarOf, WireOf, ReadMesh, AreaPerWidth, RatioAtStrain, LeastBeamRatio, ModulusOfRupture, ElasticModulus, Basis},
	Seeds: []any{
		Bearing{manway.Concrete{Strength: 28e6}, 0.01, 0.02}, Breakout{Concrete: manway.Concrete{Strength: 28e6}, Embedment: 3 * inch, Edge: 0.2},
		EdgeBreakout{manway.Concrete{Strength: 28e6}, 0.05, 0.0127, 0.1, 0.1}, Section{manway.Concrete{Strength: 28e6}, 12 * inch, 5 * inch, 0.24 * manway.SquareInch, 60000 * manway.PSI},
		Plain{manway.Concrete{Strength: 28e6}, 12 * inch, 4 * inch, false}, Punching{manway.Concrete{Strength: 28e6}, 10 * inch, 20 * inch, 3 * inch, Interior},
		Strip{Concrete: manway.Concrete{Strength: 28e6}, Thickness: 4 * inch, Steel: mesh(0.5, 8, 0.75)}, Strip{Concrete: manway.Concrete{Strength: 28e6}, Thickness: 6 * inch, Lost: 1 * inch},
	},
	Calls: [][]any{
		{RatioAtStrain, manway.Concrete{Strength: 28e6}, 60000 * manway.PSI, 0.005}, {ReadMesh, "6x6-W2.9xW2.9"}, {BarOf, 4}, {WireOf, 2.9},
	},
}

func TestHostile(t *testing.T) { abused.Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused.Fuzz(f) }
