package tank

import "manway.example/manway"

// keep takes what loading k does in one place on one piece and its supports into
// what is known of it: each check by itself, so that every one stands at its own
// worst. The place that is told is that of the bending.
func (j *roofJudge) keep(k int, l Loading, here kept) {
	old := &j.r.Loadings[k]
	if old.Checks == nil || more(l.use, old.use) {
		l.bend.at.X += here.p.from // in the tank, as Weakest wants it
		l.bend.at.Y -= here.p.half
		l.merge(old, "")
		*old, j.kept[k] = l, here
	} else {
		old.merge(&l, "")
	}
	j.close(k)
}

// close finds what governs loading k, and the load that brings it to 1.
func (j *roofJudge) close(k int) {
	l := &j.r.Loadings[k]
	l.Governs = manway.Governing(l.Checks)
	l.Heaviest, l.HeaviestKnown = 0, false
	if k >= fixed {
		l.heaviest(j.moving[k-fixed].wheel.Load, manway.DeadLive.Factors())
	}
}

// merge takes the checks of another place in where they say worse, but for the
// one called settled.
func (l *Loading) merge(other *Loading, settled string) {
	for i, c := range other.Checks {
		at := -1
		for k := range l.Checks {
			if l.Checks[k].Name == c.Name {
				at = k
			}
		}
		switch {
		case at < 0:
			l.Checks, l.uses = append(l.Checks, c), append(l.uses, other.uses[i])
		case c.Name == settled:
		case gravity(c.Status) > gravity(l.Checks[at].Status),
			gravity(c.Status) == gravity(l.Checks[at].Status) && more(other.uses[i], l.uses[at]):
			l.Checks[at], l.uses[at] = c, other.uses[i]
		}
	}
}

// add keeps a check and what it uses, or, where nothing counts, its demand: the
// same check in other places ranks by it.
func (l *Loading) add(c manway.Check) {
	use := c.Demand
	if c.Capacity > 0 {
		use /= c.Capacity
	}
	l.Checks, l.uses = append(l.Checks, c), append(l.uses, use)
}
