package manway

// People are shown other words than pass and fail, which an owner may take for
// a judgement of the whole tank: a figure is within or above its limit, and what
// a rule asks for is met or not met. Programs get the status.

// Against is the outcome of a figure that was set against a limit, in words.
func (s Status) Against() string {
	switch s {
	case Pass:
		return "within"
	case Fail:
		return "above"
	}
	return s.String()
}

// Asked is the outcome of what a rule asks for, in words.
func (s Status) Asked() string {
	switch s {
	case Pass:
		return "met"
	case Fail:
		return "not met"
	}
	return s.String()
}

// Outcome is the outcome of the check in words: within or above where it has
// figures, reached where a limit counts as exceeded once it is reached, met or
// not met where it has none.
func (c Check) Outcome() string {
	use, ok := c.Use()
	switch {
	case !ok:
		return c.Status.Asked()
	case c.Status == Fail && use <= 1+slack:
		return "reached"
	}
	return c.Status.Against()
}
