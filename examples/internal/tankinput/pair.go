package tankinput

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// pair is one value for both heads, or one for each.
type pair[T any, P interface {
	*T
	UnmarshalText([]byte) error
}] struct {
	inlet, outlet T
	given, two    bool
}

type (
	forms   = pair[tank.HeadForm, *tank.HeadForm]
	lengths = pair[manway.Length, *manway.Length]
)

// UnmarshalJSON reads one text or a list of two.
func (p *pair[T, P]) UnmarshalJSON(data []byte) error {
	var texts []string
	if len(data) > 0 && data[0] == '[' {
		if json.Unmarshal(data, &texts) != nil || len(texts) != 2 {
			return errors.New("one text, or a list of two: inlet and outlet")
		}
		return p.read(texts)
	}
	if string(data) == "null" {
		return nil
	}
	var text string
	if json.Unmarshal(data, &text) != nil {
		return errors.New("one text, or a list of two: inlet and outlet")
	}
	return p.read([]string{text})
}

// read takes one text or two.
func (p *pair[T, P]) read(texts []string) error {
	p.given, p.two = true, len(texts) == 2
	if err := P(&p.inlet).UnmarshalText([]byte(texts[0])); err != nil {
		return err
	}
	if len(texts) == 1 {
		p.outlet = p.inlet
		return nil
	}
	return P(&p.outlet).UnmarshalText([]byte(texts[1]))
}

// flag reads one text, or two with a semicolon between them.
func (p *pair[T, P]) flag(text string) error {
	texts := strings.Split(text, ";")
	if len(texts) > 2 {
		return fmt.Errorf("%q: want one value, or two with a semicolon between them", text)
	}
	for i := range texts {
		texts[i] = strings.TrimSpace(texts[i])
	}
	return p.read(texts)
}
