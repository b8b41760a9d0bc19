package manway_test

import "testing"

// A route that a spreadsheet saved, summed up by a script of the shell. By hand
// from the sizes: 618.39 + 609.21 + 503.38 + 0 gal; 24 in x 4 in of concrete.
func TestShellScript(t *testing.T) {
	out, err := newBench(t).run("sh testdata/scripts/day.sh testdata/routes/day.csv")
	if want := "1731 gal to pump, heaviest lid 157 lb at demo-3, not judged: demo-5\n"; err != nil || out != want {
		t.Errorf("%v, %q, want %q", err, out, want)
	}
}

// Shares of a file, each worked on its own as a cluster's mapper does, the first
// with the header in it, make what the whole file makes. A refused row stops no
// share.
func TestShares(t *testing.T) {
	b := newBench(t)
	const script = `set -eu
cp testdata/routes/day.csv all.csv
echo 'demo-x,96,48,0,62,3,18,24,3,12,4,3,1' >>all.csv
map() { daysheet -tolerate -out csv -header "$(head -n 1 all.csv)" -; }
head -n 3 all.csv | map >shares
sed -n '4,5p' all.csv | map >>shares
sed -n '6,$p' all.csv | map >>shares
printf '' | map >>shares
daysheet -tolerate -out csv all.csv | sed 's/line [0-9]*/line/' >whole
sed 's/line [0-9]*/line/' shares >bare
tail -n +2 whole | cmp - bare
grep -c 'demo-x.*depth' whole
`
	out, err := b.run("(" + script + ") 2>log")
	if err != nil || out != "1\n" {
		log, _ := b.run("cat log")
		t.Errorf("%v, %s%s", err, out, log)
	}
}
