package tank

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// PartitionCase is one partition of a tank whose compartments are pumped one
// after the other.
type PartitionCase struct {
	Partition int // index in Spec.Partitions
	Concrete  manway.Concrete
	Steel     Steel         // Inside is the inlet side; Along runs level, Across upright
	Loss      manway.Length // worn off the inlet side
	Liquid    manway.Length // level of the full compartment; 0: the outlet invert, or the roof; at most the partition's head counts
}

// PartitionStrength is an unreviewed screening of a partition with liquid on one
// side of it.
type PartitionStrength struct {
	Loadings []Loading // inlet side full and the other pumped, and the reverse
	Governs  int       // index of the one that governs, -1 where no check ran
	Liquid   manway.Length
	// Difference is the largest difference of levels for which it is shown to
	// stand, the higher side full.
	Difference Limit
	Order      string // how the compartments may be drawn down
	NotJudged  []manway.Check
	Assumed    manway.Assumptions
	Cautions   manway.Cautions
	Case       PartitionCase

	strips strips
}

// Checks is every check of the partition in one list, and then what is not
// judged.
func (p PartitionStrength) Checks() []manway.Check { return flat(p.Loadings, p.NotJudged) }

// Partition screens a partition as a plate held on floor and side walls, free at
// its head, under 1.4 F with one compartment full and the next one pumped dry,
// and the reverse. Whether its edges turn is not known: both ways are run
// and taken as in Wall. Then the largest difference of levels is found for which
// it is shown to stand.
//
// Errors: [manway.InputErrors], every fault at once. Other shapes and materials,
// and a partition of more than half its width or height, are NotJudged.
//
// Source: as Wall.
func (t *Tank) Partition(c PartitionCase) (PartitionStrength, error) {
	var faults manway.InputErrors
	if !t.made(&faults) {
		return PartitionStrength{}, faults
	}
	manway.Within(&faults, "Partition", c.Partition, 0, t.n-2)
	faults.Under("Concrete", c.Concrete.Validate())
	faults.Under("Steel", c.Steel.Validate())
	manway.Within(&faults, "Liquid", c.Liquid, 0, t.Inside.Height)
	if len(faults) == 0 {
		manway.Within(&faults, "Loss", c.Loss, 0, max(t.Spec.Partitions[c.Partition].Thickness-thinnest, 0))
	}
	if len(faults) > 0 {
		return PartitionStrength{}, faults
	}
	r := PartitionStrength{
		Governs: -1, Case: c,
		Cautions: t.Cautions | manway.Screening | manway.LocalCode | manway.NeverEnter | manway.UnequalLevels,
	}
	if reason := t.noSlabs(); reason != "" {
		r.NotJudged = []manway.Check{{Name: "partition", Reason: reason}}
		r.order()
		return r, nil
	}
	return r, r.run(t)
}

func (r *PartitionStrength) run(t *Tank) error {
	c := r.Case
	spec := t.Spec.Partitions[c.Partition]
	head := t.partitions[c.Partition].top
	level, made := t.fullLevel(c.Liquid)
	r.Assumed |= made
	r.Liquid = min(level, manway.Length(head))
	thickness := spec.Thickness - c.Loss
	m := member{c.Concrete, thickness, c.Loss, c.Steel}
	p, err := newPanel("partition", m, float64(t.Inside.Width), head, [4]plate.Edge{plate.SideY1: plate.Free}, nil)
	if err != nil {
		return err
	}
	made, warn := p.strength.made()
	r.strips = m.strips()
	r.Assumed |= made
	r.Cautions |= warn
	if p.open != "" {
		r.NotJudged = []manway.Check{p.unjudged()}
		r.order()
		return nil
	}
	for _, b := range [...]pushed{
		liquidPush("inlet side full, outlet side pumped", float64(r.Liquid), outsideFace),
		liquidPush("outlet side full, inlet side pumped", float64(r.Liquid), insideFace),
	} {
		l, err := p.judge(b)
		if err != nil {
			return err
		}
		r.Loadings = append(r.Loadings, l)
	}
	r.Governs = governing(r.Loadings)
	r.Difference = limitOf(float64(r.Liquid), func(difference float64) (float64, bool) {
		most, all := 0.0, true
		for _, far := range [...]int{insideFace, outsideFace} {
			u, ok := p.use(differencePush(float64(r.Liquid), difference, far))
			most, all = max(most, u), all && ok
		}
		return most, all
	})
	r.order()
	leave := func(name, reason string) {
		r.NotJudged = append(r.NotJudged, manway.Check{Name: name, Reason: reason})
	}
	leave("grooves or joints of the partition", "not visible")
	leave("anchorage of the steel", "not visible")
	if spec.Opening > 0 {
		leave("transfer opening", "its place is not known: the plate is taken whole")
	}
	return nil
}

// differencePush is full on one side and lower by a difference on the other.
func differencePush(level, difference float64, far int) pushed {
	b := liquidPush("", level, far)
	full := b.loads
	b.loads = func(factor float64) []plate.Load {
		list := full(factor)
		if low := level - difference; low > 0 {
			list = append(list, plate.Liquid{Level: low, UnitWeight: -factor * float64(manway.WaterDensity) * manway.StandardGravity})
		}
		return list
	}
	return b
}

// order says how the compartments may be drawn down.
func (r *PartitionStrength) order() {
	switch r.Difference.State {
	case LimitNone:
		r.Order = "one compartment after the other: the partition is shown to stand with one side empty"
	case LimitAt:
		r.Order = fmt.Sprintf("in turns, starting with either, the levels never more than %v apart", r.Difference.At)
	case LimitNever:
		r.Order = "together, the levels kept equal: not shown to stand any difference"
	default:
		r.Order = "in turns, the levels kept as nearly equal as the hose allows: the partition's strength is not shown"
	}
}
