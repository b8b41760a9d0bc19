package record

import "testing"

func TestComment(t *testing.T) {
	got := Comment("// Vat says.\n//\n//\tvat -length 8ft\npackage main\n\n// not this\n")
	if want := "Vat says.\n\n  vat -length 8ft\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
