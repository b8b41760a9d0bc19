package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"manway.example/manway/internal/reftable"
)

// mostNamed is how many sources of a file the summary names.
const mostNamed = 3

// writeSummary is the page in a few lines, for the README of the module: what
// each file of figures holds, how well its figures are known, how far ours are
// off, and the sources that most of them come from.
func writeSummary(w *strings.Builder, sources []reftable.Source, list []comparison) {
	all := writeTotal(w, sources, list)
	var known []string
	for _, m := range meanings {
		if n := all.status[m[0]]; n > 0 {
			known = append(known, fmt.Sprintf("%d %s", n, m[0]))
		}
	}
	fmt.Fprintf(w, "By status: %s. \"Off\" is in units of the last printed digit, of the figures held to half a unit; \"wider\" counts those that are allowed more, each with its reason, and gives the furthest of them.\n\n", strings.Join(known, ", "))
	w.WriteString("| figures of | published | sources | memory | off at most | wider | most of them from |\n|---|--:|--:|--:|--:|--:|---|\n")
	keys, by := tallies(list, func(r reftable.Row) string { return r.File })
	for _, k := range keys {
		t := by[k]
		row(w, strings.TrimSuffix(k, ".csv"), fmt.Sprint(t.published), fmt.Sprint(len(t.sources)), fmt.Sprint(t.status["memory"]),
			t.worstOff(), t.widestOff(), mainSources(sources, list, k))
	}
}

// mainSources names the sources with most of the published figures of a file.
func mainSources(sources []reftable.Source, list []comparison, file string) string {
	count := map[string]int{}
	for _, c := range list {
		if c.row.File == file && c.row.Published() {
			count[c.row.Source]++
		}
	}
	named := slices.DeleteFunc(inOrder(sources), func(s reftable.Source) bool { return count[s.ID] == 0 || s.Body == "" })
	slices.SortStableFunc(named, func(a, b reftable.Source) int { return cmp.Compare(count[b.ID], count[a.ID]) })
	var words []string
	for _, s := range named[:min(len(named), mostNamed)] {
		title, _, _ := strings.Cut(s.Title, "; ")
		words = append(words, fmt.Sprintf("%s (%d)", reftable.PageCell(title), count[s.ID]))
	}
	return strings.Join(words, "; ")
}
