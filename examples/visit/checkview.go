package visit

import (
	"fmt"
	"strings"

	"manway.example/manway"
)

// checkRow is a check as people read it: its outcome, how much of the capacity
// is used, and the number of the note that gives the reason.
type checkRow struct {
	Name, Outcome, Use string
}

// comparison parts a reason from the figure that stands beside it for
// comparison only; many checks share the reason and differ in the figure.
const comparison = "; for comparison only: "

// checkRows sets out checks; reasons that several share are told once, as
// numbered notes.
func checkRows(checks []manway.Check, sys manway.System) (rows []checkRow, notes []string) {
	for _, c := range checks {
		row := checkRow{Name: c.Name, Outcome: strings.ToUpper(c.Outcome()), Use: useOf(c, sys)}
		reason, figure, compared := strings.Cut(c.Reason, comparison)
		if compared {
			row.Use = figure
		}
		if reason != "" {
			row.Outcome += fmt.Sprintf(" (%d)", note(&notes, reason))
		}
		rows = append(rows, row)
	}
	return rows, notes
}

// note is the number of a note, which is added where it does not stand yet.
func note(notes *[]string, text string) int {
	for i, n := range *notes {
		if n == text {
			return i + 1
		}
	}
	*notes = append(*notes, text)
	return len(*notes)
}

// useOf is how much of its capacity a check uses, with the figures.
func useOf(c manway.Check, sys manway.System) string {
	use, ok := c.Use()
	if !ok {
		return ""
	}
	text := fmt.Sprintf("uses %.0f %%: %s of %s", 100*use, c.Kind.Text(c.Demand, sys), c.Kind.Text(c.Capacity, sys))
	if c.Phi != 0 {
		text += fmt.Sprintf(", %s, phi %.2f", c.Combination, c.Phi)
	}
	return text
}
