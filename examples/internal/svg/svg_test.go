package svg

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

func page() Page {
	return Page{Name: "t", Title: "T", Area: Area{0, -1, 2, 1}, Width: 400, MarginLeft: 150, MarginRight: 50, MarginTop: 10, MarginBottom: 20}
}

// texts reads a drawing as XML and gives the words of all its texts, title and
// desc among them.
func texts(t *testing.T, drawing string) []string {
	t.Helper()
	var words []string
	dec := xml.NewDecoder(strings.NewReader(drawing))
	for {
		token, err := dec.Token()
		if err == io.EOF {
			return words
		}
		if err != nil {
			t.Fatalf("not XML: %v\n%s", err, drawing)
		}
		if data, ok := token.(xml.CharData); ok {
			if s := strings.TrimSpace(string(data)); s != "" {
				words = append(words, s)
			}
		}
	}
}

func TestScaleIsOne(t *testing.T) {
	d := page().Start() // 2 m on 200 px
	d.Rect(Point{0.5, 0}, Point{1, 1}, Outline)
	d.Circle(Point{2, -1}, 0.5, Outline)
	d.Polyline([]Point{{0, 1}, {2, -1}}, Outline)
	d.Path(new(Path).Move(Point{0, 0}).Arc(1, 0.5, false, true, Point{1, 1}).Close(), Outline)
	got := d.String()
	for _, want := range []string{
		`width="400" height="230" viewBox="0 0 400 230"`,
		`<rect x="200" y="10" width="50" height="100" stroke`,
		`<ellipse cx="350" cy="210" rx="50" ry="50"`,
		`<polyline points="150 10 350 210"`,
		`<path d="M150 110A100 50 0 0 0 250 10Z"`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
	if again := d.String(); again != got {
		t.Error("writing a drawing twice gives two drawings")
	}
	low := page()
	low.Tall = 100 // half the scale, in the middle of the room
	d = low.Start()
	d.Rect(Point{0, -1}, Point{2, 1}, Outline)
	if want := `<rect x="200" y="10" width="100" height="100"`; !strings.Contains(d.String(), want) {
		t.Errorf("no %s in\n%s", want, d.String())
	}
}

func TestOnlyUsedPatterns(t *testing.T) {
	d := page().Start()
	d.Rect(Point{}, Point{1, 1}, Style{Fill: Sludge})
	d.Explain(Scum, "grease")
	got := d.String()
	for f := range fills {
		want := 0
		if f == Sludge || f == Scum {
			want = 1
		}
		if n := strings.Count(got, `<pattern id="`+d.patternID(f)+`"`); n != want {
			t.Errorf("%s: %d patterns, want %d", f, n, want)
		}
	}
	if words := texts(t, got); words[len(words)-1] != "grease" {
		t.Errorf("legend %q, want grease", words)
	}
}

func TestEveryTextIsEscaped(t *testing.T) {
	const evil = `"/><script>alert('x')</script>&<b>` + "\x00\x1b\xff"
	p := page()
	p.Name, p.Title, p.Desc = evil, evil, evil
	d := p.Start()
	d.Text(Point{}, evil, Begin, 0, 0)
	d.Dimension(Point{}, Point{1, 0}, 10, evil)
	d.Label(Point{1, 1}, Left, evil)
	d.Explain(Concrete, evil)
	got := d.String()
	if strings.Contains(got, "<script") || strings.Contains(got, "<b>") || strings.ContainsAny(got, "\x00\x1b") {
		t.Errorf("a text got through:\n%s", got)
	}
	count := 0
	for _, words := range texts(t, got) {
		if strings.HasPrefix(words, `"/><script>alert('x')</script>&<b>`) {
			count++
		}
	}
	if count != 6 {
		t.Errorf("%d of 6 texts read back", count)
	}
}

func TestRefusesWhatIsNoDrawing(t *testing.T) {
	for name, draw := range map[string]func() *Drawing{
		"NaN": func() *Drawing { d := page().Start(); d.Line(Point{math.NaN(), 0}, Point{}, Outline); return d },
		"far": func() *Drawing { d := page().Start(); d.Circle(Point{}, 1e9, Outline); return d },
		"inf": func() *Drawing { d := page().Start(); d.Label(Point{math.Inf(1), 0}, Left, "x"); return d },
		"no length to measure": func() *Drawing {
			d := page().Start()
			d.Dimension(Point{1, 1}, Point{1, 1}, 10, "0 in")
			return d
		},
		"no area":    func() *Drawing { return Page{Width: 100}.Start() },
		"all margin": func() *Drawing { p := page(); p.MarginLeft = 500; return p.Start() },
	} {
		var b strings.Builder
		if _, err := draw().WriteTo(&b); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes written, want an error and none", name, err, b.Len())
		}
	}
}

// Labels of a column keep their order, do not touch, and stay in the picture;
// one alone stands where it is best.
func TestLabelsDoNotTouch(t *testing.T) {
	for _, levels := range [][]float64{
		{0}, {0.99, 0.99, 0.99, 0.99}, {-1, -1, -0.99}, {0.5, 0.45, -0.3, -0.32, -0.9, 0.1}, {0.2, 0.1, 0, -0.1, -0.2},
	} {
		d := page().Start()
		for i, y := range levels {
			d.Label(Point{1, y}, Left, fmt.Sprintf("label number %d of some length", i))
		}
		d.drawLabels()
		column := make([]*label, len(d.labels))
		for i := range d.labels {
			column[i] = &d.labels[i]
		}
		d.place(column)
		for i, l := range column {
			if top, bottom := l.mid-d.tall(l)/2, l.mid+d.tall(l)/2; top < edge-1e-9 || bottom > d.height-edge+1e-9 {
				t.Errorf("%v: label %d from %.1f to %.1f of %.1f", levels, i, top, bottom, d.height)
			}
			if i > 0 && (l.y < column[i-1].y || l.mid-d.tall(l)/2 < column[i-1].mid+d.tall(column[i-1])/2-1e-9) {
				t.Errorf("%v: label %d touches or passes the one above", levels, i)
			}
		}
		if len(levels) == 1 && column[0].mid != column[0].y {
			t.Errorf("a label alone stands at %v, want %v", column[0].mid, column[0].y)
		}
	}
}

func TestLines(t *testing.T) {
	d := page().Start()
	for _, words := range []string{"", "one", "two words and then some more", "averyverylongwordthatcannotbecut at all"} {
		lines := d.lines(words, 80)
		if got := strings.Join(lines, " "); got != words {
			t.Errorf("%q became %q", words, got)
		}
		for _, line := range lines {
			if d.width(line) > 80 && strings.Contains(line, " ") {
				t.Errorf("line %q is too wide", line)
			}
		}
	}
}

// Whatever the texts and places, the drawing is XML or refused.
func FuzzDrawing(f *testing.F) {
	f.Add("a", 0.1, 0.2, 10.0)
	f.Add("<&\"'>]]>", -5.0, 1e300, -10.0)
	f.Add("\xff\x00", 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, words string, x, y, away float64) {
		p := page()
		p.Title, p.Name = words, words
		d := p.Start()
		at := Point{x, y}
		d.Polygon([]Point{at, {}, {1, 1}}, Style{Fill: Concrete, Line: 1, Dash: true})
		d.Dimension(Point{}, at, away, words)
		d.Label(at, Right, words)
		d.Text(at, words, End, away, 0)
		d.Level(at)
		d.Legend()
		var b strings.Builder
		if _, err := d.WriteTo(&b); err == nil {
			texts(t, b.String())
			if strings.Contains(b.String(), "NaN") && !strings.Contains(words, "NaN") {
				t.Error("NaN in the drawing")
			}
		}
	})
}

func BenchmarkDrawing(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		d := page().Start()
		for i := range 50 {
			y := float64(i) / 50
			d.Rect(Point{0, y}, Point{1, y + 0.01}, Style{Fill: Soil, Line: 1})
		}
		d.Dimension(Point{}, Point{1, 0}, 10, "1 m")
		d.Label(Point{}, Left, "a label of several words")
		d.Legend()
		_, _ = d.WriteTo(io.Discard)
	}
}

// The words of a level dimension stand over its line where they have room
// between the arrows, else under it.
func TestLevelDimensionWords(t *testing.T) {
	for _, c := range []struct {
		name string
		to   float64
		over bool
	}{{"long", 3, true}, {"short", 0.1, false}} {
		d := Page{Name: "dimension", Title: "A dimension", Desc: "A dimension.", Area: Area{Right: 3, Top: 1}, Width: 300, Text: 14}.Start()
		d.Dimension(Point{0, 0.5}, Point{c.to, 0.5}, 0, "1 ft 7 in")
		_, line := d.at(Point{0, 0.5})
		found := regexp.MustCompile(`<text [^>]*\by="([0-9.]+)"[^>]*>1 ft 7 in<`).FindStringSubmatch(d.String())
		if found == nil {
			t.Fatalf("%s: no words in %s", c.name, d)
		}
		y, err := strconv.ParseFloat(found[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		if over := y < line; over != c.over {
			t.Errorf("%s: words at %v, line at %v", c.name, y, line)
		}
	}
}
