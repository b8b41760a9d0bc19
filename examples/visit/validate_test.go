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

// A partition stands with both faces inside the tank, and is told so beside other
// faults of the tank: at 93 in of 96 its far face of 3 in touches the end, at 92
// it does not, and at 0 its near face does. Once is enough.
func TestPartitionBesideOtherFaults(t *testing.T) {
	for at, fine := range map[float64]bool{92: true, 93: false, 95: false, 97: false, 0: false, 0.5: true, -2: false} {
		for _, also := range []string{"", "Tank.Width"} {
			s := readText(t, fifteen)
			s.Tank.Partitions = []visit.Partition{{At: manway.Length(at) * manway.Inch, Thickness: 3 * manway.Inch}}
			if also != "" {
				s.Tank.Width = -1
			}
			var faults manway.InputErrors
			errors.As(s.Validate(), &faults)
			told, other := 0, 0
			for _, f := range faults {
				if strings.HasPrefix(f.Field, "Tank.Partitions[0]") {
					told++
				}
				if also != "" && strings.HasPrefix(f.Field, also) {
					other++
				}
			}
			if (told == 0) != fine || told > 1 || (other == 0) != (also == "") {
				t.Errorf("a partition at %v in, and %q: %v", at, also, faults)
			}
		}
	}
}

// What was read in a compartment that nobody opened is a slip, one reading or all;
// nothing read, or an opened lid over it, is not.
func TestReadWithoutOpening(t *testing.T) {
	d := manway.Read(3 * manway.Inch)
	for _, opened := range []manway.Answer{manway.Yes, manway.No, manway.Unknown} {
		for i, c := range []visit.Contents{{}, {Level: d}, {Sludge: d}, {Scum: d}, {Level: manway.Read(40 * manway.Inch), Sludge: d, Scum: d}} {
			s := readText(t, fifteen)
			s.Accesses[0].Opened, s.Compartments = opened, []visit.Contents{c}
			var faults manway.InputErrors
			errors.As(s.Validate(), &faults)
			if wrong := opened != manway.Yes && i > 0; wrong != (len(faults) == 1 && faults[0].Field == "Compartments[0]") || !wrong && len(faults) > 0 {
				t.Errorf("opened %v, reading %d: %v", opened, i, faults)
			}
		}
	}
}

// A tank whose length is missing has that one fault; its partitions are told only
// where they cannot stand.
func TestPartitionOfAnUnknownLength(t *testing.T) {
	s := readText(t, fifteen)
	s.Tank.Length = 0
	s.Tank.Partitions = []visit.Partition{{At: 40 * manway.Inch, Thickness: 3 * manway.Inch}}
	var faults manway.InputErrors
	errors.As(s.Validate(), &faults)
	if len(faults) != 1 || faults[0].Field != "Tank.Length" {
		t.Errorf("faults %v", faults)
	}
}
