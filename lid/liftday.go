package lid

import (
	"strconv"

	"manway.example/manway"
)

// SpellOf is the spell of a time of lifting with the rest that follows it
// (Pub. 94-110, pp. 13-14): short up to 1 h with rest at least as long;
// moderate up to 2 h with rest of 0.3 of it; long up to 8 h. A spell without
// its rest counts as the next longer one. Nothing is given beyond 8 h.
//
// Source: NIOSH Pub. 94-110, pp. 13-14.
func SpellOf(work, rest manway.Duration) (Spell, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Work", work, 0, 8*manway.Hour)
	manway.Within(&faults, "Rest", rest, 0, 24*manway.Hour)
	if err := faults.Err(); err != nil {
		return LongSpell, err
	}
	switch {
	case manway.Reached(1*manway.Hour, work) && manway.Reached(rest, work):
		return ShortSpell, nil
	case manway.Reached(2*manway.Hour, work) && manway.Reached(rest, 0.3*work):
		return ModerateSpell, nil
	}
	return LongSpell, nil
}

// AverageRate is the lifts a minute over a period of which only a part is
// spent lifting (Pub. 94-110, p. 16): 10 a minute for 8 of 15 minutes count
// as 10 x 8/15. The period is 15 minutes.
//
// Source: NIOSH Pub. 94-110, p. 16.
func AverageRate(perMinute float64, lifting manway.Duration) (float64, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "PerMinute", perMinute, 0, 60)
	manway.Within(&faults, "Lifting", lifting, 0, 15*manway.Minute)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return perMinute * float64(lifting) / float64(15*manway.Minute), nil
}

// Task is one of several kinds of lift in one spell, such as the lids of one
// yard: its load, its limit with the frequency multiplier left out (FIRWL),
// and how often it comes.
type Task struct {
	Load      manway.Mass
	Free      manway.Mass // frequency-independent limit
	Frequency float64     // lifts a minute
}

// Validate returns the faults of t.
func (t Task) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Load", t.Load, 0, 20000*manway.Pound)
	manway.Within(&faults, "Free", t.Free, 0.1*manway.Pound, 51*manway.Pound)
	manway.Within(&faults, "Frequency", t.Frequency, 0, 60)
	return faults.Err()
}

const mostTasks = 10

// CompositeIndex is the lifting index of several tasks together,
//
//	CLI = STLI1 + sum over n of FILIn x (1/FM(F1+...+Fn) - 1/FM(F1+...+Fn-1))
//
// the tasks in falling order of their own index STLI = load/(FIRWL FM), FILI =
// load/FIRWL. It takes 1 to 10 tasks; low says that the hands start below 30
// in (75 cm). The answer is false where the rates together are beyond Table 5:
// then nobody should. Source: Pub. 94-110, p. 28.
func CompositeIndex(tasks []Task, spell Spell, low bool) (index float64, ok bool, err error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Tasks", len(tasks), 1, mostTasks)
	within(&faults, "Spell", spell, spells[:])
	for i, t := range tasks {
		if err := t.Validate(); err != nil {
			faults.Under("Tasks["+strconv.Itoa(i)+"]", err)
		}
	}
	if err := faults.Err(); err != nil {
		return 0, false, err
	}
	var order [mostTasks]Task
	n := copy(order[:], tasks)
	own := func(t Task) float64 {
		fm := frequency(t.Frequency, spell, low)
		if fm == 0 {
			return -1
		}
		return float64(t.Load) / float64(t.Free) / fm
	}
	for i := 1; i < n; i++ { // insertion sort, greatest index first
		for j := i; j > 0 && own(order[j]) > own(order[j-1]); j-- {
			order[j], order[j-1] = order[j-1], order[j]
		}
	}
	rate := order[0].Frequency
	index = own(order[0])
	before := frequency(rate, spell, low)
	for _, t := range order[1:n] {
		rate += t.Frequency
		after := frequency(rate, spell, low)
		if before == 0 || after == 0 {
			return 0, false, nil
		}
		index += float64(t.Load) / float64(t.Free) * (1/after - 1/before)
		before = after
	}
	return index, before > 0, nil
}
