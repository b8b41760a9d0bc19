package lid

import (
	"strconv"

	"manway.example/manway"
)

// Guard is what keeps people, children first, out of one opening.
type Guard struct {
	Opening    manway.Length // least clear size of the opening, 1 in to 10 ft
	Depth      manway.Length // of soil over the lid, 0 to 20 ft: 0 at grade or above; meaningful only where DepthKnown
	DepthKnown bool
	Fastened   manway.Answer // bolts or screws that need a tool
	Locked     manway.Answer
	Secondary  manway.Answer // plug, cap, net or restraint under the lid
	Label      manway.Answer // warning on it
	Crew       Crew          // who opens it
}

// Means is a set of ways to hold a lid shut.
type Means uint8

// The means.
const (
	ByLock Means = 1 << iota
	ByFastener
	ByWeight
)

// Binding says how binding a rule is as it is known here.
type Binding uint8

// The bindings. Only a rule in force gives pass or fail.
const (
	InForce    Binding = iota
	Advice             // of an association or a guide
	Remembered         // its text was not read
	Repealed           // replaced by a later text
)

var bindings = [...]string{"in force", "advice", "remembered", "repealed"}

// String is in force, advice, remembered or repealed.
func (b Binding) String() string { return manway.Word(bindings[:], b) }

// MarshalText is the same as String.
func (b Binding) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// GuardRule is one rule for the guarding of openings, as data.
type GuardRule struct {
	Code        string
	Wants       string // in words
	Binding     Binding
	OpeningOver manway.Length // applies to openings larger than this
	DepthUnder  manway.Length // applies where less soil than this lies over the lid; 0: at grade or above only
	AnyDepth    bool          // applies however deep
	AnyOf       Means         // one of them is enough; 0: none asked for
	Weight      manway.Mass   // of the lid, where ByWeight is one of them
	Secondary   bool          // a second guard under the lid too
	Label       bool          // a warning too
	Source      manway.Citation
}

// mostRules is how many rules one call judges.
const mostRules = 16

// Finding is an opening against one rule.
type Finding struct {
	Code       string
	Applies    manway.Answer
	Met        manway.Answer
	WeightOnly bool          // met by nothing but the weight of the lid
	Status     manway.Status // pass or fail only by a rule in force
	Reason     string
}

// GuardCheck is an opening against the rules chosen, and the change proposed: a
// fastener and a guard under the lid. A heavier lid is never proposed: it is
// the one that nobody opens, and a lid is off while the tank is worked on.
type GuardCheck struct {
	Findings        [mostRules]Finding
	Rules           int // how many of Findings are filled in
	AddFastener     bool
	AddSecondary    bool
	GuardNow        bool // not known to be held shut by a lock or fastener at grade: do not leave it so
	WeightConflict  bool // a rule is met by weight alone, with more than the crew will lift
	ConflictWeight  manway.Mass
	ConflictLimit   manway.Mass // of the crew together
	ConflictByLimit bool        // the crew's own limit was given; else 50 lb, about the constant of the lifting equation, was taken
	Cautions        manway.Cautions
	Assumed         manway.Assumptions
}

// CheckGuard judges the guarding of one opening against rules, 1 to 16 of
// them, such as those of [GuardRules]. What is not known leaves a rule not
// judged; a rule that is advice, remembered or repealed informs and never gives
// pass or fail. The weight that counts is that of the lid as it is, dry where
// its moisture is unknown.
//
// It fails with [manway.InputErrors] as [Lid.Validate] does and for the
// guard's own fields.
//
// Source: the text of each rule, which its check cites.
func (l Lid) CheckGuard(g Guard, rules []GuardRule) (GuardCheck, error) {
	var faults manway.InputErrors
	w, err := l.Weigh()
	faults.Under("", err)
	g.validate(&faults)
	manway.Within(&faults, "Rules", len(rules), 1, mostRules)
	for i := range rules {
		if err := rules[i].validate(); err != nil {
			faults.Under("Rules["+strconv.Itoa(i)+"]", err)
		}
	}
	if err := faults.Err(); err != nil {
		return GuardCheck{}, err
	}
	r := GuardCheck{Rules: len(rules), Assumed: w.Assumed, Cautions: manway.GuardHole | manway.NeverEnter | manway.LocalCode}
	limit, ok := g.Crew.Together()
	r.ConflictByLimit = ok
	if !ok {
		limit = heavyLift
	}
	for i := range rules {
		f := rules[i].judge(g, w.Now)
		r.Findings[i] = f
		if rules[i].Binding == Remembered {
			r.Cautions |= manway.RememberedFigure
		}
		if f.WeightOnly && w.Heaviest > limit {
			r.WeightConflict = true
			r.ConflictWeight, r.ConflictLimit = w.Heaviest, limit
		}
	}
	r.AddFastener = g.Fastened != manway.Yes && g.Locked != manway.Yes
	r.AddSecondary = g.Secondary != manway.Yes
	r.GuardNow = r.AddFastener && !(g.DepthKnown && g.Depth > 0)
	return r, nil
}

func (g Guard) validate(faults *manway.InputErrors) {
	manway.Within(faults, "Guard.Opening", g.Opening, 1*manway.Inch, mostWidth)
	if g.DepthKnown {
		manway.Within(faults, "Guard.Depth", g.Depth, 0, 20*manway.Foot)
	} else {
		manway.Absent(faults, "Guard.Depth", g.Depth, "not DepthKnown")
	}
	for _, a := range [...]struct {
		field string
		v     manway.Answer
	}{{"Guard.Fastened", g.Fastened}, {"Guard.Locked", g.Locked}, {"Guard.Secondary", g.Secondary}, {"Guard.Label", g.Label}} {
		a.v.Within(faults, a.field)
	}
	faults.Under("Guard.Crew", g.Crew.Validate())
}

// validate returns the faults of a rule.
func (rule *GuardRule) validate() error {
	var faults manway.InputErrors
	if rule.Code == "" {
		faults.Add("Code", "empty", "a code")
	}
	within(&faults, "Binding", rule.Binding, bindings[:])
	manway.Within(&faults, "OpeningOver", rule.OpeningOver, 0, mostWidth)
	manway.Within(&faults, "DepthUnder", rule.DepthUnder, 0, 20*manway.Foot)
	if rule.AnyOf > ByLock|ByFastener|ByWeight {
		faults.Add("AnyOf", strconv.Itoa(int(rule.AnyOf)), "lock, fastener and weight, or some of them")
	}
	if rule.AnyOf&ByWeight != 0 {
		manway.Within(&faults, "Weight", rule.Weight, 0, 20000*manway.Pound)
	} else {
		manway.Absent(&faults, "Weight", rule.Weight, "AnyOf has no ByWeight")
	}
	return faults.Err()
}

// judge is one rule.
func (rule *GuardRule) judge(g Guard, weight manway.Mass) Finding {
	f := Finding{Code: rule.Code}
	f.Applies = rule.applies(g)
	switch f.Applies {
	case manway.No:
		f.Reason = "does not apply to this opening at this depth"
		return f
	case manway.Unknown:
		f.Reason = "how deep the lid lies is not known"
		return f
	}
	held := manway.Yes
	if rule.AnyOf != 0 {
		held = rule.held(g, weight)
		f.WeightOnly = held == manway.Yes && rule.without(g) != manway.Yes
	}
	f.Met = both(held, both(asked(rule.Secondary, g.Secondary), asked(rule.Label, g.Label)))
	switch {
	case rule.Binding != InForce:
		f.Reason = informs[rule.Binding]
	case f.Met == manway.Yes:
		f.Status = manway.Pass
	case f.Met == manway.No:
		f.Status, f.Reason = manway.Fail, missing(rule, held, g)
	default:
		f.Reason = "fastener, lock, second guard or label was not looked at"
	}
	return f
}

var informs = [...]string{
	Advice:     "advice, not a rule of law: informs only",
	Remembered: "remembered, its text was not read: informs only",
	Repealed:   "replaced by a later text: informs only",
}

// missing is what a rule in force lacks, the first of it.
func missing(rule *GuardRule, held manway.Answer, g Guard) string {
	switch {
	case held == manway.No:
		return "no lock or fastener holds it shut"
	case rule.Secondary && g.Secondary == manway.No:
		return "no second guard under the lid"
	}
	return "no warning label"
}

// applies says whether the rule is about this opening.
func (rule *GuardRule) applies(g Guard) manway.Answer {
	switch {
	case !over(float64(g.Opening), float64(rule.OpeningOver)):
		return manway.No
	case rule.AnyDepth:
		return manway.Yes
	case !g.DepthKnown:
		return manway.Unknown
	case rule.DepthUnder == 0:
		return answer(g.Depth == 0)
	}
	return answer(!manway.Reached(g.Depth, rule.DepthUnder))
}

// held says whether one of the rule's means holds the lid.
func (rule *GuardRule) held(g Guard, weight manway.Mass) manway.Answer {
	if rule.AnyOf&ByWeight != 0 && manway.Reached(weight, rule.Weight) {
		return manway.Yes
	}
	return rule.without(g)
}

// without is held without the weight.
func (rule *GuardRule) without(g Guard) manway.Answer {
	held := manway.No
	if rule.AnyOf&ByLock != 0 {
		held = either(held, g.Locked)
	}
	if rule.AnyOf&ByFastener != 0 {
		held = either(held, g.Fastened)
	}
	return held
}

// asked is Yes where nothing is asked for, else what is there.
func asked(wanted bool, have manway.Answer) manway.Answer {
	if !wanted {
		return manway.Yes
	}
	return have
}

func both(a, b manway.Answer) manway.Answer {
	switch {
	case a == manway.No || b == manway.No:
		return manway.No
	case a == manway.Yes && b == manway.Yes:
		return manway.Yes
	}
	return manway.Unknown
}

func either(a, b manway.Answer) manway.Answer {
	switch {
	case a == manway.Yes || b == manway.Yes:
		return manway.Yes
	case a == manway.No && b == manway.No:
		return manway.No
	}
	return manway.Unknown
}
