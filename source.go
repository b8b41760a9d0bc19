package manway

import "strconv"

// Source is a published text, or the common practice of the trade, that a
// calculation or a figure rests on. A source without a body is common
// practice: nobody published it, and it is shown as such.
type Source struct {
	ID    string // stable id, the same as in testdata/references/sources.csv
	Title string
	Body  string // author, publisher or authority; empty for common practice
	Year  int    // year of the edition; 0 for common practice
}

// Citation is a source and the place in it: section, table, equation or page.
// Sources are package variables that never change, so a citation is two words
// and costs no allocation.
type Citation struct {
	Source *Source
	Place  string
}

// String is body, title, year and place in one line.
func (c Citation) String() string {
	if c.Source == nil {
		return ""
	}
	s := c.Source.Title
	if c.Source.Body != "" {
		s = c.Source.Body + ", " + s
	}
	if c.Source.Year != 0 {
		s += " (" + strconv.Itoa(c.Source.Year) + ")"
	}
	if c.Place != "" {
		s += ", " + c.Place
	}
	return s
}

// Sources that several packages cite.
var (
	// Practice is the common practice of the trade, published by nobody.
	Practice = &Source{ID: "practice", Title: "Common practice of the trade"}
	// NISTHandbook44 fixes the units of trade, the US gallon among them.
	NISTHandbook44 = &Source{ID: "nist-hb44", Title: "Handbook 44, Appendix C: General Tables of Units of Measurement", Body: "National Institute of Standards and Technology", Year: 2023}
	// ACI318_19 is the US building code for structural concrete.
	ACI318_19 = &Source{ID: "aci-318-19", Title: "ACI 318-19 Building Code Requirements for Structural Concrete", Body: "American Concrete Institute", Year: 2019}
	// ASCE7_16 is the US standard for loads.
	ASCE7_16 = &Source{ID: "asce-7-16", Title: "ASCE/SEI 7-16 Minimum Design Loads for Buildings and Other Structures", Body: "American Society of Civil Engineers", Year: 2016}
	// AASHTOLRFD is the US bridge design specification, for wheel loads.
	AASHTOLRFD = &Source{ID: "aashto-lrfd", Title: "LRFD Bridge Design Specifications", Body: "American Association of State Highway and Transportation Officials", Year: 2020}
	// OSHA1926 is the US rule book for construction work.
	OSHA1926 = &Source{ID: "osha-1926", Title: "29 CFR Part 1926, Safety and Health Regulations for Construction", Body: "Occupational Safety and Health Administration", Year: 2023}
	// OSHA1910 is the US rule book for general industry.
	OSHA1910 = &Source{ID: "osha-1910", Title: "29 CFR Part 1910, Occupational Safety and Health Standards", Body: "Occupational Safety and Health Administration", Year: 2023}
	// fhwaSounding says how sound and unsound concrete sound.
	fhwaSounding = &Source{ID: "fhwa-sounding", Title: "InfoTechnology: Pavements, sounding", Body: "Federal Highway Administration"}
	// aci201 has the classes of scaling.
	aci201 = &Source{ID: "aci-201.1r", Title: "ACI 201.1R Guide for Conducting a Visual Inspection of Concrete in Service", Body: "American Concrete Institute", Year: 2008}
)
