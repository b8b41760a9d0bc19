// Package house reads the source of this module, types and comments included,
// so that its tests can hold every room to the promises that a compiler does not
// check: that quantities are not multiplied with each other, that every
// calculation names its source and is tested, that the sources in the code are
// those of testdata/references/sources.csv. Only tests and the tools of the
// contributors import it.
package house
