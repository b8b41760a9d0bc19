package record

import (
	"flag"
	"fmt"
	"io"

	"manway.example/manway"
)

// UnitsFlag is the flag for the units of the text.
func UnitsFlag(fs *flag.FlagSet, s *manway.System) {
	fs.TextVar(s, "units", manway.US, "`SYSTEM` of the text: us or si")
}

// Printf is fmt.Fprintf with every quantity in the units of the system.
func Printf(w io.Writer, s manway.System, format string, args ...any) {
	for i, a := range args {
		if q, ok := a.(interface{ Text(manway.System) string }); ok {
			args[i] = q.Text(s)
		}
	}
	fmt.Fprintf(w, format, args...)
}
