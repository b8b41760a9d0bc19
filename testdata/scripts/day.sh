#!/bin/sh
# The sum of a day: gallons to pump, the heaviest lid, tanks that could not be
# judged. For a route that a spreadsheet saved as CSV, with daysheet on the path:
#
#	go build -o bin/ ./examples/... && PATH=bin:$PATH sh testdata/scripts/day.sh testdata/routes/day.csv
set -eu
daysheet -tolerate -out csv -columns id,pump_gal,lid_lb "$1" | awk -F, '
	NR == 1 { next }
	$2 == "" { open = open " " $1; next }
	{ gallons += $2; if ($3 > heaviest) { heaviest = $3; tank = $1 } }
	END { printf "%.0f gal to pump, heaviest lid %.0f lb at %s, not judged:%s\n", gallons, heaviest, tank, open }'
