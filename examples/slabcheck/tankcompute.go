package main

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

// part is one part of a tank that was judged.
type part struct {
	name     string
	checks   []manway.Check
	working  manway.Working
	cautions manway.Cautions
	assumed  manway.Assumptions
	governs  *manway.Check
	remarks  []string
	loadings []tank.Loading // of the roof, for the picture
	weakest  tank.Point
	hasPlace bool
	accuracy accuracy // of the governing moment of a roof or lid; no unknowns: not solved as a plate
}

// tankOutput is what was found of a whole tank.
type tankOutput struct {
	tank    tank.Tank
	parts   []part
	weakest int // index of the part whose Use is greatest, -1 where none ran
}

// tank is the tank of the record, or of flags, nil where there is none.
func (in *input) tank() *tankRecord {
	if in.Tank != nil {
		return in.Tank
	}
	if in.Slab != nil || in.Lid != nil {
		return nil
	}
	return in.Whole.record()
}

// whole computes a record that is a tank.
func (in *input) whole() (output, error) {
	var faults manway.InputErrors
	for _, other := range [...]struct {
		field string
		given bool
	}{{"slab", in.Slab != nil}, {"lid", in.Lid != nil}, {"loads", len(in.Loads) > 0}, {"points", len(in.Points) > 0}} {
		if other.given {
			faults.Add(other.field, "given beside tank", "none: a tank has loads and lids of its own")
		}
	}
	if len(faults) > 0 {
		return output{}, faults
	}
	found, err := computeTank(in.tank())
	return output{tank: found}, err
}

// computeTank judges every part that is asked about.
func computeTank(r *tankRecord) (*tankOutput, error) {
	spec, faults := r.Spec()
	spec.Material, spec.OutletInvert = r.Material, r.OutletInvert
	spec.Access = r.Access
	t, faults := tankinput.New(spec, faults)
	if len(faults) > 0 {
		return nil, underTank(faults)
	}
	out := &tankOutput{tank: t, weakest: -1}
	for _, judge := range []func(*tankRecord, *tank.Tank, *tankOutput) error{roof, walls, partitions, floor, lids} {
		if err := judge(r, &t, out); err != nil {
			if list, ok := err.(manway.InputErrors); ok {
				faults = append(faults, list...)
			} else {
				return nil, err
			}
		}
	}
	if len(faults) > 0 {
		return nil, underTank(faults)
	}
	most := 0.0
	for i := range out.parts {
		p := &out.parts[i]
		g := manway.Governing(p.checks)
		if g < 0 {
			continue
		}
		use, figures := p.checks[g].Use()
		if !figures && p.checks[g].Status == manway.Pass {
			continue // a check without figures: nothing was reckoned
		}
		p.governs = &p.checks[g]
		if !figures || out.weakest < 0 || use > most {
			out.weakest, most = i, use
		}
	}
	return out, nil
}

func underTank(faults manway.InputErrors) error {
	var all manway.InputErrors
	all.Under("tank", faults)
	return all
}

// under puts the faults of a part under its name in the record.
func under(part string, err error) error {
	var all manway.InputErrors
	all.Under(part, err)
	return all.Err()
}

// all reports whether no part was asked about by itself.
func (r *tankRecord) all() bool {
	return r.Judge == judge{} && len(r.Lids) == 0
}

func roof(r *tankRecord, t *tank.Tank, out *tankOutput) error {
	p := r.Judge.Roof
	if p == nil {
		if !r.all() {
			return nil
		}
		p = &roofPart{}
	}
	c := tank.RoofCase{
		Concrete: r.Concrete, Steel: p.Steel.of(), Loss: p.Loss, Spalls: p.Spalls, Contact: p.Contact, Joints: p.Joints, Soil: r.Soil,
		Now: p.Now, Planned: p.Planned, Person: manway.Person{Mass: p.Person}, Wheels: wheelsOf(p.Wheels),
	}
	s, err := t.Roof(c)
	if err != nil {
		return under("judge.roof", err)
	}
	found := part{name: "roof", working: s.Working(manway.US), cautions: s.Cautions, assumed: s.Assumed, loadings: s.Loadings,
		weakest: s.Weakest, hasPlace: len(s.Loadings) > 0,
		accuracy: accuracy{unknowns: s.Solved.Unknowns, error: s.Solved.Error, converged: s.Solved.Converged}}
	for _, l := range s.Loadings {
		for _, check := range l.Checks {
			check.Name = l.Name + ": " + check.Name
			found.checks = append(found.checks, check)
		}
		if l.HeaviestKnown {
			found.remarks = append(found.remarks, fmt.Sprintf("%s: Use is 1 at %v", l.Name, l.Heaviest))
		}
	}
	found.checks = append(found.checks, s.NotJudged...)
	if text := s.Change.Text(); text != "" {
		found.remarks = append(found.remarks, text)
	}
	if s.Cover.Known {
		found.remarks = append(found.remarks, fmt.Sprintf("under soil alone Use is 1 at %v of it", s.Cover.Depth))
	}
	out.parts = append(out.parts, found)
	return nil
}

func walls(r *tankRecord, t *tank.Tank, out *tankOutput) error {
	p := r.Judge.Walls
	if p == nil {
		if !r.all() {
			return nil
		}
		p = &wallPart{}
	}
	s, err := t.Wall(tank.WallCase{
		Concrete: r.Concrete, Steel: p.Steel.of(), Loss: p.Loss, TopHeld: p.TopHeld, Braced: p.Braced, Cover: r.cover(), Soil: r.Soil,
		Groundwater: r.Groundwater, Liquid: r.Liquid, Vehicle: tank.Vehicle{Distance: p.Distance, Towards: p.Towards},
	})
	if err != nil {
		return under("judge.walls", err)
	}
	out.parts = append(out.parts, part{name: "walls", checks: s.Checks(), working: s.Working(manway.US), cautions: s.Cautions, assumed: s.Assumed,
		remarks: []string{"groundwater over the floor that the empty tank is shown to stand: " + limit(s.Groundwater)}})
	return nil
}

// cover is the soil that is to lie on the roof.
func (r *tankRecord) cover() manway.Length {
	switch {
	case r.Judge.Roof == nil:
		return 0
	case r.Judge.Roof.Planned != nil:
		return r.Judge.Roof.Planned.Cover
	}
	return r.Judge.Roof.Now.Cover
}

func limit(l tank.Limit) string {
	if l.State == tank.LimitAt {
		return "up to " + l.At.String()
	}
	return l.State.String()
}

func partitions(r *tankRecord, t *tank.Tank, out *tankOutput) error {
	p := r.Judge.Partitions
	if p == nil {
		if !r.all() {
			return nil
		}
		p = &partitionPart{}
	}
	for i := range t.Spec.Partitions {
		s, err := t.Partition(tank.PartitionCase{Partition: i, Concrete: r.Concrete, Steel: p.Steel.of(), Loss: p.Loss, Liquid: r.Liquid})
		if err != nil {
			return under("judge.partitions", err)
		}
		name := "partition"
		if len(t.Spec.Partitions) > 1 {
			name = fmt.Sprintf("partition %d", i)
		}
		out.parts = append(out.parts, part{name: name, checks: s.Checks(), working: s.Working(manway.US), cautions: s.Cautions, assumed: s.Assumed,
			remarks: []string{"difference of levels that it is shown to stand: " + limit(s.Difference), "draw down " + s.Order}})
	}
	return nil
}

func floor(r *tankRecord, t *tank.Tank, out *tankOutput) error {
	p := r.Judge.Floor
	if p == nil {
		if !r.all() {
			return nil
		}
		p = &floorPart{}
	}
	s, err := t.Floor(tank.FloorCase{Concrete: r.Concrete, Steel: p.Steel.of(), Loss: p.Loss, Cover: r.cover(), Groundwater: r.Groundwater})
	if err != nil {
		return under("judge.floor", err)
	}
	out.parts = append(out.parts, part{name: "floor", checks: s.Checks(), working: s.Working(manway.US), cautions: s.Cautions, assumed: s.Assumed,
		remarks: []string{"groundwater over the floor that it is shown to stand, empty: " + limit(s.Groundwater)}})
	return nil
}

func lids(r *tankRecord, _ *tank.Tank, out *tankOutput) error {
	var faults manway.InputErrors
	for i, p := range r.Lids {
		l := p.Lid
		if l.Concrete == (manway.Concrete{}) {
			l.Concrete = r.Concrete
		}
		c := lid.StrengthCase{
			Seat: lid.Seat{Fit: p.Fit, Opening: p.Opening, OpeningLong: p.OpeningLong, Chips: p.Chips}, Steel: p.Steel, Person: manway.Person{Mass: p.Person},
			People: p.People, Gear: p.Gear, Fall: p.Fall, Wheels: wheelsOf(p.Wheels),
		}
		s, err := l.Strength(c)
		if err != nil {
			faults.Under(fmt.Sprintf("lids[%d]", i), err)
			continue
		}
		name := p.Name
		if name == "" {
			name = fmt.Sprintf("lid %d", i)
		}
		found := part{name: name, checks: append(append([]manway.Check(nil), s.Checks...), s.NotJudged...), working: s.Working(), cautions: s.Cautions, assumed: s.Assumed,
			accuracy: accuracy{unknowns: s.Solved.Unknowns, error: s.Solved.Error, converged: s.Solved.Converged}}
		if s.Known {
			found.remarks = append(found.remarks, fmt.Sprintf("a person standing still: Use is 1 at %v", s.Heaviest))
		}
		out.parts = append(out.parts, found)
	}
	return faults.Err()
}
