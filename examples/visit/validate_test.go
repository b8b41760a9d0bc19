package visit_test

import (
	"errors"
	"strings"
	"testing"

	"manway.example/manway"
)

// A name that would read in another order than it is stored, or break its line,
// is refused by its field; right-to-left letters are not.
func TestNamesReadAsTheyAreStored(t *testing.T) {
	s, _ := read(t, "rusted-handle.json")
	for name, fine := range map[string]bool{
		"lid \u202egnp.exe": false, "lid\u2066x": false, "two\nlines": false, "tab\there": false,
		"\u05de\u05db\u05e1\u05d4": true, "couvercle d'entrée": true,
	} {
		s.Accesses[0].Name = name
		err := s.Validate()
		var faults manway.InputErrors
		if fine != (err == nil) || !fine && (!errors.As(err, &faults) || faults[0].Field != "Accesses[0].Name" || !strings.Contains(err.Error(), "one line")) {
			t.Errorf("%q: %v", name, err)
		}
	}
}
