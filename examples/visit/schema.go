package visit

import _ "embed"

// Schema is the JSON Schema (2020-12) of a survey, for editors. A test holds it
// to the decoder.
//
//go:embed survey.schema.json
var Schema string

// Blank is an empty survey to fill in; the "//" lines of each object say what
// its fields are.
//
//go:embed survey.blank.json
var Blank string
