package lid

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/hostile"
)

// abused is every function of the package and what it accepts.
var abused = hostile.Room{
	Funcs: []any{AirLoss, HoleCoverLoad, PushFilter, GuardRules, GuardRuleOf, SpellOf, AverageRate, CompositeIndex, HandForceAt, TeamByShare, TeamByDoubling, WornBar, Basis},
	Seeds: []any{
		lids["disc"], lids["bevelled plug"], lids["stepped plug"], lids["slab"], lids["tapered slab"], lids["stepped slab"], recessed,
		soundHandle, usual, tasks[0], Bar{LoadArm: 3 * in, EffortArm: 48 * in}, Crew{2, 50 * manway.Pound}, chips[0], Filter{Far: true},
		Guard{Opening: 20 * in, DepthKnown: true}, SidePull{20 * manway.PoundForce, 4 * manway.Foot, 0.48 * in}, Friction{0.4, 0.6},
		Seat{Fit: Bevel, Opening: 20 * in, Chips: chips}, Seat{}, BendCase{}, StrengthCase{}, MoveCase{}, Slings{},
		MoveCase{Seat: Seat{Fit: Bevel}, Crew: Crew{2, 50 * manway.Pound}, Bond: 40 * manway.PoundForce},
		AirClass(1), Metal(1), Exertion(1),
		GuardRules()[:3], Wear{Protected: 0.1, Now: 0.08, Age: 20 * manway.Year}, Sulfide{Reaction: 0.8, Flux: 0.2, Alkalinity: 0.2},
	},
	Calls: [][]any{{WornBar, 0.5 * in, 0.4 * in}, {CompositeIndex, tasks, ShortSpell, true}},
}

func TestHostile(t *testing.T) { abused.Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused.Fuzz(f) }
