package soil

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/hostile"
)

var abused = hostile.Room{
	Funcs: []any{HoleCover, Fall, Basis, PointStress, LayeredPointStress, CornerInfluence, EmbankmentFactor},
	Seeds: []any{
		Spoil(0), Spoil(1), State(0), State(1), State(2), Rule(0), Rule(1),
		Ground{Layers: []Layer{{0, manway.Soil{Moist: 120 * pcf, Saturated: 130 * pcf, Friction: 0.5}}}, HasWater: true},
		Ground{Layers: []Layer{{1, manway.Soil{Moist: 1900, Saturated: 2100, Friction: 0.5}}, {0, manway.Soil{Moist: 1800, Saturated: 2000, Friction: 0.6}}}, Surcharge: 5000, State: 1},
		Trench{Cover: 1, Width: 0.8, Density: 1900, Friction: 0.13}, Ring{0.6, 0.0127, 1.5e8, 0.4}, Buried{Stiffness: 3e5, Soil: 5e6, Load: 3e4, Lag: 1.5, Bedding: 0.1},
		Support{Cover: 1, Water: 0.5, Reaction: 5e6}, Rectangle{1e4, 1, 2}, Beside{2, 1, false},
	},
}

func TestHostile(t *testing.T) { abused.Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused.Fuzz(f) }
