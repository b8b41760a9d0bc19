package visit

import (
	"fmt"
	"slices"
	"strings"

	"manway.example/manway"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

// structure screens roof, walls, partitions and floor, side by side: they are
// by far the longest part of a visit.
func (v *Visit) structure() error { return together(v.roof, v.walls) }

// roof screens the roof under what lies on it now, and under the new riser.
func (v *Visit) roof() error { return v.roofUnder(nil, true) }

// roofUnderPerson screens the roof under a person only, with no wheels and
// nothing planned.
func (v *Visit) roofUnderPerson() error { return v.roofUnder([]manway.Wheel{}, false) }

func (v *Visit) roofUnder(wheels []manway.Wheel, plan bool) error {
	c, err := v.roofCase(wheels, plan)
	if err != nil {
		return err
	}
	v.Roof, err = v.Tank.Roof(c)
	return err
}

// roofCase is what the roof is screened for.
func (v *Visit) roofCase(wheels []manway.Wheel, plan bool) (tank.RoofCase, error) {
	t := v.Survey.Tank
	v.RoofTried = RoofTried{}
	if err := v.tryRoof(); err != nil {
		return tank.RoofCase{}, err
	}
	c := tank.RoofCase{
		Concrete: t.concrete(), Steel: tank.Steel{Inside: tank.Mesh(v.RoofTried.counted(t.steel()))}, Loss: v.roofLoss(), Wheels: wheels,
		Soil: v.Survey.Ground.soil(), Person: manway.Person{Mass: v.Survey.Crew.Heaviest},
		Now: tank.RoofLoad{Cover: v.mostCover(), Surface: v.unsoundWeight()},
	}
	for _, p := range t.Partitions {
		c.Contact = append(c.Contact, p.Contact == manway.Yes)
	}
	planned := tank.RoofLoad{Cover: c.Now.Cover, Surface: c.Now.Surface}
	for i, a := range v.Survey.Accesses {
		r := v.Accesses[i]
		mass, err := r.standing(a)
		if err != nil {
			return tank.RoofCase{}, under("Accesses", i, err)
		}
		now := tank.Riser{Access: i, Mass: mass}
		if a.Riser.Height > 0 {
			now.Wall = r.TakenWall
		}
		c.Now.Risers = append(c.Now.Risers, now)
		if len(r.Stacks.Best) > 0 {
			now = tank.Riser{Access: i, Mass: r.Stacks.Best[0].Mass + r.Moves.Weight.Heaviest, Wall: r.TakenWall}
		}
		planned.Risers = append(planned.Risers, now)
	}
	if plan {
		c.Planned = &planned
	}
	return c, nil
}

// standing is what stands on the roof at an access now: rings, taken as
// concrete, and lid.
func (r AccessAnswer) standing(a Access) (manway.Mass, error) {
	lid := r.Moves.Weight.Heaviest
	if a.Riser.Height == 0 {
		return lid, nil
	}
	rings, err := riser.RingMass(riser.Ring{Height: a.Riser.Height, Bore: r.TakenBore, Outside: r.Joint.Outside}, manway.UsualConcreteDensity)
	return rings + lid, err
}

func (v *Visit) mostCover() manway.Length {
	most := manway.Length(0)
	for _, a := range v.Survey.Accesses {
		most = max(most, a.Cover)
	}
	return most
}

// personOnRoof is the checks of the roof under its own load and a person.
func (v *Visit) personOnRoof() []manway.Check {
	var list []manway.Check
	for i, l := range v.Roof.Loadings {
		if i == 0 || l.Name == "person" {
			list = append(list, l.Checks...)
		}
	}
	return list
}

// structureSection is the screening of lids and roof, for the desk.
func (v Visit) structureSection() Section {
	sys := v.Survey.Units
	s := Section{
		ID: "structure", Title: "Structure: unreviewed screening", For: ForDesk, Structure: true,
		Method: "Each lid and the roof as thin plates of the thickness that is left, under their own weight, soil, people and wheels at the worst place. Steel that is not known is not counted; figures beside NOT SHOWN or NOT PERMITTED are for comparison only.",
		Basis:  lid.Strength{}.Basis(),
	}
	left := Table{ID: "lids", Columns: []string{"Lid", "Thickness left"}}
	for i, a := range v.Survey.Accesses {
		r := v.Accesses[i]
		if !r.HasLid {
			continue
		}
		left.Rows = append(left.Rows, []Cell{words("access", a.Name), amount(sys, "left_in", r.Strength.Left, manway.Inch)})
		s.addChecks("lid of "+a.Name+", ", r.Strength.Checks)
		s.addChecks("lid of "+a.Name+", ", r.Strength.NotJudged)
		s.addChecks("handle of "+a.Name+", ", r.Handle.Checks[:])
		s.Assumed |= r.Strength.Assumed
		s.Cautions |= r.Strength.Cautions
		if !a.Lid.Loss.Taken {
			s.Unjudged = append(s.Unjudged, a.Name+": the thickness lost was not measured. Measure the edge at a protected and at a worn place.")
		}
	}
	if len(left.Rows) > 0 {
		s.Tables = []Table{left}
	}
	s.Figures = v.roofFigure()
	s.Says = append(s.Says, v.standIns()...)
	v.roofSays(&s)
	v.wallSays(&s)
	s.Cautions |= manway.Screening | manway.VehicleOverTank
	return s
}

// addChecks adds checks that ran or say why not, each named by its part.
func (s *Section) addChecks(part string, checks []manway.Check) {
	for _, c := range checks {
		if c.Name == "" {
			continue
		}
		c.Name = part + c.Name
		s.Checks = append(s.Checks, c)
	}
}

// roofSays adds what the screening of the roof came to.
func (v Visit) roofSays(s *Section) {
	sys := v.Survey.Units
	for _, l := range v.Roof.Loadings {
		s.addChecks("roof, "+l.Name+", ", l.Checks)
		if l.HeaviestKnown {
			s.Facts = append(s.Facts, Fact{"Roof, " + l.Name + ": " + oneOf(l.Name) + " load at Use 1", amount(sys, "roof_"+slug(l.Name)+"_lbf", l.Heaviest, manway.PoundForce)})
		}
	}
	s.addChecks("roof, ", v.Roof.NotJudged)
	if change := v.Roof.Change; change.Known {
		s.Facts = append(s.Facts,
			Fact{"Rests on the roof now, with its own weight", amount(sys, "roof_now_lbf", change.Now, manway.PoundForce)},
			Fact{"The new risers change that by", percent("roof_change", change.Load)},
			Fact{"And the greatest bending moment by", percent("roof_moment_change", change.Moment)})
	}
	s.Assumed |= v.Roof.Assumed
	s.Cautions |= v.Roof.Cautions
	if !v.Survey.Tank.RoofLoss.Taken {
		s.Unjudged = append(s.Unjudged, "The thickness lost from the roof was not measured.")
	}
}

// oneOf says what a load on one place is of.
func oneOf(loading string) string {
	if loading == "person" {
		return "standing"
	}
	return "one wheel's"
}

// percent is a share as a change in per cent.
func percent(key string, share float64) Cell {
	return Cell{Key: key, Text: fmt.Sprintf("%+.1f %%", 100*share), Number: share, Is: Number}
}

// rulesSection holds the tank against the chosen sets of rules, for the desk.
func (v Visit) rulesSection() Section {
	s := Section{
		ID: "rules", Title: "Against the rules", For: ForDesk, Cautions: manway.LocalCode,
		Method: "What was measured, held against each rule of the chosen sets as they were read; local code governs and may have changed since.",
	}
	if len(v.Survey.Rules) == 0 {
		s.Unjudged = []string{"No set of rules was chosen; there are " + ruleIDs() + "."}
		return s
	}
	facts := v.facts()
	for _, id := range v.Survey.Rules {
		set, err := tank.RuleSetOf(id)
		if err != nil {
			continue // refused with the survey
		}
		judged, err := set.Judge(facts)
		if err != nil {
			s.Unjudged = append(s.Unjudged, set.Name+": "+err.Error()+".")
			continue
		}
		s.addChecks(set.Name+": ", judged.Checks)
		s.Cautions |= judged.Cautions
		for _, c := range judged.Checks {
			s.Basis = merge(s.Basis, []manway.Citation{c.Source})
		}
	}
	return s
}

// facts are what the rules ask about, as far as it was measured.
func (v Visit) facts() tank.Facts {
	f := v.Tank.Facts()
	f.Bedrooms = v.Survey.Household.Bedrooms
	if !v.Survey.Tank.InletInvert.Taken {
		f.Drop = manway.Reading{}
	}
	for i, a := range v.Survey.Accesses {
		if depth := a.Cover - a.Riser.Height; i == 0 || depth > f.AccessBelowGrade.Length {
			f.AccessBelowGrade = manway.Read(depth)
		}
		if r := v.Accesses[i]; r.HasLid && (f.CoverMass == 0 || r.Moves.Weight.Now < f.CoverMass) {
			f.CoverMass = r.Moves.Weight.Now
		}
		f.CoverFastened = least(f.CoverFastened, a.Seen.Fastened, i)
		f.SecondaryGuard = least(f.SecondaryGuard, a.Seen.Guard, i)
	}
	f.SoilCover = manway.Read(v.leastCover())
	return f
}

// least is the worse of two answers: no before not looked at before yes.
func least(so, next manway.Answer, i int) manway.Answer {
	switch {
	case i == 0:
		return next
	case so == manway.No || next == manway.No:
		return manway.No
	case so == manway.Yes && next == manway.Yes:
		return manway.Yes
	}
	return manway.Unknown
}

// WallsAnswer is the screening of walls, partitions and floor.
type WallsAnswer struct {
	Wall       tank.WallStrength
	Partitions []tank.PartitionStrength
	Floor      tank.FloorStrength
}

// walls screens walls, partitions and floor of the tank as it is emptied.
func (v *Visit) walls() error {
	t, g := v.Survey.Tank, v.Survey.Ground
	steel := tank.Steel{Inside: tank.Mesh(t.steel())}
	c := tank.WallCase{
		Concrete: t.concrete(), Steel: steel, Cover: v.mostCover(), Soil: g.soil(), Groundwater: g.Groundwater,
	}
	if g.Machine.Taken {
		c.Vehicle.Distance = g.Machine.Length
	}
	var err error
	if v.Walls.Wall, err = v.Tank.Wall(c); err != nil {
		return err
	}
	for i := range t.Partitions {
		p, err := v.Tank.Partition(tank.PartitionCase{Partition: i, Concrete: t.concrete(), Steel: steel})
		if err != nil {
			return err
		}
		v.Walls.Partitions = append(v.Walls.Partitions, p)
	}
	v.Walls.Floor, err = v.Tank.Floor(tank.FloorCase{Concrete: t.concrete(), Steel: steel, Cover: c.Cover, Groundwater: g.Groundwater})
	return err
}

// standEmpty reports whether walls and floor are shown to stand when the tank
// is emptied, no machine beside it.
func (w WallsAnswer) standEmpty() bool {
	if w.Wall.Groundwater.State == tank.LimitUnknown || len(w.Floor.Loading.Checks) == 0 {
		return false // one of them is not judged at all
	}
	shown := false
	for _, l := range append(slices.Clip(w.Wall.Loadings), w.Floor.Loading) { // not into the spare room of what others read
		if strings.Contains(l.Name, "truck") || strings.Contains(l.Name, "full") || len(l.Checks) == 0 {
			continue
		}
		if l.Status() != manway.Pass {
			return false
		}
		shown = true
	}
	return shown
}

// wallSays adds what the screening of walls, partitions and floor came to.
func (v Visit) wallSays(s *Section) {
	w := v.Walls
	for _, l := range w.Wall.Loadings {
		s.addChecks(l.Name+", ", l.Checks)
	}
	s.addChecks("walls, ", w.Wall.NotJudged)
	for i, p := range w.Partitions {
		name := fmt.Sprintf("partition %d, ", i+1)
		for _, l := range p.Loadings {
			s.addChecks(name+l.Name+", ", l.Checks)
		}
		s.addChecks(name, p.NotJudged)
		s.Says = append(s.Says, fmt.Sprintf("Partition %d, drawing down: %s.", i+1, p.Order))
		s.Assumed |= p.Assumed
		s.Cautions |= p.Cautions
	}
	s.addChecks("floor, ", w.Floor.Loading.Checks)
	s.addChecks("floor, ", w.Floor.NotJudged)
	s.Assumed |= w.Wall.Assumed | w.Floor.Assumed
	s.Cautions |= w.Wall.Cautions | w.Floor.Cautions
	s.Basis = merge(s.Basis, w.Wall.Basis(), w.Floor.Basis())
}
