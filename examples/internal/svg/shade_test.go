package svg_test

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway/examples/internal/svg"
)

func TestShade(t *testing.T) {
	page := svg.Page{Name: "shades", Area: svg.Area{Right: 3, Top: 1}, Width: 300}
	d := page.Start()
	for k, tone := range []float64{-1, 0.5, 2} { // beyond the ends counts as the ends
		d.Shade(svg.Point{X: float64(k)}, svg.Point{X: float64(k) + 1, Y: 1}, tone)
	}
	text := d.String()
	for _, want := range []string{`x="0" y="0"`, `fill="#ffffff"`, `x="100" y="0"`, `fill="#b7b7b7"`, `x="200" y="0"`, `fill="#707070"`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in %s", want, text)
		}
	}
	d = page.Start()
	d.Shade(svg.Point{}, svg.Point{X: 1, Y: 1}, math.NaN())
	if d.String() != "" {
		t.Error("a tone that is no number was drawn")
	}
}
