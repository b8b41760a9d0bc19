package svg

import (
	"fmt"
	"strings"
)

// Fill is what a shape is made of, told by its pattern.
type Fill uint8

// The fills.
const (
	None     Fill = iota // see-through
	Paper                // white
	Solid                // dark: steel, plastic, what is cut thin
	Concrete             // specks and small stones
	Soil                 // slanting strokes in groups
	Liquid               // short level strokes, far apart
	Sludge               // dense dots
	Scum                 // crosses
	Wet                  // broken slanting lines: ground under the water table
	Cut                  // close slanting lines: what is to be dug or removed
	fills
)

var fillNames = [fills]string{
	Paper: "open", Solid: "metal or plastic", Concrete: "concrete", Soil: "soil", Liquid: "liquid",
	Sludge: "sludge", Scum: "scum", Wet: "soil under water", Cut: "to be dug or removed",
}

// String is the name that a legend gives the fill.
func (f Fill) String() string {
	if f < fills {
		return fillNames[f]
	}
	return ""
}

// pattern is a tile that repeats: its size, its ground and what is on it.
type pattern struct {
	size         int
	ground, tile string
}

var patterns = [fills]pattern{
	Concrete: {22, "#e4e4e4", `<path d="M4 5l4 1-3 3zM15 14l4-1-1 4z" fill="#777"/><path d="M13 4h1M19 7h1M8 13h1M3 17h1M11 19h1M10 9h1" stroke="#555" stroke-width="1.4"/>`},
	Soil:     {24, "#f4f1ec", `<path d="M2 10l8-8M6 12l8-8M10 14l8-8M14 22l8-8" stroke="#8a8378" stroke-width="1"/>`},
	Liquid:   {24, "#eef2f5", `<path d="M3 6h9M15 18h7" stroke="#6b7f8c" stroke-width="1.2"/>`},
	Sludge:   {8, "#b9b4ab", `<circle cx="2" cy="2" r="1.3" fill="#3b372f"/><circle cx="6" cy="6" r="1.3" fill="#3b372f"/>`},
	Scum:     {12, "#d9d4c8", `<path d="M3 3l4 4M7 3l-4 4M9 9l3 3M12 9l-3 3" stroke="#5f594c" stroke-width="1.2"/>`},
	Wet:      {24, "#e3e7ea", `<path d="M2 10l8-8M6 12l8-8M10 14l8-8" stroke="#6d7a83" stroke-width="1" stroke-dasharray="3 2"/><path d="M12 20h9" stroke="#6d7a83"/>`},
	Cut:      {7, "#fff", `<path d="M-1 1l2-2M0 7l7-7M6 8l2-2" stroke="#333" stroke-width="1"/>`},
}

// paint is the value of a fill attribute.
func (d *Drawing) paint(f Fill) string {
	switch {
	case f == None || f >= fills:
		return "none"
	case f == Paper:
		return "#fff"
	case f == Solid:
		return "#444"
	}
	return "url(#" + d.patternID(f) + ")"
}

// patternID is unique as long as the page's name is.
func (d *Drawing) patternID(f Fill) string {
	name := strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' || '0' <= r && r <= '9' {
			return r
		}
		return -1
	}, strings.ToLower(d.page.Name))
	return fmt.Sprintf("%s-fill%d", "p"+name, f)
}

// definePatterns writes the patterns that are used.
func (d *Drawing) definePatterns(b *strings.Builder) {
	b.WriteString("<defs>\n")
	for f, p := range patterns {
		if d.used[f] && p.size > 0 {
			fmt.Fprintf(b, `<pattern id="%s" width="%d" height="%[2]d" patternUnits="userSpaceOnUse"><rect width="%[2]d" height="%[2]d" fill="%s"/>%s</pattern>`+"\n",
				d.patternID(Fill(f)), p.size, p.ground, p.tile)
		}
	}
	b.WriteString("</defs>\n")
}
