package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"manway.example/manway/internal/reftable"
)

// document is a file and what should stand in it.
type document struct{ file, text string }

// compare reports the first line in which the file differs.
func (d document) compare() error {
	have, err := os.ReadFile(d.file)
	if err != nil {
		return err
	}
	was, want := strings.Split(string(have), "\n"), strings.Split(d.text, "\n")
	for i := range max(len(was), len(want)) {
		line := func(list []string) string {
			if i < len(list) {
				return list[i]
			}
			return "(end)"
		}
		if line(was) != line(want) {
			return fmt.Errorf("%s:%d: run go generate ./internal/reftable\n  is   %s\n  want %s", d.file, i+1, line(was), line(want))
		}
	}
	return nil
}

// lay gives the validation page, and the README of the module with its summary
// between two marks, where it has them.
func lay(root string, sources []reftable.Source, rows reftable.Rows, ours map[string]string) ([]document, error) {
	list := make([]comparison, len(rows))
	for i, row := range rows {
		c, err := compareRow(row, ours[row.ID])
		if err != nil {
			return nil, err
		}
		list[i] = c
	}
	var w strings.Builder
	w.WriteString(preamble)
	writeCounts(&w, sources, list)
	writeSources(&w, sources, list)
	w.WriteString("\n## Figures\n")
	for _, s := range inOrder(sources) {
		writeFigures(&w, s, list)
	}
	writeCited(&w, sources, list)
	documents := []document{{filepath.Join(root, "testdata", "references", reftable.PageName), w.String()}}

	readme := filepath.Join(root, "README.md")
	text, err := os.ReadFile(readme)
	if err != nil {
		return nil, err
	}
	before, rest, begun := strings.Cut(string(text), "<!-- sources -->\n")
	_, after, ended := strings.Cut(rest, "<!-- /sources -->")
	if begun && ended {
		var s strings.Builder
		writeSummary(&s, sources, list)
		documents = append(documents, document{readme, before + "<!-- sources -->\n" + s.String() + "<!-- /sources -->" + after})
	}
	return documents, nil
}

const preamble = `<!-- Written by go generate ./internal/reftable. Do not edit. -->

# Published figures and ours

Every figure that this module is tested against, with the value that the tests compute for it. A figure agrees within half a unit of
its last printed digit, unless its row allows more, and then the reason stands under the table. The inputs of each figure, and how
it was found, are in the CSV files of this folder, under the same name; the columns are explained in the package comment of
internal/reftable.

"Off" is ours less printed, in units of the last printed digit; "of 4" after it says that 4 units are allowed instead of a half.
Where a source is misprinted, the printed column has the corrected figure, and the misprint stands under the table. In the summaries
"furthest off" is of the published figures held to half a unit; "wider" counts those that are allowed more, and gives the furthest of
them off in percent of the printed figure.

`

// meanings of the states, in the order of trust.
var meanings = [...][2]string{
	{"seen", "read in the source itself or in a reprint of it"},
	{"seen-secondary", "read in a text that quotes the source"},
	{"trade page", "read on a page of the trade, not named"},
	{"practice", "common practice of the trade, no source"},
	{"erratum", "misprinted in the source; corrected here"},
	{"memory", "remembered; a better source is wanted"},
	{"derived", "our own arithmetic; not counted as published"},
}

// writeCounts says how many, how well known, from how many sources.
func writeCounts(w *strings.Builder, sources []reftable.Source, list []comparison) {
	all := writeTotal(w, sources, list)
	w.WriteString("| status | rows | share | meaning |\n|---|--:|--:|---|\n")
	for _, m := range meanings {
		if n := all.status[m[0]]; n > 0 {
			share := all.share(n)
			if m[0] == "derived" {
				share = ""
			}
			row(w, m[0], fmt.Sprint(n), share, m[1])
		}
	}
	w.WriteString("\n| file | published | sources | memory | derived | furthest off | wider |\n|---|--:|--:|--:|--:|--:|--:|\n")
	keys, by := tallies(list, func(r reftable.Row) string { return r.File })
	for _, k := range keys {
		t := by[k]
		row(w, k, fmt.Sprint(t.published), fmt.Sprint(len(t.sources)), fmt.Sprint(t.status["memory"]), fmt.Sprint(t.derived), t.worstOff(), t.widestOff())
	}
}

// writeTotal is the first sentence of the page.
func writeTotal(w *strings.Builder, sources []reftable.Source, list []comparison) tally {
	var all tally
	for _, c := range list {
		all.add(c)
	}
	named := 0
	for _, s := range sources {
		if s.Body != "" && all.sources[s.ID] {
			named++
		}
	}
	fmt.Fprintf(w, "%d published figures from %d sources, %d of them with an author or publisher; %s of the figures from memory. %d more are our own arithmetic.\n\n",
		all.published, len(all.sources), named, all.share(all.status["memory"]), all.derived)
	return all
}

func writeSources(w *strings.Builder, sources []reftable.Source, list []comparison) {
	w.WriteString("\n## Sources\n\n| source | title | body | year | published | memory | derived | furthest off | wider |\n|---|---|---|---|--:|--:|--:|--:|--:|\n")
	_, by := tallies(list, func(r reftable.Row) string { return r.Source })
	for _, s := range inOrder(sources) {
		if t := by[s.ID]; t != nil {
			body := s.Body
			if body == "" {
				body = "nobody named"
			}
			anchor := strings.ReplaceAll(strings.ToLower(s.ID), ".", "")
			row(w, "["+s.ID+"](#"+anchor+")", reftable.PageCell(s.Title), reftable.PageCell(body), s.Year,
				fmt.Sprint(t.published), fmt.Sprint(t.status["memory"]), fmt.Sprint(t.derived), t.worstOff(), t.widestOff())
		}
	}
}

// writeFigures is one source: its figures by place and edition.
func writeFigures(w *strings.Builder, s reftable.Source, list []comparison) {
	if !hasFigures(s, list) {
		return
	}
	fmt.Fprintf(w, "\n### %s\n\n%s\n", s.ID, inWords(s))
	type place struct{ where, edition string }
	var places []place
	at := map[place][]comparison{}
	for _, c := range list {
		if c.row.Source != s.ID {
			continue
		}
		p := place{c.row.Place, c.row.Edition}
		if at[p] == nil {
			places = append(places, p)
		}
		at[p] = append(at[p], c)
	}
	for _, p := range places {
		heading := p.where
		if heading == "" {
			heading = "No place"
		}
		if p.edition != "" {
			heading += " (" + p.edition + ")"
		}
		fmt.Fprintf(w, "\n%s\n\n", reftable.PageCell(heading))
		row(w, reftable.PageColumns[:]...)
		w.WriteString("|---|---|--:|--:|--:|---|\n")
		for _, c := range at[p] {
			printed := c.row.Printed
			if c.row.Unit != "" {
				printed += " " + c.row.Unit
			}
			row(w, c.row.ID, reftable.PageCell(c.row.Quantity), reftable.PageCell(printed), reftable.PageCell(c.ours), c.off(), c.row.Status)
		}
		writeReasons(w, at[p])
	}
}

// writeCited lists the sources that the code cites and no figure here is from.
func writeCited(w *strings.Builder, sources []reftable.Source, list []comparison) {
	w.WriteString("\n## Cited by the code without a figure here\n\n")
	for _, s := range inOrder(sources) {
		if !hasFigures(s, list) {
			fmt.Fprintf(w, "- %s: %s\n", s.ID, inWords(s))
		}
	}
}

func hasFigures(s reftable.Source, list []comparison) bool {
	return slices.ContainsFunc(list, func(c comparison) bool { return c.row.Source == s.ID })
}

// inWords is title, body and year of a source, as far as it has them.
func inWords(s reftable.Source) string {
	parts := slices.DeleteFunc([]string{s.Title, s.Body, s.Year}, func(t string) bool { return t == "" })
	return reftable.PageCell(strings.Join(parts, ". "))
}

// writeReasons says once each why more than half a unit is allowed, and what was
// misprinted.
func writeReasons(w *strings.Builder, list []comparison) {
	var said []string
	for _, c := range list {
		text := ""
		switch {
		case c.row.Status == "erratum":
			text = c.row.ID + ": " + c.row.Note
		case c.row.Tolerance != "":
			text = "allowed " + c.row.Tolerance + ": " + c.row.Note
		}
		if text == "" || slices.Contains(said, text) {
			continue
		}
		if len(said) == 0 {
			w.WriteString("\n")
		}
		said = append(said, text)
		w.WriteString("- " + reftable.PageCell(text) + "\n")
	}
}

func row(w *strings.Builder, cells ...string) {
	w.WriteString("| " + strings.Join(cells, " | ") + " |\n")
}

func inOrder(sources []reftable.Source) []reftable.Source {
	list := slices.Clone(sources)
	slices.SortFunc(list, func(a, b reftable.Source) int { return strings.Compare(strings.ToLower(a.ID), strings.ToLower(b.ID)) })
	return list
}
