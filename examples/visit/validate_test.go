package visit_test

import (
	"errors"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
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

// People given without a word of how they were known are taken as about, and a
// number below zero is refused.
func TestPeopleWithoutAWord(t *testing.T) {
	text := strings.Replace(fifteen, `"people": "about 4"`, `"people": 4`, 1)
	bare, _ := visit.Run(readText(t, text), cost.Book{})
	about, _ := visit.Run(readText(t, fifteen), cost.Book{})
	if bare.Pump.Forecast.Pumped != about.Pump.Forecast.Pumped || bare.Pump.Forecast.Pumped.Likely.IsZero() {
		t.Errorf("%+v, with the word %+v", bare.Pump.Forecast.Pumped, about.Pump.Forecast.Pumped)
	}
	s := readText(t, text)
	s.Household.People = -4
	if err := s.Validate(); err == nil || !strings.Contains(err.Error(), "Household.People") {
		t.Errorf("-4 people: %v", err)
	}
}
