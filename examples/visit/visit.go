package visit

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/tank"
)

// Visit is the whole answer to one survey: what each room of the library made
// of it, and the sections in which people and programs read it.
type Visit struct {
	Survey   Survey
	Tank     tank.Tank
	Accesses []AccessAnswer // in the order of the survey
	Pump     PumpAnswer
	Float    FloatAnswer
	Roof     tank.RoofStrength
	// RoofTried is what of the roof does not count by what was tried, where its
	// loss was not measured.
	RoofTried RoofTried
	Walls     WallsAnswer
	Options   OptionsAnswer
	Changes   []Change // what measuring each unknown value would change, the most first
	Spreads   []Spread // how far figures may be off, where the survey carries tolerances
	Sections  []Section
}

// Run works one survey through every room: what the tank holds, how to reach
// it, what the lids weigh and carry, what must be pumped and when next, whether
// the emptied tank may float, what was found wrong, and what each way of
// putting it right costs by the price book.
//
// It is pure: the same survey and book give the same answer, and nothing is
// read or written.
//
// Errors: everything that [Survey.Validate] refuses, and what a room refuses,
// as manway.InputErrors.
func Run(s Survey, prices cost.Book) (Visit, error) {
	if err := s.Validate(); err != nil {
		return Visit{}, err
	}
	t, err := s.build()
	if err != nil {
		return Visit{}, err
	}
	v := Visit{Survey: s, Tank: t}
	for _, step := range []func() error{
		v.reachAll, v.structure, v.float, v.pump, v.judge, func() error { return v.foresee(prices) },
	} {
		if err := step(); err != nil {
			return Visit{}, err
		}
	}
	v.Sections = v.sections()
	return v, nil
}

// foresee prices what may be done, and works the visit again for what is not known
// and for what may be off.
func (v *Visit) foresee(prices cost.Book) error {
	var moves followed
	err := together(
		func() error { return v.price(prices) },
		func() error { v.tell(); return nil },
		func() (err error) { moves, err = v.follow(prices); return err },
	)
	if err == nil {
		v.spread(moves)
	}
	return err
}

// together runs steps side by side that do not need each other, and gives the
// fault of the first that has one.
func together(steps ...func() error) error {
	faults := make([]error, len(steps))
	var done sync.WaitGroup
	for i, step := range steps {
		done.Go(func() { faults[i] = step() })
	}
	done.Wait()
	for _, err := range faults {
		if err != nil {
			return err
		}
	}
	return nil
}

// sections is the answer in the order in which it is read.
func (v Visit) sections() []Section {
	list := []Section{
		v.firstSection(), v.sawSection(), v.glanceSection(), v.nextSection(), v.historySection(), v.photoSection(), v.drawingSection(), v.remedySection(), v.unknownSection(),
		v.crewSection(), v.tankSection(), v.pumpSection(), v.arrivalSection(), v.lidSection(), v.reachSection(), v.floatSection(), v.closeSection(),
		v.rulesSayPump(), v.takenSection(), v.structureSection(), v.rulesSection(), v.spreadSection(), v.paidSection(), v.materialSection(), v.chartSection(),
	}
	for i := range list {
		list[i].System = v.Survey.Units
	}
	return list
}

// Only is the visit with the named sections alone, such as "crew" for a phone.
//
// Errors: an id that no section has, with the ids there are.
func (v Visit) Only(ids ...string) (Visit, error) {
	all := v.Sections
	v.Sections = nil
	for _, id := range ids {
		i := slices.IndexFunc(all, func(s Section) bool { return s.ID == id })
		if i < 0 {
			var have []string
			for _, s := range all {
				have = append(have, s.ID)
			}
			return Visit{}, fmt.Errorf("section %q: want one of %s", id, strings.Join(have, ", "))
		}
		v.Sections = append(v.Sections, all[i])
	}
	return v, nil
}

// Cautions is every caution of the visit.
func (v Visit) Cautions() manway.Cautions {
	all := manway.NeverEnter | manway.GuardHole | manway.GasAndIgnition | manway.HeavyLift | manway.Insects | manway.VehicleOverTank |
		manway.Pathogens | manway.LocalCode | manway.NotAnInspection | manway.LicensedWork
	for _, s := range v.Sections {
		all |= s.Cautions
	}
	return all
}

// under puts the faults that a room found under the part of the survey that it
// worked on.
func under(part string, i int, err error) error {
	if err == nil {
		return nil
	}
	var faults manway.InputErrors
	faults.Under(fmt.Sprintf("%s[%d]", part, i), err)
	return faults
}
